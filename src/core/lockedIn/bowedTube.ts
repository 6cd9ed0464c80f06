import { dot } from '../base/vec3.ts';
import type { FrameMember } from '../statics/frame.ts';
import type { Misfit } from './misfit.ts';
import { root } from './smallDense.ts';

/** Another stiffness than the straight tube's: D' = D + U C Uᵀ in the member's six modes. */
export interface Change {
  readonly member: number;
  readonly rank: number;
  /** 6 × rank, row-major. */
  readonly u: Float64Array;
  /** Diagonal, length rank. */
  readonly c: Float64Array;
}

/**
 * A bowed tube is softer along its chord, and pulling it turns its ends:
 *
 *   F = F_straight + bow,  F'₁₁ = L/EA + ∫y²/EI,  F₁₃,₁₄ = −∫y t/EI,  F₁₅,₁₆ = −∫y(1 − 2x/L) t/EI
 *
 * in the natural modes; the inverse of this arrow-shaped block is D + w wᵀ/s − D₁ e₁e₁ᵀ, w = (1, 0, −D_k F₁k),
 * s = F₁₁ − Σ D_k F₁k².
 *
 * @param ei  bending stiffness E I of the tube, lbf-in²
 * Assumes: linear about the bowed shape, elastic, round tube.
 * Source: methods section 3 (3 × 3 flexibility on [N, m_i, m_j]); checked against numerical integration in the tests.
 */
export const bowedTube = (index: number, m: FrameMember, misfit: Misfit, ei: number): Change => {
  const d = m.stiffness;
  const u = new Float64Array(12);
  u[0] = 1;
  u[1] = 1;
  let s = 1 / d[0]! + misfit.y2 / ei;
  const couple = (mode: number, value: number): void => {
    const f = -value / ei;
    s -= d[mode]! * f * f;
    u[mode * 2 + 1] = -d[mode]! * f;
  };
  const ball = ballSign(m);
  couple(2, dot(misfit.y0, m.z));
  couple(3, dot(misfit.y0, m.y));
  couple(4, dot(misfit.y1, m.z) + ball * dot(misfit.y0, m.z));
  couple(5, dot(misfit.y1, m.y) + ball * dot(misfit.y0, m.y));
  return { member: index, rank: 2, u, c: Float64Array.of(-d[0]!, 1 / s) };
};

/** Modes 5 and 6 of a tube with one ball end carry the other end's bending alone (see `FrameMember.ball`). */
const ballSign = (m: FrameMember): number => (m.ball === undefined ? 0 : m.ball === 'j' ? 1 : -1);

/**
 * A tube that is not there, or carries a fixed force whatever its ends do: no stiffness left.
 *
 * @param stiffness  6 × 6, as it was; written as −L Lᵀ, so that the update's block is I − LᵀG L, of size 1 whatever the units
 */
export const goneTube = (index: number, stiffness: Float64Array): Change => ({
  member: index,
  rank: 6,
  u: root(stiffness, 6),
  c: new Float64Array(6).fill(-1),
});

/** The free deformations of a bent tube in the member's modes, for one reading of its end slopes. */
export const freeModes = (m: FrameMember, misfit: Misfit, reading: 'short' | 'full'): Float64Array => {
  const v = new Float64Array(6);
  v[0] = -misfit.shortIn;
  if (reading === 'short') return v;
  const zi = dot(misfit.turnFrom, m.z);
  const zj = dot(misfit.turnTo, m.z);
  const yi = dot(misfit.turnFrom, m.y);
  const yj = dot(misfit.turnTo, m.y);
  v[2] = zi - zj;
  v[3] = yi - yj;
  v[4] = zi + zj + ballSign(m) * v[2]!;
  v[5] = yi + yj + ballSign(m) * v[3]!;
  return v;
};
