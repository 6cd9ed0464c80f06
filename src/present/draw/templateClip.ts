import type { Op, Ops, Point, Step } from './pen.ts';

/** A window on a drawing, mm. */
export interface Window {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/**
 * The part of a line inside a window; null when it passes by.
 * Source: Y.-D. Liang, B. A. Barsky, ACM Transactions on Graphics 3(1), 1984.
 */
export const clipSegment = (
  [ax, ay]: Point,
  [bx, by]: Point,
  win: Window,
): readonly [Point, Point] | null => {
  const [dx, dy] = [bx - ax, by - ay];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, ax - win.x],
    [dx, win.x + win.w - ax],
    [-dy, ay - win.y],
    [dy, win.y + win.h - ay],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  if (from > to) return null;
  const at = (t: number): Point => [ax + t * dx, ay + t * dy];
  return [from === 0 ? [ax, ay] : at(from), to === 1 ? [bx, by] : at(to)];
};

const same = (a: Point | null, b: Point): boolean => a !== null && a[0] === b[0] && a[1] === b[1];

/** Straight steps inside a window. Templates are drawn in straight steps only. */
const clipSteps = (steps: readonly Step[], win: Window): readonly Step[] => {
  const out: Step[] = [];
  let [start, here, drawn]: [Point, Point, Point | null] = [[0, 0], [0, 0], null];
  const lineTo = (next: Point): void => {
    const kept = clipSegment(here, next, win);
    if (kept) {
      if (!same(drawn, kept[0])) out.push(['move', ...kept[0]]);
      out.push(['line', ...kept[1]]);
      drawn = kept[1];
    }
    here = next;
  };
  for (const step of steps) {
    if (step[0] === 'move') {
      here = [step[1], step[2]];
      start = here;
    } else if (step[0] === 'line') lineTo([step[1], step[2]]);
    else if (step[0] === 'close') lineTo(start);
    else throw new Error('a template is drawn in straight steps');
  }
  return out;
};

const inside = (x: number, y: number, { x: wx, y: wy, w, h }: Window): boolean =>
  x >= wx && x <= wx + w && y >= wy && y <= wy + h;

/** A template seen through a window: lines cut at its edge, words kept where they begin inside it. */
export const clip = (ops: Ops, win: Window): Ops =>
  ops.flatMap((op): readonly Op[] => {
    if (op.kind !== 'path') return inside(op.x, op.y, win) ? [op] : [];
    const steps = clipSteps(op.steps, win);
    return steps.length === 0 ? [] : [{ ...op, steps }];
  });
