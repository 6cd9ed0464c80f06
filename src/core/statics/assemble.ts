import type { FrameMember } from './frame.ts';
import { modeMatrix } from './frame.ts';
import type { ClusterGraph } from './ordering.ts';

/** A symmetric matrix in 6×6 blocks, one row of blocks for each cluster; every block row-major. */
export interface BlockMatrix extends ClusterGraph {
  /** Pair of clusters behind each entry of `neighbour`. */
  readonly pair: Int32Array;
  readonly pairs: number;
  /** n blocks K_cc. */
  readonly diagonal: Float64Array;
  /** One block K_ab for each pair of joined clusters, a < b. */
  readonly across: Float64Array;
}

/** Stiffness of a member between its two ends, K_e = Bᵀ D B, 12 × 12 row-major, lbf/in, lbf, in-lbf. */
export const memberStiffness = (m: FrameMember): Float64Array => {
  const b = modeMatrix(m);
  const k = new Float64Array(144);
  for (let mode = 0; mode < 6; mode++) {
    const d = m.stiffness[mode]!;
    if (d === 0) continue;
    for (let r = 0; r < 12; r++) {
      const s = d * b[mode * 12 + r]!;
      if (s === 0) continue;
      for (let c = 0; c < 12; c++) k[r * 12 + c]! += s * b[mode * 12 + c]!;
    }
  }
  return k;
};

/** The stiffness of the whole frame, no freedom held. */
export const assemble = (n: number, members: readonly FrameMember[]): BlockMatrix => {
  const pairOf = new Map<number, number>();
  const low: number[] = [];
  const high: number[] = [];
  const memberPair = members.map((m) => {
    const a = Math.min(m.i, m.j);
    const b = Math.max(m.i, m.j);
    const known = pairOf.get(a * n + b);
    if (known !== undefined) return known;
    pairOf.set(a * n + b, low.length);
    low.push(a);
    high.push(b);
    return low.length - 1;
  });
  const diagonal = new Float64Array(36 * n);
  const across = new Float64Array(36 * low.length);
  members.forEach((m, index) => {
    const k = memberStiffness(m);
    const [a, b] = m.i < m.j ? [0, 6] : [6, 0];
    for (let r = 0; r < 6; r++)
      for (let c = 0; c < 6; c++) {
        const at = r * 6 + c;
        diagonal[m.i * 36 + at]! += k[r * 12 + c]!;
        diagonal[m.j * 36 + at]! += k[(6 + r) * 12 + 6 + c]!;
        across[memberPair[index]! * 36 + at]! += k[(a + r) * 12 + b + c]!;
      }
  });
  return { n, ...neighbours(n, low, high), pairs: low.length, diagonal, across };
};

const neighbours = (n: number, low: readonly number[], high: readonly number[]) => {
  const start = new Int32Array(n + 1);
  for (const ends of [low, high]) for (const c of ends) start[c + 1]!++;
  for (let c = 0; c < n; c++) start[c + 1]! += start[c]!;
  const fill = start.slice();
  const neighbour = new Int32Array(2 * low.length);
  const pair = new Int32Array(2 * low.length);
  low.forEach((a, p) => {
    const b = high[p]!;
    pair[fill[a]!] = p;
    neighbour[fill[a]!++] = b;
    pair[fill[b]!] = p;
    neighbour[fill[b]!++] = a;
  });
  return { start, neighbour, pair };
};

/** K · x for `columns` vectors of length 6 n one after the other. */
export const multiplyBlocks = (k: BlockMatrix, x: Float64Array, columns = 1): Float64Array => {
  const size = 6 * k.n;
  const y = new Float64Array(size * columns);
  for (let base = 0; base < size * columns; base += size)
    for (let c = 0; c < k.n; c++) {
      addBlock(y, base + 6 * c, k.diagonal, 36 * c, x, base + 6 * c, false);
      for (let at = k.start[c]!; at < k.start[c + 1]!; at++) {
        const other = k.neighbour[at]!;
        addBlock(y, base + 6 * c, k.across, 36 * k.pair[at]!, x, base + 6 * other, other < c);
      }
    }
  return y;
};

const addBlock = (
  y: Float64Array,
  yAt: number,
  blocks: Float64Array,
  blockAt: number,
  x: Float64Array,
  xAt: number,
  turned: boolean,
): void => {
  const row = turned ? 1 : 6;
  const step = turned ? 6 : 1;
  for (let r = 0; r < 6; r++) {
    const at = blockAt + r * row;
    y[yAt + r]! +=
      blocks[at]! * x[xAt]! +
      blocks[at + step]! * x[xAt + 1]! +
      blocks[at + 2 * step]! * x[xAt + 2]! +
      blocks[at + 3 * step]! * x[xAt + 3]! +
      blocks[at + 4 * step]! * x[xAt + 4]! +
      blocks[at + 5 * step]! * x[xAt + 5]!;
  }
};
