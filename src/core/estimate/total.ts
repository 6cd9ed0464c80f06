import { type Figure, figure } from '../base/figure.ts';
import { seeded } from '../base/seeded.ts';
import type { ThreePoint, Total } from './result.ts';
import { atShare, momentsOf } from './triangle.ts';

/** A piece of work that comes with a chance; 1 for what is sure. `many` alike, each by itself. */
export interface Chance {
  readonly chance: number;
  readonly many: number;
  readonly hours: ThreePoint;
}

const DRAWS = 4000;
const SEED = 'tubewright-estimate';

/**
 * Mean and variance of work that comes with chance p.
 *
 *   E = n p μ,   Var = n (p (σ² + μ²) − p² μ²)
 *
 * Source: law of total variance (any probability text), n alike and independent.
 */
export const momentsWith = ({
  chance: p,
  many: n,
  hours,
}: Chance): { readonly mean: number; readonly variance: number } => {
  const { mean, variance } = momentsOf(hours);
  return { mean: n * p * mean, variance: n * (p * (variance + mean * mean) - p * p * mean * mean) };
};

/** The value under which a share of the sorted sums lies. */
const quantile = (sorted: Float64Array, share: number): number => {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
};

/** Sums of draws, sorted. Fixed seed: the same lines give the same sums on every machine. */
export const drawSums = (
  work: readonly Chance[],
  draws: number = DRAWS,
  seed: string = SEED,
): Float64Array => {
  const chance = seeded(seed);
  const sums = new Float64Array(draws);
  for (let k = 0; k < draws; k++) {
    let sum = 0;
    for (const w of work)
      for (let n = 0; n < w.many; n++)
        if (w.chance >= 1 || chance.share() < w.chance) sum += atShare(w.hours, chance.share());
    sums[k] = sum;
  }
  return sums.sort();
};

/** A sum of hours by draws, and its closed-form mean and spread beside it. */
export const totalOf = (work: readonly Chance[]): Total => {
  const sums = drawSums(work);
  const moments = work.map(momentsWith);
  const drawn = (share: number): Figure =>
    figure(quantile(sums, share), 'h', { kind: 'computed', ref: `draws-${share}` }, [
      'lines-independent',
      'triangular',
    ]);
  return {
    bestH: drawn(0.1),
    likelyH: drawn(0.5),
    worstH: drawn(0.9),
    meanH: figure(
      moments.reduce((sum, m) => sum + m.mean, 0),
      'h',
      { kind: 'computed', ref: 'sum-of-means' },
      ['triangular'],
    ),
    stdH: Math.sqrt(moments.reduce((sum, m) => sum + m.variance, 0)),
    stdTogetherH: moments.reduce((sum, m) => sum + Math.sqrt(m.variance), 0),
    draws: DRAWS,
  };
};
