import type { Fact } from '../../core/base/issue.ts';
import type { Answer, LimitCheck, Missing, Reason, Scope } from '../../core/disposition/result.ts';
import { type RuleRow, ruleOf } from '../../core/disposition/rules.ts';
import type { Choice, Damage } from '../../core/job/jobSchema.ts';
import { fixed, showLength, type Units } from '../show.ts';
import { choiceWords, damageTags } from '../tags.ts';
import { spelled } from './issues.ts';
import { clusterWords, listWords } from './names.ts';
import { endWords, methodNames } from './splice.ts';

/** What the rules answer to one way of repair. */
export const answerWords = {
  applies: 'applies',
  doesNotApply: 'does not apply',
  cannotSay: 'cannot say',
} as const satisfies Record<Answer, string>;

/** A sign beside the word, so that an answer is not told by colour. */
export const answerSigns = {
  applies: '●',
  doesNotApply: '×',
  cannotSay: '?',
} as const satisfies Record<Answer, string>;

export const scopeWords = {
  heatTreated: 'heat-treated tube',
  brazed: 'brazed or soldered',
  coldWorked: 'strength from cold working',
  engineMountRing: 'engine-mount ring',
  axle: 'axle or oleo part',
  streamline: 'streamline tube, its own figures not loaded',
  unknownMaterial: 'material not known',
  otherScope: 'put outside the general rules by you',
} as const satisfies Record<Scope, string>;

/** The way out where the weld choices are closed. */
export const scopeWayOut =
  'Get the maker’s data, or data of a design source that your authority recognises, and enter it.';

const missing = {
  depthIn: 'depth',
  alongIn: 'length along the tube',
  aroundIn: 'width round the tube',
  widthIn: 'width',
  widthBy: 'how the width was taken: across, or round the tube',
  largestIn: 'largest diameter',
  smallestIn: 'smallest diameter',
  crackIn: 'length of the crack',
  gapIn: 'gap of the break',
  place: 'place along the tube',
  crackInspection: 'a close look for cracks, finish off: magnifier, penetrant or magnetic particle',
  finding: 'a finding',
  material: 'proof of the material',
  'manual:straighten-only': 'maker’s or other recognised data for straightening alone',
  'manual:round-out-only': 'maker’s or other recognised data for rounding out alone',
  damage: 'place of the damage',
  stock: 'a tube size that goes',
  'patch-overlap': 'overlap of the patch: it stands only in figure 4-36',
  'patch-gauge': 'a wall one gauge thicker: this is the thickest of the series',
} as const;
const atEnd = {
  'ends-not-known': 'what the tube meets at',
  'runs-through': 'where to part it: the tube runs through at',
  'cope-misses': 'a cope: the tube stands wider than what it meets at',
  'place-guessed': 'lengths, which stay closed until it is measured: so far guessed is the place of',
} as const;

/** What is still missing to decide: "depth", "close look for cracks …", by the name core gives it. */
export const missingWords = ({ name }: Pick<Missing, 'name'>): string => {
  if (Object.hasOwn(missing, name)) return missing[name as keyof typeof missing];
  const [head, tail] = [name.replace(/:.*$/, ''), name.replace(/^[^:]*:?/, '')];
  return Object.hasOwn(atEnd, head)
    ? `${atEnd[head as keyof typeof atEnd]} ${endWords(tail)}`
    : spelled(name).toLowerCase();
};

/** The same without its explanation, for a list: "close look for cracks". */
export const missingShort = (one: Pick<Missing, 'name'>): string =>
  missingWords(one)
    .replace(/[,:].*$/, '')
    .replace(/^an? /, '');

/** Where a missing thing is entered: on the finding, as the user's own data, by looking, or in the model. */
export const missingWay = ({ name }: Pick<Missing, 'name'>): 'finding' | 'manual' | 'look' | 'model' =>
  name === 'crackInspection'
    ? 'look'
    : name.startsWith('manual:') || name.startsWith('patch-') || name === 'stock'
      ? 'manual'
      : /^(ends-not-known|runs-through|cope-misses|place-guessed|material)/.test(name)
        ? 'model'
        : 'finding';

export const limitOfWords = {
  bow: 'bow',
  ovality: 'ovality',
  wallLoss: 'loss of wall',
  dentDepth: 'depth of dent',
} as const satisfies Record<LimitCheck['of'], string>;

