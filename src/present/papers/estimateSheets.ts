import type { Standing } from '../../core/job/standing.ts';
import { nestingDrawing } from '../draw/nesting.ts';
import { heading } from '../record/heading.ts';
import type { Part, Section } from '../record/sections.ts';
import { fixed, showFigure, whole } from '../show.ts';
import {
  estimateLinesTable,
  hiddenTable,
  originsTable,
  ratesTable,
  totalsTable,
} from '../tables/estimate.ts';
import { exchangeTable } from '../tables/exchange.ts';
import { planStatesTable } from '../tables/planSteps.ts';
import type { Showing } from '../tables/showing.ts';
import {
  barsTable,
  ledgerTable,
  materialsTable,
  piecesTable,
  repairTakesTable,
  thresholdsTable,
} from '../tables/takeoff.ts';
import { excludedWords, hoursText, spreadLine, stockName, unopenedNote } from '../words/estimate.ts';
import { listWords } from '../words/names.ts';

const NEST_MM = 170;

/** Materials list: tube to buy and how it is cut, what each repair takes, to tick when it is in the shop. */
export const materialsSheets = (showing: Showing, side: string): readonly Part[] => {
  const { assessment, units } = showing;
  const { stock, repairs } = assessment.takeoff;
  const sum = (what: 'rosettes' | 'weldIn' | 'rodLb' | 'primerIn2'): string => {
    const known = repairs.flatMap((r) => r[what] ?? []);
    const missing = repairs.length - known.length;
    return known.length === 0
      ? 'not designed yet'
      : `${showFigure({ ...known[0]!, value: known.reduce((all, f) => all + f.value, 0) }, units)}${missing > 0 ? `; ${missing} of ${repairs.length} repairs not designed yet` : ''}`;
  };
  const nests = stock.flatMap((line): readonly Section[] => {
    const name = stockName(line, units);
    return [{ kind: 'drawing', title: `Cuts from ${name}`, drawing: nestingDrawing(line, units, NEST_MM) }];
  });
  return [
    {
      lie: 'upright',
      side,
      sections: [
        heading('Materials', 'For ordering. Sections are cut to the opening measured after spreading.'),
        {
          kind: 'table',
          table: materialsTable(showing),
          only: ['tube', 'material', 'lengths', 'stock', 'bought', 'waste', 'nesting', 'tooLong'],
        },
        {
          kind: 'facts',
          rows: [
            ['Rosettes', sum('rosettes')],
            ['Weld', sum('weldIn')],
            ['Rod', sum('rodLb')],
            ['Primer', sum('primerIn2')],
          ],
        },
        { kind: 'subheading', text: 'In the shop' },
        {
          kind: 'ticks',
          rows: stock.map((line) => ({
            text: `${line.bars.length} × ${stockName(line, units)}, each ${showFigure(line.stockIn, units)}`,
            blanks: ['papers seen', 'heat or lot no.', 'wall measured'],
          })),
        },
        { kind: 'subheading', text: 'How it is cut' },
        ...nests,
      ],
    },
    {
      lie: 'turned',
      side,
      sections: [
        heading('Tube to cut'),
        { kind: 'table', table: piecesTable(showing) },
        { kind: 'subheading', text: 'Cuts from stock lengths' },
        { kind: 'table', table: barsTable(showing) },
        heading('What each repair takes besides tube'),
        { kind: 'table', table: repairTakesTable(showing) },
      ],
    },
  ];
};

/** Estimate sheet: the range first, what nobody has looked at beside it, then every line. */
export const estimateSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const { estimate, coverage, takeoff } = showing.assessment;
  const { withHidden, money, nextHour } = estimate;
  const sum = [withHidden.bestH, withHidden.likelyH, withHidden.worstH].map((f) => whole(f.value));
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Estimate', under: showing.job.name },
        {
          kind: 'facts',
          rows: [
            ['Best · likely · worst', `${sum.join(' · ')} h`],
            ...(money
              ? [
                  [
                    'In money',
                    `${[money.best, money.likely, money.worst].map(whole).join(' · ')} ${money.currency}, at ${money.perHour} an hour (your rate)`,
                  ] as const,
                ]
              : []),
            ['Mean and spread', spreadLine(withHidden)],
            [
              'The next hour of looking',
              nextHour
                ? `at ${listWords(nextHour.members)}: spread from ${hoursText(nextHour.stdBeforeH)} to ${hoursText(nextHour.stdAfterH)} h, ${fixed(nextHour.finds, 1)} found on average`
                : 'not priced: no chance is given for tubes nobody has looked at',
            ],
            ['Left out', listWords(estimate.excluded.map((one) => excludedWords[one] ?? one))],
          ],
        },
        { kind: 'lines', lines: [unopenedNote], strong: true },
        { kind: 'subheading', text: 'Counts' },
        { kind: 'counts', coverage },
        { kind: 'subheading', text: 'What nobody has looked at' },
        { kind: 'table', table: hiddenTable(showing) },
        { kind: 'subheading', text: 'Sums' },
        { kind: 'table', table: totalsTable(showing) },
        { kind: 'subheading', text: 'By origin of the damage' },
        { kind: 'table', table: originsTable(showing) },
      ],
    },
    {
      lie: 'turned',
      side,
      sections: [
        heading('Lines'),
        { kind: 'table', table: estimateLinesTable(showing) },
        heading('Weight and moment'),
        { kind: 'table', table: ledgerTable(showing) },
        ...(takeoff.ledger.thresholds.length > 0
          ? [{ kind: 'table', table: thresholdsTable(showing) } as const]
          : []),
        heading('Rates'),
        { kind: 'table', table: ratesTable(showing) },
        heading('Repair or exchange the frame'),
        { kind: 'table', table: exchangeTable(showing, live.manual) },
        heading('States on the way'),
        { kind: 'table', table: planStatesTable(showing) },
      ],
    },
  ];
};
