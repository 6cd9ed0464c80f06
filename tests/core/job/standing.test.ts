import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobRecord } from '../../../src/core/job/jobSchema.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { recordArb, smallModel } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';

let minute = 0;
const stamp = (id: string, more: object = {}) => ({
  id,
  by: 'Ana',
  at: `2026-03-01T09:${String(minute++ % 60).padStart(2, '0')}:00Z`,
  device: 'tablet 1',
  ...more,
});
const bow = (id: string, more: object = {}): JobRecord =>
  ({ kind: 'finding', damage: 'bow', of: 'U1L-U2L', origin: 'unknown', ...stamp(id, more) }) as JobRecord;
const out = (id: string, withdraws: string): JobRecord =>
  ({ kind: 'note', words: '', ...stamp(id, { withdraws }) }) as JobRecord;
const ids = (records: readonly JobRecord[]): readonly string[] => standing(records).findings.map((f) => f.id);
const codes = (records: readonly JobRecord[]): readonly string[] =>
  standing(records).issues.map((i) => i.code);

describe('standing', { timeout: 300_000 }, () => {
  it('counts the last of a chain of corrections', () => {
    expect(ids([bow('a'), bow('b', { replaces: 'a' }), bow('c', { replaces: 'b' })])).toEqual(['c']);
  });

  it('brings the earlier record back when its correction alone is withdrawn', () => {
    expect(ids([bow('a'), bow('b', { replaces: 'a' }), out('x', 'b')])).toEqual(['a']);
  });

  it('leaves the end of a chain standing when one in its middle is withdrawn', () => {
    expect(ids([bow('a'), bow('b', { replaces: 'a' }), bow('c', { replaces: 'b' }), out('x', 'b')])).toEqual([
      'c',
    ]);
  });

  it('lets a withdrawal be withdrawn', () => {
    expect(ids([bow('a'), out('x', 'a'), out('y', 'x')])).toEqual(['a']);
    expect(ids([bow('a'), out('x', 'a'), out('y', 'x'), out('z', 'y')])).toEqual([]);
  });

  it('does not count what a withdrawing record says itself', () => {
    expect(standing([bow('a'), out('x', 'a')]).notes).toEqual([]);
    expect(ids([bow('a'), bow('b', { withdraws: 'a' })])).toEqual([]);
  });

  it('keeps both of two corrections of the same record, and names the clash', () => {
    const live = standing([bow('a'), bow('b', { replaces: 'a' }), bow('c', { replaces: 'a' })]);
    expect(live.findings.map((f) => f.id)).toEqual(['b', 'c']);
    expect(live.clashes).toEqual([{ replaced: 'a', by: ['b', 'c'] }]);
  });

  it('names a clash by what stands now, and ends it when one side is withdrawn', () => {
    const both = [
      bow('a'),
      bow('b', { replaces: 'a' }),
      bow('c', { replaces: 'a' }),
      bow('d', { replaces: 'c' }),
    ];
    expect(standing(both).clashes).toEqual([{ replaced: 'a', by: ['b', 'd'] }]);
    expect(standing([...both, out('x', 'b')]).clashes).toEqual([]);
  });

  it('lists links to nothing and keeps the record', () => {
    expect(ids([bow('a', { replaces: 'gone' })])).toEqual(['a']);
    expect(codes([bow('a', { replaces: 'gone' }), out('x', 'gone')])).toEqual([
      'replaces-unknown',
      'withdraws-unknown',
    ]);
  });

  it('loses nothing to a ring of corrections or to a record that corrects itself', () => {
    const ring = [bow('a', { replaces: 'c' }), bow('b', { replaces: 'a' }), bow('c', { replaces: 'b' })];
    expect(ids(ring).length).toBe(3);
    expect(standing(ring).issues).toMatchObject([
      { code: 'records-in-a-ring', facts: { ids: ['a', 'b', 'c'] } },
    ]);
    expect(ids([bow('a', { replaces: 'a' })])).toEqual(['a']);
    expect(ids([...ring, bow('d', { replaces: 'a' })])).toEqual(['b', 'c', 'd']);
  });

  it('loses no finding to a record of another kind that claims to correct it', () => {
    const note = { kind: 'note', words: 'x', ...stamp('n', { replaces: 'a' }) } as JobRecord;
    expect(ids([bow('a'), note])).toEqual(['a']);
    expect(codes([bow('a'), note])).toEqual(['replaces-other-kind']);
  });

  it('counts one of two records with the same id, the latest, and lists it', () => {
    const early = bow('a', { at: '2026-03-01T09:00:00Z', depthIn: 1 });
    const late = bow('a', { at: '2026-03-01T09:00:01Z', depthIn: 2 });
    for (const records of [
      [early, late],
      [late, early],
    ]) {
      expect(standing(records).findings).toEqual([late]);
      expect(codes(records)).toEqual(['same-id-differs']);
    }
    expect(codes([early, { ...early }])).toEqual(['record-twice']);
  });

  it('takes the latest by the instant, not by the text of the time', () => {
    const mishap = (id: string, at: string): JobRecord =>
      ({ kind: 'mishap', cases: [], ...stamp(id), at }) as JobRecord;
    // 09:30+02:00 is 07:30 UTC, before 08:00 UTC.
    const live = standing([mishap('a', '2026-03-01T09:30:00+02:00'), mishap('b', '2026-03-01T08:00:00Z')]);
    expect(live.mishap?.id).toBe('b');
    expect(live.issues).toMatchObject([
      { code: 'several-stand', facts: { what: 'mishap', counted: 'b', others: ['a'] } },
    ]);
  });

  it('gives the latest amendment as the model, and none when nobody amended it', () => {
    const model = (id: string, name: string, more: object = {}): JobRecord =>
      ({ kind: 'model', model: { ...smallModel, name }, ...stamp(id, more) }) as JobRecord;
    expect(standing([bow('a')]).model).toBeUndefined();
    expect(standing([model('a', 'one'), model('b', 'two', { replaces: 'a' })]).model?.name).toBe('two');
  });

  it('lists two standing decisions for one member', () => {
    const decide = (id: string): JobRecord =>
      ({ kind: 'decision', of: 'U1L-U2L', choice: 'splice', ...stamp(id) }) as JobRecord;
    const live = standing([decide('a'), decide('b')]);
    expect(live.decisions.length).toBe(2);
    expect(live.issues).toMatchObject([{ code: 'several-stand', facts: { what: 'decision', counted: 'b' } }]);
  });

  it('does not depend on the order of the records (seed 421)', () => {
    const shuffled = fc
      .array(recordArb, { maxLength: 14 })
      .chain((records) =>
        fc.tuple(fc.constant(records), fc.shuffledSubarray(records, { minLength: records.length })),
      );
    fc.assert(
      fc.property(shuffled, ([records, other]) => {
        expect(standing(other)).toEqual(standing(records));
      }),
      { seed: 421, numRuns: soak(20_000) },
    );
  });

  it('loses no record: each stands, is withdrawn or withdraws, or is corrected by one that does (seed 422)', () => {
    fc.assert(
      fc.property(fc.uniqueArray(recordArb, { maxLength: 14, selector: (r) => r.id }), (records) => {
        const live = standing(records);
        const stands = new Set(
          [live.looks, live.findings, live.readings, live.decisions, live.notes].flat().map((r) => r.id),
        );
        for (const record of records) {
          if (
            ['mishap', 'model'].includes(record.kind) ||
            record.withdraws !== undefined ||
            stands.has(record.id)
          )
            continue;
          const named = records.some((r) => r.withdraws === record.id || r.replaces === record.id);
          expect(named, record.id).toBe(true);
        }
      }),
      { seed: 422, numRuns: soak(20_000) },
    );
  });

  it('answers a chain of 50 000 corrections without running out of stack', () => {
    const long = Array.from({ length: 50_000 }, (_, i) =>
      bow(`r${i}`, i > 0 ? { replaces: `r${i - 1}` } : {}),
    );
    expect(ids(long)).toEqual(['r49999']);
  });
});
