/**
 * Rows of a symmetric matrix, each kept from its first entry to the diagonal. Cholesky fills nothing outside, and a
 * truss numbered along its stations keeps every row short.
 * Source: Jennings, A compact storage scheme for the solution of symmetric linear simultaneous equations, Comp. J. 9 (1966).
 */
export interface Envelope {
  readonly size: number;
  /** Column of the first entry of each row. */
  readonly first: Int32Array;
  /** Entry (i, j) stands at `start[i] + j`. */
  readonly start: Int32Array;
  readonly length: number;
}

export const envelopeOf = (first: Int32Array): Envelope => {
  const start = new Int32Array(first.length);
  let length = 0;
  for (let i = 0; i < first.length; i++) {
    start[i] = length - first[i]!;
    length += i - first[i]! + 1;
  }
  return { size: first.length, first, start, length };
};

/** Entry (i, j) of a matrix kept in an envelope; 0 outside it. */
export const entry = (env: Envelope, a: Float64Array, i: number, j: number): number => {
  const [row, column] = i >= j ? [i, j] : [j, i];
  return column < env.first[row]! ? 0 : a[env.start[row]! + column]!;
};

/**
 * Cholesky factor N = L Lᵀ in the same envelope.
 * Fails: gives null when a pivot is not positive: the matrix is not positive definite.
 */
export const choleskyOf = (env: Envelope, a: Float64Array): Float64Array | null => {
  const l = new Float64Array(a);
  const { first, start } = env;
  for (let i = 0; i < env.size; i++) {
    const si = start[i]!;
    for (let j = first[i]!; j <= i; j++) {
      const sj = start[j]!;
      let sum = l[si + j]!;
      for (let k = Math.max(first[i]!, first[j]!); k < j; k++) sum -= l[si + k]! * l[sj + k]!;
      if (j < i) l[si + j] = sum / l[sj + j]!;
      else if (sum > 0) l[si + i] = Math.sqrt(sum);
      else return null;
    }
  }
  return l;
};

/** x of N x = b. */
export const solveWith = (env: Envelope, l: Float64Array, b: Float64Array): Float64Array => {
  const x = new Float64Array(b);
  const { first, start } = env;
  for (let i = 0; i < env.size; i++) {
    const si = start[i]!;
    let sum = x[i]!;
    for (let k = first[i]!; k < i; k++) sum -= l[si + k]! * x[k]!;
    x[i] = sum / l[si + i]!;
  }
  for (let i = env.size - 1; i >= 0; i--) {
    const si = start[i]!;
    x[i] = x[i]! / l[si + i]!;
    for (let k = first[i]!; k < i; k++) x[k] = x[k]! - l[si + k]! * x[i]!;
  }
  return x;
};

/**
 * The entries of N⁻¹ that lie in the envelope, without the rest.
 *
 *   Z_ij = δ_ij / L_jj² − (1/L_jj) Σ_k>j Z_ik L_kj
 *
 * Source: Takahashi, Fagan & Chen 1973; Erisman & Tinney, CACM 18 (1975) 177.
 */
export const inverseWithin = (env: Envelope, l: Float64Array): Float64Array => {
  const z = new Float64Array(env.length);
  const { first, start, size } = env;
  const below: number[][] = Array.from({ length: size }, () => []);
  for (let k = 0; k < size; k++) for (let j = first[k]!; j < k; j++) below[j]!.push(k);
  for (let j = size - 1; j >= 0; j--) {
    const rows = below[j]!;
    const pivot = l[start[j]! + j]!;
    for (const i of rows) {
      let sum = 0;
      for (const k of rows) sum += (k <= i ? z[start[i]! + k]! : z[start[k]! + i]!) * l[start[k]! + j]!;
      z[start[i]! + j] = -sum / pivot;
    }
    let sum = 0;
    for (const k of rows) sum += z[start[k]! + j]! * l[start[k]! + j]!;
    z[start[j]! + j] = (1 / pivot - sum) / pivot;
  }
  return z;
};
