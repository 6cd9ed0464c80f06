import { assess, rememberingStages, type Stages } from '../../core/assess.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { Assessor, OnStage } from './protocol.ts';
import { share } from './share.ts';

type Call = (...args: never[]) => unknown;

const telling = (stages: Stages, onStage: OnStage): Stages =>
  Object.fromEntries(
    Object.entries(stages).map(([name, stage]) => [
      name,
      (...args: never[]) => {
        onStage(name);
        return (stage as Call)(...args);
      },
    ]),
  ) as unknown as Stages;

/** Answers questions about a job and remembers each stage's latest call. The same in a worker and beside the screen. */
export const makeAssessor = (): Assessor => {
  const stages = rememberingStages();
  let latest: Job | undefined;
  return {
    answer({ key, job, ask }, onStage) {
      try {
        latest = share(latest, job);
        return { kind: 'assessment', key, assessment: assess(latest, ask, telling(stages, onStage)) };
      } catch (fault) {
        return { kind: 'fault', key, fault: fault instanceof Error ? fault.message : String(fault) };
      }
    },
  };
};
