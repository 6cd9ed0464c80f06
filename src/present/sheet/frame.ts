import { textWidth, wrap } from '../draw/helvetica.ts';
import { box, ink, type Ops, segment, stroke, text } from '../draw/pen.ts';
import type { ReportHead } from '../record/sections.ts';
import { pageFoot, workingAid } from '../words/cautions.ts';
import { BLOCK_MM, type Body, EDGE_MM, FOOT_MM, type Sheet, sizeOf } from './paper.ts';

const NAME_MM = 1.8;
const VALUE_MM = 2.5;

const shortened = (words: string, width: number): readonly string[] => {
  const lines = wrap(words, width, VALUE_MM);
  if (lines.length <= 2) return lines;
  let second = lines[1]!;
  while (second.length > 1 && textWidth(`${second}…`, VALUE_MM) > width) second = second.slice(0, -1);
  return [lines[0]!, `${second}…`];
};

/** The title block: our own, along the foot of the frame. */
const titleBlock = (
  head: ReportHead,
  body: Body,
  nth: number,
  of: number,
  x: number,
  y: number,
  w: number,
): Ops => {
  const cells: readonly (readonly [name: string, value: string, share: number])[] = [
    ['JOB', head.job, 2.4],
    ['AIRCRAFT, AS ENTERED', head.aircraft, 2.5],
    ['SIDE', body.side, 2.4],
    ['SCALE', body.scale, 1.2],
    ['REVISION', `${head.date}\n${head.revision}`, 2.9],
    ['SHEET', `${nth} of ${of}`, 1],
    ['', workingAid, 2],
  ];
  const all = cells.reduce((sum, [, , share]) => sum + share, 0);
  let left = x;
  return [
    segment([x, y], [x + w, y], stroke(ink.line, 0.35)),
    ...cells.flatMap(([name, value, share], k) => {
      const width = (w * share) / all;
      const at = left;
      left += width;
      const last = k === cells.length - 1;
      const lines = last ? wrap(value, width - 3, VALUE_MM, 'bold') : shortened(value, width - 3);
      return [
        ...(k > 0 ? [segment([at, y], [at, y + BLOCK_MM], stroke(ink.line, 0.2))] : []),
        text([at + 1.5, y + 3], name, NAME_MM, { colour: ink.quiet }),
        ...lines.map((line, n) =>
          text([at + 1.5, y + (last ? 4.2 : 6.2) + n * 3.3], line, VALUE_MM, {
            weight: last || name === 'SHEET' ? 'bold' : 'regular',
          }),
        ),
      ];
    }),
  ];
};

/** A body in its drawing frame, with title block and foot. Practice files carry their mark on every sheet. */
export const framed = (head: ReportHead, body: Body, nth: number, of: number): Sheet => {
  const { w, h } = sizeOf(head.paper, body.turned);
  const inner = w - 2 * EDGE_MM;
  const bottom = h - FOOT_MM;
  const foot = wrap(pageFoot, inner, 2.2);
  return {
    widthMm: w,
    heightMm: h,
    turned: body.turned,
    ops: [
      ...body.ops,
      box(EDGE_MM, EDGE_MM, inner, bottom - EDGE_MM, { stroke: stroke(ink.line, 0.5) }),
      ...titleBlock(head, body, nth, of, EDGE_MM, bottom - BLOCK_MM, inner),
      ...foot.map((line, k) => text([EDGE_MM, bottom + 3.6 + k * 2.9], line, 2.2)),
      text(
        [EDGE_MM, bottom + 3.6 + foot.length * 2.9],
        `${head.job} · ${head.date} · Tubewright ${head.version} · ${head.revision}`,
        2.2,
        {
          colour: ink.quiet,
        },
      ),
      ...(head.unseen
        ? [text([w / 2, EDGE_MM - 2], head.unseen, 2.4, { align: 'middle', weight: 'bold' })]
        : []),
      text([w - EDGE_MM, EDGE_MM - 2], head.title, 2.2, { align: 'right', colour: ink.quiet }),
      ...(head.practice
        ? [
            text([EDGE_MM, EDGE_MM - 2], 'TRAINING FILE. INVENTED AIRCRAFT. NOT FOR WORK.', 3, {
              weight: 'bold',
            }),
          ]
        : []),
    ],
  };
};
