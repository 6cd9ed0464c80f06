import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { hashOf, packBackup, unpackBackup } from '../../src/present/backup.ts';
import { tinyJpeg } from '../kit/jpeg.ts';
import { terminal } from '../kit/terminal.ts';

const folder = mkdtempSync(join(tmpdir(), 'tubewright-'));
const file = (name: string, data: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, data);
  return path;
};
const demo = readFileSync('demo-data/ground-loop.json', 'utf8');
const photo = tinyJpeg('merge');
const hash = hashOf(photo);
const stamp = { by: 'Ben', at: '2031-05-04T10:00:00Z', device: 'tablet 2' };
const withRecords = (...records: readonly object[]): string => {
  const doc = JSON.parse(demo);
  return JSON.stringify({ ...doc, records: [...doc.records, ...records] });
};
const note = { kind: 'note', id: 'n1', ...stamp, words: 'from the second tablet' };
const shot = { kind: 'photo', id: 'p1', ...stamp, of: 'U7L-L7L', hash };

describe('merge in the terminal', () => {
  it('writes the union of two jobs, the same whichever comes first, and merging again changes nothing', () => {
    const [a, b] = [file('a.json', withRecords(note)), file('b.json', withRecords({ ...note, id: 'n2' }))];
    const [ab, ba, again] = ['ab.json', 'ba.json', 'again.json'].map((name) => join(folder, name));
    const first = terminal('merge', a, b, '--out', ab!);
    expect(first.status).toBe(0);
    expect(first.out).toContain('1 note');
    terminal('merge', b, a, '--out', ba!);
    terminal('merge', ab!, b, '--out', again!);
    expect(readFileSync(ba!, 'utf8')).toBe(readFileSync(ab!, 'utf8'));
    expect(readFileSync(again!, 'utf8')).toBe(readFileSync(ab!, 'utf8'));
    const read = readJob(readFileSync(ab!, 'utf8'));
    const plain = readJob(demo);
    expect(read.ok && plain.ok && read.value.records.length - plain.value.records.length).toBe(2);
  });

  it('lists a conflict with both contents', () => {
    const [a, b] = [
      file('c.json', withRecords(note)),
      file('d.json', withRecords({ ...note, words: 'something else' })),
    ];
    const { out, status } = terminal('merge', a, b, '--out', join(folder, 'cd.json'));
    expect(status).toBe(0);
    expect(out).toContain('from the second tablet');
    expect(out).toContain('something else');
  });

  it('takes photos along in an archive, and refuses to leave them behind', () => {
    const a = file('e.zip', packBackup({ text: withRecords(shot), photos: new Map([[hash, photo]]) }));
    const b = file('f.json', demo);
    const plain = join(folder, 'ef.json');
    expect(terminal('merge', a, b, '--out', plain).status).toBe(2);
    expect(existsSync(plain)).toBe(false);
    const archive = join(folder, 'ef.zip');
    expect(terminal('merge', a, b, '--out', archive).status).toBe(0);
    const unpacked = unpackBackup(new Uint8Array(readFileSync(archive)));
    expect(unpacked.ok && [...unpacked.value.photos.keys()]).toEqual([hash]);
  });

  it('refuses practice, one file alone, and no place to write to', () => {
    const a = file('g.json', demo);
    const practice = file('h.json', demo.replace(/"purpose":\s*"job"/, '"purpose":"practice"'));
    expect(terminal('merge', a, practice, '--out', join(folder, 'x.json')).err).toMatch(/practice/i);
    expect(terminal('merge', a, '--out', join(folder, 'x.json')).status).toBe(2);
    expect(terminal('merge', a, a).status).toBe(2);
    expect(terminal('check', a, a).status).toBe(2);
  });

  it('prints the photos of an archive in the report, and says which are missing without it', () => {
    const archive = file('i.zip', packBackup({ text: withRecords(shot), photos: new Map([[hash, photo]]) }));
    const out = join(folder, 'papers');
    const full = terminal('report', archive, '--out', out);
    expect(full.err).toBe('');
    expect(readFileSync(join(out, 'report.pdf')).includes(Buffer.from(photo))).toBe(true);
    const without = terminal('report', file('j.json', withRecords(shot)), '--out', out);
    expect(without.status).toBe(0);
    expect(without.err).toContain(hash.slice(0, 12));
  });
});
