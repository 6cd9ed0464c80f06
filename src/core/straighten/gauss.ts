const POINTS = 16;

/** Nodes and weights of the 16-point rule on 0…1, drawn together at both ends. */
const rule: readonly (readonly [node: number, weight: number])[] = Array.from({ length: POINTS }, (_, i) => {
  let x = Math.cos((Math.PI * (i + 0.75)) / (POINTS + 0.5));
  let slope = 1;
  for (let turn = 0; turn < 50; turn++) {
    let [p, before] = [1, 0];
    for (let k = 1; k <= POINTS; k++) [p, before] = [((2 * k - 1) * x * p - (k - 1) * before) / k, p];
    slope = (POINTS * (x * p - before)) / (x * x - 1);
    const step = p / slope;
    x -= step;
    if (Math.abs(step) < 1e-15) break;
  }
  const s = (1 - x) / 2;
  const weight = 1 / ((1 - x * x) * slope * slope);
  return [(1 - Math.cos(Math.PI * s)) / 2, (weight * Math.PI * Math.sin(Math.PI * s)) / 2] as const;
});

/**
 * Integral of f from a to b by Gauss–Legendre, 16 points, with both ends drawn together.
 *
 *   y = a + (b − a)(1 − cos πs)/2
 *
 * Assumes: smooth inside; a square root at either end is met by the change of variable.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29; change of variable: Davis & Rabinowitz.
 */
export const integrate = (f: (y: number) => number, a: number, b: number): number => {
  let sum = 0;
  for (const [share, weight] of rule) sum += weight * f(a + (b - a) * share);
  return sum * (b - a);
};

/** The same over pieces: breaks that lie inside a…b part the range. */
export const integrateOver = (
  f: (y: number) => number,
  a: number,
  b: number,
  breaks: readonly number[],
): number => {
  const cuts = [a, ...breaks.filter((y) => y > a && y < b), b];
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) sum += integrate(f, cuts[i - 1]!, cuts[i]!);
  return sum;
};
