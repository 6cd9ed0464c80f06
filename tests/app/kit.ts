import { readFileSync } from 'node:fs';
import { jobFromModel } from '../../src/core/job/jobFromModel.ts';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { readModel } from '../../src/core/job/read.ts';

/** A job on the practice truss with nothing entered. */
export const emptyJob = (): Job => {
  const read = readModel(
    readFileSync(new URL('../../models/practice-truss.json', import.meta.url).pathname, 'utf8'),
  );
  if (!read.ok) throw new Error('the practice truss does not read');
  return jobFromModel(read.value, 'Test job');
};
