import { refusedLines, releaseLines, reliefOnPaper, supportLines } from '../tables/relief.ts';
import { firstCutsTable } from '../tables/reliefFirst.ts';
import type { Showing } from '../tables/showing.ts';
import { cautionsFor } from '../words/cautions.ts';
import { countWords, listWords } from '../words/names.ts';
import { targetNoteWords } from '../words/relief.ts';
import { heading } from './heading.ts';
import type { Section } from './sections.ts';

const cutColumns = [
  'order',
  'cuts',
  'verdict',
  'source',
  'eta',
  'opens',
  'sag',
  'tier',
  'why',
  'saw',
  'moves',
];

const reliefHead = ({ assessment: { relief } }: Showing, text: string): readonly Section[] => [
  heading(text),
  { kind: 'cautions', cautions: cautionsFor('cutting') },
  ...(relief.kind === 'notRanked'
    ? [{ kind: 'lines', lines: ['Not ranked: say how the truss is held.'], strong: true } as const]
    : []),
  ...(relief.kind === 'movesFreely'
    ? [
        {
          kind: 'lines',
          lines: ['The truss moves freely as held, so no cut is worked.'],
          strong: true,
        } as const,
      ]
    : []),
];

/** The first cut of each target and what to let go before it, in one table. */
export const firstCutSections = (showing: Showing): readonly Section[] => {
  const { targets } = showing.assessment.relief;
  return [
    ...reliefHead(showing, 'Relief cuts'),
    ...(targets.length === 0
      ? ([{ kind: 'lines', lines: ['No member has a finding or a decision, so no cut is worked.'] }] as const)
      : ([
          { kind: 'lines', lines: supportLines(targets) },
          { kind: 'table', table: firstCutsTable(showing) },
        ] as const)),
  ];
};

/** Relief cuts in full: cautions first, then what needs no saw, then for each target the cuts that say something. */
export const reliefSections = (showing: Showing): readonly Section[] => {
  const { relief } = showing.assessment;
  const head = reliefHead(showing, 'Relief cuts in full');
  if (relief.targets.length === 0)
    return [
      ...head,
      { kind: 'lines', lines: ['No member has a finding or a decision, so no cut is worked.'] },
    ];
  return [
    ...head,
    { kind: 'lines', lines: supportLines(relief.targets) },
    ...relief.targets.flatMap((target): readonly Section[] => {
      const first = releaseLines(target);
      const measure = target.measureFirst;
      return [
        { kind: 'subheading', text: `To relieve ${target.member}` },
        {
          kind: 'lines',
          lines: [
            ...(first.length > 0 ? [`First, without a saw: ${first.join(' ')}`] : []),
            ...target.notes.map((note) => targetNoteWords[note]),
            ...refusedLines(target),
            ...(measure.length > 0
              ? [`Damage with no size given nearby: measure ${listWords(measure)} before any cut.`]
              : []),
          ],
        },
        { kind: 'table', ...reliefOnPaper(showing, target), only: cutColumns },
        ...(target.soundNotListed > 0
          ? ([
              {
                kind: 'lines',
                lines: [
                  `${countWords(target.soundNotListed, 'sound tube')} further off or of less help are not listed.`,
                ],
              },
            ] as const)
          : []),
      ];
    }),
  ];
};
