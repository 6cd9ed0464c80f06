import type { BlockMatrix } from './assemble.ts';
import type { Fronts } from './symbolic.ts';
import { subtractDots } from './tiles.ts';

/** A Cholesky factor K = L Lᵀ in fronts: front f's panel is `panelRows × panelWidth`, row-major, at `panelAt[f]`. */
export interface Factor {
  readonly fronts: Fronts;
  readonly panels: Float64Array;
  readonly panelAt: Float64Array;
}

/** What came of factoring: the factor, or the freedom whose pivot vanished (cluster × 6 + freedom). */
export type Factored =
  | { readonly kind: 'factor'; readonly factor: Factor; readonly smallestPivot: number }
  | { readonly kind: 'singular'; readonly freedom: number; readonly pivot: number };

/**
 * A pivot below this share of the original diagonal is a mechanism. Seen: sound models ≥ 2e−3, mechanisms ≤ 5e−16.
 * Held against the stiffest of the cluster's three freedoms of the same kind, not against its own diagonal alone: a
 * lone bar along an axis leaves a diagonal of nothing but rounding, and rounding is all of itself.
 */
export const PIVOT_SHARE = 1e-11;

/**
 * Multifrontal Cholesky of the stiffness with the held freedoms taken out (unit row and column).
 *
 *   F = [A₁₁ A₂₁ᵀ; A₂₁ 0] + Σ children,  L₁₁L₁₁ᵀ = F₁₁,  L₂₁ = F₂₁L₁₁⁻ᵀ,  to the parent: F₂₂ − L₂₁L₂₁ᵀ
 *
 * @param held   1 where a freedom is held, length 6 n
 * @param shift  share of the cluster's stiffest diagonal added to each; 0 for the true matrix
 * Fails: `singular` at the first pivot below 1e−11 of its diagonal.
 * Source: Duff & Reid, ACM TOMS 9 (1983) 302; Liu, SIAM Review 34 (1992) 82; from memory.
 */
export const factorize = (k: BlockMatrix, fronts: Fronts, held: Uint8Array, shift = 0): Factored => {
  const { count, first, rowStart, parent } = fronts;
  const panelAt = new Float64Array(count + 1);
  const children = new Int32Array(count);
  let widest = 0;
  for (let f = 0; f < count; f++) {
    const width = 6 * (first[f + 1]! - first[f]!);
    const below = 6 * (rowStart[f + 1]! - rowStart[f]!);
    panelAt[f + 1] = panelAt[f]! + width * (width + below);
    widest = Math.max(widest, width);
    if (parent[f]! >= 0) children[parent[f]!]!++;
  }
  const panels = new Float64Array(panelAt[count]!);
  const original = new Float64Array(widest);
  // Updates wait for their parent on a stack: children stand before parents, subtrees together.
  const stack = new Float64Array(stackSize(fronts, children));
  const waiting: { front: number; at: number; size: number }[] = [];
  let top = 0;
  let smallestPivot = Number.POSITIVE_INFINITY;
  for (let f = 0; f < count; f++) {
    const width = 6 * (first[f + 1]! - first[f]!);
    const below = 6 * (rowStart[f + 1]! - rowStart[f]!);
    const panel = panels.subarray(panelAt[f]!, panelAt[f + 1]!);
    const update = stack.subarray(top, top + below * below).fill(0);
    placeOriginal(k, fronts, held, f, panel, width);
    for (let d = 0; d < width; d += 3) {
      const a = panel[d * (width + 1)]!;
      const b = panel[(d + 1) * (width + 1)]!;
      const c = panel[(d + 2) * (width + 1)]!;
      original.fill(Math.max(a, b, c), d, d + 3);
    }
    if (shift > 0) for (let d = 0; d < width; d++) panel[d * (width + 1)]! += shift * original[d]!;
    const from = waiting.length - children[f]!;
    for (let c = from; c < waiting.length; c++) {
      const child = waiting[c]!;
      extendAdd(fronts, child.front, stack, child.at, child.size, panel, width, update, below);
    }
    const bad = factorPanel(panel, width, width + below, original);
    if (bad.column >= 0) {
      const freedom = 6 * fronts.cluster[first[f]! + Math.floor(bad.column / 6)]! + (bad.column % 6);
      return { kind: 'singular', freedom, pivot: bad.share };
    }
    smallestPivot = Math.min(smallestPivot, bad.share);
    if (below > 0) subtractOuter(update, below, panel, width);
    const at = children[f]! > 0 ? waiting[from]!.at : top;
    if (at !== top) stack.copyWithin(at, top, top + below * below);
    waiting.length = from;
    waiting.push({ front: f, at, size: below });
    top = at + below * below;
    if (parent[f]! < 0) {
      waiting.pop();
      top = at;
    }
  }
  return { kind: 'factor', factor: { fronts, panels, panelAt }, smallestPivot };
};

