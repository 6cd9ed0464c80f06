import type { ReportHead } from '../record/sections.ts';
import { framed } from '../sheet/frame.ts';
import { type Body, roomOf, type Sheet } from '../sheet/paper.ts';
import { wrap } from './helvetica.ts';
import { box, ink, type Ops, type Point, shift, stroke, text } from './pen.ts';
import { clip } from './templateClip.ts';
import { inchSquare, lyingBars, matchMark, standingBars } from './templateMarks.ts';
import type { Template } from './templateWrap.ts';

/** Left for the standing bars, and for the lying ones with the square. */
const LEFT_MM = 15;
const FOOT_MM = 29;
/** Two tiles share this much. */
const SHARED_MM = 10;
const TITLE_MM = 6;
const LEAD_MM = 3.6;

/** First places of tiles that cover a length, each tile `room` long and sharing a strip with the next. */
const tiles = (length: number, room: number): readonly number[] => {
  if (length <= room) return [0];
  const step = room - SHARED_MM;
  return Array.from({ length: 1 + Math.ceil((length - room) / step) }, (_, k) => k * step);
};

/** Crosses in the strips that two tiles share, named alike on both; in the template's own millimetres. */
const marksOf = (
  template: Template,
  xs: readonly number[],
  ys: readonly number[],
  size: { readonly w: number; readonly h: number },
): readonly (readonly [Point, string])[] => {
  const name = (k: number): string => String.fromCharCode(65 + (k % 26));
  const spread = (starts: readonly number[], room: number, length: number): readonly number[] =>
    starts.flatMap((s) => [s + 0.2 * Math.min(room, length - s), s + 0.75 * Math.min(room, length - s)]);
  const upright = xs
    .slice(1)
    .flatMap((x) => spread(ys, size.h, template.heightMm).map((y): Point => [x + SHARED_MM / 2, y]));
  const lying = ys
    .slice(1)
    .flatMap((y) => spread(xs, size.w, template.widthMm).map((x): Point => [x, y + SHARED_MM / 2]));
  return [...upright, ...lying].map((p, k) => [p, name(k)] as const);
};

/** The sheets of one template: one, or tiles with match marks where it is larger than the paper. */
const bodiesOf = (head: ReportHead, template: Template, side: string): readonly Body[] => {
  const room = roomOf(head.paper, false);
  const lines = template.lines.flatMap((l) => wrap(l, room.w, 2.6));
  const above = TITLE_MM + lines.length * LEAD_MM + 3;
  const size = { w: room.w - LEFT_MM, h: room.h - above - FOOT_MM };
  const xs = tiles(template.widthMm, size.w);
  const ys = tiles(template.heightMm, size.h);
  const many = xs.length * ys.length > 1;
  const marks = many ? marksOf(template, xs, ys, size) : [];
  const all: Ops = [...template.ops, ...marks.flatMap(([at, name]) => matchMark(at, name))];
  const [left, top] = [room.x + LEFT_MM, room.y + above];
  return ys.flatMap((y, row) =>
    xs.map((x, column): Body => {
      const win = {
        x,
        y,
        w: Math.min(size.w, template.widthMm - x),
        h: Math.min(size.h, template.heightMm - y),
      };
      const seen = many ? clip(all, win) : all;
      const tile = many ? ` · row ${row + 1} of ${ys.length}, column ${column + 1} of ${xs.length}` : '';
      return {
        turned: false,
        side,
        scale: template.scale ?? '1:1',
        ops: [
          text([room.x, room.y + 4], template.title + tile, 4, { weight: 'bold' }),
          ...lines.map((l, k) => text([room.x, room.y + TITLE_MM + 3 + k * LEAD_MM], l, 2.6)),
          ...standingBars(room.x, top),
          ...lyingBars(room.x, room.y + room.h - FOOT_MM + 6),
          ...inchSquare(room.x + room.w - 26, room.y + room.h - FOOT_MM + 2),
          text(
            [room.x, room.y + room.h - 1],
            'Print at 100 %. Measure both bars both ways before cutting; outside 0.5 % print again.',
            2.4,
          ),
          ...shift(seen, left - x, top - y),
          ...(many ? [box(left, top, win.w, win.h, { stroke: stroke(ink.faint, 0.15, [1, 2]) })] : []),
        ],
      };
    }),
  );
};

/** Templates on paper, true to size, each sheet in its frame with check bars both ways and the usual foot. */
export const templateSheets = (
  head: ReportHead,
  templates: readonly Template[],
  side: string,
): readonly { readonly template: Template; readonly sheet: Sheet }[] => {
  const bodies = templates.flatMap((template) =>
    bodiesOf(head, template, side).map((body) => ({ template, body })),
  );
  return bodies.map(({ template, body }, k) => ({
    template,
    sheet: framed(head, body, k + 1, bodies.length),
  }));
};
