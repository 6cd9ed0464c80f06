import type { Point } from './pen.ts';

/** A rectangle on the page, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A label to place: what it belongs to, its size, and how much it matters (smaller first). */
export interface Wanted {
  readonly id: string;
  readonly at: Point;
  readonly w: number;
  readonly h: number;
  readonly rank: number;
  /** How far the thing itself reaches from `at`: the label starts beyond it. */
  readonly clear?: number;
}

export interface Placed {
  readonly id: string;
  readonly box: Box;
  /** From the thing to the label's edge; none when the label lies beside it. */
  readonly leader: readonly [Point, Point] | null;
}

export type Line = readonly [Point, Point];

export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

const inside = (box: Box, frame: Box): boolean =>
  box.x >= frame.x &&
  box.y >= frame.y &&
  box.x + box.w <= frame.x + frame.w &&
  box.y + box.h <= frame.y + frame.h;

/** Length of a line within a box (Liang and Barsky 1984). */
export const lengthWithin = ([a, b]: Line, box: Box): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, a[0] - box.x],
    [dx, box.x + box.w - a[0]],
    [-dy, a[1] - box.y],
    [dy, box.y + box.h - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return 0;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
    if (from >= to) return 0;
  }
  return (to - from) * Math.hypot(dx, dy);
};

const nearest = (box: Box, [x, y]: Point): Point => [
  Math.min(Math.max(x, box.x), box.x + box.w),
  Math.min(Math.max(y, box.y), box.y + box.h),
];

const crosses = ([a, b]: Line, [c, d]: Line): boolean => {
  const turn = (p: Point, q: Point, r: Point): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
};

/** Half the width of a band. */
const BAND_MM = 1.5;

const grown = ({ x, y, w, h }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  w: w + 2 * by,
  h: h + 2 * by,
});

const REACHES_MM = [1.4, 2.6, 4.2, 6.2, 8.6, 11.5, 15, 19, 24, 30, 38];
const DIRECTIONS = 16;
/** A label closer than this needs no line to what it names. */
const BESIDE_MM = 1.6;

/**
 * Labels placed so that no two overlap, each as near to its thing as can be, off other marks and tubes where there is room,
 * with a leader line when it could not stay beside it. Greedy in order of rank; what finds no room comes back in `leftOut`.
 *
 * @param solid  boxes no label may cover
 * @param marks  boxes better not covered (tagged clusters)
 * @param bands  middle lines of the tags' bands, better not covered
 * @param lines  tubes better not covered
 */
export const declutter = (
  wanted: readonly Wanted[],
  frame: Box,
  solid: readonly Box[],
  marks: readonly Box[],
  bands: readonly Line[],
  lines: readonly Line[],
): { readonly placed: readonly Placed[]; readonly leftOut: readonly string[] } => {
  const placed: Placed[] = [];
  const taken: Box[] = [...solid];
  const leaders: Line[] = [];
  const leftOut: string[] = [];
  for (const want of [...wanted].sort((a, b) => a.rank - b.rank || (a.id < b.id ? -1 : 1))) {
    let best: { cost: number; box: Box; leader: Line | null } | undefined;
    for (const reach of REACHES_MM) {
      if (best && best.cost <= reach) break;
      for (let k = 0; k < DIRECTIONS; k++) {
        const angle = (2 * Math.PI * k) / DIRECTIONS;
        const [ux, uy] = [Math.cos(angle), -Math.sin(angle)];
        const box: Box = {
          x: want.at[0] + ux * (reach + (want.clear ?? 0) + want.w / 2) - want.w / 2,
          y: want.at[1] + uy * (reach + (want.clear ?? 0) + want.h / 2) - want.h / 2,
          w: want.w,
          h: want.h,
        };
        if (!inside(box, frame) || taken.some((other) => overlaps(box, other))) continue;
        if (leaders.some((line) => lengthWithin(line, box) > 0)) continue;
        const edge = nearest(box, want.at);
        const away = Math.hypot(edge[0] - want.at[0], edge[1] - want.at[1]);
        const leader: Line | null = away > BESIDE_MM + (want.clear ?? 0) ? [want.at, edge] : null;
        const over =
          2.5 * lines.reduce((sum, line) => sum + Math.min(3, lengthWithin(line, box)), 0) +
          6 * marks.filter((mark) => overlaps(mark, box)).length +
          8 * bands.reduce((sum, line) => sum + lengthWithin(line, grown(box, BAND_MM)), 0);
        const cut = leader
          ? 14 * taken.filter((other) => lengthWithin(leader, other) > 0).length +
            9 * leaders.filter((line) => crosses(line, leader)).length
          : 0;
        const cost = away + over + cut;
        if (!best || cost < best.cost - 1e-9) best = { cost, box, leader };
      }
    }
    if (!best) {
      leftOut.push(want.id);
      continue;
    }
    placed.push({ id: want.id, box: best.box, leader: best.leader });
    taken.push(best.box);
    if (best.leader) leaders.push(best.leader);
  }
  return { placed, leftOut };
};
