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
): readonly TrussRow[] => [
  ...members.map((member, order) => rowOf(member.id, 'member', memberWords(member), member, order, marks)),
  ...clusters.map(({ id }, order) =>
    rowOf(id, 'cluster', clusterWords(id), undefined, members.length + order, marks),
  ),
];

const rowOf = (
  id: string,
  kind: TrussRow['kind'],
  words: string,
  member: Member | undefined,
  order: number,
  marks: ReadonlyMap<string, Mark>,
): TrussRow => {
  const mark = marks.get(id);
  return {
    id,
    kind,
    words,
    member,
    order,
    state: mark?.state ?? 'notLookedAt',
    stateWords: stateWords(mark),
    damage: mark?.damage[0],
  };
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
