import type { ThreePoint } from './result.ts';

/**
 * Mean and variance of a triangular distribution.
 *
 *   μ = (a + m + b)/3,   σ² = (a² + m² + b² − am − ab − mb)/18
 *
 * @param t  a least, m most likely, b most
 * Source: S. Kotz, J. R. van Dorp, Beyond Beta, World Scientific 2004, ch. 1.
 */
export const momentsOf = ({
  best: a,
  likely: m,
  worst: b,
}: ThreePoint): { readonly mean: number; readonly variance: number } => ({
  mean: (a + m + b) / 3,
  variance: (a * a + m * m + b * b - a * m - a * b - m * b) / 18,
});

/**
 * The value under which a share `u` of the distribution lies.
 *
 *   u ≤ (m−a)/(b−a):  a + √(u (b−a)(m−a)),   else  b − √((1−u)(b−a)(b−m))
 *
 * Source: as `momentsOf` (inverse of the distribution function).
 */
export const atShare = ({ best: a, likely: m, worst: b }: ThreePoint, u: number): number => {
  const width = b - a;
  if (width <= 0) return m;
  return u * width <= m - a ? a + Math.sqrt(u * width * (m - a)) : b - Math.sqrt((1 - u) * width * (b - m));
};
