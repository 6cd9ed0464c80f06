import { type Issue, issue } from '../base/issue.ts';
import { parseLength } from '../base/lengthText.ts';
import { type Model, type Role, roles, type Station, type Tube } from '../job/modelSchema.ts';
import { type Heading, type ImportKind, importColumns } from './importColumns.ts';
import type { Cluster } from './result.ts';
import { roundSection } from './stock.ts';

export type ClusterRow = Model['clusters'][number];
export type MemberRow = Model['members'][number];

/** What is wrong with a row, and in which column. */
export interface Fault {
  readonly column: string;
  readonly issue: Issue;
}

/** Cells of one row by title, and what is wrong with them. */
export const reader = (
  kind: ImportKind,
  heading: Heading,
  cells: readonly string[],
  drawnIn: Model['drawnIn'],
  faults: Fault[],
) => {
  const titles: readonly string[] = importColumns[kind];
  // A spreadsheet's guard against formulas is no part of the text.
  const cell = (title: string): string =>
    (cells[heading.at[titles.indexOf(title)] ?? -1] ?? '').trim().replace(/^'(?=[=+\-@])/, '');
  const wrong = (column: string, code: string, facts: Issue['facts'], mend: string): undefined => {
    faults.push({ column, issue: issue(code, '', facts, mend) });
    return undefined;
  };
  const length = (title: string): number | undefined => {
    const text = cell(title);
    if (text === '') return undefined;
    const read = parseLength(text, heading.units[titles.indexOf(title)] ?? drawnIn, { negative: true });
    if (read.ok) return read.value.inches;
    for (const one of read.issues) faults.push({ column: title, issue: one });
    return undefined;
  };
  const wanted = (title: string): number | undefined =>
    cell(title) === '' ? wrong(title, 'no-length', {}, 'write-like-the-examples') : length(title);
  return { cell, wrong, length, wanted };
};

export type Cells = ReturnType<typeof reader>;

export const stationFrom = (
  { cell, wrong, length, wanted }: Cells,
  taken: ReadonlySet<string>,
): Station | undefined => {
  const label = cell('Label');
  if (!/^[0-9]{1,4}[a-z]?$/.test(label))
    wrong('Label', 'wrong-form', { got: label, expected: '4, 4a' }, 'write-as-expected');
  if (taken.has(label)) wrong('Label', 'duplicate-station', { label }, 'give-another-label');
  const stationIn = wanted('Station');
  const pair = (which: 'Upper' | 'Lower'): Station['upper'] => {
    const [wl, hw] = [`${which} water line`, `${which} half-width`];
    const [waterLineIn, halfWidthIn] = [length(wl), length(hw)];
    if ((cell(wl) === '') !== (cell(hw) === ''))
      wrong(cell(wl) === '' ? wl : hw, 'pair-needs-both', {}, 'give-both-or-neither');
    if (halfWidthIn !== undefined && halfWidthIn < 0)
      wrong(hw, 'negative-length', { got: cell(hw) }, 'write-without-sign');
    return waterLineIn === undefined || halfWidthIn === undefined ? undefined : { waterLineIn, halfWidthIn };
  };
  const [upper, lower] = [pair('Upper'), pair('Lower')];
  return stationIn === undefined
    ? undefined
    : { label, stationIn, ...(upper ? { upper } : {}), ...(lower ? { lower } : {}) };
};

export const clusterFrom = (
  { cell, wrong, wanted }: Cells,
  taken: ReadonlySet<string>,
): ClusterRow | undefined => {
  const id = cell('Cluster');
  if (id === '') wrong('Cluster', 'text-empty', {}, 'write-another-text');
  if (/[-#]/.test(id)) wrong('Cluster', 'wrong-form', { got: id, expected: 'U4R, GC' }, 'write-as-expected');
  if (taken.has(id)) wrong('Cluster', 'duplicate-id', { id }, 'give-another-id');
  const [x, y, z] = [wanted('Station'), wanted('Butt line'), wanted('Water line')];
  const fitting = cell('Fitting');
  if (x === undefined || y === undefined || z === undefined) return undefined;
  return { id, at: [x, y, z], ...(fitting === '' ? {} : { fitting }) };
};

export const memberFrom = (
  { cell, wrong, length }: Cells,
  clusters: ReadonlyMap<string, Cluster>,
  taken: ReadonlySet<string>,
): MemberRow | undefined => {
  const [from, to, id, role] = [cell('From'), cell('To'), cell('Member'), cell('Role')];
  for (const [title, got] of [
    ['From', from],
    ['To', to],
  ] as const)
    if (!clusters.has(got))
      wrong(title, 'unknown-cluster', { cluster: got || 'nothing' }, 'name-a-cluster-of-the-model');
  if (from !== '' && from === to)
    wrong('To', 'zero-length', { id: `${from}-${to}`, from, to }, 'name-two-clusters');
  if (role !== '' && !(roles as readonly string[]).includes(role))
    wrong('Role', 'not-one-of', { got: role, expected: [...roles] }, 'use-one-of-these');
  const key = id || `${from}-${to}`;
  if (taken.has(key)) wrong('Member', 'duplicate-id', { id: key }, 'give-another-id');
  const [odIn, wallIn] = [length('Outside diameter'), length('Wall')];
  if ((cell('Outside diameter') === '') !== (cell('Wall') === ''))
    wrong(cell('Wall') === '' ? 'Wall' : 'Outside diameter', 'pair-needs-both', {}, 'give-both-or-neither');
  const tube: Tube | undefined = odIn !== undefined && wallIn !== undefined ? { odIn, wallIn } : undefined;
  if (tube && !roundSection(tube))
    wrong('Wall', 'impossible-tube', { odIn: tube.odIn, wallIn: tube.wallIn }, 'correct-the-wall');
  return {
    ...(id === '' || id === `${from}-${to}` ? {} : { id }),
    ...{ from, to, ...(role === '' ? {} : { role: role as Role }), ...(tube ? { tube } : {}) },
  };
};
