import type { Standing } from '../../core/job/standing.ts';
import { heading } from '../record/heading.ts';
import type { Part } from '../record/sections.ts';
import { showTime } from '../show.ts';
import { frozenTable, gatesTable } from '../tables/planSteps.ts';
import type { Showing } from '../tables/showing.ts';
import { setupWords } from '../words/held.ts';
import { listWords } from '../words/names.ts';
import { gateLine, gatesTogether } from '../words/planGates.ts';
import { stepNamed } from '../words/planSteps.ts';

const none = (ids: readonly string[], empty = 'none'): string => (ids.length === 0 ? empty : listWords(ids));

/** Hand-over page: what the next shift must know, on one page. */
export const handOverSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const { plan } = showing.assessment;
  const { handOver } = plan;
  const named = stepNamed(plan);
  const model = live.model ?? showing.job.model;
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Hand-over', under: showing.job.name },
        {
          kind: 'facts',
          rows: [
            ['Cut and not closed', none(handOver.cutNotClosed, 'nothing')],
            ['Tacked and not welded', none(handOver.tackedNotWelded, 'nothing')],
            ['Sleeves or parts loose on tubes', none(handOver.loose, 'none')],
            [
              'In place',
              handOver.inPlace.length === 0
                ? 'no brace, no spreader'
                : handOver.inPlace.map(named).join('; '),
            ],
            ['Held', setupWords(model, handOver.heldAs)],
            ['Next', handOver.next.slice(0, 6).map(named).join('; ') || 'nothing'],
            ['Last readings', none(handOver.lastReadings.slice(0, 8))],
            ['Who knows', none(handOver.who, 'nobody has ticked a step')],
            [
              'Open hold points',
              handOver.openGates.length === 0 ? 'none' : gatesTogether(handOver.openGates).join('\n'),
            ],
          ],
        },
        ...(plan.gates.some((g) => g.state === 'openedByName')
          ? ([
              { kind: 'subheading', text: 'Opened by name' },
              {
                kind: 'lines',
                lines: plan.gates.flatMap((g) =>
                  g.opened
                    ? [`${gateLine(g)}: ${g.opened.by}, ${showTime(g.opened.at)}: ${g.opened.reason}`]
                    : [],
                ),
              },
            ] as const)
          : []),
        { kind: 'blanks', names: ['Handed over by, time', 'Taken over by, time', 'Said besides'] },
      ],
    },
    {
      lie: 'turned',
      side,
      sections: [
        heading('Hold points of the work'),
        { kind: 'table', table: gatesTable(showing), only: ['gate', 'state', 'second', 'by', 'reason'] },
        heading('Changes since the plan was frozen'),
        { kind: 'table', table: frozenTable(showing) },
      ],
    },
  ];
};
