import { type Figure, figure } from '../base/figure.ts';
import { byRule, fromCuts } from './parts.ts';
import { spliceNumber } from './rules.ts';

const PRACTICE = { kind: 'practice', ref: 'common practice, no source' } as const;
const practice = (value: number, assumed: readonly string[] = []): Figure =>
  figure(value, 'in', PRACTICE, assumed);

/** A block bored for the tube and slotted across at the cut's angle, to lead a saw. */
export interface SawGuide {
  readonly boreIn: Figure;
  readonly angleDeg: Figure;
  /** Along the tube. */
  readonly lengthIn: Figure;
  /** Square to it: as wide as high. */
  readonly widthIn: Figure;
  /** Where the slot crosses the near face and the far face, from one end of the block. */
  readonly slotIn: readonly [Figure, Figure];
}

/**
 * Saw-guide block for the diagonal cut.
 *
 *   run of the slot = width cot β          length = run + D, so that D/2 of whole bore stands at either end
 *
 * @param cheekIn  wood or metal left beside the bore; starting value 1/2 in, yours to change
 * Source: common practice, no source; the angle is that of the cut.
 */
export const sawGuide = (odIn: number, cheekIn = 1 / 2): SawGuide => {
  const angleDeg = spliceNumber('diagonal-cut');
  const width = odIn + 2 * cheekIn;
  const run = width / Math.tan((angleDeg * Math.PI) / 180);
  return {
    boreIn: practice(odIn, ['try-it-on-the-tube']),
    angleDeg: figure(angleDeg, 'deg', byRule(0, 'diagonal-cut').basis),
    lengthIn: fromCuts(run + odIn),
    widthIn: practice(width, ['cheek-starting-value']),
    slotIn: [fromCuts(odIn / 2), fromCuts(odIn / 2 + run)],
  };
};

/** Two half blocks that close on the tube, for the vice or press. */
export interface FormedBlocks {
  readonly boreIn: Figure;
  readonly lengthIn: Figure;
  readonly widthIn: Figure;
  /** Taken off the joint, so that the halves pinch before they meet. */
  readonly kerfIn: Figure;
}

/**
 * Formed blocks for rounding out or holding a tube.
 *
 * @param boreIn  left out: the tube's outside diameter
 * Source: common practice, no source.
 */
export const formedBlocks = (odIn: number, boreIn = odIn): FormedBlocks => ({
  boreIn: practice(boreIn),
  lengthIn: practice(2 * odIn, ['two-diameters-starting-value']),
  widthIn: practice(odIn + 1, ['half-inch-cheeks-starting-value']),
  kerfIn: practice(1 / 16, ['starting-value']),
});

/** A plate with a half-round notch of the tube's own diameter, to hold against it all round. */
export interface RoundnessGauge {
  readonly notchIn: Figure;
  readonly widthIn: Figure;
  readonly heightIn: Figure;
}

/** Roundness gauge for a tube. Source: common practice, no source. */
export const roundnessGauge = (odIn: number): RoundnessGauge => ({
  notchIn: practice(odIn, ['nominal-sizes']),
  widthIn: practice(2 * odIn),
  heightIn: practice(1.25 * odIn),
});
