import { type Candidate, change, type Design, entry, own, redundancy, startOf } from './cofactors.ts';
import { separate, stayApartWithout } from './separable.ts';
import { makeSpan } from './span.ts';

/** Every reading of a plan shows at least this share of an error in it. Starting value, methods.md 6. */
export const WANTED_REDUNDANCY = 0.2;
/** A row whose part outside the rows chosen is smaller barely feels the movement: it fixes nothing. */
const FEELS = 0.02;

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
 * keeps nine tenths of what it has; misreads that can be told apart stay so.
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
      .sort((a, b) => redundancy(d, b) - redundancy(d, a) || a - b)
      .find((k) => stayApartWithout(d, k));
    if (spare === undefined) return;
    change(d, spare, -1);
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
  separate(d);
  check(d);
  separate(d);
  prune(d);
  return d.chosen.map((c) => ({
    candidate: c,
    purpose: first.has(c) ? 'fixes' : 'spare',
    redundancy: redundancy(d, c),
  }));
};
