import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { Assessment } from '../../src/core/assessment.ts';
import type { Job, JobRecord } from '../../src/core/job/jobSchema.ts';
import { readJob } from '../../src/core/job/read.ts';
import { standing } from '../../src/core/job/standing.ts';
import { writeJob } from '../../src/core/job/write.ts';
import { hashOf } from '../../src/present/backup.ts';
import { entriesOf } from '../../src/present/papers/entryFields.ts';
import { paperOf, paperPdf } from '../../src/present/papers/papers.ts';
import { paperNames } from '../../src/present/papers/titles.ts';
import { chapterTitles, usualChapters } from '../../src/present/record/chapterNames.ts';
import { asFound, tickedRepairs } from '../../src/present/record/mapParts.ts';
import { showsOf } from '../../src/present/record/photoShots.ts';
import { damageReport, reportParts } from '../../src/present/record.ts';
import { reportFiles } from '../../src/present/report.ts';
import { sheets } from '../../src/present/sheet/layout.ts';
import { allTables } from '../../src/present/tables/allTables.ts';
import { weldRows } from '../../src/present/tables/welds.ts';
import { tinyJpeg } from '../kit/jpeg.ts';
import { demoJob, options } from './made.ts';
import { readPdf } from './readPdf.ts';

const flat = (text: string): string => text.replace(/\s+/g, ' ');
const tube = 'L3R-L4L';
const [found, left] = [tinyJpeg('as found'), tinyJpeg('as left')];
const photos = new Map([found, left].map((bytes) => [hashOf(bytes), bytes]));
const stamp = (id: string, day: number) => ({
  id,
  by: 'Odell Farrow',
  at: `2026-06-${String(day).padStart(2, '0')}T09:00:00Z`,
  device: 'tablet-a',
});
const plus = (job: Job, records: readonly object[]): Job => ({
  ...job,
  records: [...job.records, ...(records as readonly JobRecord[])],
});

describe('a repair that is done', () => {
  let job: Job;
  let assessment: Assessment;
  beforeAll(() => {
    const steps = assess(demoJob()).plan.steps.filter(({ of }) => of === tube);
    job = plus(demoJob(), [
      { kind: 'photo', ...stamp('shot-1', 1), of: tube, hash: hashOf(found) },
      ...steps.map(({ id }, k) => ({
        kind: 'progress',
        ...stamp(`t${k}`, 2),
        step: id,
        of: tube,
        done: true,
      })),
      { kind: 'photo', ...stamp('shot-2', 9), of: tube, hash: hashOf(left) },
    ]);
    assessment = assess(job);
  }, 60_000);

  it('has its pictures told apart by their time, and as entered where somebody says so', () => {
    const showing = { job, assessment, units: 'inFraction' } as const;
    const live = standing(job.records);
    const [first, last] = live.photos.filter(({ of }) => of === tube);
    expect(showsOf(first!, showing, live)).toBe('asFound');
    expect(showsOf(last!, showing, live)).toBe('asLeft');
    expect(showsOf({ ...last!, shows: 'atWork' }, showing, live)).toBe('atWork');
  });

  it('keeps the time of a picture whose marks are corrected later', () => {
    const corrected = plus(job, [
      {
        kind: 'photo',
        ...stamp('shot-3', 20),
        of: tube,
        hash: hashOf(found),
        looking: 'aft',
        replaces: 'shot-1',
      },
    ]);
    const live = standing(corrected.records);
    const photo = live.photos.find(({ id }) => id === 'shot-3')!;
    expect(showsOf(photo, { job: corrected, assessment, units: 'inFraction' }, live)).toBe('asFound');
  });

  it.each(['as-left', 'materials'] as const)(
    'stands on %s with its picture before and after',
    async (name) => {
      const pages = await readPdf(await paperPdf(name, job, assessment, options, photos));
      const text = flat(pages.map((page) => page.text).join(' '));
      expect(text).toContain(`${tube} as found`);
      expect(text).toContain(`${tube} as left`);
      const bytes = Buffer.from(await paperPdf(name, job, assessment, options, photos));
      for (const photo of photos.values()) expect(bytes.includes(Buffer.from(photo))).toBe(true);
    },
    60_000,
  );

  it('carries a tick in the map of what is left, and no decision in the map of what was found', () => {
    const showing = { job, assessment, units: 'inFraction' } as const;
    expect([...tickedRepairs(showing)]).toEqual([tube]);
    const before = asFound(assessment.coverage);
    expect(before.marks.every(({ choice }) => choice === undefined)).toBe(true);
    const sum = (counts: object): number => Object.values(counts).reduce((all: number, n) => all + n, 0);
    expect(sum(before.members)).toBe(sum(assessment.coverage.members));
    for (const kind of ['member', 'cluster'] as const)
      expect(before[kind === 'member' ? 'members' : 'clusters'].undecided).toBe(
        before.marks.filter((m) => m.kind === kind && m.state === 'undecided').length,
      );
  });
});

