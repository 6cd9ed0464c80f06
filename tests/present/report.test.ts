import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { Assessment } from '../../src/core/assessment.ts';
import type { Finding } from '../../src/core/job/jobSchema.ts';
import { pdfBytes } from '../../src/present/pdf.ts';
import { damageReport } from '../../src/present/record.ts';
import { type ReportFile, reportFiles } from '../../src/present/report.ts';
import { sheets } from '../../src/present/sheet/layout.ts';
import { winAnsi } from '../../src/present/winAnsi.ts';
import { pageFoot } from '../../src/present/words/cautions.ts';
import { expectNear } from '../kit/near.ts';
import { demoJob, emptyJob, madeJob, options } from './made.ts';
import { type ReadPage, readPdf } from './readPdf.ts';
import { bannedIn } from './words/banned.ts';

const flat = (text: string): string => text.replace(/\s+/g, ' ');
const pdfOf = (files: readonly ReportFile[]): Uint8Array =>
  files.find(({ name }) => name === 'report.pdf')!.bytes;

/** Every figure a person entered for a finding, as it must stand on paper: decimal inches to 0.001. */
const figuresOf = (finding: Finding): readonly string[] =>
  Object.entries(finding).flatMap(([name, value]) => {
    if (name === 'place') return [(value as { atIn: number }).atIn.toFixed(3)];
    return name.endsWith('In') && typeof value === 'number' ? [value.toFixed(3)] : [];
  });

