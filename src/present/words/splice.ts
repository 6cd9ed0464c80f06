import type { Fact } from '../../core/base/issue.ts';
import type {
  Design,
  Failing,
  FitUp,
  Insertion,
  Method,
  Part,
  Rosette,
  RuleHeld,
} from '../../core/splice/result.ts';
import { spliceRule } from '../../core/splice/rules.ts';
import { fixed, showFigure, showLength, type Units } from '../show.ts';
import { clusterWords } from './names.ts';

export const methodNames = {
  innerSleeve: 'Inner sleeve',
  outerSleeve: 'Outer sleeve',
  largerTube: 'Larger tube',
  splitSleeve: 'Split sleeve',
  patch: 'Patch',
  fullMember: 'Whole member',
} as const satisfies Record<Method, string>;

export const methodLines = {
  innerSleeve: 'damaged part cut out, new section, a sleeve inside each joint',
  outerSleeve: 'damaged part cut out square, new section, a sleeve over each joint',
  largerTube: 'damaged part cut out square, a larger tube over both stubs',
  splitSleeve: 'straightened, then a sleeve in halves over the damage',
  patch: 'a plate over a small dent or hole',
  fullMember: 'cluster to cluster, both ends coped',
} as const satisfies Record<Method, string>;

export const fitsWords = {
  fits: 'fits here',
  doesNotFit: 'does not fit here',
  cannotSay: 'cannot say',
} as const satisfies Record<Design['fits'], string>;

export const fitsSigns = {
  fits: '●',
  doesNotFit: '×',
  cannotSay: '?',
} as const satisfies Record<Design['fits'], string>;

const parts: Readonly<Record<string, string>> = {
  section: 'New section',
  'sleeve-from': 'Sleeve at',
  'sleeve-to': 'Sleeve at',
  'larger-tube': 'Larger tube',
  'split-sleeve': 'Split sleeve, both halves',
  patch: 'Patch plate',
  member: 'New member',
};

/** A part by its id, with the cluster that its joint is nearer to: "Sleeve at upper right 4". */
export const partWords = (part: string, ends: readonly [string, string]): string => {
  const words = Object.hasOwn(parts, part) ? parts[part]! : part;
  const at = part === 'sleeve-from' ? ends[0] : part === 'sleeve-to' ? ends[1] : undefined;
  return at === undefined ? words : `${words} ${endWords(at)}`;
};

/** A cluster in running text; the two ends of a tube on the bench have no cluster. */
export const endWords = (cluster: string): string =>
  cluster === 'A' || cluster === 'B'
    ? `end ${cluster}`
    : clusterWords(cluster) === cluster
      ? cluster
      : clusterWords(cluster).toLowerCase();

export const partKinds = {
  section: 'section',
  sleeve: 'sleeve',
  splitSleeve: 'split sleeve',
  largerTube: 'larger tube',
  patch: 'patch',
  member: 'member',
} as const satisfies Record<Part['kind'], string>;

/** The rows of the fit-up card. */
export const fitUpWords = {
  proof: 'Proof of material: mill paper, tag photo or measured wall',
  slideOn: 'On, or in, the tube before the last joint closes',
  bore: 'Bore of stubs and section clear: no weld drop-through, old sleeve or rust',
  opening: 'Opening measured after spreading, on the longest line',
  cutLength: 'Section cut to the opening less the gaps, long point to long point',
  gap: 'Gap for the weld at each joint',
  marks: 'Centre mark and ring mark scribed',
  clearance: 'Slack tried: it slides without force',
  stopDrill: 'Crack ends stop-drilled',
  halves: 'Both halves closed on the tube, seams a half turn apart',
  secondPerson: 'Looked over by a second person, not the one who did the work',
} as const satisfies Record<FitUp['step'], string>;

export const inWords = {
  fromStub: 'old tube at',
  section: 'new section',
  toStub: 'old tube at',
} as const satisfies Record<Rosette['in'], string>;

/** Where a sleeve waits: "into the old tube at upper right 4". */
export const insertionWords = ({ into }: Pick<Insertion, 'into'>, ends: readonly [string, string]): string =>
  into === null
    ? 'goes nowhere'
    : into === 'section'
      ? 'back into the new section'
      : `back on the old tube at ${endWords(into === 'fromStub' ? ends[0] : ends[1])}`;

