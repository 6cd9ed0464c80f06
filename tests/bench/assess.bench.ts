import { readdirSync, readFileSync } from 'node:fs';
import { Matrix, solve } from 'ml-matrix';
import { assess, rememberingStages } from '../../src/core/assess.ts';
import { edit } from '../../src/core/job/edit.ts';
import { jobFromModel } from '../../src/core/job/jobFromModel.ts';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { readJob, readModel } from '../../src/core/job/read.ts';

const best = (times: number, work: () => unknown): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < times; k++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
};

/** A dense solve of as many unknowns as the truss has, by a well-kept library: the yardstick of this run. */
const dense = (unknowns: number): number => {
  const a = Matrix.zeros(unknowns, unknowns);
  for (let i = 0; i < unknowns; i++)
    for (let j = 0; j < unknowns; j++) a.set(i, j, i === j ? unknowns : 1 / (1 + Math.abs(i - j)));
  const b = Matrix.columnVector(new Array<number>(unknowns).fill(1));
  return best(2, () => solve(a, b));
};

const jobs = (): readonly (readonly [string, Job])[] => [
  ...readdirSync('models').map((name): readonly [string, Job] => {
    const model = readModel(readFileSync(`models/${name}`, 'utf8'));
    if (!model.ok) throw new Error(name);
    return [name, jobFromModel(model.value, name)];
  }),
  ...readdirSync('demo-data')
    .filter((name) => name.endsWith('.json'))
    .map((name): readonly [string, Job] => {
      const job = readJob(readFileSync(`demo-data/${name}`, 'utf8'));
      if (!job.ok) throw new Error(name);
      return [name, job.value];
    }),
];

/** Assess of every model and the demo, whole and after one tag, over one dense solve of the same unknowns. */
export const run = async (): Promise<string[]> =>
  jobs().map(([name, job]) => {
    const { truss } = assess(job);
    const yardstick = dense(6 * truss.clusters.length);
    const whole = best(3, () => assess(job));
    const stages = rememberingStages();
    assess(job, {}, stages);
    let [now, n] = [job, 0];
    const tagged = best(3, () => {
      const changed = edit(
        now,
        {
          kind: 'tag',
          of: [truss.members[n++]?.id ?? ''],
          tag: 'lookedAt',
          method: 'eye',
          finishRemoved: true,
        },
        { by: 'bench', device: 'bench', at: `2027-01-01T00:00:0${n}Z`, newId: () => `bench-${n}` },
      );
      if (changed.ok) now = changed.value.job;
      assess(now, {}, stages);
    });
    return `${name}, ${truss.members.length} members: whole ${(whole / yardstick).toFixed(1)} × a dense solve; after one tag ${(tagged / whole).toFixed(2)} of whole`;
  });
