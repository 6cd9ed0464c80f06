import { deformations, type Frame, modeMatrix } from '../statics/frame.ts';
import type { Change } from './bowedTube.ts';
import { eliminate } from './smallDense.ts';

/** A factored frame some of whose tubes are bowed or gone, without factoring again. */
export interface ChangedFrame {
  readonly frame: Frame;
  /** As `Frame.solve`, on the changed stiffness. */
  readonly solve: (loads: Float64Array, columns?: number) => Float64Array;
  /** As `Frame.endsInverse`, on the changed stiffness. */
  readonly endsInverse: (member: number) => Float64Array;
  /** 6 × 6 stiffness of a member in its modes, as changed. */
  readonly stiffness: (member: number) => Float64Array;
  readonly changes: readonly Change[];
}

const blockOf = (diagonal: Float64Array, changes: readonly Change[]): Float64Array => {
  const d = new Float64Array(36);
  for (let k = 0; k < 6; k++) d[k * 7] = diagonal[k]!;
  for (const { u, c, rank } of changes)
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++)
        for (let r = 0; r < rank; r++) d[i * 6 + j]! += u[i * rank + r]! * c[r]! * u[j * rank + r]!;
  return d;
};

/**
 * The frame with other stiffness in some tubes, by a low-rank update of the one factor:
 *
 *   K' = K + Σ BᵀU C UᵀB,   K'⁻¹ = K⁻¹ − X C(I + UᵀB X C)⁻¹ Xᵀ,   X = K⁻¹BᵀU
 *
 * @returns null when the changed frame moves freely
 * Source: Sherman & Morrison 1950, Woodbury 1950; Akgün, Garcelon & Haftka, IJNME 50 (2001) 1587 (fast reanalysis).
 */
export const changedFrame = (frame: Frame, changes: readonly Change[]): ChangedFrame | null => {
  const size = frame.held.length;
  const stiffness = (member: number): Float64Array =>
    blockOf(
      frame.members[member]!.stiffness,
      changes.filter((c) => c.member === member),
    );
  const plain = {
    frame,
    stiffness,
    changes,
    solve: (loads: Float64Array, columns = 1) => frame.solve(loads, columns),
  };
  if (changes.length === 0) return { ...plain, endsInverse: (m) => frame.endsInverse(m) };

  const width = changes.reduce((sum, c) => sum + c.rank, 0);
  const loads = new Float64Array(size * width);
  let column = 0;
  for (const { member, u, rank } of changes) {
    const m = frame.members[member]!;
    const b = modeMatrix(m);
    for (let r = 0; r < rank; r++, column++)
      for (let k = 0; k < 12; k++) {
        let sum = 0;
        for (let mode = 0; mode < 6; mode++) sum += b[mode * 12 + k]! * u[mode * rank + r]!;
        loads[column * size + (k < 6 ? m.i * 6 + k : m.j * 6 + k - 6)]! += sum;
      }
  }
  const x = frame.solve(loads, width);

  // W = C (I + S C)⁻¹ = ((I + C S)⁻¹ C), S = UᵀB X; symmetric.
  const a = new Float64Array(width * width);
  const w = new Float64Array(width * width);
  let row = 0;
  for (const { member, u, c, rank } of changes) {
    const m = frame.members[member]!;
    for (let col = 0; col < width; col++) {
      const v = deformations(m, x, col * size);
      for (let r = 0; r < rank; r++) {
        let sum = 0;
        for (let mode = 0; mode < 6; mode++) sum += u[mode * rank + r]! * v[mode]!;
        a[(row + r) * width + col] = c[r]! * sum;
      }
    }
    for (let r = 0; r < rank; r++) {
      a[(row + r) * (width + 1)]! += 1;
      w[(row + r) * (width + 1)] = c[r]!;
    }
    row += rank;
  }
  if (eliminate(a, width, w, width) < 1e-13) return null;

  const z = new Float64Array(size * width);
  for (let i = 0; i < width; i++)
    for (let j = 0; j < width; j++) {
      const f = w[i * width + j]!;
      if (f !== 0) for (let k = 0; k < size; k++) z[j * size + k]! += x[i * size + k]! * f;
    }
  const take = (moves: Float64Array, at: number, from: Float64Array): void => {
    for (let i = 0; i < width; i++) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += x[i * size + k]! * from[at + k]!;
      if (sum !== 0) for (let k = 0; k < size; k++) moves[at + k]! -= z[i * size + k]! * sum;
    }
  };
  return {
    ...plain,
    solve: (loads, columns = 1) => {
      const moves = frame.solve(loads, columns);
      for (let c = 0; c < columns; c++) take(moves, c * size, loads);
      return moves;
    },
    endsInverse: (member) => {
      const e = frame.endsInverse(member).slice();
      const m = frame.members[member]!;
      for (let col = 0; col < width; col++)
        for (let p = 0; p < 12; p++) {
          const xp = x[col * size + (p < 6 ? m.i * 6 + p : m.j * 6 + p - 6)]!;
          if (xp === 0) continue;
          for (let q = 0; q < 12; q++)
            e[p * 12 + q]! -= xp * z[col * size + (q < 6 ? m.i * 6 + q : m.j * 6 + q - 6)]!;
        }
      return e;
    },
  };
};
