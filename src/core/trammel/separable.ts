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

type Pair = readonly [k: number, j: number];

/** One reading more or one less than chosen. */
interface Other {
  readonly c: number;
  readonly sign: 1 | -1;
}

/** ρ² − 0.65² of two readings chosen, ρ = x_kj/√(r_k r_j), when one at least shows a misread well; 0 when they are apart. */
const blurOfPair = (d: Design, [k, j]: Pair, other?: Other): number => {
  const { c, sign } = other ?? { c: -1, sign: 1 };
  const whole = c < 0 ? 1 : 1 + sign * own(d, c);
  const [tk, tj] = c < 0 ? [0, 0] : [entry(d, k, c), entry(d, j, c)];
  const rk = redundancy(d, k) + (sign * tk * tk) / whole;
  const rj = redundancy(d, j) + (sign * tj * tj) / whole;
  if (Math.max(rk, rj) < SEEN || Math.min(rk, rj) < UNCHECKED) return 0;
  const x = entry(d, k, j) - (sign * tk * tj) / whole;
  return Math.max(0, x ** 2 / (rk * rj) - APART ** 2);
};

const sumOver = (d: Design, pairs: readonly Pair[], other?: Other): number =>
  pairs.reduce((sum, pair) => sum + blurOfPair(d, pair, other), 0);

/** Readings chosen whose misreads cannot well be told apart. */
const blurredPairs = (d: Design): readonly Pair[] => {
  const pairs: Pair[] = [];
  for (const [n, k] of d.chosen.entries())
    for (let m = 0; m < n; m++) {
      const pair: Pair = [k, d.chosen[m]!];
      if (Math.abs(entry(d, ...pair)) > 1e-3 && blurOfPair(d, pair) > 1e-9) pairs.push(pair);
    }
  return pairs;
};

/** Can reading k go without two others' misreads becoming harder to tell apart? */
export const stayApartWithout = (d: Design, k: number): boolean => {
  const without: Other = { c: k, sign: -1 };
  const touched = d.chosen.filter((j) => j !== k && Math.abs(entry(d, j, k)) > 1e-6);
  return touched.every((i, n) =>
    touched.slice(0, n).every((j) => blurOfPair(d, [i, j], without) <= blurOfPair(d, [i, j]) + 1e-9),
  );
};

/** Candidates tried when the best one only moves the trouble elsewhere. */
const TRIED = 12;

/** Adds the readings that tell misreads apart, best first, until all that show well can be told apart or none helps. */
export const separate = (d: Design): void => {
  let pairs = blurredPairs(d);
  while (pairs.length > 0) {
    const blur = sumOver(d, pairs);
    const helpful = Array.from({ length: d.count }, (_, c) => c)
      .filter((c) => !d.taken[c])
      .map((c) => ({ c, blur: sumOver(d, pairs, { c, sign: 1 }) }))
      .filter((one) => one.blur < 0.99 * blur)
      .sort((a, b) => a.blur - b.blur || a.c - b.c)
      .slice(0, TRIED);
    let left: readonly Pair[] | undefined;
    for (const { c } of helpful) {
      change(d, c, 1);
      const then = blurredPairs(d);
      if (sumOver(d, then) < 0.99 * blur) {
        left = then;
        break;
      }
      change(d, c, -1);
    }
    if (!left) return;
    pairs = left;
  }
};
