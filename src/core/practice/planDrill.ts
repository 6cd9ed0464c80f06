import { seeded } from '../base/seeded.ts';
import { walk } from '../plan/check.ts';
import type { StepKind } from '../plan/kinds.ts';
import type { MoveOn } from '../plan/moveStep.ts';
import type { Plan, SolvedState, Step } from '../plan/result.ts';
import type { RuleId } from '../plan/rules.ts';
import { solverOf } from '../plan/state.ts';
import type { Relief } from '../relief/result.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import { groupBy } from '../truss/groupBy.ts';

/** The job that a plan is practised on, as `assess` has it. */
export interface PlanGround extends MoveOn {
  readonly plan: Plan;
  readonly relief: Relief;
}

/** The first comes before the second, by a row of the plan's own rules. */
export interface PlanNeed {
  readonly first: string;
  readonly later: string;
  readonly rule: RuleId;
}

/** What the truss would do if it were done the wrong way round. */
export type Consequence =
  | { readonly kind: 'sags'; readonly state: SolvedState }
  | { readonly kind: 'locked'; readonly member: string; readonly lowLbf: number; readonly highLbf: number }
  /** Tacks pulled by shrinkage that nobody sees: not predictable, so no number. */
  | { readonly kind: 'shrinks' }
  | { readonly kind: 'unknown' };

export interface Broken extends PlanNeed {
  readonly would: Consequence;
}

/** Steps of the plan about one repair, mixed up, with what the plan says of their order. */
export interface PlanDrill {
  /** Tube or cluster that is opened. */
  readonly of: string;
  /** Steps of the plan itself, mixed up by the seed. */
  readonly cards: readonly Step[];
  readonly needs: readonly PlanNeed[];
  /** The plan's own order: one right order of several. */
  readonly right: readonly string[];
  readonly ground: PlanGround;
}

/** As many as can be laid in order in one sitting; a starting value of ours. */
const MOST_CARDS = 16;
/** Kinds left out first where a plan has more: what they teach about order, others of the list teach as well. */
const leftOut: readonly StepKind[] = [
  ...(['vents', 'weigh', 'defuel', 'battery', 'spreaderOut', 'clean', 'drill', 'sleeves'] as const),
  ...(['cutOut', 'photo', 'makeSafe', 'weldFirst', 'inspectBend', 'roundOut', 'trialFit'] as const),
  ...(['opening', 'inspectWelds', 'fire', 'refit', 'release', 'strip', 'protect'] as const),
];

/** A distance taken once more after a step that is left out here: `hold:afterCutting:U3R-U4R:cutOut`. */
const again = (step: Step): boolean => step.kind === 'trammel' && step.id.split(':').length > 3;

const about = (step: Step, of: string, bent: string | undefined): boolean =>
  step.scope === 'job' ||
  step.of === of ||
  step.members.includes(of) ||
  (bent !== undefined && step.of === bent);

/** Arrows between chosen steps: the plan's own, and those through steps that were left out where no other leads there. */
const needsAmong = (plan: Plan, chosen: ReadonlySet<string>): readonly PlanNeed[] => {
  const byId = new Map(plan.steps.map((s) => [s.id, s]));
  const found = plan.steps
    .filter((s) => chosen.has(s.id))
    .flatMap(({ id: later, needs }) => {
      const rules = new Map<string, RuleId>();
      const seen = new Set<string>();
      const left = [...needs];
      for (let next = left.shift(); next; next = left.shift()) {
        if (seen.has(next.step)) continue;
        seen.add(next.step);
        if (chosen.has(next.step)) rules.set(next.step, next.rule as RuleId);
        else left.push(...(byId.get(next.step)?.needs ?? []));
      }
      const direct = new Set(needs.map((n) => n.step));
      return [...rules].map(([first, rule]) => ({ first, later, rule, direct: direct.has(first) }));
    });
  const before = groupBy(found, (n) => n.later);
  const leadsTo = (first: string, later: string): boolean =>
    (before.get(later) ?? []).some((n) => n.first === first || leadsTo(first, n.first));
  const implied = ({ first, later }: PlanNeed): boolean =>
    before.get(later)!.some((n) => n.first !== first && leadsTo(first, n.first));
  return found
    .filter((n) => n.direct || !implied(n))
    .map(({ first, later, rule }): PlanNeed => ({ first, later, rule }));
};

