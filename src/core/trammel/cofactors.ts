/** One candidate reading: its row over the coordinates. */
export interface Candidate {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** A design under way: candidates' cofactors as if all chosen so far had been read. */
export interface Design {
  readonly count: number;
  /** Lower half of X = A Σ Aᵀ/σ², row-major. */
  readonly x: Float64Array;
  readonly chosen: number[];
  /** 1 where a candidate is chosen. */
  readonly taken: Uint8Array;
}

/** The design with nothing chosen. */
export const startOf = (rows: readonly Candidate[], prior: Float64Array, stdIn: number): Design => {
  const count = rows.length;
  const x = new Float64Array(count * count);
  for (let c = 0; c < count; c++)
    for (let k = 0; k <= c; k++) {
      let sum = 0;
      const [p, q] = [rows[c]!, rows[k]!];
      for (let i = 0; i < p.at.length; i++)
        for (let j = 0; j < q.at.length; j++)
          if (p.at[i] === q.at[j]) sum += p.value[i]! * q.value[j]! * prior[p.at[i]!]!;
      x[c * count + k] = sum / stdIn ** 2;
    }
  return { count, x, chosen: [], taken: new Uint8Array(count) };
};

/** Entry of X; only its lower half is kept. */
export const entry = ({ x, count }: Design, i: number, j: number): number =>
  i >= j ? x[i * count + j]! : x[j * count + i]!;

/** Diagonal entry: what is known of a line, in squares of a reading's error. */
export const own = (d: Design, k: number): number => d.x[k * d.count + k]!;

/** Lines far apart along the truss hardly touch each other: below this a change is not carried over. */
const TOUCHES = 1e-9;

/** X ∓ x_c x_cᵀ/(1 ± x_cc): one reading more or one less. */
export const change = (d: Design, c: number, sign: 1 | -1): void => {
  const { count, x } = d;
  const touched = new Int32Array(count);
  const column = new Float64Array(count);
  let size = 0;
  for (let i = 0; i < count; i++) {
    const v = entry(d, i, c);
    if (Math.abs(v) <= TOUCHES) continue;
    touched[size] = i;
    column[size++] = v;
  }
  const share = sign / (1 + sign * own(d, c));
  for (let p = 0; p < size; p++) {
    const row = touched[p]! * count;
    const f = share * column[p]!;
    for (let q = 0; q <= p; q++) x[row + touched[q]!] = x[row + touched[q]!]! - f * column[q]!;
  }
  d.taken[c] = sign === 1 ? 1 : 0;
  if (sign === 1) d.chosen.push(c);
  else d.chosen.splice(d.chosen.indexOf(c), 1);
};

/** Share of an error in a line chosen that shows. */
export const redundancy = (d: Design, k: number): number => 1 - own(d, k);
