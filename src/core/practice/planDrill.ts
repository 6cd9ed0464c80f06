import { seeded } from '../base/seeded.ts';
import type { StepKind } from '../plan/kinds.ts';
import type { SolvedState } from '../plan/result.ts';
import type { RuleId } from '../plan/rules.ts';
import { sagLimit, solverOf } from '../plan/state.ts';
import type { Frame } from '../statics/frame.ts';
import type { HeldNow } from '../statics/held.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';

/** One step to be put in order. Two trammel steps of one kind are told apart by `when`. */
export interface PlanCard {
  readonly id: string;
  readonly kind: StepKind;
  readonly when?: 'baseline' | 'afterCut' | 'tacked' | 'asLeft';
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
  | { readonly kind: 'locked'; readonly lowLbf: number; readonly highLbf: number }
  /** Tacks pulled by shrinkage that nobody sees: not predictable, so no number. */
  | { readonly kind: 'shrinks' }
  | { readonly kind: 'unknown' };

export interface Broken extends PlanNeed {
  readonly would: Consequence;
}

/** Steps of a splice in one tube beside a bent one. */
const cards: readonly PlanCard[] = [
  { id: 'support', kind: 'support' },
  { id: 'inspect', kind: 'inspect' },
  { id: 'layOut', kind: 'layOut' },
  { id: 'baseline', kind: 'trammel', when: 'baseline' },
  { id: 'brace', kind: 'brace' },
  { id: 'cut', kind: 'cut' },
  { id: 'afterCut', kind: 'trammel', when: 'afterCut' },
  { id: 'straighten', kind: 'straighten' },
  { id: 'spread', kind: 'spread' },
  { id: 'section', kind: 'section' },
  { id: 'fitUp', kind: 'fitUp' },
  { id: 'tack', kind: 'tack' },
  { id: 'tacked', kind: 'trammel', when: 'tacked' },
  { id: 'weld', kind: 'weld' },
  { id: 'unbrace', kind: 'unbrace' },
  { id: 'asLeft', kind: 'trammel', when: 'asLeft' },
  { id: 'protect', kind: 'protect' },
];

const needs: readonly PlanNeed[] = [
  { first: 'support', later: 'baseline', rule: 'support-first' },
  { first: 'inspect', later: 'layOut', rule: 'inspect-before-marks' },
  { first: 'layOut', later: 'baseline', rule: 'marks-before-baseline' },
  { first: 'baseline', later: 'cut', rule: 'baseline-first' },
  { first: 'baseline', later: 'straighten', rule: 'baseline-first' },
  { first: 'brace', later: 'cut', rule: 'brace-before-cut' },
  { first: 'cut', later: 'afterCut', rule: 'measure-after-cut' },
  { first: 'cut', later: 'straighten', rule: 'relief-before-straightening' },
  { first: 'afterCut', later: 'spread', rule: 'measure-after-cut' },
  { first: 'straighten', later: 'section', rule: 'straighten-before-replace' },
  { first: 'spread', later: 'section', rule: 'spread-before-fitting' },
  { first: 'section', later: 'fitUp', rule: 'fit-before-tack' },
  { first: 'fitUp', later: 'tack', rule: 'fit-up-seen-before-tack' },
  { first: 'tack', later: 'tacked', rule: 'measure-tacks-before-weld' },
  { first: 'tack', later: 'weld', rule: 'measure-tacks-before-weld' },
  { first: 'tacked', later: 'weld', rule: 'measure-tacks-before-weld' },
  { first: 'weld', later: 'unbrace', rule: 'hold-until-welded' },
  { first: 'unbrace', later: 'asLeft', rule: 'as-left-last' },
  { first: 'asLeft', later: 'protect', rule: 'as-left-before-protection' },
];

export interface PlanDrill {
  /** The tube to be spliced. */
  readonly member: string;
  /** Mixed up by the seed. */
  readonly cards: readonly PlanCard[];
}

/** A plan to put in order: a longeron of this truss by the seed, and its steps mixed. Null when it has none. */
export const planDrill = (truss: Truss, seed: string): PlanDrill | null => {
  const longerons = truss.members.filter((m) => m.role === 'lowerLongeron' || m.role === 'upperLongeron');
  if (longerons.length === 0) return null;
  const chance = seeded(seed);
  const { id } = chance.pick(longerons);
  const mixed = cards
    .map((card) => ({ card, at: chance.share() }))
    .sort((a, b) => a.at - b.at)
    .map(({ card }) => card);
  return { member: id, cards: mixed };
};

/** The order that the rules leave when each card is put as early as the list above has it: one right order of several. */
export const oneRightOrder: readonly string[] = cards.map(({ id }) => id);

/** What stands in the tube now, between the two readings of the bows, as `assess` gives it; nothing when none is measured. */
export interface LockedNow {
  readonly low: number;
  readonly high: number;
}

/**
 * The rules that an order breaks, each with what the truss would do: its own weight solved without the tube, the force
 * that `assess` says is locked in, shrinkage that nobody measures.
 *
 * @param frame  as it is held
 */
export const checkOrder = (
  order: readonly string[],
  drill: PlanDrill,
  truss: Truss,
  support: HeldNow,
  frame: Frame | MovesFreely,
  locked?: LockedNow,
): readonly Broken[] => {
  const at = new Map(order.map((id, k) => [id, k]));
  const place = (id: string): number => at.get(id) ?? order.length;
  const sags = (): Consequence => {
    if (!isFrame(frame)) return { kind: 'unknown' };
    const solver = solverOf(truss, support, frame, [], sagLimit([]));
    return { kind: 'sags', state: solver.solve([drill.member], []) };
  };
  const would = ({ rule }: PlanNeed): Consequence => {
    if (rule === 'brace-before-cut' || rule === 'hold-until-welded') return sags();
    if (rule === 'relief-before-straightening' && locked)
      return { kind: 'locked', lowLbf: locked.low, highLbf: locked.high };
    if (rule === 'measure-tacks-before-weld' || rule === 'as-left-last') return { kind: 'shrinks' };
    return { kind: 'unknown' };
  };
  return needs
    .filter(({ first, later }) => place(first) > place(later))
    .map((need) => ({ ...need, would: would(need) }));
};

/** Rules kept, of all that this drill holds. */
export const planShare = (broken: readonly Broken[]): { readonly got: number; readonly of: number } => ({
  got: needs.length - broken.length,
  of: needs.length,
});
