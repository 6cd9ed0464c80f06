import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change, Stamp } from '../../../src/core/job/change.ts';
import { type Edited, edit } from '../../../src/core/job/edit.ts';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { readJob } from '../../../src/core/job/read.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { undoOf } from '../../../src/core/job/undo.ts';
import { writeJob } from '../../../src/core/job/write.ts';
import { smallModel } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';
import { frozen } from '../../kit/trusses.ts';

/** A stamp whose clock and ids go on from the records that are there. */
const stampFor = (job: Job): Stamp => {
  let next = job.records.length;
  const two = (n: number): string => String(n).padStart(2, '0');
  const at = `2026-03-01T${two(Math.floor(next / 3600) % 24)}:${two(Math.floor(next / 60) % 60)}:${two(next % 60)}Z`;
  return { by: 'Ana', device: 'tablet 1', at, newId: () => `n${next++}` };
};
const tried = (job: Job, change: Change) => edit(job, change, stampFor(job));
const made = (job: Job, ...changes: Change[]): Job =>
  changes.reduce((now, change) => done(now, change).job, job);
const done = (job: Job, change: Change): Edited => {
  const result = tried(job, change);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const fresh = frozen(jobFromModel(smallModel, 'Box'));
const bow: Change = {
  kind: 'addFinding',
  finding: { damage: 'bow', of: 'U1L-U2L', origin: 'thisAccident', depthIn: 0.25, typed: { depthIn: '1/4' } },
};

describe('edit', () => {
  it('tags several members in one change, once each, and passes over those tagged already', () => {
    const { job, name, added } = done(fresh, {
      kind: 'tag',
      tag: 'bent',
      of: ['U1L-U2L', 'L1L-L2L', 'U1L-U2L'],
    });
    expect(name).toBe('bent');
    expect(added.length).toBe(2);
    expect(standing(job.records).findings).toMatchObject([
      { damage: 'bow', of: 'U1L-U2L', origin: 'unknown' },
      { damage: 'bow', of: 'L1L-L2L', origin: 'unknown' },
    ]);
    expect(standing(job.records).findings[0]).not.toHaveProperty('depthIn');
    expect(tried(job, { kind: 'tag', tag: 'bent', of: ['U1L-U2L'] })).toMatchObject({
      ok: false,
      issues: [{ code: 'nothing-to-change' }],
    });
    expect(done(job, { kind: 'tag', tag: 'bent', of: ['U1L-U2L', 'U2R'] }).added.length).toBe(1);
  });

  it('makes each tag the record that it means', () => {
    const job = made(
      fresh,
      { kind: 'tag', tag: 'cracked', of: ['U2R'], origin: 'older' },
      { kind: 'tag', tag: 'forReplacement', of: ['U1L-U2L'], reason: 'kinked' },
      { kind: 'tag', tag: 'lookedAt', of: ['L1R'], method: 'penetrant', finishRemoved: true },
      { kind: 'tag', tag: 'lookAgain', of: ['L2R'], note: 'paint flaked' },
    );
    const live = standing(job.records);
    expect(live.findings).toMatchObject([{ damage: 'crack', of: 'U2R', origin: 'older' }]);
    expect(live.decisions).toMatchObject([{ choice: 'replace', of: 'U1L-U2L', reason: 'kinked' }]);
    expect(live.looks).toMatchObject([
      { state: 'lookedAt', of: 'L1R', method: 'penetrant', finishRemoved: true },
      { state: 'lookAgain', of: 'L2R', method: 'eye', finishRemoved: false, note: 'paint flaked' },
    ]);
  });

  it('stamps every record with who, when and on which device', () => {
    expect(done(fresh, bow).job.records[0]).toMatchObject({
      id: 'n0',
      by: 'Ana',
      at: '2026-03-01T00:00:00Z',
      device: 'tablet 1',
      typed: { depthIn: '1/4' },
    });
  });

  it('corrects by a new record and leaves the old one to be read', () => {
    const first = done(fresh, bow).job;
    const job = made(first, {
      kind: 'correctFinding',
      id: 'n0',
      finding: { damage: 'kink', of: 'U1L-U2L', origin: 'thisAccident', depthIn: 0.3 },
    });
    expect(job.records[0]).toBe(first.records[0]);
    expect(standing(job.records).findings).toMatchObject([{ damage: 'kink', replaces: 'n0' }]);
    expect(
      tried(job, {
        kind: 'correctFinding',
        id: 'n0',
        finding: { damage: 'bow', of: 'U2R', origin: 'older' },
      }),
    ).toMatchObject({
      ok: false,
      issues: [{ code: 'not-standing', facts: { id: 'n0' } }],
    });
  });

  it('corrects the marks of a photo by a new record of the same picture', () => {
    const photo = { of: 'U1L-U2L', hash: 'ab'.repeat(32) };
    const ring = { mark: 'ring', at: [0.5, 0.5], to: [0.6, 0.5] } as const;
    const job = made(
      fresh,
      { kind: 'addPhoto', photo: { ...photo, marks: [{ ...ring, at: [0.1, 0.1], to: [0.2, 0.1] }] } },
      {
        kind: 'correctPhoto',
        id: 'n0',
        photo: { ...photo, marks: [{ ...ring, at: [0.5, 0.5], to: [0.6, 0.5] }] },
      },
    );
    expect(job.records).toHaveLength(2);
    expect(standing(job.records).photos).toMatchObject([
      { hash: photo.hash, replaces: 'n0', marks: [{ mark: 'ring', at: [0.5, 0.5] }] },
    ]);
    const bow = { kind: 'correctPhoto', id: 'nothing', photo } as const;
    expect(tried(job, bow)).toMatchObject({ ok: false, issues: [{ code: 'not-standing' }] });
  });

  it('withdraws a whole entry, so that no earlier value comes back', () => {
    const corrected = made(fresh, bow, {
      kind: 'correctFinding',
      id: 'n0',
      finding: { damage: 'bow', of: 'U1L-U2L', origin: 'thisAccident', depthIn: 0.3 },
    });
    const job = made(corrected, { kind: 'withdraw', ids: ['n1'], reason: 'shadow of the cable' });
    expect(standing(job.records).findings).toEqual([]);
    expect(job.records.length).toBe(4);
    expect(job.records.filter((r) => r.withdraws).map((r) => r.withdraws)).toEqual(['n1', 'n0']);
    expect(tried(job, { kind: 'withdraw', ids: ['n1'], reason: '' })).toMatchObject({
      ok: false,
      issues: [{ code: 'not-standing' }],
    });
  });

  it('replaces the decision that stands for each member, and adds none that says the same', () => {
    const job = made(
      fresh,
      { kind: 'decide', of: ['U1L-U2L'], choice: 'splice' },
      { kind: 'decide', of: ['U1L-U2L', 'U2R'], choice: 'replace', reason: 'too near the cluster' },
    );
    expect(standing(job.records).decisions).toMatchObject([
      { of: 'U1L-U2L', choice: 'replace', replaces: 'n0' },
      { of: 'U2R', choice: 'replace' },
    ]);
    expect(tried(job, { kind: 'decide', of: ['U2R'], choice: 'replace' }).ok).toBe(false);
    expect(standing(job.records).issues).toEqual([]);
  });

  it('keeps one mishap and one amended model, each correcting the one before', () => {
    const job = made(
      fresh,
      { kind: 'setMishap', mishap: { cases: [], story: 'ground loop' } },
      { kind: 'setMishap', mishap: { cases: [], blow: { cluster: 'L1L', direction: [0, 1, 0] } } },
      { kind: 'amendModel', model: { ...smallModel, name: 'first' } },
      { kind: 'amendModel', model: { ...smallModel, name: 'second' } },
    );
    const live = standing(job.records);
    expect(live.mishap?.blow?.cluster).toBe('L1L');
    expect(live.model?.name).toBe('second');
    expect(live.issues).toEqual([]);
    expect(job.model).toBe(fresh.model);
    expect(tried(job, { kind: 'amendModel', model: { ...smallModel, name: 'second' } }).ok).toBe(false);
  });

  it('adds the other kinds of records as they are given', () => {
    const job = made(
      fresh,
      { kind: 'setHeld', held: { setup: 'jig' } },
      { kind: 'setArea', area: { bay: '1', face: 'left', access: 'stripped' } },
      { kind: 'addManual', manual: { topic: 'bow', valueIn: 0.1, source: 'maker’s manual, page 3' } },
      { kind: 'addPhoto', photo: { of: 'U2R', hash: 'abc' } },
      { kind: 'addProgress', progress: { step: 'straighten', of: 'U1L-U2L', done: false } },
      { kind: 'note', note: { words: 'wet' } },
      {
        kind: 'addReading',
        reading: {
          ends: [
            { cluster: 'U1L', mark: 'axis' },
            { cluster: 'L2L', mark: 'axis' },
          ],
          lengthIn: 38.4,
          instrument: 'trammel',
          hold: 'beforeCutting',
        },
      },
      { kind: 'renameJob', name: 'Barn find' },
      { kind: 'setAircraft', aircraft: 'N-0000' },
    );
    const live = standing(job.records);
    expect(
      [live.held, live.areas, live.manual, live.photos, live.progress, live.notes, live.readings].map(
        (l) => l.length,
      ),
    ).toEqual([1, 1, 1, 1, 1, 1, 1]);
    expect(job).toMatchObject({ name: 'Barn find', aircraft: 'N-0000' });
  });

  it('refuses what cannot be read or contradicts itself, by field', () => {
    const reading = { instrument: 'trammel', hold: 'beforeCutting' } as const;
    const issuesOf = (change: Change): readonly string[] =>
      tried(fresh, change).issues.map((i) => `${i.code} ${i.at}`);
    expect(
      issuesOf({ kind: 'addFinding', finding: { damage: 'bow', of: '', origin: 'unknown', depthIn: -1 } }),
    ).toEqual(['text-empty of', 'out-of-range depthIn']);
    expect(
      issuesOf({
        kind: 'addFinding',
        finding: { damage: 'oval', of: 'a', origin: 'unknown', largestIn: 0.7, smallestIn: 0.8 },
      }),
    ).toEqual(['largest-below-smallest largestIn']);
    const a = { cluster: 'U1L', mark: 'axis' } as const;
    expect(issuesOf({ kind: 'addReading', reading: { ...reading, ends: [a, a], lengthIn: 3 } })).toEqual([
      'reading-between-same-point ends',
    ]);
    expect(
      issuesOf({
        kind: 'addReading',
        reading: { ...reading, ends: [a, { cluster: 'U2L', mark: 'surface', clock: 3 }] },
      }),
    ).toEqual(['mark-needs ends[1].on', 'reading-needs-one-length lengthIn']);
    expect(
      issuesOf({
        kind: 'addReading',
        reading: {
          ...reading,
          ends: [a, { cluster: 'U2L', mark: 'axis' }],
          setAndMiss: { setIn: 3, missIn: 3 },
        },
      }),
    ).toEqual(['length-not-positive setAndMiss.missIn']);
    expect(
      issuesOf({ kind: 'setMishap', mishap: { cases: [], blow: { cluster: 'U1L', direction: [0, 0, 0] } } }),
    ).toEqual(['blow-without-direction blow.direction']);
    expect(issuesOf({ kind: 'renameJob', name: '' })).toEqual(['text-empty name']);
    expect(issuesOf({ kind: 'tag', tag: 'bent', of: [] })).toEqual(['nothing-to-change of']);
  });

  it('shares everything that it does not change', () => {
    const before = done(fresh, bow).job;
    const after = made(before, { kind: 'note', note: { words: 'x' } });
    expect(after.model).toBe(before.model);
    expect(after.records[0]).toBe(before.records[0]);
    expect(made(before, { kind: 'renameJob', name: 'y' }).records).toBe(before.records);
  });

  it('throws when it is given an id that is taken: that is our own mistake', () => {
    const job = done(fresh, bow).job;
    expect(() => edit(job, bow, { ...stampFor(job), newId: () => 'n0' })).toThrow('n0');
  });
});

const someChange: fc.Arbitrary<Change> = fc.oneof(
  fc.record({
    kind: fc.constant('tag' as const),
    tag: fc.constantFrom('bent' as const, 'cracked' as const),
    of: fc.constant(['U2R', 'L1R']),
  }),
  fc.record({
    kind: fc.constant('decide' as const),
    of: fc.constant(['U2R']),
    choice: fc.constantFrom('splice' as const, 'replace' as const),
  }),
  fc.constant(bow),
  fc.record({
    kind: fc.constant('withdraw' as const),
    ids: fc.integer({ min: 0, max: 9 }).map((n) => [`n${n}`]),
    reason: fc.string(),
  }),
  fc.record({ kind: fc.constant('note' as const), note: fc.record({ words: fc.string() }) }),
);

describe('undoOf', { timeout: 300_000 }, () => {
  it('takes a change out without a trace as long as no copy has left the device (seed 471)', () => {
    fc.assert(
      fc.property(fc.array(someChange, { maxLength: 8 }), someChange, (before, change) => {
        const job = before.reduce((now, c) => {
          const result = tried(now, c);
          return result.ok ? result.value.job : now;
        }, fresh);
        const result = tried(job, change);
        if (!result.ok) return;
        expect(undoOf(result.value.job, result.value.added, new Set(), stampFor(job))).toEqual({
          ok: true,
          value: { job, added: [] },
          issues: [],
        });
      }),
      { seed: 471, numRuns: soak(2000) },
    );
  });

  it('withdraws a change that has left, so that what stood before stands again (seed 472)', () => {
    fc.assert(
      fc.property(fc.array(someChange, { maxLength: 8 }), someChange, (before, change) => {
        const job = before.reduce((now, c) => {
          const result = tried(now, c);
          return result.ok ? result.value.job : now;
        }, fresh);
        const result = tried(job, change);
        if (!result.ok) return;
        const { job: after, added } = result.value;
        const undone = undoOf(after, added, new Set(added.slice(0, 1)), stampFor(after));
        if (!undone.ok) throw new Error('refused');
        expect(undone.value.job.records.slice(0, after.records.length)).toEqual(after.records);
        expect(standing(undone.value.job.records)).toEqual(standing(job.records));
        const redone = undoOf(
          undone.value.job,
          undone.value.added,
          new Set(added),
          stampFor(undone.value.job),
        );
        expect(redone.ok && standing(redone.value.job.records)).toEqual(standing(after.records));
      }),
      { seed: 472, numRuns: soak(2000) },
    );
  });

  it('withdraws in place of taking out where another record points at it', () => {
    const { job, added } = done(fresh, bow);
    const later = made(job, {
      kind: 'correctFinding',
      id: 'n0',
      finding: { damage: 'bow', of: 'U2R', origin: 'older' },
    });
    const undone = undoOf(later, added, new Set(), stampFor(later), 'undone');
    expect(undone.ok && undone.value.job.records.at(-1)).toMatchObject({
      kind: 'note',
      withdraws: 'n0',
      words: 'undone',
    });
  });

  it('writes and reads every edited job as it is (seed 473)', () => {
    fc.assert(
      fc.property(fc.array(someChange, { maxLength: 10 }), (changes) => {
        const job = changes.reduce((now, c) => {
          const result = tried(now, c);
          return result.ok ? result.value.job : now;
        }, fresh);
        const back = readJob(writeJob(job));
        expect(back.issues).toEqual([]);
        const byId = (a: { id: string }, b: { id: string }): number => (a.id < b.id ? -1 : 1);
        expect(back.ok && { ...back.value, records: [...back.value.records].sort(byId) }).toEqual({
          ...job,
          records: [...job.records].sort(byId),
        });
      }),
      { seed: 473, numRuns: soak(2000) },
    );
  });
});
