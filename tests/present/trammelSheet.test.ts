import { describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import { textWidth } from '../../src/present/draw/helvetica.ts';
import type { ReportOptions } from '../../src/present/record/head.ts';
import { trammelSheetPdf, trammelSheetSvg, trammelSheets } from '../../src/present/trammelSheet.ts';
import { expectNear } from '../kit/near.ts';
import { emptyJob } from './made.ts';

const job = emptyJob();
const assessment = assess(job);
const options = (paper: 'a4' | 'letter', units: ReportOptions['units'] = 'inDecimal'): ReportOptions => ({
  paper,
  units,
  version: 'test',
  hash: '0'.repeat(64),
});
const texts = (paper: 'a4' | 'letter', units?: ReportOptions['units']) =>
  trammelSheets(job, assessment, options(paper, units)).flatMap((sheet, page) =>
    sheet.ops.flatMap((op) => (op.kind === 'text' ? [{ ...op, page, sheet }] : [])),
  );

describe('the trammel sheet', () => {
  // needs.md N08: every listed value equals the 3-D distance between the clusters within 0.001 in.
  it('lists every target once, with the true distance between its clusters', () => {
    const all = texts('a4');
    const at = new Map(assessment.truss.clusters.map((c) => [c.id, c.at]));
    const { targets } = assessment.trammel;
    expect(all.filter((t) => targets.some((one) => one.id === t.text))).toHaveLength(targets.length);
    for (const t of targets.filter((one) => one.targetIn.basis.kind === 'computed')) {
      const name = all.find((one) => one.text === t.id)!;
      const value = all.find((one) => one.page === name.page && one.y === name.y && one.align === 'right')!;
      const [p, q] = [at.get(t.from)!, at.get(t.to)!];
      const want = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
      expectNear(Number.parseFloat(value.text), want, { abs: 0.001, because: 'as asked; shown to 0.001 in' });
    }
  });

  it('has both diagonals of every face and ring', () => {
    const ids = new Set(assessment.trammel.targets.map((t) => t.id));
    for (const { corners } of assessment.truss.faces)
      corners.forEach((a, i) => {
        for (const b of corners.slice(i + 1)) expect(ids.has(`${a}–${b}`) || ids.has(`${b}–${a}`)).toBe(true);
      });
  });

  it('sets left and right of a pair one below the other', () => {
    const all = texts('a4');
    const of = (id: string) => all.find((t) => t.text === id)!;
    const [left, right] = [of('U2L–U3L'), of('U2R–U3R')];
    expect(right.page).toBe(left.page);
    expectNear(right.y - left.y, 6.4, { abs: 1e-9, because: 'the height of a row' });
  });

  it('keeps inside the paper, on A4 and Letter, in every unit', () => {
    for (const paper of ['a4', 'letter'] as const)
      for (const units of ['inFraction', 'inDecimal', 'mm'] as const)
        for (const t of texts(paper, units)) {
          const w = textWidth(t.text, t.sizeMm, t.weight);
          const from = t.align === 'left' ? t.x : t.align === 'right' ? t.x - w : t.x - w / 2;
          expect(from).toBeGreaterThanOrEqual(0);
          expect(from + w).toBeLessThanOrEqual(t.sheet.widthMm);
          expect(t.y).toBeLessThanOrEqual(t.sheet.heightMm);
        }
  });

  it('gives equal bytes for equal jobs, and the same page as SVG', async () => {
    const once = await trammelSheetPdf(job, assessment, options('a4'));
    const again = await trammelSheetPdf(job, assessment, options('a4'));
    expect(Buffer.from(again).equals(Buffer.from(once))).toBe(true);
    expect(trammelSheetSvg(trammelSheets(job, assessment, options('a4'))[0]!)).toContain('width="210mm"');
  });
});
