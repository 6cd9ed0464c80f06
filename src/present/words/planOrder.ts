import type { Moved, NotPlanned, Plan, SolvedState } from '../../core/plan/result.ts';
import { orderRules } from '../../core/plan/rules.ts';
import { showFigure, type Units } from '../show.ts';
import { countWords, listWords } from './names.ts';
import { stepNamed } from './planSteps.ts';

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

/** The truss as solved after a step, in one line. */
export const solvedLine = (solved: SolvedState, units: Units): string =>
  [
    solved.open.length > 0 ? `open: ${listWords(solved.open)}` : 'nothing open',
    ...(solved.braces.length > 0 ? [`${countWords(solved.braces.length, 'brace')} in place`] : []),
    solvedWords[solved.says],
    ...(solved.sagIn
      ? [
          Math.abs(solved.sagIn.value) < 0.0005
            ? 'sag grows by less than 0.001 in'
            : `sag grows by ${showFigure(solved.sagIn, units)}${solved.clusters[0] ? ` at ${solved.clusters[0]}` : ''}`,
        ]
      : []),
  ].join('; ');

/** A rule of the order as the plan states it. */
export const orderRuleWords = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.says ?? 'This step is not in the plan.';

export const orderRuleSource = (rule: string): string =>
  orderRules.find(({ id }) => id === rule)?.source ?? '';

/** Why a step was not moved: the rule, and which two steps it parts. */
export const refusedMoveLine = (moved: Extract<Moved, { ok: false }>, plan: Pick<Plan, 'steps'>): string => {
  const named = stepNamed(plan);
  if (moved.rule === 'state-stands')
    return `Not moved. ${orderRuleWords(moved.rule)} At "${named(moved.step)}" it would not${moved.by ? `; ${named(moved.by)} moves most` : ''}.`;
  return `Not moved. ${orderRuleWords(moved.rule)} "${named(moved.step)}" comes after "${named(moved.by)}".`;
};

/** How far the plan is. */
export const planShare = ({ steps, gates }: Plan): string => {
  const done = steps.filter((s) => s.done).length;
  const open = gates.filter((g) => g.state === 'waits' || g.state === 'ready').length;
  return `${done} of ${countWords(steps.length, 'step')} ticked, ${countWords(open, 'hold point')} open`;
};
