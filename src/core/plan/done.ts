import type { RecordOf } from '../job/jobSchema.ts';
import { secondsOf } from '../job/stampOrder.ts';
import { type Draft, holdId } from './draft.ts';
import type { Stamp } from './result.ts';

type Progress = readonly RecordOf<'progress'>[];

/** Is a step ticked: its latest record says done. */
export const doneOf = (progress: Progress, step: string): Stamp | undefined => {
  const last = progress.findLast((p) => p.step === step);
  return last?.done ? { record: last.id, by: last.by, at: last.at } : undefined;
};

/**
 * The same for a step of the plan. Distances asked again about one tube also count as taken when their hold as a whole was
 * marked done after everything they follow.
 */
export const stepDone = (progress: Progress, step: Draft): Stamp | undefined => {
  const own = doneOf(progress, step.id);
  if (own || !step.hold || step.id === holdId(step.hold)) return own;
  const whole = doneOf(progress, holdId(step.hold));
  const before = step.needs.map((n) => doneOf(progress, n.step));
  return whole && before.every((b) => b && secondsOf(b.at) <= secondsOf(whole.at)) ? whole : undefined;
};
