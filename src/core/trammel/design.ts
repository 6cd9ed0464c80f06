/** A design under way: candidates' cofactors as if all chosen so far had been read. */
export interface Design {
  readonly count: number;
  /** Lower half of X = A Σ Aᵀ/σ², row-major. */
  readonly x: Float64Array;
  readonly chosen: number[];
  /** 1 where a candidate is chosen. */
  readonly taken: Uint8Array;
}

/** Every reading of a plan shows at least this share of an error in it. Starting value, methods.md 6. */
export const WANTED_REDUNDANCY = 0.2;
/** A row whose part outside the rows chosen is smaller barely feels the movement: it fixes nothing. */
const FEELS = 0.02;

/** One candidate reading: its row over the coordinates. */
export interface Candidate {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

const startOf = (rows: readonly Candidate[], prior: Float64Array, stdIn: number): Design => {
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
const entry = ({ x, count }: Design, i: number, j: number): number =>
  i >= j ? x[i * count + j]! : x[j * count + i]!;

const own = (d: Design, k: number): number => d.x[k * d.count + k]!;

/** Lines far apart along the truss hardly touch each other: below this a change is not carried over. */
const TOUCHES = 1e-9;

/** X ∓ x_c x_cᵀ/(1 ± x_cc): one reading more or one less. */
const change = (d: Design, c: number, sign: 1 | -1): void => {
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

const redundancy = (d: Design, k: number): number => 1 - own(d, k);

/** Rows less their part within the span of the rows chosen, over the free coordinates only. */
export const makeSpan = (
  rows: readonly Candidate[],
  free: readonly boolean[],
): { left: (c: number) => number; choose: (c: number) => void; basis: readonly Float64Array[] } => {
  const size = free.length;
  const rest = rows.map((row) => {
    const r = new Float64Array(size);
    row.at.forEach((i, p) => {
      if (free[i]) r[i] = row.value[p]!;
    });
    return r;
  });
  const sizeOf = (r: Float64Array): number => Math.sqrt(r.reduce((sum, v) => sum + v * v, 0));
  const now = Float64Array.from(rest, sizeOf);
  const full = Float64Array.from(now, (n) => n || 1);
  const basis: Float64Array[] = [];
  return {
    left: (c) => now[c]! / full[c]!,
    basis,
    choose: (c) => {
      const norm = now[c]!;
      if (norm < 1e-9) return;
      const q = rest[c]!.map((v) => v / norm);
      basis.push(q);
      rest.forEach((r, k) => {
        let along = 0;
        for (let i = 0; i < size; i++) along += r[i]! * q[i]!;
        if (along === 0) return;
        let sum = 0;
        for (let i = 0; i < size; i++) {
          r[i] = r[i]! - along * q[i]!;
          sum += r[i]! ** 2;
        }
        now[k] = Math.sqrt(sum);
      });
    },
  };
};

/** Phase 1: the most telling reading that fixes something new, until nothing new can be fixed. */
const fix = (d: Design, rows: readonly Candidate[], free: readonly boolean[]): void => {
  const span = makeSpan(rows, free);
  for (;;) {
    let best = -1;
    for (let c = 0; c < d.count; c++) {
      if (d.taken[c] || span.left(c) < FEELS) continue;
      if (best < 0 || own(d, c) > own(d, best) * (1 + 1e-9)) best = c;
    }
    if (best < 0) return;
    span.choose(best);
    change(d, best, 1);
  }
};

/** Swaps one reading chosen for one not while the determinant grows: (1 + x_cc)(1 − x_kk) + x_ck² > 1. Fedorov 1972. */
const exchange = (d: Design): void => {
  for (let round = 0; round < 2 * d.count; round++) {
    let best = { gain: 1.02, c: -1, k: -1 };
    for (const k of d.chosen)
      for (let c = 0; c < d.count; c++) {
        if (d.taken[c]) continue;
        const gain = (1 + own(d, c)) * (1 - own(d, k)) + entry(d, c, k) ** 2;
        if (gain > best.gain * (1 + 1e-9)) best = { gain, c, k };
      }
    if (best.c < 0) return;
    change(d, best.c, 1);
    change(d, best.k, -1);
  }
};

/** Phase 2: the reading that lifts most of what is still under the wanted redundancy, until none is or none helps. */
const check = (d: Design): void => {
  for (;;) {
    const low = d.chosen
      .map((k) => ({ k, lacks: WANTED_REDUNDANCY - redundancy(d, k) }))
      .filter((l) => l.lacks > 1e-9);
    if (low.length === 0) return;
    let best = { lift: 1e-9, c: -1 };
    for (let c = 0; c < d.count; c++) {
      if (d.taken[c]) continue;
      const whole = 1 + own(d, c);
      let lift = 0;
      for (const l of low) lift += Math.min(l.lacks, entry(d, c, l.k) ** 2 / whole);
      if (lift > best.lift * (1 + 1e-9)) best = { lift, c };
    }
    if (best.c < 0) return;
    change(d, best.c, 1);
  }
};

/**
 * Takes out again what the others do not need. A reading that no spare in reach could bring to the wanted redundancy
 * keeps nine tenths of what it has.
 */
const prune = (d: Design): void => {
  const floorOf = (r: number): number => (r >= WANTED_REDUNDANCY ? WANTED_REDUNDANCY : 0.9 * r);
  const floor = new Map(d.chosen.map((k) => [k, floorOf(redundancy(d, k))]));
  for (;;) {
    const spare = d.chosen
      .filter((k) => {
        const r = redundancy(d, k);
        if (r < WANTED_REDUNDANCY) return false;
        return d.chosen.every((j) => j === k || redundancy(d, j) - entry(d, j, k) ** 2 / r >= floor.get(j)!);
      })
      .sort((a, b) => redundancy(d, b) - redundancy(d, a) || a - b);
    if (spare.length === 0) return;
    change(d, spare[0]!, -1);
  }
};

export interface Chosen {
  readonly candidate: number;
  readonly purpose: 'fixes' | 'spare';
  readonly redundancy: number;
}

const fewestOf = (
  rows: readonly Candidate[],
  prior: Float64Array,
  free: readonly boolean[],
  stdIn: number,
): Design => {
  const d = startOf(rows, prior, stdIn);
  fix(d, rows, free);
  exchange(d);
  return d;
};

/**
 * The fewest readings that fix what can be fixed, chosen for the largest determinant of the information: greedy, then
 * Fedorov's exchange.
 *
 * @param  prior  variance of every coordinate before any reading
 * @param  free   coordinates to be fixed
 * @returns indices of candidates
 * Source: Fedorov, Theory of Optimal Experiments (1972), ch. 3.
 */
export const fewest = (
  rows: readonly Candidate[],
  prior: Float64Array,
  free: readonly boolean[],
  stdIn: number,
): readonly number[] => fewestOf(rows, prior, free, stdIn).chosen;

/**
 * Chooses the readings of a plan: the fewest that fix the shape, then spares until every reading shows an error in it,
 * then a pruning of what is not needed.
 *
 * Source: redundancy numbers, Baarda 1968.
 */
export const choose = (
  rows: readonly Candidate[],
  prior: Float64Array,
  free: readonly boolean[],
  stdIn: number,
): readonly Chosen[] => {
  const d = fewestOf(rows, prior, free, stdIn);
  const first = new Set(d.chosen);
  check(d);
  prune(d);
  return d.chosen.map((c) => ({
    candidate: c,
    purpose: first.has(c) ? 'fixes' : 'spare',
    redundancy: redundancy(d, c),
  }));
};