/** The most that waits on the stack at once: a front's update is laid on top before its children's go. */
const stackSize = ({ count, rowStart, parent }: Fronts, children: Int32Array): number => {
  const waiting: number[] = [];
  let top = 0;
  let most = 0;
  for (let f = 0; f < count; f++) {
    const update = (6 * (rowStart[f + 1]! - rowStart[f]!)) ** 2;
    most = Math.max(most, top + update);
    for (const size of waiting.splice(waiting.length - children[f]!)) top -= size;
    if (parent[f]! < 0) continue;
    waiting.push(update);
    top += update;
  }
  return most;
};

const placeOriginal = (
  k: BlockMatrix,
  fronts: Fronts,
  held: Uint8Array,
  f: number,
  panel: Float64Array,
  width: number,
): void => {
  const { first, rowStart, rows, place, cluster } = fronts;
  const begin = first[f]!;
  const end = first[f + 1]!;
  for (let position = begin; position < end; position++) {
    const c = cluster[position]!;
    const column = 6 * (position - begin);
    for (let r = 0; r < 6; r++)
      for (let s = 0; s <= r; s++) {
        const taken = held[6 * c + r]! | held[6 * c + s]!;
        const value = taken ? 0 : k.diagonal[36 * c + 6 * r + s]!;
        panel[(column + r) * width + column + s] = taken && r === s ? 1 : value;
      }
    for (let at = k.start[c]!; at < k.start[c + 1]!; at++) {
      const other = k.neighbour[at]!;
      const otherPlace = place[other]!;
      if (otherPlace < position) continue;
      const row = otherPlace < end ? otherPlace - begin : end - begin + find(rows, rowStart[f]!, otherPlace);
      const block = 36 * k.pair[at]!;
      // The stored block is K_ab with a < b; here rows belong to `other`.
      const [rs, cs] = other < c ? [6, 1] : [1, 6];
      for (let r = 0; r < 6; r++) {
        if (held[6 * other + r]) continue;
        for (let s = 0; s < 6; s++)
          if (!held[6 * c + s])
            panel[(6 * row + r) * width + column + s] = k.across[block + rs * r + cs * s]!;
      }
    }
  }
};

const find = (rows: Int32Array, begin: number, position: number): number => {
  let at = begin;
  while (rows[at] !== position) at++;
  return at - begin;
};

const extendAdd = (
  fronts: Fronts,
  child: number,
  stack: Float64Array,
  stackAt: number,
  size: number,
  panel: Float64Array,
  width: number,
  update: Float64Array,
  below: number,
): void => {
  const at = fronts.rowStart[child]!;
  const blocks = size / 6;
  for (let i = 0; i < blocks; i++) {
    const row = 6 * fronts.inParent[at + i]!;
    for (let j = 0; j <= i; j++) {
      const column = 6 * fronts.inParent[at + j]!;
      const into = column < width ? panel : update;
      const step = column < width ? width : below;
      const to = column < width ? row * width + column : (row - width) * below + column - width;
      const from = stackAt + 6 * i * size + 6 * j;
      for (let r = 0; r < 6; r++)
        for (let s = 0; s < 6; s++) into[to + r * step + s]! += stack[from + r * size + s]!;
    }
  }
};

