import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { edit } from '../../src/core/job/edit.ts';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { readJob } from '../../src/core/job/read.ts';
import { writeJob } from '../../src/core/job/write.ts';
import { hashOf } from '../../src/present/backup.ts';
import { jpegSize } from '../../src/present/jpeg.ts';
import { reportFiles } from '../../src/present/report.ts';
import { tinyJpeg } from '../kit/jpeg.ts';
import { readPdf } from '../kit/readPdf.ts';

const demo = (): Job => {
  const read = readJob(readFileSync('demo-data/ground-loop.json', 'utf8'));
  if (!read.ok) throw new Error('the demo does not open');
  return read.value;
};
const photo = tinyJpeg('a photo');
const hash = hashOf(photo);
const withPhoto = (): Job => {
  const stamp = { by: 'Ana', at: '2031-05-04T10:00:00Z', device: 'tablet 1', newId: () => 'photo-1' };
  const marks = [
    { mark: 'ring', at: [0.5, 0.5], to: [0.6, 0.5] },
    { mark: 'arrow', at: [0, 0], to: [0.4, 0.4] },
    { mark: 'text', at: [0.1, 0.9], words: 'crack starts here' },
  ] as const;
  const edited = edit(
    demo(),
    { kind: 'addPhoto', photo: { of: 'U7L-L7L', hash, looking: 'from below', marks: marks as never } },
    stamp,
  );
  if (!edited.ok) throw new Error('the photo was refused');
  return edited.value.job;
};
const choice = { paper: 'a4', units: 'inFraction' } as const;
const pdfOf = async (photos?: ReadonlyMap<string, Uint8Array>): Promise<Buffer> => {
  const files = await reportFiles(withPhoto(), choice, photos);
  return Buffer.from(files.find(({ name }) => name === 'report.pdf')!.bytes);
};

describe('photos', () => {
  it('keep their marks through writing and reading', () => {
    const read = readJob(writeJob(withPhoto()));
    const record = read.ok && read.value.records.find(({ id }) => id === 'photo-1');
    expect(record).toMatchObject({ hash, marks: [{ mark: 'ring' }, { mark: 'arrow' }, { mark: 'text' }] });
  });

  it('stand in the report with their bytes, marks and words, and give equal bytes twice', async () => {
    const photos = new Map([[hash, photo]]);
    const pdf = await pdfOf(photos);
    expect(pdf.includes(Buffer.from(photo))).toBe(true);
    const text = (await readPdf(new Uint8Array(pdf))).join(' ');
    expect(text).toContain('crack starts here');
    expect(text).toContain('from below');
    expect(text).toContain(hash.slice(0, 12));
    expect(pdf.equals(await pdfOf(photos))).toBe(true);
  });

  it('that are not at hand are named in the report all the same', async () => {
    const text = (await readPdf(new Uint8Array(await pdfOf()))).join(' ');
    expect(text).toContain('1 of 1 are not with this copy');
    expect(text).toContain(hash.slice(0, 12));
  });

  it('give their size from the frame header, and none when they are no JPEG', () => {
    expect(jpegSize(photo)).toEqual({ width: 8, height: 8 });
    for (const bytes of [[], [0xff, 0xd8], [0xff, 0xd8, 0xff, 0xc0, 0, 0], [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]])
      expect(jpegSize(new Uint8Array(bytes))).toBeUndefined();
  });
});
