import { readFileSync } from 'node:fs';
import { assess, rememberingStages, type Stages } from '../../../src/core/assess.ts';
import type { Assessment } from '../../../src/core/assessment.ts';
import type { Finding, Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { readModel } from '../../../src/core/job/read.ts';
import { crash } from '../../../src/core/practice/crash.ts';
import type { Exercise, Level } from '../../../src/core/practice/exercise.ts';
import type { LookWay } from '../../../src/core/practice/look.ts';

export const modelNames = ['practice-truss', 'high-wing-tandem', 'low-wing-side-by-side'] as const;

export const modelOf = (name: string): Model => {
  const read = readModel(readFileSync(`models/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.value;
};

export const madeOf = (model: Model, seed: string, level: Level): Exercise => {
  const made = crash(model, { seed, level });
  if (made.kind !== 'made') throw new Error(`${seed}: ${made.kind}`);
  return made.exercise;
};

const second = (n: number): string => new Date(Date.UTC(2024, 0, 1, 8, 0, n)).toISOString();
const stamp = (id: string, n: number) => ({ id, by: 'player', at: second(n), device: 'test' });

export const lookRecord = (way: LookWay, n: number): JobRecord => ({
  kind: 'look',
  ...stamp(`look-${n}`, n),
  of: way.of,
  state: 'lookedAt',
  method: way.method,
  finishRemoved: way.finishRemoved,
});

export const called = (finding: Finding, n: number): JobRecord => ({
  ...finding,
  ...stamp(`call-${n}`, n),
});

export const withRecords = (job: Job, records: readonly JobRecord[]): Job => ({
  ...job,
  records: [...job.records, ...records],
});

export const assessed = (job: Job): Assessment => assess(job);

/**
 * `assess` of many jobs on one model, for players by the thousand: what stands behind the model alone is worked once,
 * and stages that marking does not read are left out. A test holds its answers against the whole `assess`.
 */
export const judgeOn = (): ((job: Job) => Assessment) => {
  const stages = rememberingStages();
  const idle = (() => ({ members: [], targets: [], steps: [] })) as never;
  const use: Stages = {
    ...stages,
    measuringPlan: (truss) => stages.measuringPlan(truss, nothing, nothing),
    holdPoints: () => ({ holds: [], issues: [] }),
    ...{ relief: idle, straighten: idle, splice: idle, plan: idle, takeoff: idle, estimate: idle },
  };
  return (job) => assess(job, {}, use);
};
const nothing: readonly never[] = [];
