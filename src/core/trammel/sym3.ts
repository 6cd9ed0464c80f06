import type { Vec3 } from '../base/vec3.ts';

/**
 * Eigenvalues and unit vectors of a symmetric 3 × 3 matrix (row-major), largest first.
 * Source: cyclic Jacobi rotations; Golub & Van Loan, Matrix Computations, 8.5.
 */
export const principal = (m: readonly number[]): { readonly value: number; readonly axis: Vec3 }[] => {
  const a = [...m];
  const v = [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const planes = [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const;
  for (let sweep = 0; sweep < 30; sweep++) {
    const off = a[1]! ** 2 + a[2]! ** 2 + a[5]! ** 2;
    if (off <= 1e-30 * (a[0]! ** 2 + a[4]! ** 2 + a[8]! ** 2)) break;
    for (const [p, q] of planes) {
      const apq = a[p * 3 + q]!;
      if (apq === 0) continue;
      const theta = (a[q * 4]! - a[p * 4]!) / (2 * apq);
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
      const c = 1 / Math.hypot(t, 1);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const x = a[k * 3 + p]!;
        const y = a[k * 3 + q]!;
        a[k * 3 + p] = c * x - s * y;
        a[k * 3 + q] = s * x + c * y;
        const vx = v[k * 3 + p]!;
        const vy = v[k * 3 + q]!;
        v[k * 3 + p] = c * vx - s * vy;
        v[k * 3 + q] = s * vx + c * vy;
      }
      for (let k = 0; k < 3; k++) {
        const x = a[p * 3 + k]!;
        const y = a[q * 3 + k]!;
        a[p * 3 + k] = c * x - s * y;
        a[q * 3 + k] = s * x + c * y;
      }
    }
  }
  return [0, 1, 2]
    .map((k) => ({ value: a[k * 4]!, axis: [v[k]!, v[3 + k]!, v[6 + k]!] as Vec3 }))
    .sort((x, y) => y.value - x.value);
};

/** Inverse of a symmetric positive definite 3 × 3 matrix applied from both sides: dᵀ M⁻¹ d. */
export const squaredThrough = (m: readonly number[], d: Vec3): number =>
  principal(m).reduce((sum, { value, axis }) => {
    const along = axis[0] * d[0] + axis[1] * d[1] + axis[2] * d[2];
    return sum + along ** 2 / value;
  }, 0);
