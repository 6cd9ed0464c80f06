import type { StockLine } from '../../core/estimate/result.ts';
import { lengthUnit, showBareLength, type Units } from '../show.ts';
import { stockPartWords } from '../words/estimate.ts';
import { textWidth, wrap } from './helvetica.ts';
import { box, type Drawing, ink, type Ops, segment, stroke, text } from './pen.ts';

const BAR_MM = 8;
const LEFT_MM = 8;
const WORDS_MM = 2.6;
const LEAD_MM = 3.6;
const GAP_MM = 4;

const hatch = (x: number, y: number, w: number, h: number): Ops => {
  const step = 3;
  return Array.from({ length: Math.max(0, Math.floor((w + h) / step)) }, (_, k) => {
    const at = (k + 1) * step;
    const [x1, y1] = at <= h ? [x, y + at] : [x + at - h, y + h];
    const [x2, y2] = at <= w ? [x + at, y] : [x + w, y + at - w];
    return segment([x1, y1], [x2, y2], stroke(ink.faint, 0.2));
  });
};

/** Pieces of one tube on its bought lengths, to scale and numbered; the words under a length say what each piece is and takes. */
export const nestingDrawing = (line: StockLine, units: Units, widthMm: number): Drawing => {
  const scale = (widthMm - LEFT_MM) / line.stockIn.value;
  const takes = new Map(line.pieces.map((p) => [p.id, p]));
  const ops: Ops[] = [];
  let y = 1;
  line.bars.forEach((bar, row) => {
    let x = LEFT_MM;
    const pieces = bar.pieces.map((id, k): Ops => {
      const w = takes.get(id)!.takesIn.value * scale;
      const at = x;
      x += w;
      const no = String(k + 1);
      return [
        box(at, y, w, BAR_MM, { fill: ink.paper, stroke: stroke(ink.line, 0.35) }),
        ...(w > textWidth(no, 2.8) + 0.4
          ? [text([at + w / 2, y + BAR_MM / 2 + 1], no, 2.8, { align: 'middle', weight: 'bold' })]
          : []),
      ];
    });
    const words = bar.pieces.map((id, k) => {
      const piece = takes.get(id)!;
      return `${k + 1}  ${piece.member} ${stockPartWords(piece.part)}, ${showBareLength(piece.takesIn.value, units)} ${lengthUnit(units)}`;
    });
    const lines = wrap(
      `${words.join('   ')}   left ${showBareLength(bar.leftIn, units)} ${lengthUnit(units)}`,
      widthMm - LEFT_MM,
      WORDS_MM,
    );
    ops.push(
      [text([0, y + BAR_MM / 2 + 1.1], `${row + 1}`, 3.2, { weight: 'bold' })],
      hatch(x, y, Math.max(0, widthMm - x), BAR_MM),
      [box(LEFT_MM, y, widthMm - LEFT_MM, BAR_MM, { stroke: stroke(ink.line, 0.5) })],
      ...pieces,
      lines.map((one, k) => text([LEFT_MM, y + BAR_MM + 3.4 + k * LEAD_MM], one, WORDS_MM)),
    );
    y += BAR_MM + lines.length * LEAD_MM + GAP_MM;
  });
  return { widthMm, heightMm: y, ops: ops.flat() };
};
