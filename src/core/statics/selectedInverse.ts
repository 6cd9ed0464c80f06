import type { BlockMatrix } from './assemble.ts';
import type { Factor } from './factor.ts';
import { subtractDots } from './tiles.ts';

/** Blocks of K⁻¹ where K has blocks: each cluster's own, and between joined clusters (layout of `BlockMatrix`). */
export interface SelectedInverse {
  readonly diagonal: Float64Array;
  readonly across: Float64Array;
}

interface FrontInverse {
  readonly width: number;
  readonly below: number;
  readonly own: Float64Array;
  readonly ownReach: Float64Array;
  readonly reach: Float64Array;
}

/**
 * K⁻¹ on the pattern of K, from the factor, without forming the rest.
 *
 *   Y = L₂₁L₁₁⁻¹,  Z₂₁ = −Z₂₂Y,  Z₁₁ = (L₁₁L₁₁ᵀ)⁻¹ − YᵀZ₂₁, roots first
 *
 * @param held  freedoms whose rows and columns come back as 0
 * Source: Takahashi, Fagan & Chen 1973; Erisman & Tinney, CACM 18 (1975) 177; from memory.
 */
export const selectedInverse = (factor: Factor, k: BlockMatrix, held: Uint8Array): SelectedInverse => {
  const { fronts } = factor;
  const { count, first, rowStart, parent } = fronts;
  const diagonal = new Float64Array(36 * k.n);
  const across = new Float64Array(36 * k.pairs);
  const done: (FrontInverse | undefined)[] = new Array(count);
  const waiting = new Int32Array(count);
  for (let f = 0; f < count; f++) if (parent[f]! >= 0) waiting[parent[f]!]!++;
  for (let f = count - 1; f >= 0; f--) {
    const width = 6 * (first[f + 1]! - first[f]!);
    const below = 6 * (rowStart[f + 1]! - rowStart[f]!);
    const p = parent[f]!;
    const reach = new Float64Array(below * below);
    if (p >= 0) {
      gatherReach(factor, f, done[p]!, reach);
      waiting[p]!--;
      if (waiting[p] === 0) done[p] = undefined;
    }
    const inverse = invertFront(
      factor.panels.subarray(factor.panelAt[f]!, factor.panelAt[f + 1]!),
      width,
      below,
      reach,
    );
    if (waiting[f]! > 0) done[f] = inverse;
    extract(factor, k, f, inverse, diagonal, across);
  }
  zeroHeld(k, held, diagonal, across);
  return { diagonal, across };
};

const gatherReach = (factor: Factor, f: number, parent: FrontInverse, reach: Float64Array): void => {
  const { rowStart, inParent } = factor.fronts;
  const begin = rowStart[f]!;
  const blocks = rowStart[f + 1]! - begin;
  const size = 6 * blocks;
  for (let i = 0; i < blocks; i++)
    for (let j = 0; j <= i; j++) {
      const { from, at, rowStep, columnStep } = blockOf(
        parent,
        6 * inParent[begin + i]!,
        6 * inParent[begin + j]!,
      );
      for (let r = 0; r < 6; r++)
        for (let s = 0; s < 6; s++) {
          const v = from[at + r * rowStep + s * columnStep]!;
          reach[(6 * i + r) * size + 6 * j + s] = v;
          reach[(6 * j + s) * size + 6 * i + r] = v;
        }
    }
};

/** Where a front keeps the block of K⁻¹ that begins at row a, column b; a ≥ b. */
const blockOf = (z: FrontInverse, a: number, b: number) => {
  const { width, below } = z;
  if (b >= width)
    return { from: z.reach, at: (a - width) * below + b - width, rowStep: below, columnStep: 1 };
  if (a >= width) return { from: z.ownReach, at: b * below + a - width, rowStep: 1, columnStep: below };
  return { from: z.own, at: a * width + b, rowStep: width, columnStep: 1 };
};

