/**
 * Small dense sums on row-major blocks (6 × 6 of one tube, a few columns per changed tube). Large ones belong to
 * `statics`; these sit in the inner loop over every possible cut, where a library call per block would cost more
 * than the sum.
 */

/**
 * Root of a symmetric block that may have zero modes: D = L Lᵀ, L lower. A mode without stiffness gives a zero column.
 *
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 4.2.
 */
export const root = (d: Float64Array, n: number): Float64Array => {
  const l = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    let pivot = d[j * n + j]!;
    for (let k = 0; k < j; k++) pivot -= l[j * n + k]! ** 2;
    if (pivot <= 1e-14 * Math.abs(d[j * n + j]!)) continue;
    const s = Math.sqrt(pivot);
    l[j * n + j] = s;
    for (let i = j + 1; i < n; i++) {
      let sum = d[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      l[i * n + j] = sum / s;
    }
  }
  return l;
};

/** Solves L y = b in place, for a root without zero columns. */
export const solveLower = (l: Float64Array, n: number, b: Float64Array): void => {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * b[k]!;
    b[i] = sum / l[i * n + i]!;
  }
};

/** Solves Lᵀ y = b in place; a zero column gives 0 there. */
export const solveUpper = (l: Float64Array, n: number, b: Float64Array): void => {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * b[k]!;
    b[i] = l[i * n + i] === 0 ? 0 : sum / l[i * n + i]!;
  }
};

/**
 * Solves A X = B by elimination with row exchange; A (n × n) and B (n × columns) are overwritten, B becomes X.
 *
 * @returns smallest pivot over largest; below 1e-13 the answer is noise and the caller must not use it
 */
export const eliminate = (a: Float64Array, n: number, b: Float64Array, columns: number): number => {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let k = 0; k < n; k++) {
    let p = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]!) > Math.abs(a[p * n + k]!)) p = i;
    const pivot = a[p * n + k]!;
    least = Math.min(least, Math.abs(pivot));
    most = Math.max(most, Math.abs(pivot));
    if (pivot === 0) return 0;
    if (p !== k) {
      for (let c = k; c < n; c++) [a[k * n + c], a[p * n + c]] = [a[p * n + c]!, a[k * n + c]!];
      for (let c = 0; c < columns; c++)
        [b[k * columns + c], b[p * columns + c]] = [b[p * columns + c]!, b[k * columns + c]!];
    }
    for (let i = k + 1; i < n; i++) {
      const f = a[i * n + k]! / pivot;
      if (f === 0) continue;
      for (let c = k + 1; c < n; c++) a[i * n + c]! -= f * a[k * n + c]!;
      for (let c = 0; c < columns; c++) b[i * columns + c]! -= f * b[k * columns + c]!;
    }
  }
  for (let k = n - 1; k >= 0; k--)
    for (let c = 0; c < columns; c++) {
      let sum = b[k * columns + c]!;
      for (let i = k + 1; i < n; i++) sum -= a[k * n + i]! * b[i * columns + c]!;
      b[k * columns + c] = sum / a[k * n + k]!;
    }
  return n === 0 ? 1 : least / most;
};

/**
 * Smallest eigenvalue of a symmetric block by Jacobi rotations; the block is overwritten.
 *
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 8.5.
 */
export const leastEigenvalue = (m: Float64Array, n: number): number => {
  for (let sweep = 0; sweep < 12; sweep++) {
    let off = 0;
    let on = 0;
    for (let p = 0; p < n; p++) {
      on += m[p * n + p]! ** 2;
      for (let q = p + 1; q < n; q++) off += m[p * n + q]! ** 2;
    }
    if (off <= 1e-26 * on) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = m[p * n + q]!;
        if (Math.abs(apq) < 1e-300) continue;
        const tau = (m[q * n + q]! - m[p * n + p]!) / (2 * apq);
        const t = (tau < 0 ? -1 : 1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
        const c = 1 / Math.sqrt(1 + t * t);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const a = m[k * n + p]!;
          const b = m[k * n + q]!;
          m[k * n + p] = c * a - s * b;
          m[k * n + q] = s * a + c * b;
        }
        for (let k = 0; k < n; k++) {
          const a = m[p * n + k]!;
          const b = m[q * n + k]!;
          m[p * n + k] = c * a - s * b;
          m[q * n + k] = s * a + c * b;
        }
      }
  }
  let least = Number.POSITIVE_INFINITY;
  for (let p = 0; p < n; p++) least = Math.min(least, m[p * n + p]!);
  return least;
};
