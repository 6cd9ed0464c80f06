import { symmetricEigen } from './dense.ts';
import { type Frame, modeMatrix } from './frame.ts';
import { isBrace } from './held.ts';
import type { MemberRedundancy } from './result.ts';

/**
 * How a member's six modes give to forces of its own size, the rest of the truss and itself included.
 *
 *   G_CC = B K⁻¹ Bᵀ, 6 × 6 row-major
 */
export const modeFlexibility = (frame: Frame, member: number): Float64Array => {
  const b = modeMatrix(frame.members[member]!);
  const inverse = frame.endsInverse(member);
  const half = new Float64Array(72);
  for (let p = 0; p < 6; p++)
    for (let c = 0; c < 12; c++) {
      let s = 0;
      for (let r = 0; r < 12; r++) s += b[12 * p + r]! * inverse[12 * r + c]!;
      half[12 * p + c] = s;
    }
  const g = new Float64Array(36);
  for (let p = 0; p < 6; p++)
    for (let q = 0; q < 6; q++) {
      let s = 0;
      for (let c = 0; c < 12; c++) s += half[12 * p + c]! * b[12 * q + c]!;
      g[6 * p + q] = s;
    }
  return g;
};

/**
 * A member's block of the symmetric redundancy matrix, over the modes that have stiffness.
 *
 *   I − D^½ G_CC D^½;  its trace over all members is the degree of statical indeterminacy
 *
 * Source: Linkwitz 1961; Bahndorf 1991; von Scheven, Ramm & Bischoff, Int. J. Solids Structures 213 (2021) 41.
 */
export const redundancyBlock = (frame: Frame, member: number): number[][] => {
  const { stiffness } = frame.members[member]!;
  const g = modeFlexibility(frame, member);
  const modes = [0, 1, 2, 3, 4, 5].filter((p) => stiffness[p]! > 0);
  return modes.map((p) =>
    modes.map((q) => (p === q ? 1 : 0) - Math.sqrt(stiffness[p]! * stiffness[q]!) * g[6 * p + q]!),
  );
};

/** r_N and μ of every tube (braces left out), in the frame's order; `pinned`: r_N of the pinned truss by member id. */
export const redundancyOf = (
  frame: Frame,
  pinned: ReadonlyMap<string, number> | null = null,
): MemberRedundancy[] =>
  frame.members.flatMap((m, index) => {
    if (isBrace(m.id)) return [];
    const block = redundancyBlock(frame, index);
    // Both lie in 0…1; only rounding leaves it.
    const inside = (v: number): number => Math.min(1, Math.max(0, v));
    const hinged = pinned?.get(m.id);
    // A wall so thin that no stiffness is left of it takes nothing: I − 0.
    const none = block.length === 0;
    return [
      {
        id: m.id,
        rN: none ? 1 : inside(block[0]![0]!),
        mu: none ? 1 : inside(symmetricEigen(block).values[0]!),
        pinnedRN: hinged === undefined ? null : inside(hinged),
      },
    ];
  });
