import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { beginKeeping } from '../../src/app/jobs.ts';
import { openFile, openText } from '../../src/app/opening.ts';
import { useJob } from '../../src/app/state/job.ts';
import { useSaved } from '../../src/app/state/saved.ts';
import { assess } from '../../src/core/assess.ts';
import { readJob } from '../../src/core/job/read.ts';
import { writeJob } from '../../src/core/job/write.ts';
import { importColumns, importKinds } from '../../src/core/truss/importColumns.ts';
import { importRows } from '../../src/core/truss/importRows.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { modelCsv, tableCells } from '../../src/present/importTable.ts';
import { jobArb, misfilled, mutated, smallModel } from '../kit/garbage.ts';
import { soak } from '../kit/soak.ts';
import { emptyJob } from './kit.ts';

const demo = readFileSync('demo-data/ground-loop.json', 'utf8');
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const small = JSON.stringify({
  format: 'tubewright-job',
  version: 1,
  purpose: 'job',
  name: 'small',
  model: smallModel,
  records: [],
});

const texts = fc.oneof(
  { weight: 4, arbitrary: mutated(small) },
  { weight: 1, arbitrary: mutated(demo) },
  { weight: 3, arbitrary: misfilled(JSON.parse(small)) },
  { weight: 2, arbitrary: jobArb().chain((job) => mutated(JSON.stringify(job))) },
  { weight: 1, arbitrary: fc.nat(3000).map((depth) => '['.repeat(depth) + ']'.repeat(depth)) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 400 }) },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('__proto__', 'constructor', 'toString', 'hasOwnProperty')
      .map((name) =>
        small.replace('"records":[]', `"records":[{"kind":"${name}"}],"${name}":{"polluted":true}`),
      ),
  },
);
/** Archives with photos that are none, hashes that fit nothing, several jobs, folders, and now and then a bomb. */
const archives = fc
  .array(
    fc.oneof(
      { weight: 3, arbitrary: texts.map(utf8) },
      {
        weight: 3,
        arbitrary: fc.uint8Array({ maxLength: 300 }).map((tail) => new Uint8Array([0xff, 0xd8, ...tail])),
      },
      {
        weight: 2,
        arbitrary: fc
          .string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 })
          .map(utf8),
      },
      {
        weight: 1,
        arbitrary: fc
          .constantFrom(2e5, 3e6, 7e7)
          .chain((n) => fc.nat(40).map((k) => new Uint8Array(k === 0 ? n : 1000))),
      },
    ),
    { maxLength: 5 },
  )
  .chain((entries) =>
    fc
      .array(fc.constantFrom('job.json', '../../job', '__proto__', 'a/', 'photo.jpg', '\u202e.exe'), {
        minLength: entries.length,
        maxLength: entries.length,
      })
      .map((names) =>
        zipSync(Object.fromEntries(entries.map((entry, k) => [`${k}${names[k]}`, entry])), { level: 6 }),
      ),
  );
const bytes = fc.oneof(
  { weight: 8, arbitrary: texts.map(utf8) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 2000 }) },
  { weight: 1, arbitrary: archives },
  {
    weight: 1,
    arbitrary: fc.tuple(texts, fc.nat(400), fc.nat(255)).map(([text, at, value]) => {
      const archive = zipSync({ [text.slice(0, 20)]: utf8(text) }, { level: 1 });
      if (at > 4 && at < archive.length) archive[at] = value;
      return archive;
    }),
  },
);

describe('opening files', () => {
  beforeAll(async () => {
    await beginKeeping(async () => openText(writeJob(emptyJob()), 'first'), 'fuzz');
  });

  const outcomes = { opened: 0, refused: 0 };
  const runs = soak(20_000);
  it(`${runs} of them, damaged and hostile: a message or a job, never a crash, a hang or a lost job (seed 8)`, {
    timeout: 1_800_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(bytes, async (data) => {
        const before = useJob.getState();
        useSaved.setState({ message: null });
        const began = performance.now();
        const took = await openFile(new File([new Uint8Array(data)], 'given.json'));
        // a file of a few kB takes milliseconds; this is only to see a hang
        expect(performance.now() - began).toBeLessThan(5_000);
        const after = useJob.getState();
        outcomes[took ? 'opened' : 'refused'] += 1;
        if (took && after.job) {
          // what was opened can be worked with, and comes back from its own text
          const again = readJob(writeJob(after.job));
          expect(again.ok && writeJob(again.value)).toBe(writeJob(after.job));
          assess(after.job);
        }
        if (took) expect(after.key).not.toBe(before.key);
        else {
          expect(after.job).toBe(before.job);
          expect(useSaved.getState().message).toContain('given.json');
        }
        expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
      }),
      {
        seed: 8,
        numRuns: runs,
        // found by the full count: no stiffness is left of such a wall
        examples: [
          [
            utf8(
              small.replace(
                '"topDiagonal":{"odIn":0.5,"wallIn":0.035}',
                '"topDiagonal":{"odIn":0.5,"wallIn":5e-324}',
              ),
            ),
          ],
        ],
      },
    );
    // both ways are walked, or the test tests little
    expect(outcomes.opened).toBeGreaterThan(runs / 50);
    expect(outcomes.refused).toBeGreaterThan(runs / 5);
    if (process.env.SOAK === '1') process.stdout.write(`${JSON.stringify(outcomes)}\n`);
  });

  const cell = fc.oneof(
    fc.constantFrom(
      '=1+1',
      '+1',
      '-1',
      '@SUM(A1)',
      '＝1',
      '\t=1',
      '',
      '1e999',
      'NaN',
      '23 5/16',
      '__proto__',
      'U1L',
      '1',
    ),
    fc.string({ unit: 'binary', maxLength: 12 }),
    fc.double().map(String),
  );
  const sheets = fc
    .tuple(
      fc.constantFrom(...importKinds),
      fc.constantFrom(',', ';', '\t'),
      fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 12 }),
      fc.boolean(),
    )
    .map(([kind, mark, rows, titled]) => ({
      kind,
      text: [...(titled ? [[...importColumns[kind]]] : []), ...rows].map((row) => row.join(mark)).join('\n'),
    }));
  it(`${runs} tables pasted or read from CSV, hostile too: rows or reasons, never a crash, and no formula comes out (seed 9)`, {
    timeout: 1_800_000,
  }, () => {
    const { model } = emptyJob();
    const truss = expandTruss(model);
    fc.assert(
      fc.property(sheets, ({ kind, text }) => {
        const began = performance.now();
        const read = importRows(kind, tableCells(text), model, truss);
        // a table of a few hundred cells takes milliseconds; this is only to see a hang
        expect(performance.now() - began).toBeLessThan(5_000);
        expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
        const named = { ...model, stations: model.stations.map((s) => ({ ...s, label: text.slice(0, 20) })) };
        for (const line of tableCells(modelCsv('stations', named, truss)).slice(1))
          expect(line[0]).not.toMatch(/^\s*[=+@＝＋－＠]/);
        return read.rows.length >= 0;
      }),
      { seed: 9, numRuns: runs },
    );
  });

  it('refuses an archive that would fill the memory, and a text that is far too long, at once', async () => {
    const bomb = zipSync({ a: new Uint8Array(80_000_000) }, { level: 9 });
    for (const data of [bomb, new Uint8Array(40_000_001)]) {
      const { job } = useJob.getState();
      expect(await openFile(new File([new Uint8Array(data)], 'huge.zip'))).toBe(false);
      expect(useSaved.getState().message).toContain('huge.zip');
      expect(useJob.getState().job).toBe(job);
    }
  });
});
