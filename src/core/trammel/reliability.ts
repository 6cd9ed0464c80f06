import type { Vec3 } from '../base/vec3.ts';
import { covarianceOf, DATUM_STD_IN, moveIn, type Solution } from './adjust.ts';
import type { AdjustedReading } from './adjustment.ts';
import { squaredThrough } from './sym3.ts';

/** Two-sided normal at α = 0.001: a reading this far out does not belong (Baarda 1968). */
export const SNOOP = 3.29;
/** Non-centrality at α = 0.001 and power 80 % (Baarda 1968: √17.075 = 4.13). */
export const NONCENTRAL = 4.13;
/** Below this share an error would not show. */
export const UNCHECKED = 1e-3;
/** χ²(0.999) for 1 … 10 degrees of freedom. Source: any χ² table, e.g. Abramowitz & Stegun 26.8. */
const CHI = [10.828, 13.816, 16.266, 18.467, 20.515, 22.458, 24.322, 26.124, 27.877, 29.588] as const;

/**
 * χ² at 0.1 % by table up to 10, then Wilson–Hilferty: k (1 − 2/9k + 3.0902 √(2/9k))³, at most 0.6 % too large (at 11).
 * Source: Wilson & Hilferty, PNAS 17 (1931) 684.
 */
export const chiSquared999 = (k: number): number => {
  const known = CHI[k - 1];
  if (known !== undefined) return known;
  const h = 2 / (9 * k);
  return k * (1 - h + 3.0902 * Math.sqrt(h)) ** 3;
};

/**
 * Share of an error in reading n that shows in its own residual: r = 1 − w a N⁻¹ aᵀ; of one set aside, σ²/(σ² + a N⁻¹ aᵀ),
 * which it would have if it stood with the others.
 */
export const redundancyOf = (s: Solution, n: number): number => {
  const variance = s.network.observations[n]!.stdIn ** 2;
  if (s.setting.weights[n] === 0) return variance / (variance + s.variances[n]!);
  return Math.max(0, 1 - s.setting.weights[n]! * s.variances[n]!);
};

/**
 * Residual over its own standard deviation: v/(σ√r); for one set aside, over that of the reading and the shape together.
 * Source: Baarda, A testing procedure for use in geodetic networks (1968).
 */
export const normalisedOf = (s: Solution, n: number): number => {
  const { stdIn } = s.network.observations[n]!;
  if (s.setting.weights[n] === 0) return s.residuals[n]! / Math.hypot(stdIn, Math.sqrt(s.variances[n]!));
  const r = redundancyOf(s, n);
  return r < UNCHECKED ? 0 : s.residuals[n]! / (stdIn * Math.sqrt(r));
};

export const readingsOf = (s: Solution): readonly AdjustedReading[] =>
  s.network.observations.map(({ id, stdIn }, n) => {
    const redundancy = redundancyOf(s, n);
    return {
      id,
      residualIn: s.residuals[n]!,
      redundancy,
      normalised: normalisedOf(s, n),
      leastSeenIn: redundancy < UNCHECKED ? null : (NONCENTRAL * stdIn) / Math.sqrt(redundancy),
    };
  });

/** Datum clusters of the solution with T = vᵀ Q_v⁻¹ v of their pull on the drawing place, χ² with 3 degrees of freedom. */
export const datumTests = (s: Solution): readonly { readonly cluster: string; readonly test: number }[] =>
  s.network.clusters
    .filter((id) => s.setting.datum.has(id))
    .map((cluster) => {
      const q = covarianceOf(s, cluster, cluster);
      const left = q.map((v, k) => (k % 4 === 0 ? DATUM_STD_IN ** 2 : 0) - v);
      const floor = left.map((v, k) => v + (k % 4 === 0 ? UNCHECKED * DATUM_STD_IN ** 2 : 0));
      return { cluster, test: squaredThrough(floor, moveIn(s, cluster) as Vec3) };
    });

/** Sum of all redundancy numbers, those of the datum's places too: readings + 3 datum − unknowns fixed. */
export const degreesOf = (s: Solution): number => {
  let sum = 0;
  s.network.observations.forEach((_, n) => {
    if (s.setting.weights[n] !== 0) sum += redundancyOf(s, n);
  });
  for (const id of s.network.clusters) {
    if (!s.setting.datum.has(id)) continue;
    const q = covarianceOf(s, id, id);
    sum += 3 - (q[0]! + q[4]! + q[8]!) / DATUM_STD_IN ** 2;
  }
  return Math.round(sum);
};
