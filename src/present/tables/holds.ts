import type { AskedReading, HoldPoint } from '../../core/trammel/result.ts';
import { lengthUnit, showBareLength, showDifference, showFigure } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { holdWords, verdictWords } from '../words/record.ts';
import { distanceLine } from './pairs.ts';
import { rawLength, type Showing } from './showing.ts';

interface Row {
  readonly point: HoldPoint;
  readonly ask: AskedReading;
}

const doneWords = ({ done }: HoldPoint): string =>
  done ? `done, ${done.by}${done.reason ? `: ${done.reason}` : ''}` : 'open';

/** What each hold asks to be read between baseline and as left, and of those two what is outside or cannot be told. */
export const holdsTable = ({ assessment, units }: Showing): Table =>
  tableOf<Row>(
    {
      name: 'hold-points',
      title: 'Hold points',
      note: 'Between baseline and as left only what can have moved; of those two, what is outside or cannot be told.',
      empty: 'No hold asks for a reading.',
      idOf: ({ ask }) => ask.target,
      columns: [
        { id: 'hold', title: 'Hold', text: ({ point }) => holdWords[point.hold] },
        { id: 'distance', title: 'Distance', text: ({ ask }) => ask.target },
        { id: 'words', title: 'In words', text: ({ ask }) => distanceLine(ask) },
        {
          id: 'aim',
          title: 'Hold at',
          unit: lengthUnit(units),
          align: 'right',
          text: ({ ask }) => showBareLength(ask.aimIn.value, units),
          raw: ({ ask }) => rawLength(ask.aimIn.value, units),
        },
        { id: 'basis', title: 'Rests on', text: ({ ask }) => restsOn(ask.aimIn) },
        {
          id: 'limit',
          title: 'Limit',
          text: ({ ask }) =>
            ask.toleranceIn ? `± ${showFigure(ask.toleranceIn, units)}` : 'no limit loaded',
          csv: [
            {
              title: 'Limit',
              unit: lengthUnit(units),
              raw: ({ ask }) => rawLength(ask.toleranceIn?.value, units),
            },
          ],
        },
        {
          id: 'difference',
          title: 'Difference',
          text: ({ ask }) =>
            ask.differenceIn ? showDifference(ask.differenceIn.value, units, false) : 'not read',
          csv: [
            {
              title: 'Difference',
              unit: lengthUnit(units),
              raw: ({ ask }) => rawLength(ask.differenceIn?.value, units),
            },
          ],
        },
        { id: 'verdict', title: 'Answer', text: ({ ask }) => (ask.verdict ? verdictWords[ask.verdict] : '') },
        { id: 'done', title: 'Hold', text: ({ point }) => doneWords(point) },
      ],
    },
    (assessment.trammel.holds ?? []).flatMap((point) =>
      point.asks
        .filter(
          (a) => point.covers === 'whatCanMove' || a.verdict === 'outside' || a.verdict === 'cannotTell',
        )
        .map((ask) => ({ point, ask })),
    ),
  );