/** L₁₁ and L₂₁ in place, six columns at a time; gives the column that failed (−1: none) and the smallest pivot share. */
const factorPanel = (
  l: Float64Array,
  width: number,
  height: number,
  original: Float64Array,
): { column: number; share: number } => {
  let smallest = Number.POSITIVE_INFINITY;
  for (let c0 = 0; c0 < width; c0 += 6) {
    if (c0 > 0)
      for (let i = c0; i < height; i += 3) {
        subtractDots(l, i * width + c0, width, l, i * width, l, c0 * width, width, c0);
        subtractDots(l, i * width + c0 + 3, width, l, i * width, l, (c0 + 3) * width, width, c0);
      }
    for (let c = c0; c < c0 + 6; c++) {
      const row = c * width;
      let d = l[row + c]!;
      for (let p = c0; p < c; p++) d -= l[row + p]! * l[row + p]!;
      const share = d / original[c]!;
      if (!(share >= PIVOT_SHARE)) return { column: c, share };
      smallest = Math.min(smallest, share);
      const root = Math.sqrt(d);
      l[row + c] = root;
      for (let s = c + 1; s < c0 + 6; s++) l[row + s] = 0;
      for (let i = c + 1; i < c0 + 6; i++) {
        let v = l[i * width + c]!;
        for (let p = c0; p < c; p++) v -= l[i * width + p]! * l[row + p]!;
        l[i * width + c] = v / root;
      }
    }
    solveRows(l, width, height, c0);
  }
  return { column: -1, share: smallest };
};

/** Rows under a finished 6 × 6 diagonal block: X ← X L₁₁⁻ᵀ. */
const solveRows = (l: Float64Array, width: number, height: number, c0: number): void => {
  const at = (r: number, s: number): number => l[(c0 + r) * width + c0 + s]!;
  const [l10, l20, l21, l30, l31, l32] = [at(1, 0), at(2, 0), at(2, 1), at(3, 0), at(3, 1), at(3, 2)];
  const [l40, l41, l42, l43] = [at(4, 0), at(4, 1), at(4, 2), at(4, 3)];
  const [l50, l51, l52, l53, l54] = [at(5, 0), at(5, 1), at(5, 2), at(5, 3), at(5, 4)];
  const [i0, i1, i2] = [1 / at(0, 0), 1 / at(1, 1), 1 / at(2, 2)];
  const [i3, i4, i5] = [1 / at(3, 3), 1 / at(4, 4), 1 / at(5, 5)];
  for (let i = c0 + 6; i < height; i++) {
    const p = i * width + c0;
    const x0 = l[p]! * i0;
    const x1 = (l[p + 1]! - x0 * l10) * i1;
    const x2 = (l[p + 2]! - x0 * l20 - x1 * l21) * i2;
    const x3 = (l[p + 3]! - x0 * l30 - x1 * l31 - x2 * l32) * i3;
    const x4 = (l[p + 4]! - x0 * l40 - x1 * l41 - x2 * l42 - x3 * l43) * i4;
    l[p] = x0;
    l[p + 1] = x1;
    l[p + 2] = x2;
    l[p + 3] = x3;
    l[p + 4] = x4;
    l[p + 5] = (l[p + 5]! - x0 * l50 - x1 * l51 - x2 * l52 - x3 * l53 - x4 * l54) * i5;
  }
};

/** update ← update − L₂₁L₂₁ᵀ, lower part, in 3 × 3 tiles. */
const subtractOuter = (update: Float64Array, below: number, panel: Float64Array, width: number): void => {
  for (let i = 0; i < below; i += 3)
    for (let j = 0; j <= i; j += 3)
      subtractDots(
        update,
        i * below + j,
        below,
        panel,
        (width + i) * width,
        panel,
        (width + j) * width,
        width,
        width,
      );
};
