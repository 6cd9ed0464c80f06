import type { StockLine } from '../../core/estimate/result.ts';
import { showBareLength, type Units } from '../show.ts';
import { textWidth } from './helvetica.ts';
import { box, type Drawing, ink, type Ops, segment, stroke, text } from './pen.ts';

const BAR_MM = 9;
const GAP_MM = 8;
const TOP_MM = 2;

const shortened = (words: string, width: number, size: number): string => {
  if (textWidth(words, size) <= width) return words;
  let cut = words;
  while (cut.length > 0 && textWidth(`${cut}…`, size) > width) cut = cut.slice(0, -1);
  return cut === '' ? '' : `${cut}…`;
};

const hatch = (x: number, y: number, w: number, h: number): Ops => {
  const step = 3;
  return Array.from({ length: Math.max(0, Math.floor((w + h) / step)) }, (_, k) => {
    const at = (k + 1) * step;
    const [x1, y1] = at <= h ? [x, y + at] : [x + at - h, y + h];
    const [x2, y2] = at <= w ? [x + at, y] : [x + w, y + at - w];
    return segment([x1, y1], [x2, y2], stroke(ink.faint, 0.2));
  });
};

/** Pieces of one tube on its bought lengths, to scale; what is left over is hatched. Numbers under a piece are what it takes. */
export const nestingDrawing = (line: StockLine, units: Units, widthMm: number): Drawing => {
  const scale = (widthMm - 14) / line.stockIn.value;
  const takes = new Map(line.pieces.map((p) => [p.id, p]));
  const ops = line.bars.flatMap((bar, row): Ops => {
    const y = TOP_MM + row * (BAR_MM + GAP_MM);
    let x = 12;
    const placed = bar.pieces.flatMap((id, k): Ops => {
      const piece = takes.get(id)!;
      const w = piece.takesIn.value * scale;
      const left = x;
      x += w;
      const words = shortened(id, w - 1.6, 2.3);
      const size = shortened(showBareLength(piece.takesIn.value, units), w - 1, 2.1);
      return [
        box(left, y, w, BAR_MM, { fill: ink.paper, stroke: stroke(ink.line, 0.35) }),
        text([left + 0.8, y + BAR_MM / 2 + 0.9], words === '' ? String(k + 1) : words, 2.3),
        text([left + 0.5, y + BAR_MM + 3], size, 2.1, { colour: ink.quiet }),
      ];
    });
    const end = 12 + line.stockIn.value * scale;
    const left = showBareLength(bar.leftIn, units);
    return [
      text([0, y + BAR_MM / 2 + 1], `${row + 1}`, 3, { weight: 'bold' }),
      box(12, y, end - 12, BAR_MM, { stroke: stroke(ink.line, 0.5) }),
      ...(end - x > 1 ? hatch(x, y, end - x, BAR_MM) : []),
      ...placed,
      ...(end - x > textWidth(left, 2.1) + 1
        ? [text([end - 0.5, y + BAR_MM + 3], left, 2.1, { align: 'right', colour: ink.quiet })]
        : []),
    ];
  });
  return {
    widthMm,
    heightMm: TOP_MM + line.bars.length * (BAR_MM + GAP_MM) + 1,
    ops,
  };
};
