import { dot, scale, sub, type Vec3 } from '../base/vec3.ts';
import type { CopeTube } from './result.ts';

/**
 * A tube to cope against, from what is measured at the bench.
 *
 * @param angleRad  θ between the two axes, 0 < θ < π
 * @param offsetIn  o, shortest distance between the axes; 0 where they meet. Positive: the line at 3 o'clock from the
 *                  acute side stands nearer to the main tube's edge
 * @param acuteClock  clock position of the acute side on the branch
 */
export const benchTube = (
  member: string,
  odIn: number,
  angleRad: number,
  offsetIn = 0,
  acuteClock = 12,
): CopeTube => {
  const at = (acuteClock / 6) * Math.PI;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const side: Vec3 = [0, -Math.sin(at), Math.cos(at)];
  return {
    member,
    odIn,
    direction: [c, s * Math.cos(at), s * Math.sin(at)],
    offset: scale(side, -offsetIn),
    runs: 'through',
  };
};

/** Place along the branch, and along the other tube. */
interface Meeting {
  readonly z: number;
  readonly along: number;
}

/** A branch as wide as the main tube just touches it at its sides; arithmetic must not lift it off. */
const TOUCH = 1e-12;

/**
 * Where a line of a branch tube, parallel to its axis, meets the outside of another tube that runs on both ways:
 * distance from the cluster point along the branch.
 *
 *   z = [√(R² − (o + r sin φ)²) + r cos φ cos θ]/sin θ,  φ from the acute side          (axes at θ, offset o)
 *
 * worked in vectors, so that any direction and offset go; of the two places the outer one.
 *
 * @param radiusIn  r: outside radius for the line that is cut, inside radius for where the bore's edge touches
 * @param clock  of the line on the branch
 * @returns NaN where the line misses the tube
 * Source: methods.md §9; every point stands on both cylinders.
 */
export const meetingOf = (tube: CopeTube, radiusIn: number, clock: number): Meeting => {
  const phi = (clock / 6) * Math.PI;
  const m = tube.direction;
  const p: Vec3 = [0, radiusIn * Math.cos(phi), radiusIn * Math.sin(phi)];
  const w = sub(p, tube.offset);
  const wAcross = sub(w, scale(m, dot(w, m)));
  const uAcross: Vec3 = sub([1, 0, 0], scale(m, m[0]));
  const a = dot(uAcross, uAcross);
  const b = dot(wAcross, uAcross);
  const c = dot(wAcross, wAcross) - (tube.odIn / 2) ** 2;
  const under = b * b - a * c;
  const z = (-b + Math.sqrt(Math.abs(under) < TOUCH ? 0 : under)) / a;
  return { z, along: dot(w, m) + z * m[0] };
};

/**
 * The cope of a branch against one or more tubes: the furthest of the places where its line meets them. A tube that
 * starts at the cluster counts where it is; between the two halves of a bent one the nearer half runs on.
 *
 * @returns NaN where the line misses every tube: the branch stands wider than what it meets
 */
export const copeAt = (against: readonly CopeTube[], radiusIn: number, clock: number): number => {
  const met = against
    .map((tube) => ({ tube, ...meetingOf(tube, radiusIn, clock) }))
    .filter(({ z }) => !Number.isNaN(z));
  const there = met.filter(({ tube, along }) => tube.runs === 'through' || along >= 0);
  const counted = there.length > 0 ? there : met.filter(({ tube }) => tube.runs === 'joined');
  return counted.length === 0 ? Number.NaN : Math.max(...counted.map(({ z }) => z));
};