/** What is said of a sleeve size. */
export const sleeveSays: Readonly<Record<string, string>> = {
  'inside-mill-tolerance': 'slack inside mill tolerance: try-fit',
  'over-slack-limit': 'more slack than the rule’s 1/16 in',
  'wall-below-original': 'wall below that of the old tube',
  'does-not-enter': 'does not go in, or over',
  'less-area': 'less steel than the old tube',
  'shorter-than-rule': 'shorter than the general rule asks',
};

/** What a design is cautioned for. */
export const spliceCautions: Readonly<Record<string, string>> = {
  'try-fit': 'Slack lies inside mill tolerance: try it; it slides, binds or refuses.',
  'less-area': 'The sleeve has less steel than the tube it joins.',
  'table-over-rule': 'Your table’s sleeve has more slack than the general rule’s 1/16 in: both are shown.',
  'table-shorter-than-rule': 'Your table’s sleeve is shorter than the general rule asks: both are shown.',
  'near-weld': 'An end comes within 1/4 in of a cluster’s weld: little room for a bead.',
  'spring-in-between-clusters': 'A coped tube must be sprung in between its clusters: try it before tacking.',
};

/** Where a number fails: a cluster, a part, the stock list. */
const failsAt = (at: string, ends: readonly [string, string]): string =>
  at === 'stock'
    ? 'stock list'
    : at === 'dent'
      ? 'dent'
      : at === 'sleeve'
        ? 'sleeve'
        : Object.hasOwn(parts, at)
          ? partWords(at, ends).toLowerCase()
          : endWords(at);

/** "Inner sleeve past the nearest end … at upper right 4: needs 1.500 in, there is 1.210 in". */
export const failingLine = (
  { rule, at, needIn, haveIn }: Failing,
  ends: readonly [string, string],
  units: Units,
): string =>
  `${capital(spliceRule(rule).says)} · ${failsAt(at, ends)}: ${
    mostRules.has(rule) ? 'at most' : 'needs'
  } ${showFigure(needIn, units)}, ${haveIn.value < 0 && !mostRules.has(rule) ? 'there is none: the damage reaches past it' : `there is ${showFigure(haveIn, units)}`}`;

/** Rules whose number is a most, not a least. */
const mostRules: ReadonlySet<string> = new Set([
  'sleeve-slack',
  'patch-dent-depth',
  'patch-dent-around',
  'patch-dent-length',
]);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A rule held against the numbers, in one line. */
export const heldLine = (
  { rule, held, facts }: RuleHeld,
  ends: readonly [string, string],
  units: Units,
): string => {
  const say = (name: string, fact: Fact): string => {
    if (fact === null) return '';
    const length = (): string => showLength(Number(fact), units, 64);
    switch (name) {
      case 'at':
        return failsAt(String(fact), ends);
      case 'needIn':
        return `needs ${length()}`;
      case 'haveIn':
        return `there is ${length()}`;
      case 'mostIn':
        return `at most ${length()}`;
      case 'gapIn':
      case 'holeIn':
      case 'overlapIn':
      case 'plateIn':
      case 'wallIn':
        return `${name === 'wallIn' ? 'old wall ' : name === 'plateIn' ? 'plate ' : ''}${length()}`;
      case 'alongIn':
        return `${length()} along the tube`;
      case 'squareIn':
        return `${length()} along the tube if taken square to the cut`;
      case 'parallelIn':
        return `${length()} on the axis`;
      case 'angleDeg':
        return `${fixed(Number(fact), 0)}°`;
      case 'longClock':
        return `long point at ${fixed(Number(fact), 1).replace(/\.0$/, '')} o’clock`;
      case 'got':
        return `got ${String(fact)}`;
      case 'want':
        return `old tube ${String(fact)}`;
      case 'outranked':
        return fact === true ? 'your table outranks it' : '';
      default:
        return '';
    }
  };
  const met = Object.entries(facts)
    .map(([name, fact]) => say(name, fact))
    .filter((words) => words !== '')
    .join(', ');
  const mark = held === null ? 'see to it' : held ? 'met' : 'not met';
  return `${capital(spliceRule(rule).says)}${met === '' ? '' : ` (${met})`}: ${mark}`;
};
