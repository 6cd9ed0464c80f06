import type { Check, Push, Roundness, SetUp, StraightenRow } from '../../core/straighten/result.ts';
import { lengthUnit, showFigure, showLength, type Units, whole } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import {
  checkVerdictWords,
  checkWords,
  noFitWords,
  pushSaysWords,
  saysLine,
  shapeWords,
  stopWords,
  straightenCautions,
} from '../words/straighten.ts';
import { figureColumn } from './figureColumn.ts';
import { rawLength, type Showing, wordsOf } from './showing.ts';

type Of<T> = T & { readonly member: string };
const rowsOf = <T extends object>(
  showing: Showing,
  pick: (row: StraightenRow) => readonly T[],
): readonly Of<T>[] =>
  showing.assessment.straighten.members.flatMap((row) =>
    pick(row).map((one) => ({ ...one, member: row.member })),
  );

const member = { id: 'member', title: 'Member', text: (row: { readonly member: string }) => row.member };
const lengthColumn = <Row>(
  id: string,
  title: string,
  units: Units,
  of: (row: Row) => number | null,
): Column<Row> => ({
  id,
  title,
  unit: lengthUnit(units),
  align: 'right',
  text: (row) => {
    const value = of(row);
    return value === null ? '' : showLength(value, units, 64).replace(/ (in|mm)\b/, '');
  },
  raw: (row) => rawLength(of(row), units),
});

/** A clock position: `3 o'clock`. */
export const clockText = (clock: number | null | undefined): string =>
  clock === null || clock === undefined ? 'side not known' : `${Math.round(clock * 10) / 10} o’clock`;

const cautionsOf = (codes: readonly string[]): string =>
  codes.map((c) => straightenCautions[c] ?? c).join(' ');

/** One row a member: where its axis lies and what may be said of it. */
export const straighteningTable = (showing: Showing): Table => {
  const { units } = showing;
  const words = wordsOf(showing);
  return tableOf<StraightenRow>(
    {
      name: 'straightening',
      title: 'Straightening',
      note: 'General rules pair straightening with a split sleeve; straightening alone needs the maker’s or other recognised data. No published straightness limit exists.',
      empty: 'No member has a bow, kink or oval, or is to be straightened.',
      idOf: (row) => row.member,
      columns: [
        member,
        { id: 'words', title: 'In words', text: (row) => words(row.member) },
        figureColumn('bow', 'Greatest bend', 'in', units, (row) => row.fit?.bowIn),
        {
          id: 'shape',
          title: 'Axis',
          text: ({ fit, noFit }) =>
            fit
              ? `${shapeWords[fit.shape]} over ${showLength(fit.chordIn, units)}, crown at ${clockText(fit.clock)}; ${fit.allRound ? 'read all round' : 'not read all round'}`
              : noFitWords[noFit ?? 'no-readings'],
        },
        figureColumn('at', 'Push here first', 'in', units, (row) => row.fit?.atIn),
        figureColumn('yield', 'Yield strength taken', 'psi', units, (row) => row.yieldPsi, true),
        {
          id: 'pushes',
          title: 'Pushes',
          align: 'right',
          text: ({ pushes }) => String(pushes.length),
          raw: ({ pushes }) => pushes.length,
        },
        {
          id: 'reversals',
          title: 'Reversals',
          align: 'right',
          text: ({ reversals }) => String(reversals),
          raw: ({ reversals }) => reversals,
        },
        {
          id: 'stops',
          title: 'Stop',
          text: ({ stops }) => stops.map(({ why }) => stopWords[why]).join('; '),
        },
        { id: 'says', title: 'Says', text: (row) => saysLine(row, units) },
        { id: 'accepted', title: 'Accepted by', text: ({ accepted }) => accepted?.by ?? '' },
        { id: 'cautions', title: 'Caution', text: ({ cautions }) => cautionsOf(cautions) },
      ],
    },
    showing.assessment.straighten.members,
  );
};

