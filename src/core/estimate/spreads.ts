import type { ThreePoint } from './result.ts';
import { momentsOf } from './triangle.ts';

/** A piece of work that comes with a chance; 1 for what is sure. `many` alike, each found or not by itself. */
export interface Chance {
  /** The rate its hours come from: what is wrong with a rate is wrong in all its work. */
  readonly rate: string;
  readonly chance: number;
  readonly many: number;
  readonly hours: ThreePoint;
}

type Work = Omit<Chance, 'rate'>;

/**
 * Mean and variance of work that comes with chance p, each of n pieces by itself.
 *
 *   E = n p μ,   Var = n (p (σ² + μ²) − p² μ²)
 *
 * Source: law of total variance (any probability text), n alike and independent.
 */
export const momentsWith = ({
  chance: p,
  many: n,
  hours,
}: Work): { readonly mean: number; readonly variance: number } => {
  const { mean, variance } = momentsOf(hours);
  return { mean: n * p * mean, variance: n * (p * (variance + mean * mean) - p * p * mean * mean) };
};

/**
 * Variance of all the work of one rate when one draw T of it holds for every piece; each piece is there or not by itself.
 *
 *   X = Σ kᵢ Tᵢ,  kᵢ ~ Binomial(nᵢ, pᵢ):   Var = Var(E[X|T]) + E[Var(X|T)] = (Σ nᵢ pᵢ σᵢ)² + Σ nᵢ pᵢ (1 − pᵢ)(σᵢ² + μᵢ²)
 *
 * Source: law of total variance. Assumes: triangles of one rate are multiples of one another, as `linesOf` makes them.
 */
const varianceOfRate = (work: readonly Work[]): number => {
  let moves = 0;
  let found = 0;
  for (const { chance: p, many: n, hours } of work) {
    const { mean, variance } = momentsOf(hours);
    moves += n * p * Math.sqrt(variance);
    found += n * p * (1 - p) * (variance + mean * mean);
  }
  return moves * moves + found;
};

/**
 * Standard deviations of a sum of hours: work of one rate moving together (what we go by), every piece by itself, and all
 * going wrong together (no sum is wider).
 */
export const spreads = (
  work: readonly Chance[],
): { readonly byRate: number; readonly apart: number; readonly together: number } => {
  const rates = new Map<string, Chance[]>();
  for (const w of work) {
    const list = rates.get(w.rate);
    if (list) list.push(w);
    else rates.set(w.rate, [w]);
  }
  const variances = [...rates.values()].map(varianceOfRate);
  return {
    byRate: Math.sqrt(variances.reduce((sum, v) => sum + v, 0)),
    apart: Math.sqrt(work.reduce((sum, w) => sum + momentsWith(w).variance, 0)),
    together: variances.reduce((sum, v) => sum + Math.sqrt(v), 0),
  };
};
