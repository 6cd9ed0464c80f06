import type { Tube } from '../job/modelSchema.ts';
import type { EndCut } from './endCut.ts';
import { copeAt } from './fishmouth.ts';
import { fishmouthCurve, scarfCurve, tipsVolume } from './scarf.ts';

/** A clock position as an angle from 12. */
export const clockRad = (clock: number): number => (clock / 6) * Math.PI;
/** A clock position, 0 < clock ≤ 12. */
export const onClock = (clock: number): number => {
  const turned = ((clock % 12) + 12) % 12;
  return turned === 0 ? 12 : turned;
};

/**
 * Where a cut stands on one line of the tube: from the member's `from` cluster point.
 *
 * @param radiusIn  of the line: outside radius for the line that is marked
 * @returns NaN where a cope meets nothing
 */
export const cutAt = (cut: EndCut, radiusIn: number, clock: number): number => {
  switch (cut.kind) {
    case 'square':
      return cut.atIn;
    case 'scarf':
      return cut.atIn + cut.way * scarfCurve(radiusIn, cut.angleRad, clockRad(clock - cut.pointClock));
    case 'fishmouth':
      return cut.atIn + cut.way * fishmouthCurve(radiusIn, cut.angleRad, clockRad(clock - cut.pointClock));
    case 'cope':
      return cut.atIn - cut.way * (copeAt(cut.against, radiusIn, clock) + cut.gapIn);
    default:
      return cut satisfies never;
  }
};

/** Lines looked at for the longest and shortest: every half degree, and the cuts' own points and quarters. */
const STEPS = 720;
const clocksOf = (cuts: readonly EndCut[]): readonly number[] => [
  ...cuts.flatMap((c) =>
    c.kind === 'scarf' || c.kind === 'fishmouth' ? [0, 3, 6, 9].map((q) => onClock(c.pointClock + q)) : [],
  ),
  ...Array.from({ length: STEPS }, (_, k) => (12 * k) / STEPS),
];

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Least and greatest place of a cut around the tube. */
export const reachOf = (cut: EndCut, radiusIn: number): Span => {
  const all = clocksOf([cut]).map((clock) => cutAt(cut, radiusIn, clock));
  return { low: Math.min(...all), high: Math.max(...all) };
};

/** Shortest and longest line of a piece of tube between two cuts. */
export const lengthsOf = (ends: readonly [EndCut, EndCut], radiusIn: number): Span => {
  const all = clocksOf(ends).map(
    (clock) => cutAt(ends[1], radiusIn, clock) - cutAt(ends[0], radiusIn, clock),
  );
  return { low: Math.min(...all), high: Math.max(...all) };
};

/** Mean place of a cope around the tube's middle wall, which gives its volume. */
const meanOf = (cut: EndCut, radiusIn: number): number => {
  let sum = 0;
  for (let k = 0; k < STEPS; k++) sum += cutAt(cut, radiusIn, (12 * k) / STEPS);
  return sum / STEPS;
};

/**
 * Steel in a piece of tube between two cuts, in³. A plane cut takes from one side what it leaves on the other; a
 * fishmouth's tips are worked in full; a cope at the middle of the wall.
 */
export const volumeOf = (
  { odIn, wallIn }: Tube,
  areaIn2: number,
  ends: readonly [EndCut, EndCut],
): number => {
  const [outer, inner] = [odIn / 2, odIn / 2 - wallIn];
  const middle = (outer + inner) / 2;
  const at = (cut: EndCut): number => (cut.kind === 'cope' ? meanOf(cut, middle) : cut.atIn);
  const tips = (cut: EndCut, outward: 1 | -1): number =>
    cut.kind === 'fishmouth' ? cut.way * outward * tipsVolume(outer, inner, cut.angleRad) : 0;
  return areaIn2 * (at(ends[1]) - at(ends[0])) + tips(ends[0], -1) + tips(ends[1], 1);
};

/** Length of a cope's edge, by adding its chords. */
export const copeEdge = (cut: EndCut, radiusIn: number): number => {
  let sum = 0;
  let before = cutAt(cut, radiusIn, 0);
  for (let k = 1; k <= STEPS; k++) {
    const now = cutAt(cut, radiusIn, (12 * k) / STEPS);
    sum += Math.hypot(now - before, (2 * Math.PI * radiusIn) / STEPS);
    before = now;
  }
  return sum;
};
