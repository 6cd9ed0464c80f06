import { eliminate } from '../lockedIn/smallDense.ts';

/** A fit of a few unknowns: values, (AᵀA)⁻¹ row by row, sum of squares left. */
export interface Fitted {
  readonly x: readonly number[];
  readonly cofactor: readonly number[];
  readonly leftOver: number;
}

/**
 * Least squares of few unknowns, rows already divided by their standard deviation.
 *
 * @returns null when the rows do not fix the unknowns
 * Assumes: columns of like size; a handful of unknowns (normal equations).
 */
export const leastSquares = (
  rows: readonly (readonly number[])[],
  right: readonly number[],
): Fitted | null => {
  const n = rows[0]?.length ?? 0;
  if (n === 0 || rows.length < n) return null;
  const normal = new Float64Array(n * n);
  // Right-hand sides: Aᵀb, then the unit matrix for the inverse.
  const sides = new Float64Array(n * (n + 1));
  for (let i = 0; i < n; i++) sides[i * (n + 1) + 1 + i] = 1;
  rows.forEach((row, r) => {
    for (let i = 0; i < n; i++) {
      sides[i * (n + 1)]! += row[i]! * right[r]!;
      for (let j = 0; j < n; j++) normal[i * n + j]! += row[i]! * row[j]!;
    }
  });
  if (eliminate(normal, n, sides, n + 1) < 1e-12) return null;
  const x = Array.from({ length: n }, (_, i) => sides[i * (n + 1)]!);
  const cofactor = Array.from({ length: n * n }, (_, k) => sides[Math.floor(k / n) * (n + 1) + 1 + (k % n)]!);
  const leftOver = rows.reduce((sum, row, r) => {
    const v = right[r]! - row.reduce((s, a, i) => s + a * x[i]!, 0);
    return sum + v * v;
  }, 0);
  return { x, cofactor, leftOver };
};
