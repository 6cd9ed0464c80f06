import { type Figure, figure } from '../base/figure.ts';
import type { RoundTube } from './pressFor.ts';

/** How to close formed blocks round an oval tube. */
export interface RoundOut {
  readonly boreIn: Figure;
  readonly overSqueezeIn: Figure;
}

/** Closing of a thin ring across two opposite loads, in WR³/EI: π/4 − 2/π. Its greatest moment, in WR: 1/π. */
const CLOSING = Math.PI / 4 - 2 / Math.PI;
const MOMENT = 1 / Math.PI;
/** Plastic over elastic moment of a rectangle, which the wall is. */
const WALL_SHAPE = 1.5;

/**
 * Bore of the blocks and how far past round to squeeze the large diameter, because the wall springs back.
 *
 *   elastic return of a ring = (π/4 − 2/π) W R³/EI
 *   from first yield  W = π M_y/R,  M_y = F t²/6     to collapse with four hinges  W = 4 M_p/R,  M_p = F t²/4
 *   bore = D; the halves' faces are cut back by the allowance, so that they close past round
 *
 * Assumes: thin ring, two opposite lines of load, no help from the tube beside the blocks: short blocks need more.
 * Source: thin ring under two opposite loads, Timoshenko, Strength of Materials, part II; that blocks are bored to the
 * tube's own diameter is common practice, no source.
 */
export const roundOut = (tube: RoundTube, elasticPsi: number, yieldPsi: Figure): RoundOut => {
  const { odIn, wallIn } = tube;
  const radius = (odIn - wallIn) / 2;
  const [low, high] = [yieldPsi.low ?? yieldPsi.value, yieldPsi.high ?? yieldPsi.value];
  // M R²/EI at first yield of the wall: 2 F R²/(E t).
  const bend = (f: number): number => (2 * f * radius * radius) / (elasticPsi * wallIn);
  const atYield = (CLOSING / MOMENT) * bend(low);
  const atCollapse = CLOSING * 4 * WALL_SHAPE * bend(high);
  return {
    boreIn: figure(odIn, 'in', { kind: 'practice', ref: 'common practice, no source' }, [
      'bored-to-the-tube',
      'faces-cut-back',
    ]),
    overSqueezeIn: figure(
      atYield,
      'in',
      { kind: 'computed', ref: 'thin ring between two opposite loads' },
      ['thin-ring', 'short-blocks-need-more', ...yieldPsi.assumed],
      { low: atYield, high: atCollapse },
    ),
  };
};
