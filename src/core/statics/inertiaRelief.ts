import type { Vec3 } from '../base/vec3.ts';
import type { LoadCase } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import { solveSymmetric, symmetricEigen } from './dense.ts';
import type { Frame } from './frame.ts';

/** Below this share of the largest, the mass cannot resist turning about some axis: all of it lies in one line. */
const NO_INERTIA = 1e-12;

/**
 * Loads of a body that flies or bounces, balanced by its own inertia.
 *
 *   f ← f − M R (RᵀMR)⁻¹ Rᵀ f,  R = rigid motions about the centre of mass
 *
 * @param loads  forces and moments at the frame's freedoms, left as they are
 * @returns balanced loads; null when there is no mass, or all of it in one line
 * Assumes: half of each member's weight at either end, entered weights where they are; no inertia of their own turning.
 * Source: McGuire, Gallagher & Ziemian; NASTRAN's inertia relief, from memory.
 */
export const balanceByInertia = (
  truss: Truss,
  frame: Frame,
  loadCase: LoadCase,
  loads: Float64Array,
): Float64Array | null => {
  const mass = clusterWeights(frame, loadCase);
  const total = mass.reduce((s, m) => s + m, 0);
  if (!(total > 0)) return null;
  const places = truss.clusters.map((c) => c.at);
  const centre = [0, 1, 2].map((d) => places.reduce((s, at, c) => s + mass[c]! * at[d]!, 0) / total);
  const arms = places.map((at): Vec3 => [at[0] - centre[0]!, at[1] - centre[1]!, at[2] - centre[2]!]);
  const reach = Math.sqrt(
    arms.reduce((s, a, c) => s + mass[c]! * (a[0] ** 2 + a[1] ** 2 + a[2] ** 2), 0) / total,
  );
  if (!(reach > 0)) return null;
  // Turning is measured at the distance `reach`, so that all six motions are of one size.
  const motions = arms.map(([x, y, z]) => [
    [1, 0, 0, 0, z / reach, -y / reach],
    [0, 1, 0, -z / reach, 0, x / reach],
    [0, 0, 1, y / reach, -x / reach, 0],
  ]);
  const six = [0, 1, 2, 3, 4, 5];
  const weighed = six.map((p) =>
    six.map((q) =>
      motions.reduce(
        (s, r, c) => s + mass[c]! * (r[0]![p]! * r[0]![q]! + r[1]![p]! * r[1]![q]! + r[2]![p]! * r[2]![q]!),
        0,
      ),
    ),
  );
  const { values } = symmetricEigen(weighed);
  if (values[0]! < NO_INERTIA * values[5]!) return null;
  const pull = six.map((p) =>
    motions.reduce((s, r, c) => {
      const turned = p < 3 ? 0 : loads[6 * c + p]! / reach;
      return (
        s + r[0]![p]! * loads[6 * c]! + r[1]![p]! * loads[6 * c + 1]! + r[2]![p]! * loads[6 * c + 2]! + turned
      );
    }, 0),
  );
  const acceleration = solveSymmetric(weighed, pull);
  const balanced = loads.slice();
  motions.forEach((r, c) => {
    for (let d = 0; d < 3; d++)
      balanced[6 * c + d]! -= mass[c]! * six.reduce((s, p) => s + r[d]![p]! * acceleration[p]!, 0);
  });
  return balanced;
};

/** Weight at each cluster, lb: half of each member there, and what the case carries. */
const clusterWeights = (frame: Frame, loadCase: LoadCase): Float64Array => {
  const weights = new Float64Array(frame.clusters.length);
  for (const m of frame.members) {
    const half = (m.weightLbPerIn * m.lengthIn) / 2;
    weights[m.i]! += half;
    weights[m.j]! += half;
  }
  for (const { cluster, weightLbf } of loadCase.weights ?? []) {
    const c = frame.clusterIndex.get(cluster);
    if (c !== undefined) weights[c]! += weightLbf;
  }
  return weights;
};