const invertFront = (
  panel: Float64Array,
  width: number,
  below: number,
  reach: Float64Array,
): FrontInverse => {
  // Rows of L₁₁⁻ᵀ, so that (L₁₁L₁₁ᵀ)⁻¹ is made of dot products of rows.
  const turned = new Float64Array(width * width);
  for (let c = 0; c < width; c++) {
    turned[c * width + c] = 1 / panel[c * width + c]!;
    for (let i = c + 1; i < width; i++) {
      let v = 0;
      for (let p = c; p < i; p++) v -= panel[i * width + p]! * turned[c * width + p]!;
      turned[c * width + i] = v / panel[i * width + i]!;
    }
  }
  const own = new Float64Array(width * width);
  for (let i = 0; i < width; i += 3)
    for (let j = 0; j < width; j += 3)
      subtractDots(own, i * width + j, width, turned, i * width, turned, j * width, width, width);
  for (let at = 0; at < own.length; at++) own[at] = -own[at]!;
  const y = new Float64Array(width * below);
  for (let i = 0; i < below; i++) {
    const row = (width + i) * width;
    for (let c = width - 1; c >= 0; c--) {
      let v = panel[row + c]!;
      for (let p = c + 1; p < width; p++) v -= y[p * below + i]! * panel[p * width + c]!;
      y[c * below + i] = v / panel[c * width + c]!;
    }
  }
  const ownReach = new Float64Array(width * below);
  for (let c = 0; c < width; c += 3)
    for (let i = 0; i < below; i += 3)
      subtractDots(ownReach, c * below + i, below, y, c * below, reach, i * below, below, below);
  for (let i = 0; i < width; i += 3)
    for (let j = 0; j < width; j += 3)
      subtractDots(own, i * width + j, width, y, i * below, ownReach, j * below, below, below);
  return { width, below, own, ownReach, reach };
};

const extract = (
  factor: Factor,
  k: BlockMatrix,
  f: number,
  z: FrontInverse,
  diagonal: Float64Array,
  across: Float64Array,
): void => {
  const { first, rowStart, rows, place, cluster } = factor.fronts;
  const begin = first[f]!;
  const end = first[f + 1]!;
  for (let position = begin; position < end; position++) {
    const c = cluster[position]!;
    const column = 6 * (position - begin);
    for (let r = 0; r < 6; r++)
      for (let s = 0; s < 6; s++) diagonal[36 * c + 6 * r + s] = z.own[(column + r) * z.width + column + s]!;
    for (let at = k.start[c]!; at < k.start[c + 1]!; at++) {
      const other = k.neighbour[at]!;
      const otherPlace = place[other]!;
      if (otherPlace < position) continue;
      let row = 6 * (otherPlace - begin);
      if (otherPlace >= end) {
        let reached = rowStart[f]!;
        while (rows[reached] !== otherPlace) reached++;
        row = z.width + 6 * (reached - rowStart[f]!);
      }
      const block = 36 * k.pair[at]!;
      const [rs, cs] = other < c ? [6, 1] : [1, 6];
      const { from, at: corner, rowStep, columnStep } = blockOf(z, row, column);
      for (let r = 0; r < 6; r++)
        for (let s = 0; s < 6; s++)
          across[block + rs * r + cs * s] = from[corner + r * rowStep + s * columnStep]!;
    }
  }
};

const zeroHeld = (k: BlockMatrix, held: Uint8Array, diagonal: Float64Array, across: Float64Array): void => {
  for (let c = 0; c < k.n; c++)
    for (let d = 0; d < 6; d++) {
      if (!held[6 * c + d]) continue;
      for (let s = 0; s < 6; s++) {
        diagonal[36 * c + 6 * d + s] = 0;
        diagonal[36 * c + 6 * s + d] = 0;
        for (let at = k.start[c]!; at < k.start[c + 1]!; at++) {
          const block = 36 * k.pair[at]!;
          across[k.neighbour[at]! > c ? block + 6 * d + s : block + 6 * s + d] = 0;
        }
      }
    }
};
