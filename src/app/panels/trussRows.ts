import type { Damage } from '../../core/job/jobSchema.ts';
import type { Cluster, Member } from '../../core/truss/result.ts';
import { type Mark, type State, states } from '../../core/walkRound/result.ts';
import { stateWords } from '../../present/tables/members.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { find, type findIndex } from '../find.ts';
import type { SortBy } from '../state/view.ts';

/** One member or cluster as a row of the table beside the picture. */
export interface TrussRow {
  readonly id: string;
  readonly kind: 'member' | 'cluster';
  readonly words: string;
  readonly state: State;
  readonly stateWords: string;
  readonly damage: Damage | undefined;
  readonly member: Member | undefined;
  /** Station of its forward end, for the order of the truss. */
  readonly order: number;
}

export const trussRows = (
  members: readonly Member[],
  clusters: readonly Cluster[],
  marks: ReadonlyMap<string, Mark>,
  before: readonly TrussRow[] = [],
): readonly TrussRow[] => {
  const rows = [
    ...members.map((member, order) => {
      const was = before[order];
      const words = was?.member === member ? was.words : memberWords(member);
      return rowOf(member.id, 'member', words, member, order, marks, was);
    }),
    ...clusters.map(({ id }, place) => {
      const order = members.length + place;
      return rowOf(id, 'cluster', clusterWords(id), undefined, order, marks, before[order]);
    }),
  ];
  return sameItems(rows, before) ? before : rows;
};

const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

/** Rows in groups of so many: a change in one draws its group again and no other. */
const GROUP = 40;

/** The rows in groups; a group that holds what it held is the same one. */
export const rowGroups = (
  rows: readonly TrussRow[],
  before: readonly (readonly TrussRow[])[],
): readonly (readonly TrussRow[])[] =>
  Array.from({ length: Math.ceil(rows.length / GROUP) }, (_, k) => {
    const group = rows.slice(k * GROUP, (k + 1) * GROUP);
    const was = before[k];
    return was && sameItems(group, was) ? was : group;
  });

const rowOf = (
  id: string,
  kind: TrussRow['kind'],
  words: string,
  member: Member | undefined,
  order: number,
  marks: ReadonlyMap<string, Mark>,
  was: TrussRow | undefined,
): TrussRow => {
  const mark = marks.get(id);
  const state = mark?.state ?? 'notLookedAt';
  const said = stateWords(mark);
  const damage = mark?.damage[0];
  const same =
    was?.id === id &&
    was.words === words &&
    was.member === member &&
    was.state === state &&
    was.stateWords === said &&
    was.damage === damage;
  return same ? was : { id, kind, words, member, order, state, stateWords: said, damage };
};

const compare = (by: SortBy, a: TrussRow, b: TrussRow): number => {
  switch (by) {
    case 'place':
      return 0;
    case 'id':
      return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
    case 'state':
      return states.indexOf(a.state) - states.indexOf(b.state);
    case 'length':
      return (a.member?.lengthIn ?? 0) - (b.member?.lengthIn ?? 0);
    case 'tube':
      return (
        (a.member?.section.odIn ?? 0) - (b.member?.section.odIn ?? 0) ||
        (a.member?.section.wallIn ?? 0) - (b.member?.section.wallIn ?? 0)
      );
    default: {
      const never: never = by;
      return never;
    }
  }
};

/** The rows that are shown, in the order asked for; equal ones stay in the order of the truss. */
export const shownRows = (
  rows: readonly TrussRow[],
  index: ReturnType<typeof findIndex>,
  search: string,
  hidden: readonly State[],
  sort: { readonly by: SortBy; readonly down: boolean },
): readonly TrussRow[] => {
  const found = search.trim() === '' ? null : new Set(find(index, search, rows.length).map(({ id }) => id));
  const shown = rows.filter((row) => (found === null || found.has(row.id)) && !hidden.includes(row.state));
  const sign = sort.down ? -1 : 1;
  return [...shown].sort((a, b) => sign * (compare(sort.by, a, b) || a.order - b.order));
};
