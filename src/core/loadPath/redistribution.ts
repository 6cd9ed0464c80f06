import { addEndForces } from '../lockedIn/lockedState.ts';
import { deformations, type Frame } from '../statics/frame.ts';

/** Below this axial redundancy nothing else holds the member's length. */
export const NO_OTHER_PATH = 1e-9;

/** Where the energy of a length error in one member goes. */
export interface Redistribution {
  /** r_N = 1 − D₁ G₁₁: share of a length error that turns into force. */
  readonly rN: number;
  /** w_ij for every frame member j, i's own place 0; null when r_N < 1e-9. */
  readonly share: Float64Array | null;
}

const CHUNK = 48;

/**
 * Energy share of every member for a unit length error of each member asked for.
 *
 *   w_ij = Σ_modes Π_ij² / (Π_ii (1 − Π_ii)),   Π = D^½ B K⁻¹ Bᵀ D^½
 *
 * The shares, with the bending that i's own length error causes in i itself, sum to 1.
 *
 * @param asked  frame member indices i
 * Source: methods section 5; von Scheven, Ramm & Bischoff, IJSS 213 (2021) 41 (redundancy matrix).
 */
export const redistribution = (frame: Frame, asked: readonly number[]): readonly Redistribution[] => {
  const size = frame.held.length;
  const out: Redistribution[] = [];
  for (let start = 0; start < asked.length; start += CHUNK) {
    const some = asked.slice(start, start + CHUNK);
    const loads = new Float64Array(size * some.length);
    some.forEach((i, c) => {
      addEndForces(frame.members[i]!, [1, 0, 0, 0, 0, 0], loads, c * size);
    });
    const moves = frame.solve(loads, some.length);
    some.forEach((i, c) => {
      const d1 = frame.members[i]!.stiffness[0]!;
      const pi = d1 * deformations(frame.members[i]!, moves, c * size)[0]!;
      const rN = 1 - pi;
      if (rN < NO_OTHER_PATH) {
        out.push({ rN, share: null });
        return;
      }
      const share = new Float64Array(frame.members.length);
      for (let j = 0; j < share.length; j++) {
        if (j === i) continue;
        const m = frame.members[j]!;
        const v = deformations(m, moves, c * size);
        let energy = 0;
        for (let k = 0; k < 6; k++) energy += m.stiffness[k]! * v[k]! ** 2;
        share[j] = (d1 * energy) / (pi * rN);
      }
      out.push({ rN, share });
    });
  }
  return out;
};
