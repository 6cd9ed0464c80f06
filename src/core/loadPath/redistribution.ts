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
  const energies = memberEnergies(frame);
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
      const share = energies(moves, c * size);
      const scale = d1 / (pi * rN);
      for (let j = 0; j < share.length; j++) share[j]! *= scale;
      share[i] = 0;
      out.push({ rN, share });
    });
  }
  return out;
};

/** Numbers kept for each member: its axes, its stiffness, 2/L, which end is a ball. */
const WIDTH = 17;

/**
 * Twice the strain energy of every member for a column of moves, Σ D v².
 *
 * The six deformations are written out on flat numbers: with every member against every member this is the whole cost
 * of the load-path matrix.
 */
const memberEnergies = (frame: Frame): ((moves: Float64Array, offset: number) => Float64Array) => {
  const count = frame.members.length;
  const flat = new Float64Array(count * WIDTH);
  const ends = new Int32Array(count * 2);
  frame.members.forEach((m, k) => {
    const ball = m.ball === undefined ? 0 : m.ball === 'j' ? 1 : -1;
    flat.set([...m.e, ...m.y, ...m.z, ...m.stiffness, 2 / m.lengthIn, ball], k * WIDTH);
    ends[k * 2] = m.i * 6;
    ends[k * 2 + 1] = m.j * 6;
  });
  return (u, offset) => {
    const out = new Float64Array(count);
    for (let k = 0, g = 0; k < count; k++, g += WIDTH) {
      const a = offset + ends[k * 2]!;
      const b = offset + ends[k * 2 + 1]!;
      const ux = u[b]! - u[a]!;
      const uy = u[b + 1]! - u[a + 1]!;
      const uz = u[b + 2]! - u[a + 2]!;
      const lessX = u[a + 3]! - u[b + 3]!;
      const lessY = u[a + 4]! - u[b + 4]!;
      const lessZ = u[a + 5]! - u[b + 5]!;
      const moreX = u[a + 3]! + u[b + 3]!;
      const moreY = u[a + 4]! + u[b + 4]!;
      const moreZ = u[a + 5]! + u[b + 5]!;
      const ex = flat[g]!;
      const ey = flat[g + 1]!;
      const ez = flat[g + 2]!;
      const yx = flat[g + 3]!;
      const yy = flat[g + 4]!;
      const yz = flat[g + 5]!;
      const zx = flat[g + 6]!;
      const zy = flat[g + 7]!;
      const zz = flat[g + 8]!;
      const turn = flat[g + 15]!;
      const ball = flat[g + 16]!;
      const v1 = ex * ux + ey * uy + ez * uz;
      const v2 = ex * lessX + ey * lessY + ez * lessZ;
      const v3 = zx * lessX + zy * lessY + zz * lessZ;
      const v4 = yx * lessX + yy * lessY + yz * lessZ;
      const v5 = zx * moreX + zy * moreY + zz * moreZ - turn * (yx * ux + yy * uy + yz * uz) + ball * v3;
      const v6 = yx * moreX + yy * moreY + yz * moreZ + turn * (zx * ux + zy * uy + zz * uz) + ball * v4;
      out[k] =
        flat[g + 9]! * v1 * v1 +
        flat[g + 10]! * v2 * v2 +
        flat[g + 11]! * v3 * v3 +
        flat[g + 12]! * v4 * v4 +
        flat[g + 13]! * v5 * v5 +
        flat[g + 14]! * v6 * v6;
    }
    return out;
  };
};
