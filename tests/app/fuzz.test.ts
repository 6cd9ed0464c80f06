import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { beginKeeping } from '../../src/app/jobs.ts';
import { openFile, openText } from '../../src/app/opening.ts';
import { useJob } from '../../src/app/state/job.ts';
import { useSaved } from '../../src/app/state/saved.ts';
import { writeJob } from '../../src/core/job/write.ts';
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
const bytes = fc.oneof(
  { weight: 8, arbitrary: texts.map(utf8) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 2000 }) },
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
        if (took) expect(after.key).not.toBe(before.key);
        else {
          expect(after.job).toBe(before.job);
          expect(useSaved.getState().message).toContain('given.json');
        }
        expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
      }),
      { seed: 8, numRuns: runs },
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
