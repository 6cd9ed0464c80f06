import * as z from 'zod/mini';
import { type Issue, ok, type Result, refused } from '../base/issue.ts';
import type { Change, ChangeName, Stamp } from './change.ts';
import { uncorrected } from './corrections.ts';
import { type Job, type JobRecord, jobSchema } from './jobSchema.ts';
import { type Entry, planned } from './planned.ts';
import { readRecord } from './readRecord.ts';
import { recordFaults } from './recordFaults.ts';
import { inFileOrder, schemaIssues } from './schemaIssues.ts';

/** The job after a change, what a person calls the change, and the ids of the records it added. */
export interface Edited {
  readonly job: Job;
  readonly name: ChangeName;
  readonly added: readonly string[];
}

const stamped = (entry: Entry, { by, at, device, newId }: Stamp): object => {
  const given = Object.entries(entry).filter(([, value]) => value !== undefined);
  return { ...Object.fromEntries(given), id: newId(), by, at, device };
};

const checked = (value: object): Result<JobRecord> => {
  const read = readRecord(value, []);
  if (!read.ok) return refused(inFileOrder(read.placed, value));
  const faults = recordFaults(read.record);
  return faults.length > 0 ? refused(faults) : ok(read.record);
};

/** The job with records added to its end; what is there already is shared, not copied. Fails with every issue. */
export const append = (
  job: Job,
  entries: readonly Entry[],
  stamp: Stamp,
): Result<readonly [Job, readonly string[]]> => {
  const results = entries.map((entry) => checked(stamped(entry, stamp)));
  const issues: readonly Issue[] = results.flatMap((r) => r.issues);
  const records = results.flatMap((r) => (r.ok ? [r.value] : []));
  if (records.length < results.length) return refused(issues);
  const taken = new Set(job.records.map((r) => r.id));
  for (const { id } of records)
    if (taken.has(id) || !taken.add(id)) throw new Error(`record id given twice: ${id}`);
  return ok([{ ...job, records: [...job.records, ...records] }, records.map((r) => r.id)]);
};

const withField = (job: Job, field: 'name' | 'aircraft', value: string): Result<Job> => {
  const parsed = z.safeParse(jobSchema.shape[field], value);
  if (!parsed.success) return refused(schemaIssues(parsed.error.issues, value, [field]).map((p) => p.issue));
  return ok({ ...job, [field]: value });
};

/**
 * The job after a change a person made. Records never change: everything but the job's name and aircraft is a new
 * record. A change that is not readable, contradicts itself, or changes nothing gives issues; their paths start at the
 * record, so that a form can show them at its fields.
 *
 * @param stamp  who, when and on which device, and a source of new ids
 */
export const edit = (job: Job, change: Change, stamp: Stamp): Result<Edited> => {
  if (change.kind === 'renameJob' || change.kind === 'setAircraft') {
    const changed =
      change.kind === 'renameJob'
        ? withField(job, 'name', change.name)
        : withField(job, 'aircraft', change.aircraft);
    return changed.ok ? ok({ job: changed.value, name: change.kind, added: [] }) : changed;
  }
  const plan = planned(change, job.records, uncorrected(job.records).live);
  if (!plan.ok) return plan;
  const appended = append(job, plan.value, stamp);
  if (!appended.ok) return appended;
  const [after, added] = appended.value;
  return ok({ job: after, name: change.kind === 'tag' ? change.tag : change.kind, added });
};
