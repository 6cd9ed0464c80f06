import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { Job, JobRecord } from '../../src/core/job/jobSchema.ts';
import { hashOf } from '../../src/present/backup.ts';
import { csvText } from '../../src/present/csv.ts';
import { type SupplementOf, supplementOf } from '../../src/present/record/supplement.ts';
import { reportFiles, supplementFiles } from '../../src/present/report.ts';
import { jobAsOf, type Since, sinceOf } from '../../src/present/since.ts';
import type { Showing } from '../../src/present/tables/showing.ts';
import { supplementTable } from '../../src/present/tables/supplement.ts';
import { tinyJpeg } from '../kit/jpeg.ts';
import { expectNear } from '../kit/near.ts';
import { demoJob } from './made.ts';
import { readPdf } from './readPdf.ts';

const photo = tinyJpeg('the crack');
const stamp = (id: string, day: number) => ({
  id,
  by: 'Odell Farrow',
  at: `2026-06-0${day}T09:00:00Z`,
  device: 'tablet-a',
});
const before: Job = {
  ...demoJob(),
  records: [
    ...demoJob().records,
    { kind: 'rate', ...stamp('rate-1', 1), operation: 'labour', amount: 80, currency: 'EUR' },
    { kind: 'manual', ...stamp('frozen-1', 1), topic: 'plan-frozen', words: 'none', source: 'agreed' },
  ] as unknown as readonly JobRecord[],
};
/** What the cut laid open: a crack, decided at once, with a photo; a name that a spreadsheet would take for a formula. */
const after: Job = {
  ...before,
  records: [
    ...before.records,
    {
      kind: 'finding',
      ...stamp('found-9', 2),
      by: '=1+1',
      of: 'L6R-L7R',
      origin: 'older',
      damage: 'crack',
      crackIn: 0.5,
      where: 'tube',
    },
    { kind: 'photo', ...stamp('shot-9', 2), of: 'L6R-L7R', hash: hashOf(photo), finding: 'found-9' },
    { kind: 'decision', ...stamp('decided-9', 3), by: '=1+1', of: 'L6R-L7R', choice: 'replace' },
  ] as unknown as readonly JobRecord[],
};
const photos = new Map([[hashOf(photo), photo]]);

describe('the supplement', () => {
  let since: Since;
  let showing: Showing;
  let of: SupplementOf;
  beforeAll(() => {
    since = sinceOf(after, { kind: 'frozen' })!;
    showing = { job: after, assessment: assess(after), units: 'inFraction', since };
    of = supplementOf(since, showing);
  }, 60_000);

  it('is held against the job as it stood when the plan was frozen, without an older file', () => {
    expect(since.job.records.map(({ id }) => id)).toEqual(before.records.map(({ id }) => id));
    expect(jobAsOf(after, '2026-06-01T11:00:00+02:00').records).toHaveLength(before.records.length);
    expect(sinceOf(demoJob())).toBeUndefined();
  });

  it('names for each line of a tube the finding that caused it, and its photo', () => {
    const mine = of.rows.filter((row) => row.of === 'L6R-L7R');
    expect(mine.map(({ what }) => what)).toContain('Finding added');
    expect(mine.some(({ hoursH }) => (hoursH ?? 0) > 0)).toBe(true);
    expect(mine.some(({ tubeIn }) => (tubeIn ?? 0) > 0)).toBe(true);
    for (const row of mine.filter(({ what }) => what !== 'Decision')) {
      expect(row.cause).toContain('finding found-9');
      expect(row.photos.map(({ id }) => id)).toEqual(['shot-9']);
    }
  });

  it('prices hours at the rate entered, and adds up to the difference of the likely hours', () => {
    const likely = (job: Showing['assessment']): number =>
      job.estimate.lines.reduce((sum, { hours }) => sum + hours.likely, 0);
    const sum = of.rows.reduce((all, { hoursH }) => all + (hoursH ?? 0), 0);
    expectNear(sum, likely(showing.assessment) - likely(since.assessment), {
      abs: 1e-9,
      because: 'the same numbers added in another order',
    });
    for (const { hoursH, money } of of.rows)
      if (hoursH === null) expect(money).toBeNull();
      else expectNear(money!, hoursH * 80, { abs: 1e-9, because: 'one product' });
    expect(of.currency).toBe('EUR');
  });

  it('leaves cost blank, and says so, when nobody has entered a rate', () => {
    const bare = (job: Job): Job => ({ ...job, records: job.records.filter(({ kind }) => kind !== 'rate') });
    const then: Since = { job: bare(before), assessment: assess(bare(before)), words: 'x' };
    const now: Showing = { job: bare(after), assessment: assess(bare(after)), units: 'mm', since: then };
    expect(supplementOf(then, now).rows.every(({ money }) => money === null)).toBe(true);
    expect(supplementTable(now).columns.at(-1)?.unit).toBe('no rate entered');
  }, 60_000);

  it('is a paper with its pictures and a CSV that no spreadsheet runs', async () => {
    const choice = { paper: 'a4', units: 'inFraction', since: { kind: 'frozen' } } as const;
    const files = await supplementFiles(after, choice, photos);
    expect(files.map(({ name }) => name)).toEqual(['supplement.pdf', 'supplement.csv']);
    const text = (await readPdf(files[0]!.bytes)).map((page) => page.text).join(' ');
    for (const words of ['Supplement', 'L6R-L7R', 'found-9', hashOf(photo).slice(0, 12), 'EUR'])
      expect(text).toContain(words);
    expect(Buffer.from(files[0]!.bytes).includes(Buffer.from(photo))).toBe(true);
    const csv = new TextDecoder().decode(files[1]!.bytes);
    expect(csv).toContain(hashOf(photo));
    expect(csv).not.toMatch(/(^|,|")=1\+1/m);
  }, 60_000);

  it('is the same paper by itself as among all files', async () => {
    const choice = { paper: 'letter', units: 'inFraction' } as const;
    const [alone, all] = [
      await supplementFiles(after, choice, photos),
      await reportFiles(after, choice, photos),
    ];
    const among = (name: string): Uint8Array => all.find((file) => file.name === name)!.bytes;
    expect(Buffer.compare(Buffer.from(alone[0]!.bytes), Buffer.from(among('papers/supplement.pdf')))).toBe(0);
    expect(Buffer.compare(Buffer.from(alone[1]!.bytes), Buffer.from(among('tables/supplement.csv')))).toBe(0);
  }, 120_000);

  it('of two equal states says that nothing is different', () => {
    const same: Showing = {
      ...showing,
      since: { job: after, assessment: showing.assessment, words: 'itself' },
    };
    const table = supplementTable(same);
    expect(table.rows).toEqual([]);
    expect(csvText(table, { job: after.name, date: '', version: '', practice: false })).toContain('itself');
  });
});
