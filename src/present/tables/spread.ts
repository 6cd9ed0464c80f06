import type { Figure } from '../../core/base/figure.ts';
import type { BaySwing, PlannedReading, Spread } from '../../core/trammel/result.ts';
import { fixed, lengthUnit, showBareLength, showFigure, showLength, showWork, type Units } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { verdictWords } from '../words/record.ts';
import { distanceLine } from './pairs.ts';
import { rawLength, type Showing } from './showing.ts';

/** The work in words: `stands 3/32 short: spread 3/32`. */
export const spreadWords = (row: Spread, units: Units): string => {
  const amount = showWork(Math.abs(row.amountIn.value), units);
  return `stands ${amount} ${row.stands}: ${row.action === 'spread' ? 'spread' : 'draw in'} ${amount}`;
};

/** What to spread and what to draw in, from the shape of the latest hold, what shows most first. */
export const spreadTable = ({ assessment, units }: Showing): Table =>
  tableOf<Spread>(
    {
      name: 'spread',
      title: 'Spread and draw',
      note: 'From the shape of the latest readings. One spread moves other distances: take them again before the next.',
      empty: 'The readings show nothing to spread or draw, or do not fix a shape.',
      idOf: (row) => row.target,
      columns: [
        { id: 'distance', title: 'Distance', text: (row) => row.target },
        { id: 'words', title: 'In words', text: distanceLine },
        {
          id: 'work',
          title: 'Work',
          text: (row) => spreadWords(row, units),
          raw: (row) => spreadWords(row, units),
        },
        {
          id: 'amount',
          title: 'Target less found',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) =>
            `${fixed(rawLength(row.amountIn.value, units)!, units === 'mm' ? 1 : 3)} ± ${fixed(rawLength(row.amountIn.std ?? 0, units)!, units === 'mm' ? 1 : 3)}`,
          raw: (row) => rawLength(row.amountIn.value, units),
        },
        { id: 'verdict', title: 'Answer', text: (row) => verdictWords[row.verdict] },
        {
          id: 'force',
          title: 'Force for it, elastic',
          align: 'right',
          text: (row) => (row.forceLbf ? showFigure(row.forceLbf, units) : ''),
          raw: (row) => row.forceLbf?.value ?? null,
          csv: [{ title: 'Force for it, elastic', unit: 'lbf', raw: (row) => row.forceLbf?.value ?? null }],
        },
        {
          id: 'changes',
          title: 'Also changes',
          text: (row) =>
            (row.changes ?? [])
              .map(
                ({ target, changeIn }) =>
                  `${target} ${changeIn < 0 ? 'shorter' : 'longer'} by ${showWork(Math.abs(changeIn), units)}`,
              )
              .join(', '),
        },
        { id: 'basis', title: 'Rests on', text: (row) => restsOn(row.amountIn) },
      ],
    },
    assessment.trammel.spread ?? [],
  );

type SwingKey = keyof NonNullable<BaySwing['figures']>;

const swing = (
  id: SwingKey,
  title: string,
  shownAs: BaySwing['shown'][number],
  units: Units,
): Column<BaySwing> => {
  const of = (row: BaySwing): Figure | undefined => row.figures?.[id];
  const isLength = id !== 'twistRad';
  return {
    id,
    title,
    unit: isLength ? lengthUnit(units) : 'deg',
    align: 'right',
    text: (row) => {
      const figure = of(row);
      if (!figure) return row.unknown.length > 0 ? 'not fixed' : '';
      const words = isLength
        ? `${showBareLength(figure.value, units === 'inFraction' ? 'inDecimal' : units)} ± ${fixed(rawLength(figure.std ?? 0, units)!, units === 'mm' ? 1 : 3)}`
        : `${fixed((figure.value * 180) / Math.PI, 2)} ± ${fixed(((figure.std ?? 0) * 180) / Math.PI, 2)}`;
      return row.shown.includes(shownAs) ? `${words}, shown` : words;
    },
    raw: (row) => {
      const figure = of(row);
      return figure === undefined
        ? null
        : isLength
          ? rawLength(figure.value, units)
          : (figure.value * 180) / Math.PI;
    },
  };
};

/** How each bay sits against the drawing: the aft ring against the forward one. */
export const swingTable = ({ assessment, units }: Showing): Table =>
  tableOf<BaySwing>(
    {
      name: 'bay-shape',
      title: 'Shape bay by bay',
      note: 'Aft ring against forward ring; ± one standard deviation. "Shown": larger than its uncertainty can explain.',
      empty: 'The readings do not fix the shape of any bay.',
      columns: [
        { id: 'bay', title: 'Bay', text: (row) => row.bay },
        swing('sagIn', 'Aft end low', 'sag', units),
        swing('sweepIn', 'Aft end to the right', 'sweep', units),
        swing('twistRad', 'Twist, right side up', 'twist', units),
        swing('narrowedIn', 'Narrower', 'narrowed', units),
        swing('shortenedIn', 'Shorter', 'shortened', units),
        { id: 'unknown', title: 'Not fixed by the readings', text: (row) => row.unknown.join(', ') },
      ],
    },
    assessment.trammel.swing ?? [],
  );

/** The shortest list of distances found that fixes the shape and lets a misreading show. */
export const planTable = ({ assessment, units }: Showing): Table =>
  tableOf<PlannedReading>(
    {
      name: 'measuring-plan',
      title: 'Distances to read',
      note: 'In walking order. Those that fix the shape, and spares that let a misreading show.',
      empty: 'No plan: the truss has no distances within reach.',
      idOf: (row) => row.target,
      columns: [
        { id: 'distance', title: 'Distance', text: (row) => row.target },
        { id: 'words', title: 'In words', text: distanceLine },
        {
          id: 'length',
          title: 'As drawn, true',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => (row.guessed ? 'not known' : showBareLength(row.lengthIn, units)),
          raw: (row) => (row.guessed ? null : rawLength(row.lengthIn, units)),
        },
        {
          id: 'purpose',
          title: 'For',
          text: (row) => (row.purpose === 'fixes' ? 'fixes the shape' : 'spare, shows a misreading'),
        },
        {
          id: 'leastSeen',
          title: 'Smallest misreading it shows',
          align: 'right',
          text: (row) => (row.leastSeenIn === null ? 'none' : showLength(row.leastSeenIn, units)),
          raw: (row) => rawLength(row.leastSeenIn, units),
          csv: [
            {
              title: 'Smallest misreading it shows',
              unit: lengthUnit(units),
              raw: (row) => rawLength(row.leastSeenIn, units),
            },
          ],
        },
        { id: 'read', title: 'Read', text: (row) => (row.read ? 'read' : '') },
      ],
    },
    assessment.trammel.plan?.readings ?? [],
  );
