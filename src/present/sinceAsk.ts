import type { Job } from '../core/job/jobSchema.ts';
import { standing } from '../core/job/standing.ts';
import { FROZEN_TOPIC } from '../core/plan/frozen.ts';

/** Which older state a supplement is held against: another copy, the plan as frozen last, or the job as it stood at a time. */
export type SinceAsk =
  | { readonly kind: 'copy'; readonly job: Job }
  | { readonly kind: 'frozen' }
  | { readonly kind: 'time'; readonly at: string };

/** When the plan was frozen last, of what stands. */
export const frozenAt = (job: Job): string | undefined =>
  standing(job.records).manual.findLast(({ topic }) => topic === FROZEN_TOPIC)?.at;
