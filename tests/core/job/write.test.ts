import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import { readAny, readJob, readModel } from '../../../src/core/job/read.ts';
import { writeJob, writeModel } from '../../../src/core/job/write.ts';
import { jobArb, misfilled, mutated, smallModel } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';

const read = (text: string): Job => {
  const result = readJob(text);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const look = (id: string, at: string, more: object = {}): JobRecord =>
  ({
    finishRemoved: false,
    zebra: 1,
    method: 'eye',
    apple: 2,
    state: 'lookedAt',
    of: 'U2R',
    device: 'tablet 1',
    at,
    by: 'Ana',
    id,
    kind: 'look',
    ...more,
  }) as JobRecord;

describe('writeJob', { timeout: 300_000 }, () => {
  it('writes format and version first, one record a line, earliest first, keys in the order of the schema', () => {
    const job: Job = {
      ...jobFromModel(smallModel, 'Box'),
      records: [look('b', '2026-03-01T09:00:00Z'), look('a', '2026-03-01T10:30:00+02:00')],
    };
    const lines = writeJob(job).split('\n');
    expect(lines.slice(0, 5)).toEqual([
      '{',
      '  "format": "tubewright-job",',
      '  "version": 1,',
      '  "purpose": "job",',
      '  "name": "Box",',
    ]);
    const row = (id: string, at: string): string =>
      `    { "kind": "look", "id": "${id}", "by": "Ana", "at": "${at}", "device": "tablet 1", "of": "U2R", "state": "lookedAt", "method": "eye", "finishRemoved": false, "apple": 2, "zebra": 1 }`;
    expect(lines.slice(-6)).toEqual([
      '  "records": [',
      `${row('a', '2026-03-01T10:30:00+02:00')},`,
      row('b', '2026-03-01T09:00:00Z'),
      '  ]',
      '}',
      '',
    ]);
  });

  it('writes one station, override and member of a model a line', () => {
    const lines = writeModel(smallModel).split('\n');
    expect(lines).toContain(
      '    { "label": "1", "stationIn": 0, "upper": { "waterLineIn": 24, "halfWidthIn": 12 }, "lower": { "waterLineIn": 0, "halfWidthIn": 12 } },',
    );
    expect(lines).toContain(
      '      { "bay": "1", "role": "sideDiagonal", "tube": { "odIn": 0.5, "wallIn": 0.035 } }',
    );
  });

  it('writes equal jobs equally, whatever the order of records and keys (seed 441)', () => {
    const turned = (value: unknown): unknown =>
      typeof value !== 'object' || value === null
        ? value
        : Array.isArray(value)
          ? value.map(turned)
          : Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([key, inner]) => [key, turned(inner)]),
            );
    fc.assert(
      fc.property(jobArb(), (job) => {
        const other = {
          ...(turned(job) as Job),
          records: job.records.map((r) => turned(r) as JobRecord).reverse(),
        };
        expect(writeJob(other)).toBe(writeJob(job));
      }),
      { seed: 441, numRuns: soak(2000) },
    );
  });

  it('comes back as it was, and writing what was read changes nothing (seed 442)', () => {
    fc.assert(
      fc.property(jobArb(), (job) => {
        const text = writeJob(job);
        const back = read(text);
        const byLine = (records: readonly JobRecord[]): readonly string[] =>
          records.map((r) => JSON.stringify(sorted(r))).sort();
        expect({ ...back, records: byLine(back.records) }).toEqual({ ...job, records: byLine(job.records) });
        expect(read(writeJob(back))).toEqual(back);
        expect(writeJob(back)).toBe(text);
      }),
      { seed: 442, numRuns: soak(4000) },
    );
  });

  it('tells minus nothing from nothing: a miss of −0 comes back as it was', () => {
    const job = { ...jobFromModel(smallModel, 'Box'), shop: [-0, 0] } as Job;
    expect((read(writeJob(job)) as unknown as { shop: unknown }).shop).toEqual([-0, 0]);
  });

  it('keeps what it could not read through any number of openings (seed 443)', () => {
    const records = [
      look('a', '2026-03-01T09:00:00Z'),
      { kind: 'finding', damage: 'bow', of: 'U2R', depthIn: 0.25 },
    ];
    fc.assert(
      fc.property(misfilled({ ...jobFromModel(smallModel, 'Box'), records }), (text) => {
        const first = readJob(text);
        if (!first.ok) return;
        const once = writeJob(first.value);
        expect(writeJob(read(once))).toBe(once);
        expect(read(once)).toEqual({ ...first.value, records: read(once).records });
        expect(read(once).records.length + (read(once).setAside?.length ?? 0)).toBe(
          first.value.records.length + (first.value.setAside?.length ?? 0),
        );
      }),
      { seed: 443, numRuns: soak(4000) },
    );
  });
});

/** JSON with sorted keys, told apart from the product's own writer. */
const sorted = (value: unknown): unknown =>
  typeof value !== 'object' || value === null || Array.isArray(value)
    ? Array.isArray(value)
      ? value.map(sorted)
      : Object.is(value, -0)
        ? '-0'
        : value
    : Object.entries(value)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([key, inner]) => [key, sorted(inner)]);

const shipped = ['models', 'demo-data'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => `${folder}/${name}`),
);

describe('the shipped documents', { timeout: 300_000 }, () => {
  it.each(shipped)('%s opens without an issue and is written as it stands', (path) => {
    const text = readFileSync(path, 'utf8');
    const result = readAny(text);
    expect(result.issues).toEqual([]);
    if (result.ok)
      expect(result.value.kind === 'job' ? writeJob(result.value.job) : writeModel(result.value.model)).toBe(
        text,
      );
  });

  it.each(shipped)('%s, damaged in any way, is read or refused with what to do (seed 444)', (path) => {
    const text = readFileSync(path, 'utf8');
    fc.assert(
      fc.property(fc.oneof(mutated(text), misfilled(JSON.parse(text))), (given) => {
        for (const result of [readAny(given), readJob(given), readModel(given)])
          for (const issue of result.issues) {
            expect(issue.code).toMatch(/^[a-z-]+$/);
            expect(issue.mend).toMatch(/^[a-z-]+$/);
            expect(issue.at.length <= 200).toBe(true);
          }
        for (const result of [readAny(given), readJob(given), readModel(given)])
          expect(result.ok || result.issues.length > 0).toBe(true);
      }),
      { seed: 444, numRuns: soak(1000) },
    );
  });
});

describe('hostile text', { timeout: 300_000 }, () => {
  it('never throws, and is never refused without saying why and what to do (seed 445)', () => {
    const job = writeJob({
      ...jobFromModel(smallModel, 'Box'),
      records: [look('a', '2026-03-01T09:00:00Z')],
    });
    const any = fc.oneof(
      mutated(job),
      misfilled(JSON.parse(job)),
      fc.string(),
      fc.json(),
      jobArb().map((j) => JSON.stringify(j)),
    );
    fc.assert(
      fc.property(any, (text) => {
        const result = readJob(text);
        expect(result.ok || result.issues.length > 0).toBe(true);
        for (const { code, at, mend, facts } of result.issues) {
          expect(code).toMatch(/^[a-z-]+$/);
          expect(mend).toMatch(/^[a-z-]+$/);
          expect(typeof at).toBe('string');
          for (const fact of Object.values(facts)) expect(JSON.stringify(fact).length < 2000).toBe(true);
        }
        expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      }),
      { seed: 445, numRuns: soak(20_000) },
    );
  });
});
