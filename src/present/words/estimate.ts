import type {
  Band,
  EstimateLine,
  LineGroup,
  Origin,
  StockLine,
  ThreePoint,
  ThresholdHeld,
  Total,
} from '../../core/estimate/result.ts';
import type { StepKind } from '../../core/plan/kinds.ts';
import { fixed, showTube, type Units } from '../show.ts';
import { countWords } from './names.ts';
import { stepKindWords } from './planSteps.ts';

/** Words of take-off and estimate. */

const ownOperations: Readonly<Record<string, string>> = {
  trammel: 'Trammel, a few distances',
  trammelWhole: 'Trammel the whole truss',
  paper: 'Papers: record, drawings, entry',
  hidden: 'One more tube found damaged',
  look: 'Look at one tube',
};

/** An operation of the rate table: a step of the plan, or one of the few that are no step. */
export const operationWords = (operation: string): string =>
  ownOperations[operation] ??
  (Object.hasOwn(stepKindWords, operation) ? stepKindWords[operation as StepKind] : operation);

export const groupWords = {
  access: 'Access',
  inspection: 'Inspection',
  structure: 'Structure, by tube',
  jig: 'Jig and restraint',
  geometry: 'Geometry',
  protection: 'Protection',
  reassembly: 'Reassembly',
  paper: 'Paper',
  weighing: 'Weighing',
} as const satisfies Record<LineGroup, string>;

export const lineOriginWords = {
  thisAccident: 'this accident',
  older: 'older',
  unknown: 'origin not known',
  both: 'this accident and other',
  job: 'the job as a whole',
} as const satisfies Record<Origin, string>;

/** What a line is for: a tube, a bay, the whole job. */
export const lineWhere = ({ of, bay }: Pick<EstimateLine, 'of' | 'bay'>): string =>
  of ?? (bay === undefined ? 'whole job' : `bay ${bay}`);

export const lineBasisWords = {
  invented: 'invented, yours to change',
  rate: 'your rate',
} as const satisfies Record<EstimateLine['basis'], string>;

export const hoursText = (hours: number): string => fixed(hours, 1);
export const threeText = ({ best, likely, worst }: ThreePoint): string =>
  `${fixed(best, 2)} · ${fixed(likely, 2)} · ${fixed(worst, 2)}`;

export const bandWords = {
  first: 'First to look at',
  second: 'Next to look at',
  rest: 'The rest',
} as const satisfies Record<Band, string>;

export const excludedWords: Readonly<Record<string, string>> = {
  'not-planned-repairs': 'repairs that are not in the plan',
  'material-prices': 'prices of tube, rod, primer and gas',
  'fabric-and-finish': 'fabric and finish',
  'systems-and-rigging': 'systems, controls and rigging',
  'engine-and-propeller': 'engine and propeller',
  transport: 'transport',
  'outside-inspection-and-engineering': 'outside inspection, engineering and fees of the authority',
  'data-search': 'search for data',
};

export const thresholdWords = {
  inside: 'inside the stated limit; small changes add up, and a person entitled to decides',
  outside: 'outside the stated limit',
  cannotSay: 'cannot say',
} as const satisfies Record<ThresholdHeld['says'], string>;

export const thresholdNames: Readonly<Record<string, string>> = {
  'negligible-weight': 'Weight added, against the change called negligible',
  'negligible-shift': 'Shift of the centre of gravity, against the shift called negligible',
};

export const topicWords: Readonly<Record<string, string>> = {
  'empty-weight-lb': 'empty weight',
  'empty-cg': 'empty centre of gravity',
  chord: 'mean chord',
};

const stockParts: Readonly<Record<string, string>> = {
  section: 'section',
  sleeve: 'sleeve',
  member: 'whole tube',
  'split-sleeve': 'split sleeve',
  'larger-tube': 'larger tube',
  splitSleeve: 'split sleeve',
  largerTube: 'larger tube',
};
/** A part to be cut: "sleeve 2". */
export const stockPartWords = (part: string): string => {
  const [name = part, count] = part.split(' ');
  return [stockParts[name] ?? name, ...(count === undefined ? [] : [count])].join(' ');
};

/** Sleeves among the pieces to be cut, whole and split. */
export const sleeveCount = (stock: readonly StockLine[]): number =>
  stock
    .flatMap(({ pieces }) => pieces)
    .filter(({ part }) => /^(sleeve|splitSleeve|split-sleeve)\b/.test(part)).length;

/** How well the pieces of one tube lie on its lengths. */
export const nestingWords = ({ bars, atLeast, proved }: StockLine): string =>
  proved
    ? `${countWords(bars.length, 'length')}, proved the fewest`
    : `${countWords(bars.length, 'length')}, at least ${atLeast} needed: gap ${bars.length - atLeast}`;

export const stockName = ({ tube, material }: Pick<StockLine, 'tube' | 'material'>, units: Units): string =>
  `${showTube(tube, units)} ${material}`;

export const inventedNote =
  'Hours are invented by us to start from: yours to change. Best, likely and worst are for each line; sums are drawn with a fixed seed.';

/** What best, likely and worst of a sum mean, and what moves together in it. */
export const rangeNote = ({ draws }: Pick<Total, 'draws'>): string =>
  `One sum in ten lies under best, half under likely, one in ten over worst: ${draws} draws, fixed seed. A rate that is too low is too low on every tube, so all lines of one rate move together; different rates go their own ways.`;

/** Mean and spread of a sum, and how far the spread hangs on what goes wrong together. */
export const spreadLine = ({ meanH, stdH, stdApartH, stdTogetherH }: Total): string =>
  `Mean ${hoursText(meanH.value)} h, spread ${hoursText(stdH)} h; ${hoursText(stdApartH)} h if every line went its own way, ${hoursText(stdTogetherH)} h if all goes wrong together`;

export const unopenedNote =
  'Range of what was opened and decided by the latest record. What nobody has looked at stands in a line of its own.';
