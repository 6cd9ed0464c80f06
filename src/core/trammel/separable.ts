import { change, type Design, entry, own, redundancy } from './cofactors.ts';

/** Misreads of eight standard deviations are to be named from redundancy 0.4 on; less by what a plan's may be off. */
const SEEN = 0.35;
/**
 * Test values of two readings correlated more than this are mistaken for each other too often. By simulation
 * (tests/core/trammel/misread.test.ts); Förstner, Reliability and discernability of extended Gauss-Markov models (1983),
 * has 0.7 to 0.8 (from memory).
 */
const APART = 0.65;
/** Below this share an error would not show. */
const UNCHECKED = 1e-3;

/** One reading more or one less than chosen. */
interface Other {
  readonly with?: number;
  readonly without?: number;
}

/**
 * By how much the test values of readings chosen are correlated beyond what lets their misreads be told apart: the sum of
 * ρ² − 0.7² over the pairs, ρ = x_kj/√(r_k r_j), of which one at least shows a misread well.
 */
export const blurOf = (d: Design, other: Other = {}): number => {
  const c = other.with ?? other.without;
  const sign = other.with === undefined ? -1 : 1;
  const whole = c === undefined ? 1 : 1 + sign * own(d, c);
  const touch = d.chosen.map((k) => (c === undefined ? 0 : entry(d, k, c)));
  const r = d.chosen.map((k, n) => redundancy(d, k) + (sign * touch[n]! ** 2) / whole);
  let blur = 0;
  d.chosen.forEach((k, n) => {
    if (r[n]! < UNCHECKED || k === other.without) return;
    for (let m = 0; m < n; m++) {
      const j = d.chosen[m]!;
      if (Math.max(r[n]!, r[m]!) < SEEN || r[m]! < UNCHECKED || j === other.without) continue;
      const x = entry(d, k, j) - (sign * touch[n]! * touch[m]!) / whole;
      blur += Math.max(0, x ** 2 / (r[n]! * r[m]!) - APART ** 2);
    }
  });
  return blur;
};

/** Adds the reading that best tells misreads apart, until all that show well can be told apart or none helps. */
export const separate = (d: Design): void => {
  for (;;) {
    const blur = blurOf(d);
    if (blur <= 1e-9) return;
    let best = { blur: 0.99 * blur, c: -1 };
    for (let c = 0; c < d.count; c++) {
      if (d.taken[c]) continue;
      const then = blurOf(d, { with: c });
      if (then < best.blur) best = { blur: then, c };
    }
    if (best.c < 0) return;
    change(d, best.c, 1);
  }
};
