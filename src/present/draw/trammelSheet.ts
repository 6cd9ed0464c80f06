import type { Target, Trammel } from '../../core/trammel/result.ts';
import { type Body, type Paper, type Room, roomOf } from '../sheet/paper.ts';
import { fixed, lengthUnit, showBareLength, type Units } from '../show.ts';
import { inPairs, pairKey, twinKey } from '../tables/pairs.ts';
import { rawLength } from '../tables/showing.ts';
import { sideConvention } from '../words/cautions.ts';
import { distanceWords } from '../words/record.ts';
import { textWidth } from './helvetica.ts';
import { box, ink, type Ops, segment, stroke, text } from './pen.ts';

const ROW_MM = 6.4;
const HEAD_MM = 31;
const BAY_MM = 7.4;
const TEXT_MM = 2.6;

/** Shares of the width, in order: what stands there, and whether it is a blank to fill. */
const columns = [
  { title: 'Distance', share: 25 },
  { title: 'What', share: 26 },
  { title: 'Target, true', share: 33 },
  { title: 'Limit ±', share: 16 },
  { title: 'Points', share: 23 },
  { title: 'Found', share: 24, blank: true },
  { title: 'Again', share: 21, blank: true },
  { title: 'L less R', share: 14, blank: true },
] as const;

/** Edges of the columns from the left, one more than there are columns. */
const edgesOf = (room: Room): readonly number[] => {
  const all = columns.reduce((sum, c) => sum + c.share, 0);
  const edges = [room.x];
  for (const { share } of columns) edges.push(edges.at(-1)! + (share * room.w) / all);
  return edges;
};

const blankLine = (x: number, y: number, name: string, to: number): Ops => [
  text([x, y], name, TEXT_MM, { colour: ink.quiet }),
  segment([x + textWidth(name, TEXT_MM) + 1.5, y + 0.6], [to, y + 0.6], stroke(ink.line, 0.2)),
];

/** Title, blanks for who and when, what the point letters mean, and the heads of the columns. */
const headOps = (room: Room, units: Units, edges: readonly number[]): Ops => {
  const { x, y, w } = room;
  const third = w / 3;
  return [
    text([x, y + 6], 'Trammel sheet', 6, { weight: 'bold' }),
    text(
      [x + w, y + 6],
      `lengths in ${units === 'mm' ? 'millimetres' : 'inches, nearest 1/64 beside'}`,
      TEXT_MM,
      {
        align: 'right',
        colour: ink.quiet,
      },
    ),
    ...blankLine(x, y + 13, 'Hold', x + third - 4),
    ...blankLine(x + third, y + 13, 'Instrument, sure to ±', x + 2 * third - 4),
    ...blankLine(x + 2 * third, y + 13, 'By, date', x + w),
    text(
      [x, y + 18.4],
      'True distances between tube axes. Points, circle one at each end: A axis, S surface, N near edge, F far edge, H hole.',
      TEXT_MM,
    ),
    text([x, y + 22.2], sideConvention, TEXT_MM, { colour: ink.quiet }),
    ...columns.flatMap(({ title }, k) =>
      text([edges[k]! + 1, y + 28.2], k === 2 ? `${title}, ${lengthUnit(units)}` : title, TEXT_MM, {
        weight: 'bold',
      }),
    ),
    segment([x, y + HEAD_MM - 1.2], [x + w, y + HEAD_MM - 1.2], stroke(ink.line, 0.4)),
  ];
};

/** One distance; the first of a pair leaves the rule below it faint. */
const rowOps = (t: Target, units: Units, y: number, edges: readonly number[], opensPair: boolean): Ops => {
  const base = y + ROW_MM - 2;
  const right = edges.at(-1)!;
  const bare = showBareLength(t.targetIn.value, units, 64);
  const limit = rawLength(t.toleranceIn?.value, units);
  const points = (edges[5]! - edges[4]! - 2) / 2;
  return [
    text([edges[0]! + 1, base], t.id, 2.9, { weight: 'bold' }),
    text(
      [edges[1]! + 1, base],
      distanceWords[t.kind] === 'Diagonal across the station' ? 'Ring diagonal' : distanceWords[t.kind],
      TEXT_MM,
    ),
    text([edges[3]! - 1.5, base], bare, 2.9, { align: 'right' }),
    text([edges[3]! + 1, base], limit === null ? 'none' : fixed(limit, units === 'mm' ? 1 : 3), TEXT_MM, {
      colour: limit === null ? ink.quiet : ink.text,
    }),
    ...[0, 1].map((end) =>
      text([edges[4]! + 1 + end * (points + 0.6), base], 'ASNFH', 2.3, { colour: ink.quiet }),
    ),
    ...columns.flatMap((c, k) =>
      'blank' in c && k < 7
        ? [
            box(edges[k]! + 0.7, y + 0.8, edges[k + 1]! - edges[k]! - 1.4, ROW_MM - 1.6, {
              stroke: stroke(ink.rule, 0.2),
            }),
          ]
        : [],
    ),
    segment(
      [edges[0]!, y + ROW_MM],
      [right, y + ROW_MM],
      stroke(opensPair ? ink.faint : ink.rule, opensPair ? 0.12 : 0.25),
    ),
  ];
};

const isPair = (a: Target | undefined, b: Target | undefined): boolean =>
  a !== undefined && b !== undefined && a !== b && twinKey(a) === pairKey(b.from, b.to);

/**
 * The distances to take by hand, page by page: left and right of a pair one below the other with one box for their
 * difference, under the bay they stand in; boxes for two readings, and the kind of point at each end to be circled.
 */
export const trammelBodies = (
  trammel: Pick<Trammel, 'targets'>,
  paper: Paper,
  units: Units,
): readonly Body[] => {
  const room = roomOf(paper, false);
  const edges = edgesOf(room);
  const rows = inPairs(trammel.targets);
  const bodies: Body[] = [];
  let ops: Ops = headOps(room, units, edges);
  let y = room.y + HEAD_MM;
  let bay = '';
  const turn = (): void => {
    bodies.push({ turned: false, side: "Left and right are the pilot's", scale: 'none', ops });
    ops = headOps(room, units, edges);
    y = room.y + HEAD_MM;
  };
  for (let k = 0; k < rows.length; ) {
    const pair = isPair(rows[k], rows[k + 1]) ? [rows[k]!, rows[k + 1]!] : [rows[k]!];
    const headed = pair[0]!.bay !== bay;
    const height = pair.length * ROW_MM + (headed ? BAY_MM : 0);
    if (y + height > room.y + room.h) {
      turn();
      bay = '';
    }
    if (pair[0]!.bay !== bay) {
      bay = pair[0]!.bay;
      ops = [
        ...ops,
        text([room.x + 1, y + BAY_MM - 2.2], `From station ${bay === '' ? 'none' : bay}`, 3.2, {
          weight: 'bold',
        }),
      ];
      y += BAY_MM;
    }
    const top = y;
    for (const [n, t] of pair.entries()) {
      ops = [...ops, ...rowOps(t, units, y, edges, pair.length === 2 && n === 0)];
      y += ROW_MM;
    }
    if (pair.length === 2)
      ops = [
        ...ops,
        box(edges[7]! + 0.7, top + 0.8, edges[8]! - edges[7]! - 1.4, 2 * ROW_MM - 1.6, {
          stroke: stroke(ink.rule, 0.2),
        }),
      ];
    k += pair.length;
  }
  if (rows.length > 0) turn();
  return bodies;
};