/** Where ram and blocks stand, one row a set-up, in order of work; the next push of a member already begun last. */
export const setUpsTable = (showing: Showing): Table => {
  const { units } = showing;
  type Row = Of<SetUp & { readonly next: boolean }>;
  const rows = rowsOf(showing, ({ setups, next }) => [
    ...setups.map((s) => ({ ...s, next: false })),
    ...(next ? [{ ...next, next: true }] : []),
  ]);
  return tableOf<Row>(
    {
      name: 'straightening-set-ups',
      title: 'Set-ups for straightening',
      note: 'Start each push at the low end of the range, let go, read, and go on from what stayed. Places from the member’s first cluster.',
      empty: 'No set-up: no measured bow, or straightening is stopped.',
      idOf: (row) => row.member,
      columns: [
        member,
        {
          id: 'no',
          title: 'No.',
          align: 'right',
          text: (row) => (row.next ? 'next' : String(row.no)),
          raw: (row) => row.no,
        },
        lengthColumn('ram', 'Ram at', units, (row) => row.atIn),
        { id: 'side', title: 'Ram’s side', text: (row) => clockText(row.ramClock) },
        lengthColumn('near', 'Block at', units, (row) => row.blocksIn[0]),
        lengthColumn('far', 'Block at, far', units, (row) => row.blocksIn[1]),
        figureColumn('clamp', 'Clamp force', 'lbf', units, (row) => row.press.clampLbf, true),
        figureColumn('press', 'Press', 'in', units, (row) => row.press.pressIn, true),
        figureColumn('back', 'Springs back', 'in', units, (row) => row.press.springBackIn, true),
        figureColumn('set', 'Stays', 'in', units, (row) => row.press.setIn),
        figureColumn('most', 'Most it gives before a hinge', 'in', units, (row) => row.press.mostSetIn, true),
        figureColumn('off', 'Takes off the bow', 'in', units, (row) => row.takesOffIn),
        figureColumn('pad', 'Shortest flat pad', 'in', units, (row) => row.press.flatPadIn, true),
        { id: 'warnings', title: 'Caution', text: (row) => cautionsOf(row.press.warnings) },
      ],
    },
    rows,
  );
};

/** Every push logged, what stayed, and what it says of the tube. */
export const pushesTable = (showing: Showing): Table => {
  const { units } = showing;
  return tableOf<Of<Push>>(
    {
      name: 'straightening-pushes',
      title: 'Pushes',
      empty: 'No push is logged.',
      idOf: (row) => row.member,
      columns: [
        member,
        lengthColumn('at', 'At', units, (row) => row.atIn),
        lengthColumn('span', 'Blocks apart', units, (row) => row.spanIn),
        lengthColumn('pressed', 'Pressed', units, (row) => row.pressedIn),
        lengthColumn('left', 'Stayed', units, (row) => row.leftIn),
        {
          id: 'force',
          title: 'Force',
          unit: 'lbf',
          align: 'right',
          text: ({ forceLbf }) => (forceLbf === undefined ? '' : whole(forceLbf)),
          raw: ({ forceLbf }) => forceLbf ?? null,
        },
        { id: 'reversal', title: 'Reversal', text: ({ reversal }) => (reversal ? 'pushed back' : '') },
        { id: 'says', title: 'Says', text: ({ says }) => pushSaysWords[says] },
        figureColumn('yield', 'Yield strength by it', 'psi', units, (row) => row.yieldPsi, true),
        { id: 'record', title: 'Record', text: ({ record }) => record },
      ],
    },
    rowsOf(showing, (row) => row.pushes),
  );
};

/** What must hold before a member is called straight, each by itself. */
export const straightenChecksTable = (showing: Showing): Table =>
  tableOf<Of<Check>>(
    {
      name: 'straightening-checks',
      title: 'Checks after the last push',
      empty: 'No member is being straightened.',
      idOf: (row) => row.member,
      columns: [
        member,
        { id: 'of', title: 'Check', text: (row) => checkWords[row.of] },
        { id: 'verdict', title: 'Result', text: (row) => checkVerdictWords[row.verdict] },
        { id: 'record', title: 'Record', text: (row) => row.record ?? '' },
      ],
    },
    rowsOf(showing, (row) => row.checks),
  );

/** Diameters read, and how to close the blocks. */
export const roundnessTable = (showing: Showing): Table => {
  const { units } = showing;
  return tableOf<Of<Roundness>>(
    {
      name: 'roundness',
      title: 'Roundness',
      note: 'Close the formed blocks past round by the squeeze, because the wall springs back.',
      empty: 'No diameter is read at the bench.',
      idOf: (row) => row.member,
      columns: [
        member,
        lengthColumn('at', 'At', units, (row) => row.atIn),
        lengthColumn('largest', 'Largest', units, (row) => row.largestIn),
        lengthColumn('smallest', 'Smallest', units, (row) => row.smallestIn),
        figureColumn('ovality', 'Ovality', '%', units, (row) => row.ovality),
        {
          id: 'limit',
          title: 'Your limit',
          text: ({ limit }) => (limit ? showFigure(limit, units) : 'none loaded'),
        },
        { id: 'verdict', title: 'Verdict', text: ({ verdict }) => checkVerdictWords[verdict] },
        figureColumn('bore', 'Bore of the blocks', 'in', units, (row) => row.boreIn),
        figureColumn('squeeze', 'Squeeze past round', 'in', units, (row) => row.overSqueezeIn, true),
        { id: 'record', title: 'Record', text: ({ record }) => record },
      ],
    },
    rowsOf(showing, (row) => row.roundness),
  );
};
