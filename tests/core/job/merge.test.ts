import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import { merge } from '../../../src/core/job/merge.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { jobArb, smallModel } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';

const merged = (a: Job, b: Job): Job => {
  const result = merge(a, b);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const withAside = jobArb().chain((job) =>
  fc
    .array(fc.jsonValue({ maxDepth: 2 }), { maxLength: 2 })
    .map((setAside): Job => (setAside.length > 0 ? { ...job, setAside } : job)),
);
const bow = (id: string, more: object = {}): JobRecord =>
  ({
    kind: 'finding',
    damage: 'bow',
    of: 'U1L-U2L',
    origin: 'unknown',
    id,
    by: 'Ana',
    at: '2026-03-01T09:00:00Z',
    device: 't',
    ...more,
  }) as JobRecord;
const box = (records: readonly JobRecord[], more: Partial<Job> = {}): Job => ({
  ...jobFromModel(smallModel, 'Box'),
  records,
  ...more,
});

describe('merge', { timeout: 300_000 }, () => {
  it('does not mind the order of merging, nor merging twice (seed 461)', () => {
    fc.assert(
      fc.property(withAside, withAside, withAside, (a, b, c) => {
        expect(merged(a, b)).toEqual(merged(b, a));
        expect(merged(merged(a, b), c)).toEqual(merged(a, merged(b, c)));
        expect(merged(merged(a, b), b)).toEqual(merged(a, b));
      }),
      { seed: 461, numRuns: soak(2000) },
    );
  });

  it('loses no record and makes none up (seed 462)', () => {
    const texts = (job: Job): readonly string[] =>
      job.records.map((r) => JSON.stringify(Object.entries(r).sort()));
    fc.assert(
      fc.property(jobArb(), jobArb(), (a, b) => {
        expect(new Set(texts(merged(a, b)))).toEqual(new Set([...texts(a), ...texts(b)]));
      }),
      { seed: 462, numRuns: soak(2000) },
    );
  });

  it('shows corrections of the same record made on two tablets as a clash', () => {
    const one = box([bow('a'), bow('b', { replaces: 'a' })]);
    const other = box([bow('a'), bow('c', { replaces: 'a', device: 'u' })]);
    expect(standing(merged(one, other).records)).toMatchObject({
      clashes: [{ replaced: 'a', by: ['b', 'c'] }],
      findings: [{ id: 'b' }, { id: 'c' }],
    });
  });

  it('keeps both of two different records with one id, counts one, and lists it', () => {
    const job = merged(box([bow('a', { depthIn: 1 })]), box([bow('a', { depthIn: 2 })]));
    expect(job.records.length).toBe(2);
    const live = standing(job.records);
    expect(live.findings.length).toBe(1);
    expect(live.issues).toMatchObject([{ code: 'same-id-differs', facts: { id: 'a', times: 2 } }]);
  });

  it('never merges practice into a job, nor jobs begun on different models', () => {
    const a = box([]);
    expect(merge(a, box([], { purpose: 'practice' }))).toMatchObject({
      ok: false,
      issues: [{ code: 'other-purpose', facts: { got: 'practice', expected: 'job' } }],
    });
    expect(merge(a, box([], { model: { ...smallModel, drawnIn: 'mm' } }))).toMatchObject({
      ok: false,
      issues: [{ code: 'other-model' }],
    });
  });

  it('takes one of two names either way round, and lists it', () => {
    const [a, b] = [box([], { name: 'Barn' }), box([], { name: 'Attic' })];
    for (const result of [merge(a, b), merge(b, a)])
      expect(result).toMatchObject({
        ok: true,
        value: { name: 'Attic' },
        issues: [{ code: 'field-differs', at: 'name' }],
      });
  });
});
