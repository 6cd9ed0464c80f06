import { type Basis, type Figure, figure } from '../base/figure.ts';
import { plasticModulus, type Steel, tubeSection } from './bending.ts';
import type { Press } from './result.ts';
import { firstYield, hinge, pressForSet, type ThreePoint } from './springback.ts';

/** A round tube, inches. */
export interface RoundTube {
  readonly odIn: number;
  readonly wallIn: number;
}

/** Pads of grooved blocks, in diameters. Source: common practice, no source. */
export const PAD_DIAMETERS = 1.5;

const model: Basis = { kind: 'computed', ref: 'elastic-plastic tube in a three-point press' };
const modelAssumed = ['no-hardening', 'no-residual-stress', 'no-earlier-bend-the-other-way', 'wall-as-drawn'];

/**
 * Load per inch of pad at which two flat blocks start to flatten a ring of the tube, lbf/in.
 *
 *   q = 8 m/D_m,  m = F t²/4,  D_m = D − t
 *
 * Assumes: line loads on opposite sides, four plastic hinges. Grooved blocks spread the load, so it is a bound below.
 * Source: plastic collapse of a ring with hinges at the quarter points (DeRuntz & Hodge, J. Appl. Mech. 30, 1963, from
 * memory); for grooved blocks there is no published figure: common practice, no source.
 */
export const flatteningLoad = ({ odIn, wallIn }: RoundTube, yieldPsi: number): number =>
  (2 * yieldPsi * wallIn * wallIn) / (odIn - wallIn);

/** One number for the lowest and the highest yield strength; the value is the lowest’s: press that far first. */
const ranged = (
  unit: Figure['unit'],
  at: (steel: Steel) => number,
  low: Steel,
  high: Steel,
  assumed: readonly string[],
): Figure => {
  const [a, b] = [at(low), at(high)];
  return figure(a, unit, model, [...modelAssumed, ...assumed], { low: Math.min(a, b), high: Math.max(a, b) });
};

/**
 * What a three-point press must do to leave a wanted set in a tube, for the scatter of its yield strength.
 *
 *   press = set + springback      clamp = 4M/S, each block half of it
 *
 * @param steel  yield: `value`, or `low` to `high` where it is a range
 * Assumes: as `pressedTo`. The value is for the lowest yield strength: a stronger tube springs back more and needs more.
 * Fails: a set beyond what the span gives before hinging is answered with the warning `past-hinge`.
 * Source: methods §7; the shop reads what stays after each push and goes on from there: common practice, no source.
 */
export const pressFor = ({
  tube,
  elasticPsi,
  yieldPsi,
  spanIn,
  wantedSetIn,
}: {
  readonly tube: RoundTube;
  readonly elasticPsi: number;
  readonly yieldPsi: Figure;
  readonly spanIn: number;
  readonly wantedSetIn: number;
}): Press => {
  const section = tubeSection(tube);
  const low: Steel = { elasticPsi, yieldPsi: yieldPsi.low ?? yieldPsi.value };
  const high: Steel = { elasticPsi, yieldPsi: yieldPsi.high ?? yieldPsi.value };
  const press = (steel: Steel): ThreePoint => pressForSet(section, steel, spanIn, wantedSetIn);
  const [soft, hard] = [press(low), press(high)];
  const either = (steel: Steel): ThreePoint => (steel === low ? soft : hard);
  const range = (unit: Figure['unit'], at: (steel: Steel) => number): Figure =>
    ranged(unit, at, low, high, yieldPsi.assumed);
  const mostSetIn = range('in', (steel) => hinge(section, steel, spanIn).setIn);
  const solid = tube.wallIn >= tube.odIn / 2;
  const flatPad = (steel: Steel): number =>
    solid ? 0 : either(steel).clampLbf / flatteningLoad(tube, steel.yieldPsi);
  const padIn = PAD_DIAMETERS * tube.odIn;
  const flatPadIn = range('in', flatPad);
  const pastHinge = wantedSetIn > mostSetIn.low! * (1 + 1e-9);
  return {
    spanIn,
    clampLbf: range('lbf', (steel) => either(steel).clampLbf),
    blockLbf: range('lbf', (steel) => either(steel).clampLbf / 2),
    pressIn: range('in', (steel) => either(steel).travelIn),
    springBackIn: range('in', (steel) => either(steel).travelIn - either(steel).setIn),
    setIn: figure(wantedSetIn, 'in', model),
    firstYieldIn: range('in', (steel) => firstYield(section, steel, spanIn).travelIn),
    mostSetIn,
    flatPadIn,
    bearingPsi: range('psi', (steel) => either(steel).clampLbf / (padIn * tube.odIn)),
    warnings: [
      ...(pastHinge ? ['past-hinge'] : []),
      ...(flatPadIn.high! > padIn ? ['grooved-blocks'] : []),
      ...(flatPadIn.high! > spanIn / 3 ? ['longer-span'] : []),
    ],
  };
};

/** Clamp force at which the tube yields through under the ram, lbf: no press of this span can need more. P = 4 M_p/S. */
export const mostClampLbf = (tube: RoundTube, yieldPsi: number, spanIn: number): number =>
  (4 * yieldPsi * plasticModulus(tubeSection(tube))) / spanIn;
