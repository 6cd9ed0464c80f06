import { integrateOver } from './gauss.ts';

/** A section that is alike above and below its neutral axis. */
export interface BendSection {
  /** Neutral axis to the outermost fibre, inches. */
  readonly halfDepthIn: number;
  /** Width of metal at a height y ≥ 0 above the neutral axis, inches. */
  readonly widthAt: (y: number) => number;
  /** Heights where the width has a corner. */
  readonly breaks: readonly number[];
}

/** Steel that stretches elastically up to its yield strength and no harder beyond. */
export interface Steel {
  readonly elasticPsi: number;
  readonly yieldPsi: number;
}

/** A round tube as a section; wall = OD/2 is a solid rod. */
export const tubeSection = ({
  odIn,
  wallIn,
}: {
  readonly odIn: number;
  readonly wallIn: number;
}): BendSection => {
  const outer = odIn / 2;
  const inner = Math.max(0, outer - wallIn);
  const chord = (radius: number, y: number): number => 2 * Math.sqrt(Math.max(0, radius * radius - y * y));
  return {
    halfDepthIn: outer,
    widthAt: (y) => chord(outer, y) - chord(inner, y),
    breaks: inner > 0 ? [inner] : [],
  };
};

/** ∫b y² from 0 to y, over y³: finite down to y = 0. */
export const coreShare = (s: BendSection, y: number): number =>
  integrateOver(
    (u) => s.widthAt(y * u) * u * u,
    0,
    1,
    s.breaks.map((b) => b / y),
  );

/** ∫b y from y to the outermost fibre: what has yielded. */
const shell = (s: BendSection, y: number): number =>
  integrateOver((u) => s.widthAt(u) * u, y, s.halfDepthIn, s.breaks);

/** Second moment of area, in⁴. */
export const inertiaOf = (s: BendSection): number => 2 * coreShare(s, s.halfDepthIn) * s.halfDepthIn ** 3;

/** First-yield moment over the yield strength: the elastic section modulus, in³. */
export const elasticModulus = (s: BendSection): number => inertiaOf(s) / s.halfDepthIn;

/** Fully plastic moment over the yield strength: the plastic section modulus, in³. */
export const plasticModulus = (s: BendSection): number => 2 * shell(s, 0);

/**
 * Moment over the yield strength when the metal is elastic up to a height y and has yielded beyond it, in³.
 *
 *   M/F = 2 [ (1/y) ∫₀^y b u² du + ∫_y^c b u du ]
 */
export const momentShare = (s: BendSection, elasticToIn: number): number =>
  elasticToIn <= 0
    ? plasticModulus(s)
    : 2 * (elasticToIn * elasticToIn * coreShare(s, elasticToIn) + shell(s, elasticToIn));

/**
 * Bending moment at a curvature, in-lbf.
 *
 *   c ≤ F/Eκ:  E I κ,   else F · (M/F at y = F/Eκ)
 *
 * Assumes: plane sections stay plane; no hardening, no residual stress, no earlier bending the other way (Bauschinger).
 * Source: Timoshenko, Strength of Materials, part II, plastic bending; section integrals by quadrature.
 */
export const momentAt = (s: BendSection, steel: Steel, curvature: number): number => {
  const k = Math.abs(curvature);
  const elasticTo = k === 0 ? Number.POSITIVE_INFINITY : steel.yieldPsi / (steel.elasticPsi * k);
  const size =
    elasticTo >= s.halfDepthIn
      ? steel.elasticPsi * inertiaOf(s) * k
      : steel.yieldPsi * momentShare(s, elasticTo);
  return curvature < 0 ? -size : size;
};

/**
 * Curvature that stays after a uniform bend is let go, 1/in.
 *
 *   κ_left = κ − M(κ)/EI
 */
export const curvatureLeft = (s: BendSection, steel: Steel, curvature: number): number =>
  curvature - momentAt(s, steel, curvature) / (steel.elasticPsi * inertiaOf(s));