describe.each([
  ['the demo job', demoJob],
  ['a job with one of most things', madeJob],
])('the report of %s', (_, make) => {
  const job = make();
  let assessment: Assessment;
  let files: readonly ReportFile[];
  let pages: readonly ReadPage[];

  beforeAll(async () => {
    assessment = assess(job);
    files = await reportFiles(job, { paper: 'a4', units: 'inFraction' });
    pages = await readPdf(pdfOf(files));
  }, 120_000);

  it('counts on page one what nobody has looked at, and names every member and cluster of it', () => {
    const { notLookedAt } = assessment.coverage;
    const { members, clusters } = assessment.truss;
    const said = new Set(pages[0]!.pieces.map(({ text }) => text));
    expect(flat(pages[0]!.text)).toContain(`${notLookedAt.members.length} of ${members.length} members`);
    expect(flat(pages[0]!.text)).toContain(`${notLookedAt.clusters.length} of ${clusters.length} clusters`);
    expect([...notLookedAt.members, ...notLookedAt.clusters].filter((id) => !said.has(id))).toEqual([]);
  });

  it('carries the foot, the job, the date of the latest record and its own number on every page', () => {
    const latest = job.records
      .map(({ at }) => at)
      .sort()
      .at(-1)!;
    pages.forEach((page, k) => {
      const text = flat(page.text);
      expect(text).toContain(pageFoot);
      expect(text).toContain('Working aid, not an approval');
      expect(text).toContain(`${k + 1} of ${pages.length}`);
      expect(text).toContain(job.name);
      expect(text).toContain(latest.slice(0, 10));
    });
  });

  it('prints every standing finding with every figure entered for it', () => {
    const text = flat(pages.map((page) => page.text).join(' '));
    for (const finding of assessment.coverage.findings) {
      expect(text).toContain(finding.id);
      for (const shown of figuresOf(finding)) expect(text, `${finding.id} ${shown}`).toContain(shown);
    }
  });

  it('gives the first and the last page of each kind of result their heading', () => {
    const text = pages.map((page) => page.text).join(' ');
    for (const heading of [
      'Findings',
      'Look again',
      'Look here next',
      'Locked in',
      'Suspected of a bend nobody has seen',
      'Relief cuts',
      'Trammel readings against targets',
      'Trammel targets',
      'Sources and assumptions',
      'Open questions',
    ])
      expect(text).toContain(heading);
  });

  it('says left and right in words on every page with a map', () => {
    for (const page of pages.filter(({ pieces }) => pieces.some(({ text }) => text === 'L' || text === 'R')))
      expect(page.text.toLowerCase()).toMatch(/pilot's (left|right)/);
  });

  it('never says of the job what only a person may say', () => {
    expect(bannedIn(pages.map((page) => page.text).join(' '))).toEqual([]);
    for (const { name, bytes } of files)
      if (name.endsWith('.csv')) expect(bannedIn(new TextDecoder().decode(bytes)), name).toEqual([]);
  });

  it('gives the same bytes for the same job', async () => {
    const again = await reportFiles(make(), { paper: 'a4', units: 'inFraction' });
    expect(again.map(({ name }) => name)).toEqual(files.map(({ name }) => name));
    again.forEach(({ name, bytes }, k) => {
      expect(Buffer.compare(Buffer.from(bytes), Buffer.from(files[k]!.bytes)), name).toBe(0);
    });
  }, 120_000);

  it('sets no line of ours in characters that the fonts lack', () => {
    const lost = sheets(damageReport(job, assessment, options)).flatMap(({ ops }) =>
      ops.flatMap((op) => (op.kind === 'text' ? winAnsi(op.text).lost : [])),
    );
    expect(lost).toEqual([]);
  });
});

describe('a report', () => {
  // ISO 216: A4 is 210 × 297 mm; letter is 8 1/2 × 11 in; a point is 1/72 in
  it.each([
    ['a4', (210 / 25.4) * 72, (297 / 25.4) * 72],
    ['letter', 612, 792],
  ] as const)('is exactly %s on every page, turned sheets too', async (paper, width, height) => {
    const job = emptyJob('practice-truss');
    const pages = await readPdf(
      await pdfBytes(sheets(damageReport(job, assess(job), { ...options, paper })), {
        title: 't',
        subject: 's',
        version: '1',
      }),
    );
    expect(new Set(pages.map(({ turn }) => turn))).toEqual(new Set([0, 90]));
    for (const page of pages) {
      expectNear(page.widthPt, width, {
        abs: 0.001,
        because: 'the box is written to a thousandth of a point',
      });
      expectNear(page.heightPt, height, {
        abs: 0.001,
        because: 'the box is written to a thousandth of a point',
      });
      for (const { x, y } of page.pieces) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(height);
      }
    }
  });

  it('of an empty job says that everything is not looked at', async () => {
    const job = emptyJob();
    const assessment = assess(job);
    const [first] = sheets(damageReport(job, assessment, options));
    const said = new Set(first!.ops.flatMap((op) => (op.kind === 'text' ? [op.text] : [])));
    const { members, clusters } = assessment.truss;
    expect(said).toContain(
      `${members.length} of ${members.length} members  ·  ${clusters.length} of ${clusters.length} clusters`,
    );
    for (const { id } of [...members, ...clusters]) expect(said).toContain(id);
  });

  it('of a practice file says so on every sheet', () => {
    const job = { ...emptyJob('practice-truss'), purpose: 'practice' as const };
    for (const { ops } of sheets(damageReport(job, assess(job), options)))
      expect(ops.some((op) => op.kind === 'text' && op.text.includes('NOT FOR WORK'))).toBe(true);
  });

  it('says on page one how many records could not be read, and at the end what could not be printed', () => {
    const base = emptyJob('practice-truss');
    const job = { ...base, name: 'Öre 🔧 job', setAside: [{ kind: 'strange' }, 7] };
    const all = sheets(damageReport(job, assess(job), options));
    const textOf = (k: number): string =>
      flat(
        all
          .at(k)!
          .ops.flatMap((op) => (op.kind === 'text' ? [op.text] : []))
          .join(' '),
      );
    expect(textOf(0)).toContain('2 records of this job cannot be read.');
    expect(textOf(-1)).toContain('1 character of this job cannot be printed and stands as "?" here');
  });

  it('repeats on page one every gate that was opened, with the name and the reason', () => {
    const base = madeJob();
    const opened = {
      kind: 'progress',
      id: 'gate-1',
      by: 'Odell Farrow',
      at: '2026-03-09T10:00:00Z',
      device: 'tablet-a',
      step: 'hold:beforeCutting',
      done: true,
      reason: 'Tail not reachable until the sling comes',
    } as const;
    const job = { ...base, records: [...base.records, opened] };
    const [first] = sheets(damageReport(job, assess(job), options));
    const text = flat(first!.ops.flatMap((op) => (op.kind === 'text' ? [op.text] : [])).join(' '));
    expect(text).toContain(
      'Hold point as found, before cutting, by Odell Farrow 2026-03-09 10:00 UTC: Tail not reachable until the sling comes',
    );
  });

  it('keeps every line of a very long note, over as many sheets as it takes', () => {
    const base = madeJob();
    const words = Array.from({ length: 3000 }, (_, k) => `w${k}`);
    const job = {
      ...base,
      records: base.records.map((record) =>
        record.kind === 'finding' && record.of === 'L2R-L3R' ? { ...record, note: words.join(' ') } : record,
      ),
    };
    const all = new Set(
      sheets(damageReport(job, assess(job), options)).flatMap(({ ops }) =>
        ops.flatMap((op) => (op.kind === 'text' ? op.text.split(' ') : [])),
      ),
    );
    expect(words.filter((word) => !all.has(word))).toEqual([]);
  });
});
