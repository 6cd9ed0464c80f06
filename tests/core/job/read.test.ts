import { describe, expect, it } from 'vitest';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { MOST_CHARACTERS } from '../../../src/core/job/parseDoc.ts';
import { readAny, readJob, readModel } from '../../../src/core/job/read.ts';
import { writeJob } from '../../../src/core/job/write.ts';
import { smallModel } from '../../kit/garbage.ts';

const stamp = (id: string) => ({ id, by: 'Ana', at: '2026-03-01T09:00:00Z', device: 'tablet 1' });
const bow = (id: string, more: object = {}) => ({
  kind: 'finding',
  damage: 'bow',
  of: 'U1L-U2L',
  origin: 'unknown',
  ...stamp(id),
  ...more,
});
const doc = (more: object = {}): object => ({ ...jobFromModel(smallModel, 'Box'), ...more });
const text = (more: object = {}): string => JSON.stringify(doc(more));
const opened = (given: string): Job => {
  const read = readJob(given);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
};
const codes = (given: string): readonly string[] => readJob(given).issues.map((i) => `${i.code} ${i.at}`);
const refusal = (given: string) => {
  const read = readJob(given);
  expect(read.ok).toBe(false);
  return read.issues[0];
};

describe('readJob', () => {
  it('opens a job with nothing entered', () => {
    const read = readJob(text());
    expect(read).toEqual({ ok: true, value: jobFromModel(smallModel, 'Box'), issues: [] });
  });

  it('refuses a text above 40 MB before parsing it', () => {
    expect(refusal('['.repeat(MOST_CHARACTERS + 1))).toMatchObject({ code: 'too-large', at: '' });
  });

  it('says the line and column where a text stops being JSON', () => {
    expect(refusal('{\n  "format": "tubewright-job",\n  "version" 1\n}')).toMatchObject({
      code: 'not-json',
      facts: { line: 3, column: 13, got: '1', expected: 'colon' },
    });
  });

  it('says that a text is cut short', () => {
    expect(refusal(text().slice(0, 200))).toMatchObject({ code: 'text-cut-short', mend: 'use-another-copy' });
    expect(refusal('')).toMatchObject({ code: 'text-cut-short' });
  });

  it('refuses brackets a million deep without running out of stack', () => {
    for (const deep of [
      '['.repeat(1_000_000),
      '{"a":'.repeat(1_000_000),
      `${'['.repeat(1e6)}${']'.repeat(1e6)}`,
    ])
      expect(refusal(deep)).toMatchObject({ code: 'nested-too-deep' });
  });

  it('refuses what is no object, and another format', () => {
    expect(refusal('[]')).toMatchObject({ code: 'wrong-kind-of-value', facts: { got: 'a list' } });
    expect(refusal('null')).toMatchObject({ code: 'wrong-kind-of-value' });
    expect(refusal('{}')).toMatchObject({ code: 'other-format', at: 'format', facts: { got: 'nothing' } });
    expect(refusal(JSON.stringify(smallModel))).toMatchObject({
      code: 'other-format',
      facts: { got: 'tubewright-model' },
    });
  });

  it('refuses a newer version with the way out, also of the model inside', () => {
    expect(refusal(text({ version: 2 }))).toMatchObject({
      code: 'version-newer',
      at: 'version',
      facts: { got: 2, newest: 1 },
      mend: 'open-with-newer-tubewright',
    });
    expect(refusal(text({ model: { ...smallModel, version: 7 } }))).toMatchObject({
      code: 'version-newer',
      at: 'model.version',
    });
    expect(refusal(text({ version: 0 }))).toMatchObject({ code: 'version-unknown' });
    expect(refusal(text({ version: '1' }))).toMatchObject({ code: 'version-unreadable' });
  });

  it('refuses a job whose model cannot be read, with every issue in the order of the file', () => {
    const stations = [
      { label: 'x', stationIn: '0' },
      { label: '2', stationIn: 5000 },
    ];
    const given = `{"records":[3],"model":${JSON.stringify({ ...smallModel, stations, joints: 'glued' })},"format":"tubewright-job","version":1,"name":""}`;
    const read = readJob(given);
    expect(read.ok).toBe(false);
    expect(codes(given)).toEqual([
      'record-set-aside records[0]',
      'wrong-kind-of-value records[0]',
      'not-one-of model.joints',
      'wrong-form model.stations[0].label',
      'wrong-kind-of-value model.stations[0].stationIn',
      'out-of-range model.stations[1].stationIn',
      'text-empty name',
      'field-missing purpose',
    ]);
    expect(read.issues.find((i) => i.code === 'out-of-range')?.facts).toEqual({ got: 5000, most: 1200 });
  });

  it('opens a job with unreadable records, keeps them as they came, lists them by field', () => {
    const bad = bow('b', { clock: 13, depthIn: 'deep', later: { kept: true } });
    const given = text({ records: [bow('a'), bad, { kind: 'smell' }, bow('c'), 7] });
    const job = opened(given);
    expect(job.records.map((r) => r.id)).toEqual(['a', 'c']);
    expect(job.setAside).toEqual([bad, { kind: 'smell' }, 7]);
    expect(codes(given)).toEqual([
      'record-set-aside records[1]',
      'out-of-range records[1].clock',
      'wrong-kind-of-value records[1].depthIn',
      'record-set-aside records[2]',
      'not-one-of records[2].kind',
      'record-set-aside records[4]',
      'wrong-kind-of-value records[4]',
    ]);
  });

  it('writes set-aside records back among the records, where a program that knows them finds them', () => {
    const given = text({ records: [{ kind: 'smell', of: 'U1L' }, bow('a')] });
    const again = JSON.parse(writeJob(opened(given))) as { records: unknown[]; setAside?: unknown };
    expect(again.records).toEqual([bow('a'), { kind: 'smell', of: 'U1L' }]);
    expect(again.setAside).toBeUndefined();
    expect(opened(writeJob(opened(given)))).toEqual(opened(given));
  });

  it('keeps unknown fields at every level', () => {
    const given = text({
      shop: { bench: 3 },
      records: [bow('a', { mood: 'wet' })],
      model: { ...smallModel, paint: 'red' },
    });
    const job = opened(given) as unknown as {
      shop: unknown;
      model: { paint: string };
      records: { mood: string }[];
    };
    expect([job.shop, job.model.paint, job.records[0]?.mood]).toEqual([{ bench: 3 }, 'red', 'wet']);
  });

  it('lets no field change what every object is', () => {
    const sneaky =
      '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"a":[{"__proto__":{"polluted":1}}]}';
    const given = text({ extra: 'X', records: [bow('a', { extra: 'X' }), bow('b', { typed: 'X' })] })
      .replaceAll('"X"', sneaky)
      .replace('"name"', '"__proto__":{"polluted":1},"name"');
    const read = readJob(given);
    expect(read.ok).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    const job = (read.ok ? read.value : {}) as unknown as Record<string, unknown>;
    expect(job.polluted).toBeUndefined();
    expect(JSON.stringify(job)).not.toContain('__proto__');
    expect(read.issues.map((i) => i.code)).toContain('field-left-out');
    expect(read.ok && opened(writeJob(read.value))).toEqual(read.ok && read.value);
  });

  it('refuses numbers that are none, and sets records with them aside without loss', () => {
    const inRecord = text({ records: [bow('a', { depthIn: 'X' }), bow('b', { other: ['X'] })] }).replaceAll(
      '"X"',
      '1e999',
    );
    const job = opened(inRecord);
    expect(job.records).toEqual([]);
    expect(codes(inRecord).filter((c) => c.startsWith('number'))).toEqual([
      'number-too-large records[0].depthIn',
      'number-too-large records[1].other[0]',
    ]);
    expect(opened(writeJob(job))).toEqual(job);
    expect(refusal(text({ extra: 'X' }).replace('"X"', '-1e999'))).toMatchObject({
      code: 'number-too-large',
      at: 'extra',
    });
  });

  it('lists an id that comes twice and keeps both records', () => {
    const given = text({ records: [bow('a'), bow('a', { depthIn: 1 })] });
    expect(opened(given).records.length).toBe(2);
    expect(codes(given)).toEqual(['id-twice records[1].id']);
  });

  it('does not refuse records that name unknown members', () => {
    expect(readJob(text({ records: [bow('a', { of: 'nowhere' })] }))).toMatchObject({ ok: true, issues: [] });
  });

  it('reads a text with a byte order mark', () => {
    expect(readJob(`\ufeff${text()}`).ok).toBe(true);
  });
});

describe('readAny', () => {
  it('tells a job from a model, and either from anything else', () => {
    expect(readAny(text())).toMatchObject({ ok: true, value: { kind: 'job' } });
    expect(readAny(JSON.stringify(smallModel))).toMatchObject({ ok: true, value: { kind: 'model' } });
    expect(readAny('{"format":"recipe"}')).toMatchObject({ ok: false, issues: [{ code: 'other-format' }] });
    expect(readAny('{')).toMatchObject({ ok: false, issues: [{ code: 'text-cut-short' }] });
  });

  it('reads a model on its own with its own issues', () => {
    const bad = { ...smallModel, distances: [{ from: 'U1L', to: 'U2L', lengthIn: -1 }] };
    expect(readModel(JSON.stringify(bad))).toMatchObject({
      ok: false,
      issues: [
        {
          code: 'out-of-range',
          at: 'distances[0].lengthIn',
          facts: { got: -1, least: 0, boundItselfToo: true },
        },
      ],
    });
  });
});
