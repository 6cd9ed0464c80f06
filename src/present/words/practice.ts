import type { Finding, Look } from '../../core/job/jobSchema.ts';
import type { Step } from '../../core/plan/result.ts';
import { orderRules } from '../../core/plan/rules.ts';
import type { AreaId, ExerciseKind } from '../../core/practice/areas.ts';
import { areas, areasOf } from '../../core/practice/areas.ts';
import type { Level } from '../../core/practice/exercise.ts';
import type { RoundSkill, Waste } from '../../core/practice/hiddenDamage.ts';
import type { Seen } from '../../core/practice/look.ts';
import type { ChoiceMark } from '../../core/practice/mark.ts';
import type { Broken, Consequence } from '../../core/practice/planDrill.ts';
import type { Question, QuestionKind, WhyRight } from '../../core/practice/questions.ts';
import { methodRules } from '../../core/practice/rules.ts';
import type { TrammelSkill } from '../../core/practice/trammelDrill.ts';
import type { Cluster, Member, Truss } from '../../core/truss/result.ts';
import { fixed, showAxial, showLength, showRange, type Units } from '../show.ts';
import { damageTags } from '../tags.ts';
import { findingSize } from './findings.ts';
import { clusterWords, listWords, memberWords, zoneWords } from './names.ts';
import { stepLine } from './planSteps.ts';

/** Words of the practice panel: questions, what a look shows, marks and reasons. */

export const exerciseWords = {
  layout: 'Layout drill',
  hidden: 'Hidden damage',
  trammel: 'Trammel practice',
  plan: 'Plan practice',
  coupon: 'Bench coupon card',
} as const satisfies Record<ExerciseKind, string>;

export const exerciseAbout = {
  layout: 'Name tubes, find clusters and bays, read which diagonal is pulled, lay out a bay.',
  hidden:
    'A crash is worked into the truss. Walk round, choose where and how to look, write down what you find.',
  trammel:
    'The damage is told, the clusters have moved. Choose pairs, read the gap, decide how far to spread.',
  plan: 'Put the steps of a repair in order: this job’s own plan, or that of a broken truss. A wrong order shows what the truss would do.',
  coupon: 'A card for scrap tube: straighten, round, splice over an inner sleeve, saw open and mark.',
} as const satisfies Record<ExerciseKind, string>;

export const levelWords = {
  1: '1 · two or three tubes, most of it in sight',
  2: '2 · three or four tubes, cracks under the finish',
  3: '3 · four to six tubes, cracks under the finish, old rust',
} as const satisfies Record<Level, string>;

export const questionWords = {
  nameTube: 'Name this tube',
  findCluster: 'Find this cluster',
  whichBay: 'Which bay',
  tensionDiagonal: 'Which diagonal is in tension',
  missingDiagonal: 'Draw the missing diagonal',
  layOutBay: 'Lay out a bay',
} as const satisfies Record<QuestionKind, string>;

export const roundSkillWords = {
  found: 'Found what was there',
  calls: 'Called what was there, by its kind',
  looks: 'Looks where the load led',
  order: 'Looked before the finish came off',
  sizes: 'Sizes within the reading',
} as const satisfies Record<RoundSkill, string>;

export const trammelSkillWords = {
  readings: 'Readings against the plan',
  baseline: 'Baseline before the first push',
  spreads: 'Pushes that helped and were read again',
  final: 'Pairs ended within 1/16 in',
} as const satisfies Record<TrammelSkill, string>;

export const wasteWords = {
  again: 'the same look a second time',
  finishOn: 'needs bare metal, and the finish was on',
  offPath: 'nothing there, and no load path led to it',
  spent: 'beyond the looks allowed',
} as const satisfies Record<Waste, string>;

/** How one looks in practice, as buttons say it. */
export const lookWords = {
  eye: 'By eye, sighting along',
  other: 'Straight edge and caliper',
  magnifier: 'Magnifier, ten power',
  penetrant: 'Dye penetrant',
  magneticParticle: 'Magnetic particle',
  ultrasonic: 'Ultrasonic, wall',
  borescope: 'Borescope, inside',
} as const satisfies Record<Look['method'], string>;

const areaById = new Map(areas.map((area) => [area.id as AreaId, area]));

/** "Check alignment of structures (level 2); …" */
export const areaWords = (kind: ExerciseKind): string =>
  areasOf[kind].map((id) => `${areaById.get(id)!.says} (level ${areaById.get(id)!.level})`).join('; ');

/** What the areas are, and what they are not. */
export const areaNote =
  'Subject areas and levels as in former 14 CFR part 147, appendix B (in force until 2022). Practice here gives no credit towards any licence.';

interface Named {
  readonly members: ReadonlyMap<string, Member>;
  readonly clusters: ReadonlyMap<string, Cluster>;
}

const tube = (id: string, { members }: Named): string => {
  const member = members.get(id);
  return member ? memberWords(member) : id;
};

