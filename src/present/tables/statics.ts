import type { MemberForce, MemberRedundancy, SolvedCase } from '../../core/statics/result.ts';
import { fixed, showAxial, whole } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { setupWords } from '../words/held.ts';
import { countWords } from '../words/names.ts';
import { type Showing, wordsOf } from './showing.ts';

interface ForceRow {
  readonly solved: SolvedCase;
  readonly force: MemberForce;
}

const size = (v: readonly number[]): number => Math.hypot(...v);

const name = (showing: Showing, id: string): string =>
  showing.job.model.loadCases.find((loadCase) => loadCase.id === id)?.name ?? id;

/** Forces of every member in every load case, as drawn and undamaged. */
export const forcesTable = (showing: Showing): Table => {
  const { statics } = showing.assessment;
  const words = wordsOf(showing);
  return tableOf<ForceRow>(
    {
      name: 'forces',
      title: 'Member forces by load case',
      note: 'Of the truss as drawn, undamaged. Tension positive. Moments: the larger end.',
      empty:
        statics.kind === 'movesFreely'
          ? 'The truss moves freely as held, so no forces are worked.'
          : 'The model has no load case.',
      idOf: ({ force }) => force.id,
      columns: [
        { id: 'case', title: 'Case', text: ({ solved }) => name(showing, solved.id) },
        { id: 'id', title: 'Id', text: ({ force }) => force.id },
        { id: 'words', title: 'In words', text: ({ force }) => words(force.id) },
        {
          id: 'axial',
          title: 'Axial force',
          unit: 'lbf',
          align: 'right',
          text: ({ force }) => showAxial(force.axialLbf).replace(' lbf', ''),
          raw: ({ force }) => force.axialLbf,
        },
        {
          id: 'moment',
          title: 'End moment',
          unit: 'in-lbf',
          align: 'right',
          text: ({ force }) => whole(Math.max(size(force.momentFromInLbf), size(force.momentToInLbf))),
          raw: ({ force }) => Math.max(size(force.momentFromInLbf), size(force.momentToInLbf)),
        },
        {
          id: 'stress',
          title: 'Largest stress',
          unit: 'ksi',
          align: 'right',
          text: ({ force }) => fixed(force.stressPsi / 1000, 1),
          raw: ({ force }) => force.stressPsi / 1000,
        },
      ],
    },
    statics.kind === 'stands'
      ? statics.cases.flatMap((solved) => solved.members.map((force) => ({ solved, force })))
      : [],
  );
};

/** Redundancy of every member: how much of a length error turns into force, and how the truss stands without it. */
export const redundancyTable = (showing: Showing): Table => redundancies(showing, (rows) => rows);

/** The same, the most clamped tube first, for paper. */
export const mostClampedTable = (showing: Showing): Table =>
  redundancies(showing, (rows) => [...rows].sort((a, b) => b.rN - a.rN));

const redundancies = (
  showing: Showing,
  order: (rows: readonly MemberRedundancy[]) => readonly MemberRedundancy[],
): Table => {
  const { statics } = showing.assessment;
  const words = wordsOf(showing);
  return tableOf(
    {
      name: 'redundancy',
      title: 'Redundancy',
      note: 'Of a length error in the tube, this share turns into force and the rest into shape. Without it: 0 means the truss would move freely. Pinned: the first figure were every joint a pin; 0 means that without this tube only the stiffness of the welds keeps the shape.',
      empty: 'The truss moves freely as held, so redundancy is not worked.',
      idOf: (row) => row.id,
      columns: [
        { id: 'id', title: 'Id', text: (row) => row.id },
        { id: 'words', title: 'In words', text: (row) => words(row.id) },
        {
          id: 'rN',
          title: 'Into force',
          align: 'right',
          text: (row) => fixed(row.rN, 4),
          raw: (row) => row.rN,
        },
        {
          id: 'mu',
          title: 'Stability without it',
          align: 'right',
          text: (row) => (row.mu < 1e-8 ? 'moves freely' : fixed(row.mu, 4)),
          raw: (row) => row.mu,
        },
        {
          id: 'pinned',
          title: 'Into force, pinned',
          align: 'right',
          text: (row) => (row.pinnedRN === null ? 'not worked' : fixed(row.pinnedRN, 4)),
          raw: (row) => row.pinnedRN ?? '',
        },
      ],
    },
    statics.kind === 'stands' ? order(statics.redundancy) : [],
  );
};

/** How redundant the truss is as a whole. */
export const redundancyLines = ({ assessment: { statics } }: Showing): readonly string[] => {
  if (statics.kind !== 'stands') return [];
  const { indeterminacy, pinned } = statics;
  return [
    `Welded as it is, the truss is ${indeterminacy} times statically indeterminate.`,
    pinned
      ? `Were every joint a pin: ${countWords(pinned.selfStress, 'state')} of self-stress, ${countWords(pinned.mechanisms, 'free movement')}.`
      : 'Were every joint a pin: not decided for this truss.',
  ];
};

/** One line a load case: how well the sums close and what is largest. */
export const casesTable = (showing: Showing): Table => {
  const { statics } = showing.assessment;
  const largest = ({ members }: SolvedCase): MemberForce | undefined =>
    members.reduce<MemberForce | undefined>(
      (best, f) => (!best || f.stressPsi > best.stressPsi ? f : best),
      undefined,
    );
  const source = (id: string): string =>
    showing.job.model.loadCases.find((loadCase) => loadCase.id === id)?.source ?? 'no source given';
  return tableOf<SolvedCase>(
    {
      name: 'load-cases',
      title: 'Load cases',
      note: 'Of the truss as drawn, undamaged.',
      empty:
        statics.kind === 'movesFreely'
          ? 'The truss moves freely as held, so no load case is worked.'
          : 'The model has no load case.',
      columns: [
        {
          id: 'case',
          title: 'Case',
          text: (solved) => name(showing, solved.id),
          raw: (solved) => solved.id,
        },
        { id: 'setup', title: 'Held as', text: (solved) => setupWords(showing.job.model, solved.setup) },
        {
          id: 'member',
          title: 'Most stressed',
          text: (solved) => largest(solved)?.id ?? '',
        },
        {
          id: 'stress',
          title: 'Largest stress',
          unit: 'ksi',
          align: 'right',
          text: (solved) => fixed((largest(solved)?.stressPsi ?? 0) / 1000, 1),
          raw: (solved) => (largest(solved)?.stressPsi ?? 0) / 1000,
        },
        {
          id: 'residual',
          title: 'Left over in the sums',
          align: 'right',
          text: (solved) => solved.residual.toExponential(1),
          raw: (solved) => solved.residual.toExponential(3),
        },
        { id: 'source', title: 'Where the loads come from', text: (solved) => source(solved.id) },
      ],
    },
    statics.kind === 'stands' ? statics.cases : [],
  );
};
