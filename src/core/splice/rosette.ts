import { figure } from '../base/figure.ts';
import { onClock } from './cut.ts';
import { byRule, fromCuts } from './parts.ts';
import type { Rosette, Rosettes } from './result.ts';
import { basisOf, spliceNumber } from './rules.ts';

/**
 * A hole drilled towards the axis, developed on the outside of the tube.
 *
 *   s = R asin((d/2) cos τ / R),  x = (d/2) sin τ          s round the tube, x along it
 *
 * Source: methods.md §9; intersection of two cylinders whose axes meet square.
 */
export const holeCurve = (radiusIn: number, holeIn: number, tau: number): readonly [number, number] => [
  radiusIn * Math.asin(((holeIn / 2) * Math.cos(tau)) / radiusIn),
  (holeIn / 2) * Math.sin(tau),
];

/** One lap of an outer tube over an inner one: the sleeve's end under it, and where the outer tube is cut on a line. */
export interface Lap {
  readonly in: Rosette['in'];
  readonly sleeveEndIn: number;
  readonly cutAt: (clock: number) => number;
  /** From the sleeve's end to the cut: 1 towards `to`. */
  readonly way: 1 | -1;
}

/**
 * Two pairs of rosettes on each lap: one on the line where the lap is shortest and opposite, in the middle of it; one a
 * quarter turn round, 3/4 D from the cut. A pair whose edges would come nearer than 1/2 D to an end is left out.
 *
 * @param shortClock  where each lap is shortest, or opposite to it
 * Source: AC 43.13-1B, 4-84 for hole, edge and bleed hole; count and place are common practice, no source.
 */
export const rosettes = (odIn: number, laps: readonly Lap[], shortClock: number): Rosettes | null => {
  const hole = spliceNumber('rosette-hole') * odIn;
  const edge = spliceNumber('rosette-edge') * odIn;
  const first = spliceNumber('rosette-place') * odIn;
  const clear = edge + hole / 2 - 1e-9;
  const pairOn = (lap: Lap, clock: number, fromCut: number | null): readonly Rosette[] => {
    const run = (c: number): number => lap.way * (lap.cutAt(c) - lap.sleeveEndIn);
    const clocks = [onClock(clock), onClock(clock + 6)];
    const least = Math.min(...clocks.map(run));
    const at = fromCut === null ? least / 2 : least - fromCut;
    if (at < clear || least - at < clear) return [];
    return clocks.map((c) => ({
      in: lap.in,
      atIn: fromCuts(lap.sleeveEndIn + lap.way * at, ['rosette-place']),
      clock: c,
      toOuterEndIn: fromCuts(run(c) - at - hole / 2),
      toInnerEndIn: fromCuts(at - hole / 2),
    }));
  };
  const places = laps.flatMap((lap) => [
    ...pairOn(lap, shortClock, null),
    ...pairOn(lap, shortClock + 3, first),
  ]);
  const mark = places[0];
  const lap = laps[0];
  if (!mark || !lap) return null;
  return {
    holeIn: byRule(hole, 'rosette-hole'),
    bleedIn: byRule(spliceNumber('rosette-bleed'), 'rosette-bleed'),
    count: figure(places.length, 'count', basisOf('rosette-count'), ['two-pairs-a-quarter-turn-apart']),
    places,
    markIn: fromCuts(Math.abs(mark.atIn.value - lap.sleeveEndIn)),
  };
};
