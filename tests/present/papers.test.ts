import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { Assessment } from '../../src/core/assessment.ts';
import type { Job, JobRecord } from '../../src/core/job/jobSchema.ts';
import { standing } from '../../src/core/job/standing.ts';
import { states } from '../../src/core/walkRound/result.ts';
import { csvText } from '../../src/present/csv.ts';
import { byHandAsked, entriesOf, entryFieldsAsked } from '../../src/present/papers/entryFields.ts';
import { paperOf, paperPdf } from '../../src/present/papers/papers.ts';
import { type PaperName, paperNames } from '../../src/present/papers/titles.ts';
import type { Report } from '../../src/present/record/sections.ts';
import { sheets } from '../../src/present/sheet/layout.ts';
import { allTables } from '../../src/present/tables/allTables.ts';
import { tags } from '../../src/present/tags.ts';
import { winAnsi } from '../../src/present/winAnsi.ts';
import { pageFoot } from '../../src/present/words/cautions.ts';
import { entryWordsAsked } from './entryWords.ts';
import { demoJob, emptyJob, options } from './made.ts';
import { readPdf } from './readPdf.ts';
import { bannedIn } from './words/banned.ts';

const flat = (text: string): string => text.replace(/\s+/g, ' ');
const job = demoJob();
let assessment: Assessment;
/** The same job read and worked a second time. */
let again: Assessment;
const made = new Map<PaperName, Report>();
const textOf = (report: Report): string =>
  flat(
    sheets(report)
      .flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'text' ? [op.text] : [])))
      .join(' '),
  );

beforeAll(() => {
  assessment = assess(job);
  again = assess(demoJob());
  for (const name of paperNames) made.set(name, paperOf(name, job, assessment, options));
}, 60_000);

describe.each(paperNames)('the paper %s', (name) => {
  it('carries job, revision, its number among all, what nobody has looked at and "not an approval" on every page', async () => {
    const { notLookedAt } = assessment.coverage;
    const pages = await readPdf(await paperPdf(name, job, assessment, options));
    expect(pages.length).toBeGreaterThan(0);
    pages.forEach((page, k) => {
      const text = flat(page.text);
      expect(text).toContain(job.name);
      expect(text).toContain(options.hash.slice(0, 12));
      expect(text).toContain(`${k + 1} of ${pages.length}`);
      expect(text).toContain(
        `Not looked at: ${notLookedAt.members.length} of ${assessment.truss.members.length} members`,
      );
      expect(text).toContain('Working aid, not an approval');
      expect(text).toContain(pageFoot);
    });
  }, 60_000);

  it('gives the same bytes for the same job', async () => {
    const [a, b] = [
      await paperPdf(name, job, assessment, options),
      await paperPdf(name, demoJob(), again, options),
    ];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
  }, 60_000);

  it('says nothing that only a person may say, in letters that paper has', () => {
    expect(bannedIn(textOf(made.get(name)!))).toEqual([]);
    const lost = sheets(made.get(name)!).flatMap(({ ops }) =>
      ops.flatMap((op) => (op.kind === 'text' ? winAnsi(op.text).lost : [])),
    );
    expect(lost).toEqual([]);
  });

  it('can be made of a job in which nothing is entered', () => {
    const empty = emptyJob('practice-truss');
    expect(textOf(paperOf(name, empty, assess(empty), options))).toContain(empty.name);
  }, 60_000);
});

describe('counts', () => {
  it('are the same in the estimate, in CSV and on paper, in the fixed order', () => {
    const tables = allTables({ job, assessment, units: 'inFraction' });
    const counts = tables.find(({ name }) => name === 'counts')!;
    const csv = csvText(counts, { job: job.name, date: '', version: '', practice: false });
    const paper = textOf(made.get('estimate')!);
    const inOrder = states.map((state) => {
      const count = assessment.coverage.marks.filter((m) => m.kind === 'member' && m.state === state).length;
      expect(assessment.estimate.counts[state], state).toBe(count);
      const row = csv.split(/\r?\n/).find((line) => line.includes(tags[state].word))!;
      expect(row.split(','), state).toContain(String(count));
      expect(paper).toContain(`${tags[state].word} ${count}`);
      return row;
    });
    expect(inOrder.map((row) => csv.indexOf(row))).toEqual(
      inOrder.map((row) => csv.indexOf(row)).sort((a, b) => a - b),
    );
  });

  it('of tubes not looked at add up over the bands of the estimate', () => {
    const bands = assessment.estimate.hidden.flatMap(({ members }) => members);
    expect([...bands].sort()).toEqual([...assessment.coverage.notLookedAt.members].sort());
  });
});

