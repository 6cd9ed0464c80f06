import { type Issue, issue } from '../base/issue.ts';
import type { JobRecord } from './jobSchema.ts';
import { jsonText } from './jsonText.ts';
import { byStamp, byText, latestOf } from './stampOrder.ts';

/** Two standing records that replace the same one: both stand until a person decides. */
export interface Clash {
  readonly replaced: string;
  readonly by: readonly string[];
}

/** Where a record is, said by its id: the same whatever the order of the file. */
export const atRecord = (id: string): string => `records[id=${id}]`;

interface Link {
  readonly from: JobRecord;
  readonly to: JobRecord;
}

/** One record an id. Of several that differ, the latest counts (then the last by text) and the rest are listed. */
const oneAnId = (records: readonly JobRecord[], issues: Issue[]): Map<string, JobRecord> => {
  const byId = new Map<string, JobRecord>();
  const doubled = new Map<string, JobRecord[]>();
  for (const record of records) {
    const first = byId.get(record.id);
    const others = doubled.get(record.id);
    if (others) others.push(record);
    else if (first) doubled.set(record.id, [first, record]);
    else byId.set(record.id, record);
  }
  for (const [id, same] of doubled) {
    const ranked = [...new Map(same.map((record) => [jsonText(record), record])).entries()].sort(
      ([textA, a], [textB, b]) => byStamp(a, b) || byText(textA, textB),
    );
    byId.set(id, ranked.at(-1)?.[1] as JobRecord);
    const code = ranked.length === 1 ? 'record-twice' : 'same-id-differs';
    issues.push(issue(code, atRecord(id), { id, times: same.length }, 'keep-one-record'));
  }
  return byId;
};

/** Links whose target is here. What links to nothing, and rings (each points at the next), are listed. */
const soundLinks = (
  records: ReadonlyMap<string, JobRecord>,
  field: 'withdraws' | 'replaces',
  issues: Issue[],
): readonly Link[] => {
  const links = new Map<string, Link>();
  for (const from of records.values()) {
    const id = from[field];
    if (id === undefined || (field === 'replaces' && from.withdraws !== undefined)) continue;
    const to = records.get(id);
    if (!to) {
      const code = field === 'replaces' ? 'replaces-unknown' : 'withdraws-unknown';
      issues.push(issue(code, `${atRecord(from.id)}.${field}`, { id }, 'find-missing-record'));
    } else if (field === 'replaces' && to.kind !== from.kind) {
      const facts = { id, got: from.kind, expected: to.kind };
      issues.push(issue('replaces-other-kind', `${atRecord(from.id)}.${field}`, facts, 'withdraw-and-add'));
    } else links.set(from.id, { from, to });
  }
  const seen = new Set<string>();
  for (const start of links.keys()) {
    const trail: string[] = [];
    let at: string | undefined = start;
    while (at !== undefined && !seen.has(at)) {
      seen.add(at);
      trail.push(at);
      at = links.get(at)?.to.id;
    }
    const ring = at === undefined ? -1 : trail.indexOf(at);
    if (ring < 0) continue;
    const members = trail.slice(ring).sort(byText);
    const facts = { ids: members, field };
    issues.push(
      issue('records-in-a-ring', `${atRecord(members[0] as string)}.${field}`, facts, 'withdraw-one'),
    );
  }
  return [...links.values()];
};

/** Sources before targets. Links of a ring have no first source and do not come out: void, so that none of it is lost. */
const sourcesFirst = (links: readonly Link[]): readonly Link[] => {
  const waiting = new Map<string, number>();
  for (const { to } of links) waiting.set(to.id, (waiting.get(to.id) ?? 0) + 1);
  const bySource = new Map(links.map((link) => [link.from.id, link]));
  const ready = links.filter(({ from }) => !waiting.has(from.id));
  for (const { to } of ready) {
    const left = (waiting.get(to.id) ?? 0) - 1;
    waiting.set(to.id, left);
    const next = bySource.get(to.id);
    if (left === 0 && next) ready.push(next);
  }
  return ready;
};

/** For every corrected record, one standing record a branch of its corrections: the latest of that branch. */
const branches = (
  links: readonly Link[],
  withdrawn: ReadonlySet<string>,
): ReadonlyMap<string, readonly JobRecord[]> => {
  const ends = new Map<string, JobRecord[]>();
  for (const { from, to } of sourcesFirst(links)) {
    const end = latestOf(ends.get(from.id) ?? []) ?? (withdrawn.has(from.id) ? undefined : from);
    const others = ends.get(to.id);
    if (end && others) others.push(end);
    else if (end) ends.set(to.id, [end]);
  }
  return ends;
};

/**
 * The records that count: not replaced, not withdrawn. Does not depend on the order of the records.
 *
 * - Of a chain of corrections the last counts. Withdrawing it removes it alone: the one before stands again, and a
 *   person who removes the whole entry withdraws the whole chain (`edit.ts` does). Withdrawing one in the middle
 *   changes nothing while a later one stands. A withdrawal can itself be withdrawn.
 * - A record that withdraws says nothing else: its own content does not count.
 * - Two standing corrections of one record clash and both stand. Rings and links to nothing are void and listed.
 */
export const uncorrected = (
  records: readonly JobRecord[],
): {
  readonly live: readonly JobRecord[];
  readonly clashes: readonly Clash[];
  readonly issues: readonly Issue[];
} => {
  const issues: Issue[] = [];
  const byId = oneAnId(records, issues);
  const withdrawn = new Set<string>();
  for (const { from, to } of sourcesFirst(soundLinks(byId, 'withdraws', issues)))
    if (!withdrawn.has(from.id)) withdrawn.add(to.id);
  const ends = branches(soundLinks(byId, 'replaces', issues), withdrawn);
  return {
    live: [...byId.values()]
      .filter((r) => r.withdraws === undefined && !withdrawn.has(r.id) && !ends.has(r.id))
      .sort(byStamp),
    clashes: [...ends]
      .filter(([, by]) => by.length > 1)
      .map(([replaced, by]) => ({ replaced, by: by.map((r) => r.id).sort(byText) }))
      .sort((a, b) => byText(a.replaced, b.replaced)),
    issues,
  };
};
