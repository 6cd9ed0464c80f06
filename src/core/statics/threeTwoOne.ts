import { cross, distance, length, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Freedom } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import { smallestSingularValue } from './dense.ts';
import type { HeldCluster } from './held.ts';

const axes = ['x', 'y', 'z'] as const satisfies readonly Freedom[];

/**
 * Supports that hold a free body without straining it: three far-apart clusters, one held in x, y, z, one in two
 * axes, one in one, chosen so that the smallest singular value of the 6 × 6 rigid-motion matrix is largest.
 * Internal forces of a self-balanced load do not depend on the choice; movements do.
 * Fails: gives what there is for fewer than three clusters or clusters in a line; the frame then moves freely.
 */
export const threeTwoOne = (truss: Truss): HeldCluster[] => {
  const used = new Set(truss.members.flatMap((m) => [m.from, m.to]));
  const clusters = truss.clusters.filter((c) => used.has(c.id));
  if (clusters.length < 3) return clusters.map((c) => ({ cluster: c.id, fixed: axes }));
  const far = (from: (at: Vec3) => number) =>
    clusters.reduce((best, c) => (from(c.at) > from(best.at) * (1 + 1e-9) ? c : best));
  const middle = scale(
    clusters.reduce<Vec3>((s, c) => [s[0] + c.at[0], s[1] + c.at[1], s[2] + c.at[2]], [0, 0, 0]),
    1 / clusters.length,
  );
  const a = far((at) => distance(at, middle));
  const b = far((at) => distance(at, a.at));
  const line = unit(sub(b.at, a.at));
  const c = far((at) => length(cross(sub(at, a.at), line)));
  const span = distance(a.at, b.at) || 1;
  let best: { held: HeldCluster[]; value: number } = { held: [], value: -1 };
  for (const [first, second, third] of [
    [a, b, c],
    [a, c, b],
    [b, a, c],
    [b, c, a],
    [c, a, b],
    [c, b, a],
  ] as const)
    for (let left = 0; left < 3; left++)
      for (let one = 0; one < 3; one++) {
        const two = axes.filter((_, d) => d !== left);
        const held = [
          { cluster: first.id, fixed: axes },
          { cluster: second.id, fixed: two },
          { cluster: third.id, fixed: [axes[one]!] },
        ];
        const rows = [
          ...axes.map((axis) => rigidRow(first.at, axis, middle, span)),
          ...two.map((axis) => rigidRow(second.at, axis, middle, span)),
          rigidRow(third.at, axes[one]!, middle, span),
        ];
        const value = smallestSingularValue(rows);
        if (value > best.value * (1 + 1e-9)) best = { held, value };
      }
  return best.held;
};

/** How a point moves along an axis in the six rigid motions about `middle`, turning scaled by `span`. */
const rigidRow = (at: Vec3, axis: (typeof axes)[number], middle: Vec3, span: number): number[] => {
  const [x, y, z] = scale(sub(at, middle), 1 / span);
  if (axis === 'x') return [1, 0, 0, 0, z, -y];
  if (axis === 'y') return [0, 1, 0, -z, 0, x];
  return [0, 0, 1, y, -x, 0];
};
