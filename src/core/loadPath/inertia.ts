import { cross, scale, sub, type Vec3 } from '../base/vec3.ts';
import type { Model } from '../job/modelSchema.ts';
import { eliminate } from '../lockedIn/smallDense.ts';
import type { Truss } from '../truss/result.ts';

/** Lumped weights at the clusters, lb: half of each tube to its ends, and the largest entered weight of any load case. */
export const lumpedWeights = (truss: Truss, model: Model): Float64Array => {
  const at = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const weights = new Float64Array(truss.clusters.length);
  for (const m of truss.members) {
    const half = (m.section.densityLbIn3 * m.section.areaIn2 * m.lengthIn) / 2;
    for (const end of [m.from, m.to]) {
      const k = at.get(end);
      if (k !== undefined) weights[k]! += half;
    }
  }
  const entered = new Map<number, number>();
  for (const { weights: carried } of model.loadCases)
    for (const w of carried ?? []) {
      const k = at.get(w.cluster);
      if (k !== undefined) entered.set(k, Math.max(entered.get(k) ?? 0, w.weightLbf));
    }
  for (const [k, w] of entered) weights[k]! += w;
  return weights;
};

/**
 * Balances loads on a body that nothing holds by its own inertia, in place: `columns` load vectors of 6 n.
 *
 *   f ← f − M R (Rᵀ M R)⁻¹ Rᵀ f
 *
 * Assumes: weights lumped at the clusters, small turns.
 * Fails: a truss whose clusters lie in a line cannot be balanced; `null`.
 * Source: inertia relief, methods section 1.
 */
export const inertiaRelief = (
  truss: Truss,
  weights: Float64Array,
): ((loads: Float64Array, columns: number) => void) | null => {
  const n = truss.clusters.length;
  const total = weights.reduce((s, w) => s + w, 0);
  if (!(total > 0)) return null;
  let centre: Vec3 = [0, 0, 0];
  truss.clusters.forEach((c, k) => {
    const part = scale(c.at, weights[k]! / total);
    centre = [centre[0] + part[0], centre[1] + part[1], centre[2] + part[2]];
  });
  const span = Math.max(...truss.clusters.flatMap((c) => sub(c.at, centre).map(Math.abs))) || 1;
  // Six rigid motions; turns are scaled by the span so that all six are of one size.
  const motion = truss.clusters.map(({ at }) => {
    const arm = scale(sub(at, centre), 1 / span);
    const axes: Vec3[] = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    return [...axes, ...axes.map((a) => cross(a, arm))];
  });
  const mass = new Float64Array(36);
  for (let c = 0; c < n; c++)
    for (let p = 0; p < 6; p++)
      for (let q = 0; q < 6; q++)
        for (let d = 0; d < 3; d++) mass[p * 6 + q]! += weights[c]! * motion[c]![p]![d]! * motion[c]![q]![d]!;
  const inverse = new Float64Array(36);
  for (let k = 0; k < 6; k++) inverse[k * 7] = 1;
  if (eliminate(mass, 6, inverse, 6) < 1e-10) return null;
  return (loads, columns) => {
    for (let col = 0; col < columns; col++) {
      const at = col * 6 * n;
      const push = new Float64Array(6);
      for (let c = 0; c < n; c++)
        for (let p = 0; p < 6; p++)
          for (let d = 0; d < 3; d++) {
            push[p]! += motion[c]![p]![d]! * loads[at + c * 6 + d]!;
            // A moment works on the turn itself.
            if (p >= 3 && d === p - 3) push[p]! += loads[at + c * 6 + p]! / span;
          }
      for (let c = 0; c < n; c++)
        for (let d = 0; d < 3; d++) {
          let taken = 0;
          for (let p = 0; p < 6; p++) {
            let share = 0;
            for (let q = 0; q < 6; q++) share += inverse[p * 6 + q]! * push[q]!;
            taken += motion[c]![p]![d]! * share;
          }
          loads[at + c * 6 + d]! -= weights[c]! * taken;
        }
    }
  };
};