describe('a weld', () => {
  const job = demoJob();
  const assessment = assess(job);
  const rows = (more: readonly object[]) => {
    const with_ = plus(job, more);
    return weldRows({ job: with_, assessment, units: 'inFraction' }, standing(with_.records));
  };
  const ofJob = [
    { kind: 'manual', ...stamp('m1', 1), topic: 'weld-process', words: 'GTAW', source: 'as entered' },
    { kind: 'manual', ...stamp('m2', 1), topic: 'weld-filler', words: 'ER70S-2', source: 'as entered' },
  ];

  it('is listed at each end of a tube that is let in, once for a patch', () => {
    const of = (id: string) =>
      rows([])
        .filter((row) => row.of === id)
        .map(({ joint }) => joint);
    expect(of(tube)).toEqual(['L3R', 'L4L']);
    expect(new Set(rows([]).map(({ step }) => step)).size).toBe(rows([]).length);
  });

  it("begins with the job's process and filler, and keeps its own where one is entered", () => {
    const own = {
      kind: 'progress',
      ...stamp('w1', 2),
      step: `weldAt:${tube}:L3R`,
      of: tube,
      done: true,
      secondPerson: 'Vera Kolbe',
      weld: {
        joint: 'L3R',
        process: 'oxyacetylene',
        filler: 'RG60',
        farSide: 'mirror',
        method: 'penetrant',
        result: 'clear',
      },
    };
    const with_ = plus(job, [...ofJob, own]);
    const entry = entriesOf({ job: with_, assessment, units: 'inFraction' }, standing(with_.records));
    const { checks, process } = entry.find(({ of }) => of === tube)!.fields;
    expect(checks).toBe('weld L3R, dye penetrant: no crack seen');
    expect(process).toBe('at L3R: oxyacetylene, RG60; at L4L: GTAW, ER70S-2');
    const [here, there] = rows([...ofJob, own]).filter((row) => row.of === tube);
    expect(here).toMatchObject({
      process: 'oxyacetylene',
      filler: 'RG60',
      farSide: 'mirror',
      method: 'penetrant',
      qualified: 'Vera Kolbe',
    });
    expect(there).toMatchObject({ process: 'GTAW', filler: 'ER70S-2', farSide: null, qualified: null });
  });

  it('and the stage of a photo are kept through writing and reading, and refused when they are no known word', () => {
    const seen = {
      kind: 'progress',
      ...stamp('w2', 2),
      step: `weldAt:${tube}:L3R`,
      of: tube,
      done: true,
      weld: { joint: 'L3R', process: 'GTAW', farSide: 'notSeen' },
    };
    const shot = { kind: 'photo', ...stamp('s2', 2), of: tube, hash: hashOf(found), shows: 'asLeft' };
    const read = readJob(writeJob(plus(job, [seen, shot])));
    if (!read.ok) return expect.fail('the job does not open');
    expect(read.value.setAside ?? []).toEqual([]);
    expect(read.value.records.find(({ id }) => id === 'w2')).toMatchObject({ weld: seen.weld });
    expect(read.value.records.find(({ id }) => id === 's2')).toMatchObject({ shows: 'asLeft' });
    const odd = readJob(writeJob(plus(job, [{ ...shot, shows: 'later' }])));
    expect(odd.ok && odd.value.records.some(({ id }) => id === 's2')).toBe(false);
  });

  it('that nobody wrote down says so on the list, with room to write', () => {
    const paper = paperOf('weld-list', job, assessment, options);
    const text = flat(
      sheets(paper)
        .flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'text' ? [op.text] : [])))
        .join(' '),
    );
    for (const words of ['Process', 'Filler', 'Far side', 'qualified person', 'not entered'])
      expect(text).toContain(words);
  });
});