export const limitVerdictWords = {
  inside: 'inside your limit',
  outside: 'outside your limit',
  cannotTell: 'cannot tell: too near your limit for the uncertainty',
  noLimit: 'measured; no limit loaded',
  notMeasured: 'not measured',
} as const satisfies Record<LimitCheck['verdict'], string>;

/** First letter large. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Document and paragraph of a rule; "common practice, no source" where there is none. */
export const sourceOf = ({ source, place }: Pick<RuleRow, 'source' | 'place'>): string =>
  place === '' ? source : `${source}, ${place}`;

const list = (fact: Fact): readonly (string | number)[] =>
  Array.isArray(fact)
    ? (fact as readonly (string | number)[])
    : fact === null
      ? []
      : [fact as string | number];
const percent = (share: Fact): string => `${fixed(100 * Number(share), 0)} %`;
const damageWord = (kind: Fact): string =>
  Object.hasOwn(damageTags, String(kind)) ? damageTags[kind as Damage].word.toLowerCase() : String(kind);

/** The numbers a rule met, in words; ids of findings are left to the screen. */
export const factsLine = (facts: Reason['facts'], units: Units): string => {
  const say = (name: string, fact: Fact): string => {
    const length = (): string => showLength(Number(fact), units, 64);
    if (name.startsWith('clearIn')) {
      const at = name.split(' ')[1];
      return at ? `${length()} clear at ${clusterWords(at).toLowerCase()}` : `${length()} clear`;
    }
    if (fact === null) return '';
    switch (name) {
      case 'share':
        return `measured ${percent(fact)}`;
      case 'low':
        return `or ${percent(fact)}, by how it was taken`;
      case 'limit':
        return `limit ${percent(fact)}`;
      case 'needIn':
        return `needs ${length()}`;
      case 'needOtherSideIn':
        return `${length()} on the other side`;
      case 'haveIn':
        return `there is ${length()}`;
      case 'mostIn':
        return `at most ${length()}`;
      case 'thicknessIn':
        return `plate ${length()} thick`;
      case 'fingersIn':
        return `fingers ${listWords(list(fact).map((f) => showLength(Number(f), units, 64)))}`;
      case 'tubes':
        return `over ${listWords(list(fact).map(String))}`;
      case 'method':
        return Object.hasOwn(methodNames, String(fact))
          ? methodNames[fact as keyof typeof methodNames].toLowerCase()
          : String(fact);
      case 'fits':
        return list(fact).length === 0
          ? ''
          : `room for ${listWords(list(fact).map((f) => methodNames[f as keyof typeof methodNames].toLowerCase()))}`;
      case 'leaves':
        return `it would leave the ${damageWord(fact)}`;
      case 'damage':
        return damageWord(fact);
      case 'found':
        return list(fact).length === 0 ? '' : `recorded: ${listWords(list(fact).map(damageWord))}`;
      case 'corner':
        return 'sharp corner';
      case 'cluster':
        return `at ${clusterWords(String(fact)).toLowerCase()}`;
      case 'source':
        return String(fact);
      case 'words':
        return String(fact);
      case 'record':
        return `record ${String(fact)}`;
      case 'kind':
        return 'this is a cluster';
      default:
        return '';
    }
  };
  return Object.entries(facts)
    .map(([name, fact]) => say(name, fact))
    .filter((words) => words !== '')
    .join('; ');
};

/** One reason in a sentence: what the rule says, and the numbers it met. */
export const reasonSentence = ({ rule, facts }: Reason, units: Units): string => {
  const met = factsLine(facts, units);
  return `${sentence(ruleOf(rule).says)}${met === '' ? '' : ` (${met})`}.`;
};

/** Where a rule stands. The user's own word is named by its record. */
export const reasonSource = ({ rule, facts }: Reason): string =>
  rule === 'manual' ? `your data: ${String(facts.source ?? facts.record ?? '')}` : sourceOf(ruleOf(rule));

/** A condition that the rule pairs with a repair. */
export const conditionWords = (rule: string): string => `${sentence(ruleOf(rule).says)}.`;

/** What the standing decision is against the rules. */
export const againstWords = (choice: Choice, answer: Answer): string =>
  answer === 'applies'
    ? `${choiceWords[choice]}: the rules loaded allow it.`
    : answer === 'doesNotApply'
      ? `${choiceWords[choice]}: decided against the rules loaded.`
      : `${choiceWords[choice]}: decided while the rules cannot say.`;
