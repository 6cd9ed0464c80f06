import { JOB_VERSION, type Job } from './jobSchema.ts';
import type { Model } from './modelSchema.ts';

/** A job on this model with nothing entered: everything is still not looked at. */
export const jobFromModel = (model: Model, name: string, purpose: Job['purpose'] = 'job'): Job => ({
  format: 'tubewright-job',
  version: JOB_VERSION,
  purpose,
  name,
  model,
  records: [],
});
