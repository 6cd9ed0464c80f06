import type { Draft } from '../core/job/change.ts';
import type { RecordOf } from '../core/job/jobSchema.ts';
import { inOrderOf } from '../core/plan/check.ts';
import { FROZEN_TOPIC, freezing } from '../core/plan/frozen.ts';
import { moveStep } from '../core/plan/moveStep.ts';
import { ORDER_TOPIC, ownIds } from '../core/plan/ownOrder.ts';
import { strayOpen } from '../core/plan/plan.ts';
import type { Gate, Plan, Step } from '../core/plan/result.ts';
import { heldNow } from '../core/statics/held.ts';
import { gateLine } from '../present/words/planGates.ts';
import { movedLine, refusedMoveLine } from '../present/words/planOrder.ts';
import { stepLine } from '../present/words/planSteps.ts';
import { useAnswer } from './state/answer.ts';
import { change } from './state/job.ts';
import { setPlanning } from './state/planning.ts';
import { planDeedText as text } from './text/planDeeds.ts';

type Progress = Draft<RecordOf<'progress'>>;

/** What a person does to the plan and the estimate, each as one named change. */

const log = (progress: Progress, name: string): boolean => change({ kind: 'addProgress', progress }, name);

const trimmed = (typed: string): string | undefined => (typed.trim() === '' ? undefined : typed.trim());

export interface Seen {
  readonly secondPerson?: string;
  readonly inspected?: NonNullable<Progress['inspected']>;
}

export const tickStep = (step: Step, done: boolean, seen: Seen = {}): boolean =>
  log(
    {
      step: step.id,
      done,
      ...(step.of === undefined ? {} : { of: step.of }),
      ...(seen.secondPerson ? { secondPerson: seen.secondPerson } : {}),
      ...(seen.inspected ? { inspected: seen.inspected } : {}),
    },
    (done ? text.ticked : text.tickOff)(stepLine(step)),
  );

/** Ticks a hold point; with a reason it is opened by name although something is missing. */
export const tickGate = (gate: Gate, done: boolean, secondPerson: string, reason: string): boolean => {
  const second = trimmed(secondPerson);
  const why = trimmed(reason);
  return log(
    {
      step: gate.id,
      done,
      ...(gate.of === undefined ? {} : { of: gate.of }),
      ...(second ? { secondPerson: second } : {}),
      ...(done && why ? { opened: why } : {}),
    },
    (done ? (why ? text.opened : text.ticked) : text.tickOff)(gateLine(gate)),
  );
};

/** Puts a step before another (null: last), or says which rule that breaks. Either way something is said. */
export const putStep = (plan: Plan, stepId: string, before: string | null): void => {
  const { atOnce: now, assessment: all } = useAnswer.getState();
  const step = plan.steps.find(({ id }) => id === stepId);
  if (!now || !all || !step) return;
  const model = now.live.model ?? now.job.model;
  // A move made while the one before is still being worked out builds on that one.
  const steps = inOrderOf(plan.steps, ownIds(now.live.manual));
  const moved = moveStep(
    { steps, sagLimitIn: plan.sagLimitIn },
    {
      truss: now.truss,
      support: heldNow(now.truss, model, now.live.held),
      misfits: all.lockedIn.misfits,
      stray: strayOpen(now.coverage, now.truss, now.live.progress),
    },
    stepId,
    before === stepId ? (steps[steps.indexOf(step) + 1]?.id ?? null) : before,
  );
  if (!moved.ok) {
    setPlanning({ said: { moved: false, words: refusedMoveLine(moved, plan) } });
    return;
  }
  const kept = change(
    {
      kind: 'addManual',
      manual: { topic: ORDER_TOPIC, words: moved.order.join('\n'), source: text.ownOrder },
    },
    text.moved(stepLine(step)),
  );
  setPlanning({ said: kept ? { moved: true, words: movedLine(step, moved.order) } : null });
};

/** One place forward or back. */
export const nudgeStep = (plan: Plan, stepId: string, by: -1 | 1): void => {
  const steps = inOrderOf(plan.steps, ownIds(useAnswer.getState().atOnce?.live.manual ?? []));
  const at = steps.findIndex(({ id }) => id === stepId);
  const before = steps[by < 0 ? Math.max(0, at - 1) : at + 2];
  putStep(plan, stepId, before?.id ?? null);
};

/** Takes the user's order off, with all that came before it: each move wrote one. */
export const workedOrderAgain = (): void => {
  const orders = useAnswer.getState().atOnce?.live.manual.filter(({ topic }) => topic === ORDER_TOPIC) ?? [];
  change(
    { kind: 'withdraw', ids: orders.map(({ id }) => id), reason: text.ownOrderOffReason },
    text.ownOrderOff,
  );
};

export const freezePlan = (plan: Plan, reason: string): boolean =>
  change(
    {
      kind: 'addManual',
      manual: {
        topic: FROZEN_TOPIC,
        words: freezing(plan.steps),
        source: trimmed(reason) ?? text.agreed,
      },
    },
    text.frozen,
  );

export const setRate = (rate: Draft<RecordOf<'rate'>>, name: string): boolean =>
  change({ kind: 'addRate', rate }, name);

export const setManual = (manual: Draft<RecordOf<'manual'>>, name: string): boolean =>
  change({ kind: 'addManual', manual }, name);
