import type { Standing } from '../../core/job/standing.ts';
import type { Part } from '../record/sections.ts';
import { showTime } from '../show.ts';
import { notPlannedTable } from '../tables/planSteps.ts';
import type { Showing } from '../tables/showing.ts';
import { setupWords } from '../words/held.ts';
import { countWords, listWords } from '../words/names.ts';
import { stepNamed } from '../words/planSteps.ts';

const none = (ids: readonly string[], empty = 'none'): string => (ids.length === 0 ? empty : listWords(ids));

/** What is under covers, by bay, and what has no access recorded. */
const coveredLines = ({ zones }: Showing['assessment']['coverage']): readonly string[] => {
  const bays = (access: string | undefined): readonly string[] => [
    ...new Set(zones.filter((z) => z.access === access).map(({ id }) => id.split(' ')[0]!)),
  ];
  const [covered, silent] = [bays('covered'), bays(undefined)];
  return [
    ...(covered.length > 0
      ? [`Covered, so nothing can be said of what is under it: bay ${listWords(covered)}.`]
      : []),
    ...(silent.length > 0 ? [`Access not recorded: bay ${listWords(silent)}.`] : []),
    'The inside of every tube, unless somebody has looked with a borescope.',
  ];
};

/** Start card: what must be known before the first step. */
export const startSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const { assessment, job } = showing;
  const { coverage, plan, statics } = assessment;
  const model = live.model ?? job.model;
  const released = live.progress.findLast((p) => p.step === 'makeSafe' && p.done);
  const data = live.manual.filter(({ topic }) => !/^(plan-|strike:|hidden:|exchange:|weld-)/.test(topic));
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Start card', under: job.name },
        {
          kind: 'facts',
          rows: [
            ['Aircraft, as entered', job.aircraft ?? 'not entered'],
            [
              'Released for work',
              released
                ? `ticked by ${released.by}, ${showTime(released.at)}`
                : 'NOT ENTERED: do not touch the wreck',
            ],
            ['As told', live.mishap?.story ?? 'not entered'],
            ['Model and its source', `${model.name}. ${model.source}`],
            [
              "Maker's data in hand",
              none([...new Set(data.map(({ topic, source }) => `${topic} (${source})`))], 'none entered'),
            ],
            ['Held and levelled', setupWords(model, statics.heldAs)],
            [
              'Not looked at',
              `${countWords(coverage.notLookedAt.members.length, 'member')}, ${countWords(coverage.notLookedAt.clusters.length, 'cluster')}`,
            ],
            [
              'Undecided',
              `${countWords(coverage.members.undecided, 'member')}, ${countWords(coverage.clusters.undecided, 'cluster')}`,
            ],
            [
              'Look again',
              `${countWords(coverage.members.lookAgain, 'member')}, ${countWords(coverage.clusters.lookAgain, 'cluster')}`,
            ],
          ],
        },
        { kind: 'subheading', text: 'Not in the plan' },
        { kind: 'table', table: notPlannedTable(showing) },
        { kind: 'subheading', text: 'What is unknown' },
        { kind: 'lines', lines: coveredLines(coverage) },
        {
          kind: 'ticks',
          rows: plan.steps.slice(0, 4).map((step, k) => ({
            text: `${k + 1}. ${stepNamed(plan)(step.id)}`,
            blanks: [],
            ...(step.done ? { done: `${step.done.by}, ${showTime(step.done.at)}` } : {}),
          })),
        },
        {
          kind: 'blanks',
          names: [
            'Wreck released by, and when',
            'Data in hand: document and revision',
            'Held on, levelled by',
            'Started by, date',
          ],
        },
      ],
    },
  ];
};
