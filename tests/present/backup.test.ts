import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { hashOf, isArchive, packBackup, unpackBackup } from '../../src/present/backup.ts';
import { tinyJpeg } from '../kit/jpeg.ts';
import { soak } from '../kit/soak.ts';

const text = readFileSync('demo-data/ground-loop.json', 'utf8');
const photos = new Map([tinyJpeg('one'), tinyJpeg('two')].map((bytes) => [hashOf(bytes), bytes]));
const packed = packBackup({ text, photos });
const utf8 = (words: string): Uint8Array => new TextEncoder().encode(words);

describe('a backup archive', () => {
  it('gives back the job text and every photo bit for bit, and equal bytes each time', () => {
    const unpacked = unpackBackup(packed);
    if (!unpacked.ok) return expect.fail('does not unpack');
    expect(unpacked.value.text).toBe(text);
    expect([...unpacked.value.photos.keys()].sort()).toEqual([...photos.keys()].sort());
    for (const [hash, bytes] of photos)
      expect(Buffer.from(unpacked.value.photos.get(hash)!).equals(Buffer.from(bytes))).toBe(true);
    expect(
      Buffer.from(packBackup({ text, photos: new Map([...photos].reverse()) })).equals(Buffer.from(packed)),
    ).toBe(true);
  });

  it('names photos by SHA-256 as Node reckons it', () => {
    for (const [hash, bytes] of photos) expect(hash).toBe(createHash('sha256').update(bytes).digest('hex'));
  });

  it('is a zip that another reader (Python) opens and finds whole', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'tubewright-')), 'b.zip');
    writeFileSync(path, packed);
    const code = `import zipfile,sys; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip()); print(' '.join(sorted(z.namelist())))`;
    const run = spawnSync('python3', ['-c', code, path], { encoding: 'utf8' });
    if (run.error) return; // no Python on this machine: the round trip above still holds
    const names = [
      'job.json',
      'job.sha256',
      ...[...photos.keys()].map((hash) => `photos/${hash}.jpg`),
    ].sort();
    expect(run.stdout.trim().split('\n')).toEqual(['None', names.join(' ')]);
  });

  it('goes by what is in it: names that climb out of the folder change nothing', () => {
    const entries = Object.fromEntries(
      [utf8(text), ...photos.values()].map((bytes, k) => [`../../etc/${k}/__proto__`, bytes] as const),
    );
    const unpacked = unpackBackup(zipSync(entries));
    expect(unpacked.ok && unpacked.value.text).toBe(text);
    expect(unpacked.ok && unpacked.value.photos.size).toBe(2);
  });

  it('refuses a job text that is not the one it was packed with', () => {
    const other = zipSync({
      'job.sha256': utf8(hashOf(utf8(text))),
      'job.json': utf8(text.replace('U', 'L')),
    });
    expect(unpackBackup(other).issues.map(({ code }) => code)).toEqual(['archive-damaged']);
  });

  it('refuses an archive without a job, with two, or cut short', () => {
    const codes = (bytes: Uint8Array) => unpackBackup(bytes).issues.map(({ code }) => code);
    expect(codes(zipSync({ a: tinyJpeg() }))).toEqual(['archive-without-job']);
    expect(codes(zipSync({ a: utf8('{}'), b: utf8('[]') }))).toEqual(['archive-with-several']);
    expect(codes(packed.slice(0, 4000))).toEqual(['archive-damaged']);
  });

  it('refuses a bomb by its declared size, and by what comes out when it declares little', () => {
    const honest = zipSync({ a: new Uint8Array(70_000_000) }, { level: 9 });
    expect(honest.length).toBeLessThan(100_000);
    const lying = honest.slice();
    const view = new DataView(lying.buffer);
    view.setUint32(22, 10, true); // uncompressed size in the local header (APPNOTE 4.3.7)
    for (const bytes of [honest, lying]) {
      const began = performance.now();
      expect(unpackBackup(bytes).issues.map(({ code }) => code)).toEqual(['archive-too-large']);
      // a bomb opened to its end takes far longer; generous, since machines are shared
      expect(performance.now() - began).toBeLessThan(10_000);
    }
  });

  const runs = soak(2000);
  it(`gives issues and never throws for ${runs} damaged archives (seed 71)`, () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(packed.length - 1), fc.nat(255)), { minLength: 1, maxLength: 12 }),
        fc.option(fc.nat(packed.length)),
        (changes, end) => {
          const bytes = packed.slice(0, end ?? packed.length);
          for (const [at, value] of changes) if (at < bytes.length) bytes[at] = value;
          const unpacked = unpackBackup(bytes);
          // whatever opens is either the very job or has no digest left to say otherwise
          expect(unpacked.ok || unpacked.issues.length > 0).toBe(true);
          isArchive(bytes);
        },
      ),
      { seed: 71, numRuns: runs },
    );
  });
});
