import { assess } from '../core/assess.ts';
import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { secondsOf } from '../core/job/stampOrder.ts';
import { showTime } from './show.ts';
import { frozenAt, type SinceAsk } from './sinceAsk.ts';

/** An older state of the job, worked out. */
export interface Since {
  readonly job: Job;
  readonly assessment: Assessment;
  /** What it is, in words. */
  readonly words: string;
}

/** The job as it stood at a time: records never change, so those up to then are all there was. */
export const jobAsOf = (job: Job, at: string): Job => ({
  ...job,
  records: job.records.filter((record) => secondsOf(record.at) <= secondsOf(at)),
});

/** The older state that is asked for; none when the plan was never frozen. Left out: since the plan was frozen. */
export const sinceOf = (job: Job, ask: SinceAsk = { kind: 'frozen' }): Since | undefined => {
  if (ask.kind === 'copy')
    return {
      job: ask.job,
      assessment: assess(ask.job),
      words: `the copy "${ask.job.name}" with ${ask.job.records.length} records`,
    };
  const at = ask.kind === 'time' ? ask.at : frozenAt(job);
  if (at === undefined) return undefined;
  const then = jobAsOf(job, at);
  return {
    job: then,
    assessment: assess(then),
    words: `${ask.kind === 'frozen' ? 'the plan as frozen' : 'the job as it stood'} ${showTime(at)}, ${then.records.length} records`,
  };
};
