import type { Draft } from '../core/job/change.ts';
import type { RecordOf } from '../core/job/jobSchema.ts';
import { FROZEN_TOPIC, freezing } from '../core/plan/frozen.ts';
import { moveStep } from '../core/plan/moveStep.ts';
import { ORDER_TOPIC } from '../core/plan/ownOrder.ts';
import { strayOpen } from '../core/plan/plan.ts';
import type { Gate, Plan, Step } from '../core/plan/result.ts';
import { heldNow } from '../core/statics/held.ts';
import { gateLine } from '../present/words/planGates.ts';
import { refusedMoveLine } from '../present/words/planOrder.ts';
import { stepLine } from '../present/words/planSteps.ts';
import { useAnswer } from './state/answer.ts';
import { change } from './state/job.ts';
import { setPlanning } from './state/planning.ts';

type Progress = Draft<RecordOf<'progress'>>;

/** What a person does to the plan and the estimate, each as one named change. */

const log = (progress: Progress, name: string): boolean => change({ kind: 'addProgress', progress }, name);

const trimmed = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

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
    `${done ? 'Ticked' : 'Tick taken off'}: ${stepLine(step)}`,
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
    `${done ? (why ? 'Opened by name' : 'Ticked') : 'Tick taken off'}: ${gateLine(gate)}`,
  );
};

/** Puts a step before another (null: last), or says which rule that breaks. */
export const putStep = (plan: Plan, stepId: string, before: string | null): void => {
  const { atOnce: now, assessment: all } = useAnswer.getState();
  if (!now || !all || stepId === before) return;
  const model = now.live.model ?? now.job.model;
  const moved = moveStep(
    plan,
    {
      truss: now.truss,
      support: heldNow(now.truss, model, now.live.held),
      misfits: all.lockedIn.misfits,
      stray: strayOpen(now.coverage, now.truss, now.live.progress),
    },
    stepId,
    before,
  );
  if (!moved.ok) {
    setPlanning({ refused: refusedMoveLine(moved, plan) });
    return;
  }
  setPlanning({ refused: null });
  const step = plan.steps.find(({ id }) => id === stepId)!;
  change(
    {
      kind: 'addManual',
      manual: { topic: ORDER_TOPIC, words: moved.order.join('\n'), source: 'own order of steps' },
    },
    `Moved: ${stepLine(step)}`,
  );
};

/** One place forward or back. */
export const nudgeStep = (plan: Plan, stepId: string, by: -1 | 1): void => {
  const at = plan.steps.findIndex(({ id }) => id === stepId);
  const to = at + by;
  if (at < 0 || to < 0 || to >= plan.steps.length) return;
  putStep(plan, stepId, by < 0 ? plan.steps[to]!.id : (plan.steps[to + 1]?.id ?? null));
};

export const workedOrderAgain = (record: string): void => {
  change({ kind: 'withdraw', ids: [record], reason: 'own order taken off' }, 'Own order taken off');
};

export const freezePlan = (plan: Plan, reason: string): boolean =>
  change(
    {
      kind: 'addManual',
      manual: {
        topic: FROZEN_TOPIC,
        words: freezing(plan.steps),
        source: trimmed(reason) ?? 'agreed',
      },
    },
    'Plan frozen',
  );

export const setRate = (rate: Draft<RecordOf<'rate'>>, name: string): boolean =>
  change({ kind: 'addRate', rate }, name);

export const setManual = (manual: Draft<RecordOf<'manual'>>, name: string): boolean =>
  change({ kind: 'addManual', manual }, name);
