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
 * Steps of laying out that were ticked again after an earlier tick, the last one later than this moment: the marks are new.
 *
 * @param since  of the latest baseline
 */
export const laidAgain = (progress: Progress, steps: readonly string[], since: string): readonly string[] =>
  steps.filter((id) => {
    const ticks = progress.filter((p) => p.step === id && p.done);
    const last = ticks.at(-1);
    return ticks.length > 1 && last !== undefined && secondsOf(last.at) > secondsOf(since);
  });

/**
 * The same for a step of the plan. Marks laid out again take the tick off the baseline: it starts anew. Distances asked
 * again about one tube also count as taken when their hold as a whole was marked done after everything they follow.
 */
export const stepDone = (progress: Progress, step: Draft): Stamp | undefined => {
  const ticked = doneOf(progress, step.id);
  const needed = step.needs.map((n) => n.step);
  const isBaseline = step.id === holdId('beforeCutting');
  const own = ticked && isBaseline && laidAgain(progress, needed, ticked.at).length > 0 ? undefined : ticked;
  if (own || !step.hold || step.id === holdId(step.hold)) return own;
  const whole = doneOf(progress, holdId(step.hold));
  const before = step.needs.map((n) => doneOf(progress, n.step));
  return whole && before.every((b) => b && secondsOf(b.at) <= secondsOf(whole.at)) ? whole : undefined;
};
