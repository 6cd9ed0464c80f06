import * as Comlink from 'comlink';
import type { SideBySide } from '../../core/estimate/compare.ts';
import type { Supplement } from '../../core/estimate/supplement.ts';
import type { Job } from '../../core/job/jobSchema.ts';

/** What the comparing worker does: whole jobs worked beside one another. */
export interface Comparer {
  bayRoutes(job: Job, bay: string): SideBySide;
  changedSince(before: Job, after: Job): Supplement;
}

/** Asks a worker that lives as long as the question. */
const asked = async <T>(question: (comparer: Comlink.Remote<Comparer>) => Promise<T>): Promise<T> => {
  const worker = new Worker(new URL('./compare.worker.ts', import.meta.url), { type: 'module' });
  try {
    return await question(Comlink.wrap<Comparer>(worker));
  } finally {
    worker.terminate();
  }
};

export const compareBay = (job: Job, bay: string): Promise<SideBySide> =>
  asked((comparer) => comparer.bayRoutes(job, bay));

export const compareJobs = (before: Job, after: Job): Promise<Supplement> =>
  asked((comparer) => comparer.changedSince(before, after));
