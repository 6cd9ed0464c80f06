import type { Misfit } from '../lockedIn/misfit.ts';
import type { HeldNow } from '../statics/held.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';
import { walk } from './check.ts';
import type { Moved, Plan } from './result.ts';
import { solverOf } from './state.ts';

/** What a move is judged against. */
export interface MoveOn {
  readonly truss: Truss;
  readonly support: HeldNow;
  /** `lockedIn.misfits`. */
  readonly misfits: readonly Misfit[];
  /** Tubes open that the plan does not open. */
  readonly stray: readonly string[];
}

/**
 * The plan's order with one step put before another (`null`: last), or the rule that this breaks, the step that would stand
 * wrong and the one it has to follow (for a state that does not stand: the cluster that moves most). A step put where it is
 * (`stands-there`) is not moved either.
 * The order given back is what a `plan-order` record carries, one id a line.
 */
export const moveStep = (
  plan: Pick<Plan, 'steps' | 'sagLimitIn'>,
  on: MoveOn,
  stepId: string,
  before: string | null,
): Moved => {
  const step = plan.steps.find((s) => s.id === stepId);
  const rest = plan.steps.filter((s) => s.id !== stepId);
  const at = before === null ? rest.length : rest.findIndex((s) => s.id === before);
  if (!step || at < 0) return { ok: false, rule: 'no-such-step', step: stepId, by: before ?? '' };
  const steps = [...rest.slice(0, at), step, ...rest.slice(at)];
  if (steps.every((s, k) => s.id === plan.steps[k]!.id))
    return { ok: false, rule: 'stands-there', step: stepId, by: stepId };
  const frame = prepareFrame(on.truss, on.support);
  if (!isFrame(frame))
    return { ok: false, rule: 'state-stands', step: stepId, by: frame.clusters[0]?.id ?? '' };
  const solver = solverOf(on.truss, on.support, frame, on.misfits, plan.sagLimitIn);
  const { broken } = walk(steps, solver, on.support, on.stray);
  return broken ? { ok: false, ...broken } : { ok: true, order: steps.map((s) => s.id) };
};
