import {
  type BendSection,
  coreShare,
  elasticModulus,
  inertiaOf,
  momentShare,
  type Steel,
} from './bending.ts';
import { brent } from './brent.ts';
import { integrateOver } from './gauss.ts';

/** One press between two blocks with the ram half-way: what is held and what stays. */
export interface ThreePoint {
  readonly clampLbf: number;
  /** Travel of the ram from where the tube lay. */
  readonly travelIn: number;
  /** Stays after letting go. */
  readonly setIn: number;
  /** Angle that stays between the two halves of the span. */
  readonly setRad: number;
}

/**
 * A press of a section, all of it a function of one number: the height y up to which the metal under the ram is still
 * elastic (y = c first yield, y = 0 the hinge).
 *
 *   P = 4M/S,  δ = P x_y³/6EI + (4F³/EP²) ∫_y^c (M/F)(∫₀^u b v² dv · 2/u³) du,  x_y = 2M_y/P
 *   left after letting go: δ − PS³/48EI
 *
 * With y as the variable the integral has no singularity, and stays finite at the hinge.
 * Assumes: as `momentAt`; blocks and ram act at points; small slopes; any bend the tube had before only shifts δ.
 * Source: δ = ∫ κ(Px/2) x dx, virtual work, any structures text.
 */
export const pressedTo = (s: BendSection, steel: Steel, spanIn: number, elasticToIn: number): ThreePoint => {
  const { elasticPsi: e, yieldPsi: f } = steel;
  const c = s.halfDepthIn;
  const inertia = inertiaOf(s);
  const clamp = (4 * f * momentShare(s, elasticToIn)) / spanIn;
  const firstYieldAt = (2 * f * elasticModulus(s)) / clamp;
  const elasticDown = (clamp * firstYieldAt ** 3) / (6 * e * inertia);
  const elasticTurn = (clamp * firstYieldAt ** 2) / (4 * e * inertia);
  // 2 coreShare(u) = ∫b v²/u³ over both halves: dM = −F · that · u du.
  const down = (u: number): number => momentShare(s, u) * 2 * coreShare(s, u);
  const turn = (u: number): number => 2 * coreShare(s, u);
  const yieldedDown = (4 * f ** 3 * integrateOver(down, elasticToIn, c, s.breaks)) / (e * clamp * clamp);
  const yieldedTurn = (2 * f * f * integrateOver(turn, elasticToIn, c, s.breaks)) / (e * clamp);
  const travel = elasticDown + yieldedDown;
  return {
    clampLbf: clamp,
    travelIn: travel,
    setIn: travel - (clamp * spanIn ** 3) / (48 * e * inertia),
    setRad: 2 * (elasticTurn + yieldedTurn) - (clamp * spanIn ** 2) / (8 * e * inertia),
  };
};

/** The press at which the metal under the ram has just yielded through: more travel only turns the hinge. */
export const hinge = (s: BendSection, steel: Steel, spanIn: number): ThreePoint =>
  pressedTo(s, steel, spanIn, 0);

/** The press at which the outermost fibre just yields: it leaves nothing. */
export const firstYield = (s: BendSection, steel: Steel, spanIn: number): ThreePoint => {
  const clampLbf = (4 * steel.yieldPsi * elasticModulus(s)) / spanIn;
  const travelIn = (clampLbf * spanIn ** 3) / (48 * steel.elasticPsi * inertiaOf(s));
  return { clampLbf, travelIn, setIn: 0, setRad: 0 };
};

const solvedFor = (
  s: BendSection,
  steel: Steel,
  spanIn: number,
  of: (p: ThreePoint) => number,
  wanted: number,
): ThreePoint | null => {
  const c = s.halfDepthIn;
  const y = brent((u) => of(pressedTo(s, steel, spanIn, u)) - wanted, 0, c, c * 1e-10);
  return y === null ? null : pressedTo(s, steel, spanIn, y);
};

/**
 * The press that leaves a wanted set.
 *
 * Beyond what the hinge gives, the ram turns the hinge: travel = set + P_p S³/48EI, and `setRad` grows by 4/S an inch.
 */
export const pressForSet = (s: BendSection, steel: Steel, spanIn: number, setIn: number): ThreePoint => {
  const last = hinge(s, steel, spanIn);
  const over = setIn - last.setIn;
  if (over >= 0) return beyond(last, over, spanIn);
  if (setIn <= 0) return firstYield(s, steel, spanIn);
  return solvedFor(s, steel, spanIn, (p) => p.setIn, setIn) ?? firstYield(s, steel, spanIn);
};

/** The press that leaves a wanted angle between the two halves of the span; null beyond the hinge. */
export const pressForTurn = (
  s: BendSection,
  steel: Steel,
  spanIn: number,
  turnRad: number,
): ThreePoint | null => {
  if (turnRad <= 0) return firstYield(s, steel, spanIn);
  return turnRad > hinge(s, steel, spanIn).setRad
    ? null
    : solvedFor(s, steel, spanIn, (p) => p.setRad, turnRad);
};

/** What a measured travel of the ram leaves. */
export const pressAt = (s: BendSection, steel: Steel, spanIn: number, travelIn: number): ThreePoint => {
  const first = firstYield(s, steel, spanIn);
  if (travelIn <= first.travelIn) {
    const share = travelIn / first.travelIn;
    return { clampLbf: first.clampLbf * share, travelIn, setIn: 0, setRad: 0 };
  }
  const last = hinge(s, steel, spanIn);
  if (travelIn >= last.travelIn) return beyond(last, travelIn - last.travelIn, spanIn);
  return solvedFor(s, steel, spanIn, (p) => p.travelIn, travelIn) ?? last;
};

const beyond = (last: ThreePoint, over: number, spanIn: number): ThreePoint => ({
  clampLbf: last.clampLbf,
  travelIn: last.travelIn + over,
  setIn: last.setIn + over,
  setRad: last.setRad + (4 * over) / spanIn,
});
