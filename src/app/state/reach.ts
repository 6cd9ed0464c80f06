import type { Stamp } from '../../core/job/change.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { undoOf } from '../../core/job/undo.ts';

/**
 * The job to show when undo or redo goes from one state to another. Records that a copy has carried off this device
 * are not called back: they stay, withdrawn. Those withdrawn by an earlier undo stay as they are.
 *
 * @param copied  ids of records in a copy elsewhere
 */
export const reach = (from: Job, to: Job, copied: ReadonlySet<string>, stamp: Stamp): Job => {
  const kept = new Set(to.records.map(({ id }) => id));
  const leaving = from.records.filter(({ id }) => !kept.has(id));
  if (!leaving.some(({ id }) => copied.has(id))) return to;
  const leavingIds = new Set(leaving.map(({ id }) => id));
  const settled = new Set(
    leaving.flatMap(({ id, withdraws }) =>
      withdraws !== undefined && leavingIds.has(withdraws) ? [id, withdraws] : [],
    ),
  );
  const taken = leaving.map(({ id }) => id).filter((id) => !settled.has(id));
  const undone = undoOf(from, taken, copied, stamp, 'undone');
  if (!undone.ok) throw new Error(`undo was refused: ${undone.issues.map(({ code }) => code).join(', ')}`);
  const here = new Set(from.records.map(({ id }) => id));
  return { ...to, records: [...undone.value.job.records, ...to.records.filter(({ id }) => !here.has(id))] };
};
