import type { Factor } from './factor.ts';

/** Right-hand sides carried through the factor side by side. */
const ABREAST = 4;

/**
 * Solves L Lᵀ x = f for `columns` vectors of length 6 n one after the other, in cluster order.
 * Held freedoms must be 0 in `loads` for 0 to come back there.
 */
export const backsolve = (factor: Factor, loads: Float64Array, columns: number): Float64Array => {
  const size = 6 * factor.fronts.n;
  const moves = new Float64Array(size * columns);
  const x = new Float64Array(size * ABREAST);
  for (let c = 0; c < columns; c += ABREAST) {
    const taken = Math.min(ABREAST, columns - c);
    gather(factor, loads, c * size, taken, x);
    if (taken === 1) sweepOne(factor, x);
    else sweepFour(factor, x);
    scatter(factor, x, c * size, taken, moves);
  }
  return moves;
};

const gather = (factor: Factor, loads: Float64Array, from: number, taken: number, x: Float64Array): void => {
  const { n, cluster } = factor.fronts;
  const width = taken === 1 ? 1 : ABREAST;
  x.fill(0);
  for (let position = 0; position < n; position++)
    for (let d = 0; d < 6; d++)
      for (let c = 0; c < taken; c++)
        x[(6 * position + d) * width + c] = loads[from + c * 6 * n + 6 * cluster[position]! + d]!;
};

const scatter = (factor: Factor, x: Float64Array, to: number, taken: number, moves: Float64Array): void => {
  const { n, cluster } = factor.fronts;
  const width = taken === 1 ? 1 : ABREAST;
  for (let position = 0; position < n; position++)
    for (let d = 0; d < 6; d++)
      for (let c = 0; c < taken; c++)
        moves[to + c * 6 * n + 6 * cluster[position]! + d] = x[(6 * position + d) * width + c]!;
};

const sweepOne = (factor: Factor, x: Float64Array): void => {
  const { panels, panelAt, fronts } = factor;
  const { count, first, rowStart, rows } = fronts;
  for (let f = 0; f < count; f++) {
    const x0 = 6 * first[f]!;
    const width = 6 * first[f + 1]! - x0;
    if (isZero(x, x0, width)) continue;
    let at = panelAt[f]!;
    for (let i = 0; i < width; i++, at += width) {
      let v = x[x0 + i]!;
      for (let p = 0; p < i; p++) v -= panels[at + p]! * x[x0 + p]!;
      x[x0 + i] = v / panels[at + i]!;
    }
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++)
      for (let d = 0; d < 6; d++, at += width) {
        let v = 0;
        for (let p = 0; p < width; p++) v += panels[at + p]! * x[x0 + p]!;
        x[6 * rows[r]! + d]! -= v;
      }
  }
  for (let f = count - 1; f >= 0; f--) {
    const x0 = 6 * first[f]!;
    const width = 6 * first[f + 1]! - x0;
    let at = panelAt[f]! + width * width;
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++)
      for (let d = 0; d < 6; d++, at += width) {
        const v = x[6 * rows[r]! + d]!;
        for (let p = 0; p < width; p++) x[x0 + p]! -= panels[at + p]! * v;
      }
    for (let i = width - 1; i >= 0; i--) {
      at = panelAt[f]! + i * width;
      const v = x[x0 + i]! / panels[at + i]!;
      x[x0 + i] = v;
      for (let p = 0; p < i; p++) x[x0 + p]! -= panels[at + p]! * v;
    }
  }
};

/** A front that no load has reached gives nothing on: a pair of end forces touches only the fronts above its clusters. */
const isZero = (x: Float64Array, from: number, count: number): boolean => {
  for (let at = from; at < from + count; at++) if (x[at] !== 0) return false;
  return true;
};

const sweepFour = (factor: Factor, x: Float64Array): void => {
  const { panels, panelAt, fronts } = factor;
  const { count, first, rowStart, rows } = fronts;
  for (let f = 0; f < count; f++) {
    const x0 = 24 * first[f]!;
    const width = 6 * (first[f + 1]! - first[f]!);
    if (isZero(x, x0, 4 * width)) continue;
    let at = panelAt[f]!;
    for (let i = 0; i < width; i++, at += width) {
      takeDots(panels, at, i, x, x0, x0 + 4 * i);
      const s = 1 / panels[at + i]!;
      for (let c = 0; c < 4; c++) x[x0 + 4 * i + c]! *= s;
    }
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++)
      for (let d = 0; d < 6; d++, at += width) takeDots(panels, at, width, x, x0, 24 * rows[r]! + 4 * d);
  }
  for (let f = count - 1; f >= 0; f--) {
    const x0 = 24 * first[f]!;
    const width = 6 * (first[f + 1]! - first[f]!);
    let at = panelAt[f]! + width * width;
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++)
      for (let d = 0; d < 6; d++, at += width) takeRow(panels, at, width, x, x0, 24 * rows[r]! + 4 * d);
    for (let i = width - 1; i >= 0; i--) {
      at = panelAt[f]! + i * width;
      const s = 1 / panels[at + i]!;
      for (let c = 0; c < 4; c++) x[x0 + 4 * i + c]! *= s;
      takeRow(panels, at, i, x, x0, x0 + 4 * i);
    }
  }
};

/** Four sums Σ l_p x_p off the four numbers at `to`. */
const takeDots = (
  l: Float64Array,
  at: number,
  terms: number,
  x: Float64Array,
  x0: number,
  to: number,
): void => {
  let s0 = x[to]!;
  let s1 = x[to + 1]!;
  let s2 = x[to + 2]!;
  let s3 = x[to + 3]!;
  for (let p = 0, q = x0; p < terms; p++, q += 4) {
    const v = l[at + p]!;
    s0 -= v * x[q]!;
    s1 -= v * x[q + 1]!;
    s2 -= v * x[q + 2]!;
    s3 -= v * x[q + 3]!;
  }
  x[to] = s0;
  x[to + 1] = s1;
  x[to + 2] = s2;
  x[to + 3] = s3;
};

/** Row l times the four numbers at `from`, off the rows at `x0`. */
const takeRow = (
  l: Float64Array,
  at: number,
  terms: number,
  x: Float64Array,
  x0: number,
  from: number,
): void => {
  const v0 = x[from]!;
  const v1 = x[from + 1]!;
  const v2 = x[from + 2]!;
  const v3 = x[from + 3]!;
  for (let p = 0, q = x0; p < terms; p++, q += 4) {
    const v = l[at + p]!;
    x[q]! -= v * v0;
    x[q + 1]! -= v * v1;
    x[q + 2]! -= v * v2;
    x[q + 3]! -= v * v3;
  }
};
