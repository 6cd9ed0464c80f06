import type { Reading, ReadingEnd, RecordOf } from '../../core/job/jobSchema.ts';
import { fixed, lengthUnit, showBareLength, showLength, showTime, type Units } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { countWords } from '../words/names.ts';
import { holdWords, instrumentWords, markWords } from '../words/record.ts';
import { stepWords } from '../words/steps.ts';
import { rawLength, type Showing } from './showing.ts';

/** Where a point of the trammel stood: "U3R, tube surface of U3R-U4R at 9 o'clock". */
const endWords = ({ cluster, mark, on, clock, alongIn }: ReadingEnd, units: Units): string =>
  [
    `${cluster}, ${markWords[mark]}${on === undefined ? '' : ` of ${on}`}`,
    clock === undefined ? '' : `at ${fixed(clock, clock % 1 === 0 ? 0 : 1)} o'clock`,
    alongIn === undefined ? '' : `${showLength(alongIn, units)} along`,
  ]
    .filter((words) => words !== '')
    .join(' ');

/** Every standing reading as it was entered: which marks, which instrument, and the words a person typed. */
export const enteredReadingsTable = ({ units }: Showing, readings: readonly Reading[]): Table =>
  tableOf<Reading>(
    {
      name: 'readings-as-entered',
      title: 'Readings as entered',
      empty: 'No reading is recorded.',
      idOf: (row) => row.id,
      columns: [
        { id: 'record', title: 'Record', text: (row) => row.id },
        { id: 'hold', title: 'When', text: (row) => holdWords[row.hold] },
        { id: 'from', title: 'From', text: (row) => endWords(row.ends[0], units) },
        { id: 'to', title: 'To', text: (row) => endWords(row.ends[1], units) },
        {
          id: 'length',
          title: 'Length',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => (row.lengthIn === undefined ? '' : showBareLength(row.lengthIn, units)),
          raw: (row) => rawLength(row.lengthIn, units),
        },
        {
          id: 'set',
          title: 'Set to',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => (row.setAndMiss ? showBareLength(row.setAndMiss.setIn, units) : ''),
          raw: (row) => rawLength(row.setAndMiss?.setIn, units),
        },
        {
          id: 'miss',
          title: 'Miss',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => (row.setAndMiss ? showBareLength(row.setAndMiss.missIn, units) : ''),
          raw: (row) => rawLength(row.setAndMiss?.missIn, units),
        },
        { id: 'instrument', title: 'Instrument', text: (row) => instrumentWords[row.instrument] },
        {
          id: 'std',
          title: 'Uncertainty ±',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) =>
            row.stdIn === undefined
              ? 'not given'
              : fixed(rawLength(row.stdIn, units)!, units === 'mm' ? 1 : 3),
          raw: (row) => rawLength(row.stdIn, units),
        },
        { id: 'typed', title: 'As typed', text: (row) => Object.values(row.typed ?? {}).join(', ') },
        { id: 'by', title: 'By', text: (row) => row.by },
        { id: 'at', title: 'Entered', text: (row) => showTime(row.at), raw: (row) => row.at },
      ],
    },
    readings,
  );

/** Which instruments took how many of the readings. */
export const instrumentsLine = (readings: readonly Reading[]): readonly string[] => {
  const counts = new Map<Reading['instrument'], number>();
  for (const { instrument } of readings) counts.set(instrument, (counts.get(instrument) ?? 0) + 1);
  const words = [...counts].map(
    ([instrument, n]) => `${instrumentWords[instrument]} (${countWords(n, 'reading')})`,
  );
  return words.length === 0
    ? []
    : [`Instruments: ${words.join(', ')}. Each reading as entered: readings-as-entered.csv.`];
};

type Progress = RecordOf<'progress'>;

/** What has been done, step by step, with the reason where something asked for was not as asked. */
export const workLogTable = ({ units }: Showing, progress: readonly Progress[]): Table => {
  const pushed = (id: 'beforeIn' | 'pushedIn' | 'leftIn', title: string): Column<Progress> => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right',
    text: ({ spread }) => (spread ? showBareLength(spread[id], units) : ''),
    raw: ({ spread }) => rawLength(spread?.[id], units),
  });
  return tableOf<Progress>(
    {
      name: 'work-log',
      title: 'Work log',
      empty: 'No step is marked yet.',
      columns: [
        { id: 'step', title: 'Step', text: ({ step }) => stepWords(step), raw: ({ step }) => step },
        { id: 'of', title: 'About', text: ({ of }) => of ?? '' },
        { id: 'done', title: 'Done', text: ({ done }) => (done ? 'done' : 'not done') },
        { id: 'reason', title: 'Although, because', text: ({ reason }) => reason ?? '' },
        pushed('beforeIn', 'Before the push'),
        pushed('pushedIn', 'While pushed'),
        pushed('leftIn', 'After letting go'),
        { id: 'secondPerson', title: 'Fit seen by', text: ({ fitUp }) => fitUp?.secondPerson ?? '' },
        { id: 'by', title: 'By', text: ({ by }) => by },
        { id: 'at', title: 'When', text: ({ at }) => showTime(at), raw: ({ at }) => at },
      ],
    },
    progress,
  );
};
