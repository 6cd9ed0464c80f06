import { describe, expect, it } from 'vitest';
import { states } from '../../../src/core/walkRound/result.ts';
import { glyph } from '../../../src/present/draw/glyph.ts';
import { band, tube } from '../../../src/present/draw/pattern.ts';
import type { Op, Ops, Point } from '../../../src/present/draw/pen.ts';
import { damageTags, tags } from '../../../src/present/tags.ts';

const STEP = 0.1;
const [W, H] = [14, 5];

/** Points along a path, curves cut into short pieces. */
const outline = (op: Extract<Op, { kind: 'path' }>): readonly (readonly Point[])[] => {
  const runs: Point[][] = [];
  for (const step of op.steps) {
    const run = runs[runs.length - 1];
    const last = run?.[run.length - 1];
    if (step[0] === 'move') runs.push([[step[1], step[2]]]);
    else if (step[0] === 'line') run!.push([step[1], step[2]]);
    else if (step[0] === 'close') run!.push(run![0]!);
    else
      for (let k = 1; k <= 12; k++) {
        const [t, u] = [k / 12, 1 - k / 12];
        const mix = (a: number, b: number, c: number, d: number) =>
          u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
        run!.push([mix(last![0], step[1], step[3], step[5]), mix(last![1], step[2], step[4], step[6])]);
      }
  }
  return runs;
};

const inside = ([x, y]: Point, runs: readonly (readonly Point[])[]): boolean =>
  runs.reduce(
    (odd, run) =>
      run.reduce((flip, p, k) => {
        const q = run[(k + 1) % run.length]!;
        return p[1] > y !== q[1] > y && x < p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])
          ? !flip
          : flip;
      }, odd),
    false,
  );

const nearTo = ([x, y]: Point, run: readonly Point[], reach: number, dash?: readonly number[]): boolean => {
  let walked = 0;
  for (let k = 1; k < run.length; k++) {
    const [a, b] = [run[k - 1]!, run[k]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (length * length)));
    if (Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy) <= reach) {
      const period = dash?.reduce((sum, d) => sum + d, 0) ?? 0;
      const phase = period > 0 ? (walked + t * length) % period : 0;
      if (!dash || phase <= dash[0]! + reach || phase >= period - reach) return true;
    }
    walked += length;
  }
  return false;
};

/** What is drawn as a black and white raster: ink is ink whatever its colour, white paper covers. */
const raster = (ops: Ops): readonly boolean[] => {
  const cells: boolean[] = [];
  for (let y = STEP / 2; y < H; y += STEP)
    for (let x = STEP / 2; x < W; x += STEP) {
      let black = false;
      for (const op of ops) {
        if (op.kind === 'text') {
          if (Math.abs(x - op.x) < op.sizeMm / 4 && y < op.y && y > op.y - op.sizeMm * 0.7) black = true;
          continue;
        }
        if (op.kind === 'image') throw new Error('a pattern has no photo in it');
        const runs = outline(op);
        if (op.fill && inside([x, y], runs)) black = op.fill.toUpperCase() !== '#FFFFFF';
        if (op.stroke && runs.some((run) => nearTo([x, y], run, op.stroke!.widthMm / 2, op.stroke!.dashMm)))
          black = true;
      }
      cells.push(black);
    }
  return cells;
};

const unlike = (a: readonly boolean[], b: readonly boolean[]): number =>
  a.filter((black, k) => black !== b[k]).length / Math.max(1, a.filter((black, k) => black || b[k]!).length);

describe('marks without colour', () => {
  // needs.md N36: all states are told apart in a grey print. A fifth of the ink of any two must differ.
  it('draw every state of a tube so that it is told from every other in black ink', () => {
    const drawn = states.map((state) => {
      const { pattern, light } = tags[state];
      return raster([
        ...tube([0, H / 2], [W, H / 2], 1.1, pattern, light),
        ...band({ at: [W / 2, H / 2], along: [1, 0], halfLength: 5, halfWidth: 1.45 }, pattern, light),
      ]);
    });
    for (const [k, a] of drawn.entries())
      for (const [n, b] of drawn.entries())
        if (k < n) expect(unlike(a, b), `${states[k]} and ${states[n]}`).toBeGreaterThan(0.2);
  });

  it('draw every glyph of a state or a damage so that it is told from every other in black ink', () => {
    const all = [
      ...states.map((state) => tags[state].glyph).filter((name) => name !== 'damage'),
      ...Object.values(damageTags).map((tag) => tag.glyph),
    ];
    const drawn = all.map((name) => raster(glyph(name, W / 2, H / 2, 1.2, '#000000')));
    expect(new Set(all).size).toBe(all.length);
    for (const cells of drawn) expect(cells.filter(Boolean).length).toBeGreaterThan(10);
    for (const [k, a] of drawn.entries())
      for (const [n, b] of drawn.entries())
        if (k < n) expect(unlike(a, b), `${all[k]} and ${all[n]}`).toBeGreaterThan(0.2);
  });

  it('carry a word and, but for the two plain states, two chalk letters, none twice', () => {
    const letters = states.map((state) => tags[state].chalk).filter((chalk) => /\w/.test(chalk));
    expect(letters).toHaveLength(6);
    expect(new Set(letters).size).toBe(6);
    expect(new Set(states.map((state) => tags[state].word)).size).toBe(states.length);
  });

  it('wrap a band the same way whichever way the tube runs', () => {
    const strip = { at: [7, 2.5] as const, halfLength: 5, halfWidth: 1.45 };
    for (const pattern of ['rings', 'hatch', 'dashes'] as const) {
      const [a, b] = [[1, 0] as const, [-1, 0] as const].map((along) =>
        raster(band({ ...strip, along }, pattern, '#000000')),
      );
      expect(unlike(a!, b!), pattern).toBeLessThan(0.05);
    }
  });
});
