import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/core/base/figure.ts';
import type { StockLine, StockPiece } from '../../../src/core/estimate/result.ts';
import { nestingDrawing } from '../../../src/present/draw/nesting.ts';
import { expectNear } from '../../kit/near.ts';

const inches = (value: number): Figure => ({
  value,
  unit: 'in',
  basis: { kind: 'assumed', ref: 'made for this test' },
  assumed: [],
});
const piece = (id: string, takes: number): StockPiece => ({
  id,
  member: id,
  part: 'section',
  netIn: inches(takes),
  scarfIn: inches(0),
  kerfIn: inches(0),
  takesIn: inches(takes),
});
const line: StockLine = {
  tube: { odIn: 1, wallIn: 0.049 },
  material: '4130N',
  pieces: [piece('a', 60), piece('b', 30), piece('c', 90)],
  stockIn: inches(120),
  bars: [
    { pieces: ['c', 'b'], leftIn: 0 },
    { pieces: ['a'], leftIn: 60 },
  ],
  atLeast: 2,
  proved: true,
  boughtIn: inches(240),
  wasteIn: inches(60),
  tooLong: [],
};

describe('the drawing of cuts from stock lengths', () => {
  const { ops, widthMm, heightMm } = nestingDrawing(line, 'inFraction', 128);
  const boxes = ops.flatMap((op) =>
    op.kind === 'path' && op.fill !== undefined
      ? [op.steps.flatMap((s) => (s[0] === 'move' || s[0] === 'line' ? [s[1]] : []))]
      : [],
  );
  const widths = boxes.map((xs) => Math.max(...xs) - Math.min(...xs));

  it('is to scale: 120 mm of paper for 120 in of tube here, 1 mm an inch', () => {
    expect(widths).toHaveLength(3);
    [90, 30, 60].forEach((want, k) => {
      expectNear(widths[k]!, want, { abs: 1e-9, because: 'plain multiplication in doubles' });
    });
  });

  it('keeps everything on the drawing and names every piece and what is left', () => {
    for (const xs of boxes) for (const x of xs) expect(x).toBeLessThanOrEqual(widthMm + 1e-9);
    const words = ops.flatMap((op) => (op.kind === 'text' ? [op] : []));
    for (const { y } of words) expect(y).toBeLessThanOrEqual(heightMm);
    const text = words.map((w) => w.text).join(' ');
    for (const part of ['c section', 'b section', 'a section', 'left 60.000']) expect(text).toContain(part);
  });
});
