import { type Figure, figure } from '../base/figure.ts';
import { seeded } from '../base/seeded.ts';
import type { Total } from './result.ts';
import { type Chance, momentsWith, spreads } from './spreads.ts';
import { atShare } from './triangle.ts';

const DRAWS = 4000;
const SEED = 'tubewright-estimate';

/** The value under which a share of the sorted sums lies. */
const quantile = (sorted: Float64Array, share: number): number => {
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
};

/**
 * Sums of draws, sorted. Fixed seed: the same lines give the same sums on every machine.
 *
 * @param together  `rate`: one draw a rate, in which all its work goes well or badly; `apart`: one draw a piece
 */
export const drawSums = (
  work: readonly Chance[],
  together: 'rate' | 'apart' = 'rate',
  draws: number = DRAWS,
  seed: string = SEED,
): Float64Array => {
  const chance = seeded(seed);
  const rates = [...new Set(work.map((w) => w.rate))];
  const place = work.map((w) => rates.indexOf(w.rate));
  const shares = new Float64Array(rates.length);
  const sums = new Float64Array(draws);
  for (let k = 0; k < draws; k++) {
    for (let r = 0; r < shares.length; r++) shares[r] = chance.share();
    let sum = 0;
    work.forEach((w, at) => {
      for (let n = 0; n < w.many; n++)
        if (w.chance >= 1 || chance.share() < w.chance)
          sum += atShare(w.hours, together === 'rate' ? shares[place[at]!]! : chance.share());
    });
    sums[k] = sum;
  }
  return sums.sort();
};

/**
 * A sum of hours by draws, and its closed-form mean and spread beside it.
 *
 * Assumes: a rate that is too low is too low for every tube it is used on, so its work moves together; different rates are
 * independent, and so is whether a tube nobody has looked at turns out damaged. Common practice, no source.
 */
export const totalOf = (work: readonly Chance[]): Total => {
  const sums = drawSums(work);
  const drawn = (share: number): Figure =>
    figure(quantile(sums, share), 'h', { kind: 'computed', ref: `draws-${share}` }, [
      'one-draw-a-rate',
      'triangular',
    ]);
  const spread = spreads(work);
  return {
    bestH: drawn(0.1),
    likelyH: drawn(0.5),
    worstH: drawn(0.9),
    meanH: figure(
      work.reduce((sum, w) => sum + momentsWith(w).mean, 0),
      'h',
      { kind: 'computed', ref: 'sum-of-means' },
      ['triangular'],
    ),
    stdH: spread.byRate,
    stdApartH: spread.apart,
    stdTogetherH: spread.together,
    draws: DRAWS,
  };
};
