import { ok, type Result } from '../base/issue.ts';
import type { Stamp } from './change.ts';
import { append } from './edit.ts';
import type { Job } from './jobSchema.ts';

/** The job without a change, and the withdrawals that took. */
export interface Undone {
  readonly job: Job;
  readonly added: readonly string[];
}

/**
 * The job without the records a change added. As long as no copy with one of them has left the device and nothing
 * else points at them, they are taken out; else they are withdrawn, and stay to be read.
 *
 * @param addedIds  what `edit` gave as `added`
 * @param exported  ids that are in a copy elsewhere
 */
export const undoOf = (
  job: Job,
  addedIds: readonly string[],
  exported: ReadonlySet<string>,
  stamp: Stamp,
  reason = '',
): Result<Undone> => {
  const undone = new Set(addedIds);
  const pointed = job.records.some(
    (r) => !undone.has(r.id) && (undone.has(r.replaces ?? '') || undone.has(r.withdraws ?? '')),
  );
  if (!pointed && !addedIds.some((id) => exported.has(id)))
    return ok({ job: { ...job, records: job.records.filter((r) => !undone.has(r.id)) }, added: [] });
  const here = job.records.filter((r) => undone.has(r.id)).map((r) => r.id);
  const appended = append(
    job,
    here.map((withdraws) => ({ kind: 'note', words: reason, withdraws })),
    stamp,
  );
  return appended.ok ? ok({ job: appended.value[0], added: appended.value[1] }) : appended;
};
