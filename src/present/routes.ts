import { assess } from '../core/assess.ts';
import { bayRoute, type SideBySide, sideBySide } from '../core/estimate/compare.ts';
import { type Supplement, supplement } from '../core/estimate/supplement.ts';
import { edit } from '../core/job/edit.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { latestOf } from '../core/job/stampOrder.ts';

/** The job with other decisions laid over it, stamped as its latest record; kept nowhere. */
const decided = (job: Job, decisions: ReturnType<typeof bayRoute>): Job => {
  const at = latestOf(job.records)?.at ?? '2000-01-01T00:00:00Z';
  let count = 0;
  return decisions.reduce((now, { of, choice }) => {
    const edited = edit(
      now,
      { kind: 'decide', of: [of], choice, reason: 'compared' },
      { by: 'compared', at, device: 'compared', newId: () => `zz-compared-${++count}` },
    );
    return edited.ok ? edited.value.job : now;
  }, job);
};

/** As decided, each hurt tube of a bay spliced, and the whole bay replaced: the same lines for the three. */
export const bayRoutes = (job: Job, bay: string): SideBySide => {
  const asDecided = assess(job);
  const { truss, coverage } = asDecided;
  const of = (way: 'spliceEach' | 'replaceBay') => assess(decided(job, bayRoute(truss, coverage, bay, way)));
  return sideBySide([
    { name: 'As decided', ...asDecided },
    { name: `Bay ${bay}: splice each`, ...of('spliceEach') },
    { name: `Bay ${bay}: replace whole`, ...of('replaceBay') },
  ]);
};

/** The supplement between two copies of a job. */
export const changedSince = (before: Job, after: Job): Supplement =>
  supplement(assess(before), assess(after));
