import type { ChangedFrame } from '../lockedIn/changedFrame.ts';
import { deformations, type Frame } from '../statics/frame.ts';
import { type Cuts, letGo, MECHANISM } from './release.ts';

/** Growth of own-weight sag that still needs no fixture, inches. Starting value, yours to change; no published limit. */
export const SAG_LIMIT_IN = 1 / 32;

const CHUNK = 48;

/** Own weight, 1 g down, half of each tube at its ends. Entered weights are left out: they may be off the truss by now. */
export const ownWeight = (frame: Frame): Float64Array => {
  const loads = new Float64Array(frame.held.length);
  for (const m of frame.members) {
    const half = (m.weightLbPerIn * m.lengthIn) / 2;
    loads[m.i * 6 + 2]! -= half;
    loads[m.j * 6 + 2]! -= half;
  }
  return loads;
};

/** Own-weight moves and the deformations they mean, 6 for each frame member. */
export interface Weighed {
  readonly moves: Float64Array;
  readonly strains: Float64Array;
}

export const weigh = (changed: ChangedFrame): Weighed => {
  const { frame } = changed;
  const moves = changed.solve(ownWeight(frame));
  const strains = new Float64Array(frame.members.length * 6);
  frame.members.forEach((m, index) => {
    strains.set(deformations(m, moves), index * 6);
  });
  return { moves, strains };
};

/**
 * Largest growth of own-weight sag at any station point, inches, for every cut at once.
 *
 *   Δz_p = (Bᵀ L z_w)ᵀ K⁻¹ e_p:  one solve a station point serves all cuts
 *
 * A cut that makes a mechanism gives NaN.
 * Assumes: aircraft upright, weight of the tubes alone, the cut tube's weight stays on its two stubs.
 */
export const sagGrowth = (cuts: Cuts, weighed: Weighed): Float64Array => {
  const { frame } = cuts.changed;
  const size = frame.held.length;
  const loads = frame.members.map((_, c) =>
    cuts.mu[c]! < MECHANISM ? null : stubLoads(cuts, c, letGo(cuts, c, weighed.strains).z),
  );
  const growth = Float64Array.from(loads, (f) => (f ? 0 : Number.NaN));
  for (let start = 0; start < frame.clusters.length; start += CHUNK) {
    const columns = Math.min(CHUNK, frame.clusters.length - start);
    const down = new Float64Array(size * columns);
    for (let k = 0; k < columns; k++) down[k * size + (start + k) * 6 + 2] = -1;
    const moves = cuts.changed.solve(down, columns);
    frame.members.forEach((m, c) => {
      const f = loads[c];
      if (!f) return;
      for (let k = 0; k < columns; k++) {
        const a = k * size + m.i * 6;
        const b = k * size + m.j * 6;
        let sum = 0;
        for (let p = 0; p < 6; p++) sum += f[p]! * moves[a + p]! + f[p + 6]! * moves[b + p]!;
        if (sum > growth[c]!) growth[c] = sum;
      }
    });
  }
  return growth;
};

/** Bᵀ L z on the cut's own two ends. */
const stubLoads = (cuts: Cuts, cut: number, z: Float64Array): Float64Array => {
  const bl = cuts.bl[cut]!;
  const f = new Float64Array(12);
  for (let p = 0; p < 12; p++) for (let r = 0; r < 6; r++) f[p]! += bl[p * 6 + r]! * z[r]!;
  return f;
};

/** Largest growth of sag between two sets of moves, inches, never below 0. */
export const growthBetween = (before: Float64Array, after: Float64Array): number => {
  let most = 0;
  for (let at = 2; at < before.length; at += 6) most = Math.max(most, before[at]! - after[at]!);
  return most;
};