/** Steps of one repair of this job's plan to be put in order; null when its plan opens nothing. */
export const planDrill = (ground: PlanGround, seed: string): PlanDrill | null => {
  const { steps } = ground.plan;
  const cuts = steps.filter((s) => s.kind === 'cut');
  if (cuts.length === 0) return null;
  const chance = seeded(seed);
  // a tube that the truss cannot spare teaches most
  const braced = cuts.filter((s) => steps.some((b) => b.brace?.holds.some((id) => s.members.includes(id))));
  const { of: cut, members } = chance.pick(braced.length > 0 ? braced : cuts);
  const of = cut ?? members[0]!;
  const bends = steps.filter((s) => s.kind === 'straighten' && s.of !== of);
  const bent = bends.length > 0 ? chance.pick(bends).of : undefined;
  let chosen = steps.filter((s) => about(s, of, bent) && !again(s));
  for (const kind of leftOut) {
    if (chosen.length <= MOST_CARDS) break;
    chosen = chosen.filter((s) => s.kind !== kind);
  }
  const mixed = chosen
    .map((card) => ({ card, at: chance.share() }))
    .sort((a, b) => a.at - b.at)
    .map(({ card }) => card);
  const right = chosen.map((s) => s.id);
  return { of, cards: mixed, needs: needsAmong(ground.plan, new Set(right)), right, ground };
};

/** The truss after each step of an order, by the plan's own walk with its arrows taken off: nothing stops it early. */
const statesOf = (
  order: readonly string[],
  { cards, ground }: PlanDrill,
): ReadonlyMap<string, SolvedState> => {
  const { truss, support, misfits, stray, plan } = ground;
  const frame = prepareFrame(truss, support);
  if (!isFrame(frame)) return new Map();
  const solver = solverOf(truss, support, frame, misfits, plan.sagLimitIn);
  const byId = new Map(cards.map((card) => [card.id, card]));
  const free = order.flatMap((id) => byId.get(id) ?? []).map((card) => ({ ...card, needs: [] }));
  const states = new Map<string, SolvedState>();
  // the walk ends where the truss does not stand; what comes after is walked to by itself
  for (let k = 0; k < free.length; k++) {
    if (states.has(free[k]!.id)) continue;
    for (const [id, state] of walk(free.slice(0, k + 1), solver, support, stray).states)
      states.set(id, state);
  }
  return states;
};

/**
 * The rules of the plan that an order breaks, each with what the truss would do: its own weight solved with the tubes
 * open and the braces in as the order has them, the force that `assess` says is locked in, shrinkage nobody measures.
 */
export const checkOrder = (order: readonly string[], drill: PlanDrill): readonly Broken[] => {
  const at = new Map(order.map((id, k) => [id, k]));
  const place = (id: string): number => at.get(id) ?? order.length;
  const broken = drill.needs.filter(({ first, later }) => place(first) > place(later));
  if (broken.length === 0) return [];
  const states = statesOf(order, drill);
  const kindOf = new Map(drill.cards.map((card) => [card.id, card]));
  const would = ({ rule, first, later }: PlanNeed): Consequence => {
    switch (rule) {
      case 'relief-before-straightening': {
        const member = kindOf.get(later)?.of;
        const now = drill.ground.relief.targets.find((t) => t.member === member)?.now.axialLbf;
        return member !== undefined && now && now.high > 0
          ? { kind: 'locked', member, lowLbf: now.low, highLbf: now.high }
          : { kind: 'unknown' };
      }
      case 'measure-tacks-before-weld':
      case 'measure-after-weld':
      case 'as-left-last':
      case 'cool-between-ends':
        return { kind: 'shrinks' };
      default: {
        // with a brace out of its turn, or a tube cut out of its turn: the truss as it then stands
        const moved = [later, first].find((id) => states.has(id));
        return moved === undefined ? { kind: 'unknown' } : { kind: 'sags', state: states.get(moved)! };
      }
    }
  };
  return broken.map((need) => ({ ...need, would: would(need) }));
};

/** Rules kept, of all that this drill holds. */
export const planShare = (
  drill: PlanDrill,
  broken: readonly Broken[],
): { readonly got: number; readonly of: number } => ({
  got: drill.needs.length - broken.length,
  of: drill.needs.length,
});
