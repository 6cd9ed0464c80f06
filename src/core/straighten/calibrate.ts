import { type Figure, figure } from '../base/figure.ts';
import { inertiaOf, momentShare, tubeSection } from './bending.ts';
import { brent } from './brent.ts';
import type { RoundTube } from './pressFor.ts';
import { pressedTo } from './springback.ts';

/** A measured push: travel of the ram from where the tube lay, what stayed, blocks apart. */
export interface Pushed {
  readonly spanIn: number;
  readonly pressedIn: number;
  readonly leftIn: number;
}

/** What a push says of the tube's yield strength. */
export interface Calibration {
  readonly says: 'informs' | 'elastic' | 'doesNotFit';
  /** `informs`: the yield strength that gives this response. `elastic`: it is at least this. */
  readonly yieldPsi: Figure | null;
}

const LOWEST_PSI = 20_000;
const HIGHEST_PSI = 250_000;
/** Less set than a rule can tell from none. Source: common practice, no source. */
const SEEN_IN = 1 / 64;

/**
 * The effective yield strength of a tube from one measured push: the one at which the model leaves what was left.
 *
 *   P = 48EI (δ − left)/S³,  F = PS/(4 M/F at y),  y such that the model’s travel is δ; past the hinge F = PS/(4 Z)
 *   20 ksi ≤ F ≤ 250 ksi
 *
 * Uncertainty: what 1/64 in of set either way would make of it. Below 1/64 in of set the push was elastic and says only
 * that the strength is no less than first yield at that travel. A push past the hinge still has its springback.
 * Assumes: as `pressedTo`; blocks that do not give.
 * Source: methods §7; root by Brent 1973.
 */
export const calibrate = (tube: RoundTube, elasticPsi: number, push: Pushed, ref: string): Calibration => {
  const section = tubeSection(tube);
  const { spanIn, pressedIn } = push;
  const yieldFor = (left: number): number | null => {
    const clamp = (48 * elasticPsi * inertiaOf(section) * (pressedIn - left)) / spanIn ** 3;
    if (clamp <= 0) return null;
    const yieldAt = (y: number): number => (clamp * spanIn) / (4 * momentShare(section, y));
    const travel = (y: number): number =>
      pressedTo(section, { elasticPsi, yieldPsi: yieldAt(y) }, spanIn, y).travelIn;
    const c = section.halfDepthIn;
    const y = travel(0) <= pressedIn ? 0 : brent((u) => travel(u) - pressedIn, 0, c, c * 1e-10);
    const found = y === null ? null : yieldAt(y);
    return found !== null && found >= LOWEST_PSI && found <= HIGHEST_PSI ? found : null;
  };
  const basis = { kind: 'measured', ref } as const;
  if (push.leftIn < SEEN_IN) {
    // δ_y = F S²/(6 E D)
    const least = (6 * elasticPsi * tube.odIn * push.pressedIn) / push.spanIn ** 2;
    return { says: 'elastic', yieldPsi: figure(least, 'psi', basis, ['at-least']) };
  }
  const value = yieldFor(push.leftIn);
  if (value === null) return { says: 'doesNotFit', yieldPsi: null };
  const low = yieldFor(push.leftIn + SEEN_IN) ?? LOWEST_PSI;
  const high = yieldFor(push.leftIn - SEEN_IN) ?? value;
  return {
    says: 'informs',
    yieldPsi: figure(value, 'psi', basis, ['set-read-to-1/64', 'blocks-do-not-give'], {
      low,
      high: Math.max(value, high),
    }),
  };
};
