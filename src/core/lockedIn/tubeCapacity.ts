import type { Member } from '../truss/result.ts';

/** What a straight tube carries along its axis, lbf: yield in tension, Johnson–Euler column in compression. */
export interface TubeCapacity {
  readonly tensionLbf: number;
  readonly columnLbf: number;
}

/**
 *   s = (L/√c)/ρ,  s < π√(2E/F): σ = F(1 − F s²/4π²E),  else σ = π²E/s²
 *
 * Assumes: F_cy = F_y, the member's own end fixity c.
 * Source: Johnson–Euler column, methods section 8 (ANC-5; Bruhn C2).
 */
export const tubeCapacity = ({ section, lengthIn, fixity }: Member): TubeCapacity => {
  const { areaIn2, inertiaIn4, elasticPsi, yieldPsi } = section;
  const slender = lengthIn / Math.sqrt(fixity) / Math.sqrt(inertiaIn4 / areaIn2);
  const stress =
    slender < Math.PI * Math.sqrt((2 * elasticPsi) / yieldPsi)
      ? yieldPsi * (1 - (yieldPsi * slender ** 2) / (4 * Math.PI ** 2 * elasticPsi))
      : (Math.PI ** 2 * elasticPsi) / slender ** 2;
  return { tensionLbf: yieldPsi * areaIn2, columnLbf: stress * areaIn2 };
};
