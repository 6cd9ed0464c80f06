import type { ReliefTarget } from '../../core/relief/result.ts';
import { type Table, tableOf } from '../table.ts';
import { listWords } from '../words/names.ts';
import { targetNoteWords } from '../words/relief.ts';
import { refusedLines, releaseLines, reliefOnPaper } from './relief.ts';
import type { Showing } from './showing.ts';

const shown = ['cuts', 'verdict', 'eta', 'opens', 'sag', 'tier', 'saw'] as const;

/** For each target what to let go without a saw, and the first cut of its list. */
export const firstCutsTable = (showing: Showing): Table => {
  const first = new Map(
    showing.assessment.relief.targets.map((target) => [target.member, reliefOnPaper(showing, target).table]),
  );
  const cell = (target: ReliefTarget, id: string): string => {
    const table = first.get(target.member)!;
    return table.rows[0]?.cells[table.columns.findIndex((head) => head.id === id)]?.text ?? 'none';
  };
  const heads = [...first.values()][0]?.columns ?? [];
  return tableOf<ReliefTarget>(
    {
      name: 'relief',
      title: 'Relief cuts',
      note: 'The first of each list. The others, with why each stands where it does: chapter "relief-cuts" of this report, relief.csv.',
      empty: 'No member with a finding or decision, so no cut is worked.',
      idOf: ({ member }) => member,
      columns: [
        { id: 'target', title: 'To relieve', text: ({ member }) => member },
        {
          id: 'first',
          title: 'First, without a saw',
          text: (target) =>
            [
              ...releaseLines(target),
              ...target.notes.map((note) => targetNoteWords[note]),
              ...refusedLines(target),
              ...(target.measureFirst.length > 0
                ? [`Measure ${listWords(target.measureFirst)} before any cut.`]
                : []),
            ].join(' '),
        },
        ...heads
          .filter(({ id }) => (shown as readonly string[]).includes(id))
          .map(({ id, title, unit }) => ({
            id,
            title,
            ...(unit === undefined ? {} : { unit }),
            text: (target: ReliefTarget) => cell(target, id),
          })),
      ],
    },
    showing.assessment.relief.targets,
  );
};
