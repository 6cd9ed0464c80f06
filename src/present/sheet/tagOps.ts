import { glyph } from '../draw/glyph.ts';
import { wrap } from '../draw/helvetica.ts';
import { box, ink, segment, stroke, text } from '../draw/pen.ts';
import { qrOps } from '../draw/qr.ts';
import type { TagLabel } from '../record/sections.ts';
import type { Strip } from './cardOps.ts';

const TAG_H = 32;
const CODE_MM = 25;
const LEFT_MM = 23;

/** Two tags beside each other, to be cut out and tied on: tube, chalk letters with their glyph, decision, next hold point, and a code that a tablet reads. */
export const tagStrip = (tags: readonly [TagLabel, TagLabel | undefined], width: number): Strip => ({
  height: TAG_H,
  ops: (x, y) =>
    tags.flatMap((tag, k) => {
      if (!tag) return [];
      const w = width / 2;
      const left = x + k * w;
      const room = w - LEFT_MM - CODE_MM - 2;
      const words = wrap(tag.words, room, 2.6).slice(0, 3);
      const decision = wrap(tag.decision, room, 2.8, 'bold').slice(0, 2);
      const next = wrap(tag.next, room, 2.2).slice(0, 2);
      const under = y + 12.4 + words.length * 3.3;
      return [
        box(left, y, w, TAG_H, { stroke: stroke(ink.rule, 0.2, [1.2, 1.2]) }),
        box(left + 4, y + 4, 15, 15, { stroke: stroke(ink.line, 0.6) }),
        text([left + 11.5, y + 13.6], tag.chalk, 6.4, { weight: 'bold', align: 'middle' }),
        ...glyph(tag.glyph, left + 11.5, y + 25, 2.4, ink.line),
        text([left + LEFT_MM, y + 8.4], tag.id, 4.6, { weight: 'bold' }),
        ...words.map((one, n) => text([left + LEFT_MM, y + 12.4 + n * 3.3], one, 2.6)),
        ...decision.map((one, n) =>
          text([left + LEFT_MM, under + 0.6 + n * 3.3], one, 2.8, { weight: 'bold' }),
        ),
        ...next.map((one, n) =>
          text([left + LEFT_MM, y + TAG_H - 4.6 + (n - next.length + 1) * 2.8 + 2.4], one, 2.2, {
            colour: ink.quiet,
          }),
        ),
        segment(
          [left + w - CODE_MM - 2, y + 3],
          [left + w - CODE_MM - 2, y + TAG_H - 3],
          stroke(ink.faint, 0.15),
        ),
        ...qrOps(tag.code, left + w - CODE_MM - 1, y + (TAG_H - CODE_MM) / 2, CODE_MM),
      ];
    }),
});