// 14 CFR 43.9(a)(1) to (4): description or reference to data, date of completion, name of the person who did it if not
// the one who signs, signature with certificate number and kind. The list below is typed from there, not from the code.
describe('the draft entry', () => {
  const asked = entryWordsAsked;

  it('has every field of the published list, filled or named as missing in words', () => {
    const entries = entriesOf({ job, assessment, units: 'inFraction' }, standing(job.records));
    expect(entries.length).toBeGreaterThan(0);
    const paper = textOf(made.get('entry-draft')!);
    for (const { of, fields, missing } of entries) {
      expect(paper).toContain(of);
      for (const field of asked.drafted) {
        expect(Object.keys(fields)).toContain(field);
        if (fields[field] === null) expect(missing).toContain(entryFieldsAsked[field].words.toLowerCase());
        else expect(missing).not.toContain(entryFieldsAsked[field].words.toLowerCase());
      }
    }
    const byHand = byHandAsked.map(({ words }) => words);
    for (const words of asked.byHand) expect(byHand.join(' ').toLowerCase()).toContain(words);
  });

  it('leaves name, number and signature to a person, with nothing entered behind them', () => {
    const blanks = made
      .get('entry-draft')!
      .parts.flatMap(({ sections }) => sections.flatMap((s) => (s.kind === 'blanks' ? s.names : [])));
    expect(blanks).toEqual(byHandAsked.map(({ words }) => words));
  });

  it('takes its dates and names from the ticks', () => {
    const repaired = assessment.plan.steps.filter(({ of }) => of === 'L1R-L2R');
    const ticks = repaired.map((step, k) => ({
      kind: 'progress',
      id: `tick-${k}`,
      by: 'Odell Farrow',
      at: `2026-06-0${1 + Math.min(k, 8)}T09:00:00Z`,
      device: 'tablet-a',
      step: step.id,
      of: 'L1R-L2R',
      done: true,
    })) as unknown as readonly JobRecord[];
    const ticked: Job = { ...job, records: [...job.records, ...ticks] };
    const entry = entriesOf(
      { job: ticked, assessment: assess(ticked), units: 'inFraction' },
      standing(ticked.records),
    ).find(({ of }) => of === 'L1R-L2R')!;
    expect(entry.fields.began).toContain('2026-06-01');
    expect(entry.fields.completed).toContain(`2026-06-0${Math.min(repaired.length, 9)}`);
    expect(entry.fields.doers).toBe('Odell Farrow');
  }, 60_000);
});

describe('work cards', () => {
  it('have a box for every step and every hold point, one each', () => {
    const rows = made
      .get('work-cards')!
      .parts.flatMap(({ sections }) => sections.flatMap((s) => (s.kind === 'ticks' ? s.rows : [])));
    const steps = rows.filter(({ text }) => /^\d+\. /.test(text));
    expect(steps.map(({ text }) => Number(text.split('.')[0]))).toEqual(
      assessment.plan.steps.map((_, k) => k + 1),
    );
    const names = new Set(
      rows.filter(({ text }) => text.startsWith('HOLD')).map(({ text }) => text.split(' ')[2]),
    );
    expect(names).toEqual(new Set(assessment.plan.gates.map(({ name }) => name)));
  });

  it('put a warning before the steps it is for', () => {
    for (const { sections } of made.get('work-cards')!.parts) {
      const kinds = sections.map(({ kind }) => kind);
      if (kinds.includes('cautions')) expect(kinds.indexOf('cautions')).toBeLessThan(kinds.indexOf('ticks'));
    }
  });
});
