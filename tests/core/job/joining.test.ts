import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/core/job/change.ts';
import { edit } from '../../../src/core/job/edit.ts';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { joining } from '../../../src/core/job/joining.ts';
import { smallModel } from '../../kit/garbage.ts';

let count = 0;
const changed = (job: Job, change: Change, by: string, at = '2031-05-04T10:00:00Z'): Job => {
  const stamp = { by, at, device: by, newId: () => `${by}-${++count}` };
  const edited = edit(job, change, stamp);
  if (!edited.ok) throw new Error(edited.issues.map(({ code }) => code).join());
  return edited.value.job;
};
const begun = jobFromModel(smallModel, 'Two tablets');
const joined = (a: Job, b: Job) => {
  const result = joining(a, b);
  if (!result.ok) throw new Error(result.issues.map(({ code }) => code).join());
  return result.value;
};
const bend = (of: string): Change => ({ kind: 'tag', of: [of], tag: 'bent' });

describe('joining two tablets', () => {
  it('counts what comes by kind, and finds no conflict where each looked at other tubes', () => {
    const ana = changed(begun, bend('U1L-U2L'), 'Ana');
    const ben = changed(
      changed(begun, bend('U1R-U2R'), 'Ben'),
      { kind: 'note', note: { words: 'rust' } },
      'Ben',
    );
    const { comes, comesInAll, onlyHere, conflicts, job } = joined(ana, ben);
    expect({ comes, comesInAll, onlyHere, conflicts }).toEqual({
      comes: { finding: 1, note: 1 },
      comesInAll: 2,
      onlyHere: 1,
      conflicts: [],
    });
    expect(job.records).toHaveLength(3);
  });

  it('lays two corrections of one finding side by side and keeps both', () => {
    const both = changed(begun, bend('U1L-U2L'), 'Ana');
    const id = both.records[0]!.id;
    const correct = (depthIn: number): Change => ({
      kind: 'correctFinding',
      id,
      finding: { damage: 'bow', of: 'U1L-U2L', origin: 'unknown', depthIn } as never,
    });
    const { conflicts, job } = joined(
      changed(both, correct(0.25), 'Ana'),
      changed(both, correct(0.5), 'Ben'),
    );
    expect(conflicts.map(({ kind, about, records }) => [kind, about, records.length])).toEqual([
      ['corrections', id, 2],
    ]);
    expect(job.records).toHaveLength(3);
  });

  it('lays two decisions on one tube side by side and says which counts', () => {
    const decide = (choice: 'splice' | 'replace'): Change => ({ kind: 'decide', of: ['U1L-U2L'], choice });
    const ana = changed(begun, decide('splice'), 'Ana', '2031-05-04T10:00:00Z');
    const ben = changed(begun, decide('replace'), 'Ben', '2031-05-04T11:00:00Z');
    const [conflict] = joined(ana, ben).conflicts;
    expect(conflict?.kind).toBe('severalStand');
    expect(conflict?.records.map((record) => record.id === conflict.counts)).toEqual([true, false]);
    expect(conflict?.counts).toBe(ben.records[0]!.id);
  });

  it('shows one id with two contents with both contents', () => {
    const ana = changed(begun, { kind: 'note', note: { words: 'one' } }, 'Ana');
    const ben = {
      ...ana,
      records: ana.records.map((record) => ({ ...record, words: 'two' }) as typeof record),
    };
    const [conflict] = joined(ana, ben).conflicts;
    expect(conflict?.kind).toBe('sameId');
    expect(conflict?.records.map((record) => (record as { words?: string }).words).sort()).toEqual([
      'one',
      'two',
    ]);
  });

  it('names a field of the job that differs, and does not tell again of what already clashed', () => {
    const ana = { ...begun, aircraft: 'high wing' };
    const ben = { ...begun, aircraft: 'low wing' };
    expect(joined(ana, ben).fields.map(({ at }) => at)).toEqual(['aircraft']);
    const decide = (choice: 'splice' | 'replace'): Change => ({ kind: 'decide', of: ['U1L-U2L'], choice });
    const clashing = joined(
      changed(begun, decide('splice'), 'Ana'),
      changed(begun, decide('replace'), 'Ben'),
    ).job;
    expect(joined(clashing, clashing).conflicts).toEqual([]);
  });

  it('refuses practice and another model', () => {
    const practice = { ...begun, purpose: 'practice' as const };
    const other = { ...begun, model: { ...smallModel, name: 'Other' } };
    expect(joining(begun, practice).issues.map(({ code }) => code)).toEqual(['other-purpose']);
    expect(joining(begun, other).issues.map(({ code }) => code)).toEqual(['other-model']);
  });
});
