import { textWidth, wrap } from '../draw/helvetica.ts';
import { box, ink, type Ops, segment, stroke, text } from '../draw/pen.ts';
import type { MeasureRow } from '../record/sections.ts';
import type { Strip } from './cardOps.ts';

const TEXT_MM = 2.6;
const ROW_MM = 6.4;

/** Shares of the width: what stands there, then the boxes to fill. */
const columns = [
  { title: 'Distance', share: 24 },
  { title: 'In words', share: 54 },
  { title: 'Hold at', share: 32 },
  { title: 'Limit ±', share: 24 },
  { title: 'Found', share: 30 },
  { title: 'Left', share: 30 },
] as const;

const edgesOf = (width: number): readonly number[] => {
  const all = columns.reduce((sum, { share }) => sum + share, 0);
  const edges = [0];
  for (const { share } of columns) edges.push(edges.at(-1)! + (share * width) / all);
  return edges;
};

/** Heads over the rows of a hold's sheet; `unit` of every length. */
export const measureHead = (width: number, unit: string): Strip => ({
  height: 6,
  ops: (x, y) => [
    ...columns.map(({ title }, k) =>
      text([x + edgesOf(width)[k]! + 1, y + 3.6], k === 2 ? `${title}, ${unit}` : title, TEXT_MM, {
        weight: 'bold',
      }),
    ),
    segment([x, y + 5.4], [x + width, y + 5.4], stroke(ink.line, 0.35)),
  ],
});

/** One distance to hold: target and limit printed, a box for what is found, and one for what is left. */
export const measureStrip = (row: MeasureRow, width: number): Strip => {
  const edges = edgesOf(width);
  const words = wrap(row.words, edges[2]! - edges[1]! - 2, TEXT_MM).slice(0, 2);
  const blank = (k: number, x: number, y: number): Ops => [
    box(x + edges[k]! + 0.7, y + 0.8, edges[k + 1]! - edges[k]! - 1.4, ROW_MM - 1.6, {
      stroke: stroke(ink.rule, 0.2),
    }),
  ];
  return {
    height: ROW_MM,
    ops: (x, y) => [
      text([x + edges[0]! + 1, y + 4.4], row.id, 2.9, { weight: 'bold' }),
      ...words.map((line, n) =>
        text([x + edges[1]! + 1, y + (words.length === 1 ? 4.4 : 3 + n * 3)], line, TEXT_MM),
      ),
      text([x + edges[3]! - 1.5 - textWidth(row.aim, 2.9), y + 4.4], row.aim, 2.9),
      text([x + edges[3]! + 1, y + 4.4], row.limit, TEXT_MM),
      ...(row.found
        ? [text([x + edges[5]! - 1.5, y + 4.4], row.found, 2.9, { align: 'right' })]
        : blank(4, x, y)),
      ...blank(5, x, y),
      segment([x, y + ROW_MM], [x + width, y + ROW_MM], stroke(ink.faint, 0.15)),
    ],
  };
};