describe('what the report holds', () => {
  const job = demoJob();
  const assessment = assess(job);

  it('is told on page one with the sheet on which each chapter begins', () => {
    const all = sheets(damageReport(job, assessment, options));
    const words = (k: number) => all[k]!.ops.flatMap((op) => (op.kind === 'text' ? [op] : []));
    const first = words(0);
    for (const name of usualChapters.filter((one) => one !== 'photos')) {
      const title = first.find(({ text }) => text === chapterTitles[name])!;
      const number = first
        .filter((op) => op.y === title.y && op.x > title.x && op.align === 'right')
        .sort((a, b) => a.x - b.x)[0]!;
      expect(Number(number.text), name).toBeGreaterThan(1);
      expect(Number(number.text), name).toBeLessThanOrEqual(all.length);
    }
    const at = (title: string): number =>
      all.findIndex((_, k) => k > 0 && words(k).some(({ text }) => text === title)) + 1;
    expect(first.filter(({ text }) => text === String(at('Dispositions'))).length).toBeGreaterThan(0);
  });

  it('fits page one on both papers, and takes no more sheets than half of all', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const usual = sheets(damageReport(job, assessment, { ...options, paper }));
      expect(usual[1]!.turned).toBe(true);
      const all = sheets(damageReport(job, assessment, { ...options, paper }, new Map(), reportParts));
      expect(usual.length).toBeLessThan(all.length / 2);
    }
  });

  it('can be chosen: chapters and papers, in their fixed order, each in one PDF', async () => {
    const choice = { paper: 'a4', units: 'inFraction', holds: ['tags', 'findings', 'start-card'] } as const;
    const files = await reportFiles(job, choice);
    expect(files.filter(({ name }) => name.endsWith('.pdf')).map(({ name }) => name)).toEqual(['report.pdf']);
    const text = (await readPdf(files[0]!.bytes)).map((page) => flat(page.text));
    const at = (words: string): number => text.findIndex((page, k) => k > 0 && page.includes(words));
    expect(at('Findings')).toBe(1);
    expect(at('Start card')).toBeGreaterThan(at('Findings'));
    expect(at('Chalk key')).toBeGreaterThan(at('Start card'));
    expect(at('Locked in')).toBe(-1);
  }, 60_000);

  it('comes in folders, every file under a name of its own, every drawing and template as SVG', async () => {
    const files = await reportFiles(job, { paper: 'a4', units: 'inFraction' });
    const names = files.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => !name.includes('/'))).toEqual(['report.pdf', 'truss.gltf']);
    const under = (folder: string, end: string): number =>
      names.filter((name) => name.startsWith(`${folder}/`) && name.endsWith(end)).length;
    expect(under('papers', '.pdf')).toBe(paperNames.length + 1);
    expect(under('tables', '.csv')).toBe(allTables({ job, assessment, units: 'inFraction' }).length);
    const drawn = (name: 'report' | 'materials'): number =>
      (name === 'report'
        ? damageReport(job, assessment, options)
        : paperOf(name, job, assessment, options)
      ).parts
        .flatMap(({ sections }) => sections)
        .filter(({ kind }) => kind === 'drawing').length;
    expect(under('drawings', '.svg')).toBeGreaterThan(drawn('report') + drawn('materials') + 9);
    expect(under('templates', '.svg')).toBeGreaterThan(10);
    for (const { name, bytes } of files)
      if (name.endsWith('.svg'))
        expect(new TextDecoder().decode(bytes.slice(0, 200)), name).toContain('<svg');
  }, 60_000);
});