/** The question as a sentence. */
export const askWords = (question: Question, truss: Truss, caseName: string, units: Units): string => {
  switch (question.kind) {
    case 'nameTube':
      return 'Which tube is marked in the picture?';
    case 'findCluster':
      return `Touch ${clusterWords(question.subject).toLowerCase()} (${question.subject}) in the picture.`;
    case 'whichBay':
      return 'In which bay does the marked tube lie? A bay has the name of its forward station.';
    case 'tensionDiagonal':
      return `Load case "${caseName}": which of these diagonals is in tension?`;
    case 'missingDiagonal':
      return `The right side lacks a diagonal here: ${question.why.kind === 'twin' ? zoneWords(question.why.face).toLowerCase() : question.subject}. Draw it, built as its opposite hand: touch the two clusters it runs between.`;
    case 'layOutBay': {
      const member = truss.members.find((m) => m.id === question.subject);
      const ends = [member?.from, member?.to].flatMap((id) => truss.clusters.find((c) => c.id === id) ?? []);
      const rows = ends.map(
        ({ id, at }) =>
          `${id}: station ${showLength(at[0], units)}, butt line ${showLength(Math.abs(at[1]), units)}${at[1] === 0 ? '' : at[1] > 0 ? ' right' : ' left'}, water line ${showLength(at[2], units)}`,
      );
      return `Lay out ${question.subject}. ${rows.join('. ')}. What is its true length between the cluster centres?`;
    }
    default:
      return question.kind satisfies never;
  }
};

/** A choice as a button says it. */
export const choiceLabel = (question: Question, choice: string, named: Named): string => {
  if (question.kind === 'whichBay') return `Bay ${choice}`;
  if (question.by === 'pair') return choice.replace('–', ' to ');
  return `${tube(choice, named)} · ${choice}`;
};

/** Why the right answer is right, from the truss and its statics. */
export const whyWords = (why: WhyRight, named: Named, caseName: string, units: Units): string => {
  switch (why.kind) {
    case 'place':
      return "In a name, U and L are upper and lower, the number is the station, the last letter the pilot's side.";
    case 'cluster':
      return `${why.cluster} is ${clusterWords(why.cluster).toLowerCase()}.`;
    case 'bay':
      return `${why.member} runs in the bay from station ${why.stations[0]} to station ${why.stations[1]}: bay ${why.stations[0]}.`;
    case 'forces':
      return `In "${caseName}": ${why.axial.map(({ id, axialLbf }) => `${id} ${showAxial(axialLbf)}`).join(', ')}. Solved by stiffness, welded joints.`;
    case 'twin':
      return `Its opposite hand ${why.twin} is there: ${tube(why.twin, named).toLowerCase()}. Four corners without a diagonal fold; ${why.member} keeps this side from it.`;
    case 'steps':
      return `√(${[why.dxIn, why.dyIn, why.dzIn].map((d) => `${fixed(Math.abs(d), 3)}²`).join(' + ')}) = ${showLength(Math.hypot(why.dxIn, why.dyIn, why.dzIn), units)}. A side view alone leaves out the butt lines.`;
    default:
      return why satisfies never;
  }
};

const ruleById = new Map<string, { readonly says: string; readonly source: string }>(
  [...methodRules, ...orderRules].map((rule) => [rule.id, rule]),
);

/** A rule with where it is written. */
export const ruleWords = (id: string): string => {
  const rule = ruleById.get(id);
  return rule ? `${rule.says.replace(/\.$/, '')} (${rule.source}).` : id;
};

const placeOf = (f: Finding): string =>
  [
    f.place ? `${fixed(f.place.atIn, 2)} in from ${f.place.from}` : '',
    f.clock === undefined ? '' : `${f.clock} o'clock`,
  ]
    .filter((part) => part !== '')
    .join(', ');

/** What one look shows, in words. */
export const seenWords = (seen: Seen, units: Units): string => {
  if (seen.kind === 'band') return 'A broad, faint band along the weld at the sharp corner.';
  const f = seen.finding;
  const line = f.damage === 'crack' ? 'A fine, sharp line' : damageTags[f.damage].word;
  return `${[line, findingSize(f, units), placeOf(f)].filter((part) => part !== '').join(', ')}.`;
};

const choiceAnswers = {
  applies: 'the rules loaded let it apply',
  doesNotApply: 'the rules loaded say that it does not apply',
  cannotSay: 'something is still missing to say',
  nothingThere: 'there is nothing there to repair',
} as const satisfies Record<ChoiceMark['answer'], string>;

export const choiceMarkWords = (choice: ChoiceMark): string => choiceAnswers[choice.answer];

const wouldWords = (would: Consequence, units: Units): string => {
  switch (would.kind) {
    case 'sags': {
      const { says, sagIn, clusters, open, braces } = would.state;
      const out = open.length > 0 ? `With ${listWords(open)} open` : 'As it then stands';
      const how = `${out}${braces.length > 0 ? '' : ' and no brace'}`;
      if (says === 'mechanism')
        return `${how} the truss folds${clusters.length > 0 ? `; ${listWords(clusters)} would go first` : ''}.`;
      if (!sagIn)
        return `${how} the truss stands on its other tubes; how far it sags depends on how it is held.`;
      const sag = sagIn.value < 0.0005 ? 'less than 0.001 in' : showLength(sagIn.value, units, 64);
      const where = clusters.length > 0 && sagIn.value >= 0.0005 ? ` at ${listWords(clusters)}` : '';
      return `${how} the truss sags ${sag} more${where}, own weight alone.`;
    }
    case 'locked':
      return `${showRange({ low: would.lowLbf, high: would.highLbf }, 'lbf', units)} would still be locked in along ${would.member} while it is bent back.`;
    case 'shrinks':
      return 'Shrinkage pulls the joint as it cools, and nobody would have seen where it went. How far is not predictable.';
    case 'unknown':
      return '';
    default:
      return would satisfies never;
  }
};

/** One broken rule: which two steps, the rule, and what the truss would do. */
export const brokenWords = (broken: Broken, cards: readonly Step[], units: Units): string => {
  const name = (id: string): string => stepLine(cards.find((card) => card.id === id)!);
  const would = wouldWords(broken.would, units);
  return `First "${name(broken.first)}", then "${name(broken.later)}". ${ruleWords(broken.rule)}${would === '' ? '' : ` ${would}`}`;
};
