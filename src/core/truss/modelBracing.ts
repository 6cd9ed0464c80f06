import { type Issue, issue } from '../base/issue.ts';
import type { Model } from '../job/modelSchema.ts';
import { compareIds } from './names.ts';
import type { FaceName } from './result.ts';

/** One face of the bay aft of a station, or the ring across it. */
export interface BracingCell {
  readonly at: string;
  readonly face: FaceName;
}

type Row = Model['bracing'][number];

/** Words a face may have, in the order a press steps through them. */
export const wordsOf = (face: FaceName): readonly ['none', string, string, 'crossed'] =>
  face === 'left' || face === 'right'
    ? ['none', 'rising', 'falling', 'crossed']
    : ['none', 'toRight', 'toLeft', 'crossed'];

/** The word that stands for a face now: the last row that gives one, else `none`. */
export const wordAt = (model: Model, { at, face }: BracingCell): string =>
  model.bracing.findLast((row) => row.at === at && row[face] !== undefined)?.[face] ?? 'none';

const isWord = (face: FaceName, word: string): boolean => wordsOf(face).includes(word);

/** The rows with one word set, and every earlier word for the same face taken out; empty rows go. */
const withWord = (rows: readonly Row[], { at, face }: BracingCell, word: string): Row[] => {
  const cleared = rows.map((row) => {
    if (row.at !== at || row[face] === undefined) return row;
    const { [face]: _, ...rest } = row;
    return rest as Row;
  });
  const k = cleared.findIndex((row) => row.at === at);
  const said = word === 'none' ? {} : { [face]: word };
  const made =
    k < 0
      ? [...cleared, { at, ...said } as Row]
      : cleared.map((row, i) => (i === k ? ({ ...row, ...said } as Row) : row));
  return made.filter((row) => Object.keys(row).length > 1);
};

/** The model with a bracing word in every cell given; a word that a face cannot have is refused. */
export const braced = (model: Model, cells: readonly BracingCell[], word: string): Model | Issue => {
  const wrong = cells.find(({ face }) => !isWord(face, word));
  if (wrong)
    return issue(
      'not-one-of',
      'bracing',
      { got: word, expected: [...wordsOf(wrong.face)] },
      'use-one-of-these',
    );
  const known = new Set(model.stations.map((s) => s.label));
  const stray = cells.find(({ at }) => !known.has(at));
  if (stray) return issue('unknown-station', 'bracing', { label: stray.at }, 'name-a-station');
  const bracing = cells.reduce<Row[]>((rows, cell) => withWord(rows, cell, word), [...model.bracing]);
  return { ...model, bracing };
};

const faces = ['left', 'right', 'top', 'bottom', 'ring'] as const;

/** Other bays given the bracing words and the tube sizes (overrides by bay and by station) of one bay. */
export const copyBay = (model: Model, from: string, to: readonly string[]): Model | Issue => {
  const known = new Set(model.stations.map((s) => s.label));
  const stray = [from, ...to].find((label) => !known.has(label));
  if (stray !== undefined) return issue('unknown-station', 'bracing', { label: stray }, 'name-a-station');
  const targets = to.filter((label) => label !== from).sort(compareIds);
  const bracing = targets.reduce<Row[]>(
    (rows, at) =>
      faces.reduce((made, face) => withWord(made, { at, face }, wordAt(model, { at: from, face })), rows),
    [...model.bracing],
  );
  const own = model.tubes.overrides.filter((o) => o.bay === from || o.station === from);
  const rest = model.tubes.overrides.filter(
    (o) =>
      o.member !== undefined ||
      !(targets.includes(o.bay ?? o.station ?? '') && (o.bay ?? o.station) !== undefined),
  );
  const copies = targets.flatMap((at) =>
    own
      .filter((o) => o.member === undefined)
      .map((o) => ({
        ...o,
        ...(o.bay === from ? { bay: at } : {}),
        ...(o.station === from ? { station: at } : {}),
      })),
  );
  return { ...model, bracing, tubes: { ...model.tubes, overrides: [...rest, ...copies] } };
};
