import type { Figure } from '../../core/base/figure.ts';
import type { Moved, NotPlanned, Plan, PlanBrace, SolvedState, Step } from '../../core/plan/result.ts';
import { orderRules } from '../../core/plan/rules.ts';
import { showFigure, type Units } from '../show.ts';
import { countWords, listWords } from './names.ts';
import { stepLine, stepNamed } from './planSteps.ts';

/** Words of the order: how the truss stands at a step, why a step comes after another, and how far the plan is. */

export const notPlannedWords = {
  movesFreely: 'the truss moves freely as held',
  noBraceHolds: 'no brace that was tried holds it',
  noFixtureForCluster: 'the cluster needs a fixture that is not planned here',
  refer: 'referred to the maker: nothing is planned until data come',
  undecided: 'undecided',
  clusterNotBent: 'a cluster is not bent back; decide again',
} as const satisfies Record<NotPlanned['why'], string>;

export const solvedWords = {
  stands: 'stands under the sag limit',
  sags: 'sags more than the limit',
  notJudged: 'stands; sag not judged, nobody has said how it is held',
  mechanism: 'would move freely',
} as const satisfies Record<SolvedState['says'], string>;

const sagWords = ({ clusters }: SolvedState, sag: Figure, units: Units): string =>
  Math.abs(sag.value) < 0.0005
    ? `grows by less than ${showFigure({ ...sag, value: 0.001 }, units === 'mm' ? 'mm' : 'inDecimal')}`
    : `grows by ${showFigure(sag, units)}${clusters[0] ? ` at ${clusters[0]}` : ''}`;

/** The truss as solved after a step, in one line. */
export const solvedLine = (solved: SolvedState, units: Units): string =>
  [
    solved.open.length > 0 ? `open: ${listWords(solved.open)}` : 'nothing open',
    ...(solved.braces.length > 0 ? [`${countWords(solved.braces.length, 'brace')} in place`] : []),
    solvedWords[solved.says],
    ...(solved.sagIn ? [`sag ${sagWords(solved, solved.sagIn, units)}`] : []),
  ].join('; ');

/** How the truss stands at one step. */
export interface Standing {
  readonly open: readonly string[];
  readonly braces: readonly PlanBrace[];
  /** Null before the first tube is opened or brace put in. */
  readonly solved: SolvedState | null;
  /** Set-up in words; null before the truss is stood on its supports. */
  readonly heldAs: string | null;
}

/** The same in a few named words: what is open, braced and held, and whether it stands. */
export const standingLines = (
  { open, braces, solved, heldAs }: Standing,
  limit: Figure,
  units: Units,
): readonly { readonly name: string; readonly words: string }[] => [
  { name: 'Open', words: open.length > 0 ? listWords(open) : 'no tube' },
  {
    name: 'Braced',
    words: braces.length > 0 ? listWords(braces.map((b) => `${b.from} to ${b.to}`)) : 'no brace of the plan',
  },
  { name: 'Held', words: heldAs ?? 'not yet' },
  { name: 'Stands', words: solved ? solvedWords[solved.says] : 'as held, nothing taken out' },
  {
    name: 'Sag',
    words: solved?.sagIn
      ? `${sagWords(solved, solved.sagIn, units)}; limit ${showFigure(limit, units)}`
      : solved?.says === 'notJudged'
        ? 'not judged'
        : 'does not grow',
  },
];

/** A rule of the order as the plan states it. */
export const orderRuleWords = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.says ?? 'This step is not in the plan.';

export const orderRuleSource = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.source ?? '';

/** Why a step was not moved: the rule, and which two steps it parts. */
export const refusedMoveLine = (moved: Extract<Moved, { ok: false }>, plan: Pick<Plan, 'steps'>): string => {
  const named = stepNamed(plan);
  if (moved.rule === 'stands-there') return `Not moved. "${named(moved.step)}" stands there already.`;
  if (moved.rule === 'state-stands')
    return `Not moved. ${orderRuleWords(moved.rule)} At "${named(moved.step)}" it would not${moved.by ? `; ${named(moved.by)} moves most` : ''}.`;
  return `Not moved. ${orderRuleWords(moved.rule)} "${named(moved.step)}" comes after "${named(moved.by)}".`;
};

/** A step that was moved, and where it comes now. */
export const movedLine = (step: Step, order: readonly string[]): string =>
  `Moved: "${stepLine(step)}" is now step ${order.indexOf(step.id) + 1} of ${order.length}.`;

/** A step that was dragged and let go where no step is. */
export const letGoLine = (step: Step): string =>
  `Not moved. "${stepLine(step)}" was let go outside the list of steps.`;

/** How far the plan is. */
export const planShare = ({ steps, gates }: Plan): string => {
  const done = steps.filter((s) => s.done).length;
  const open = gates.filter((g) => g.state === 'waits' || g.state === 'ready').length;
  return `${done} of ${countWords(steps.length, 'step')} ticked, ${countWords(open, 'hold point')} open`;
};
