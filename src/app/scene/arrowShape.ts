import { add, cross, distance, length, scale, sub, unit, type Vec3 } from '../../core/base/vec3.ts';
import { centreOf, type Drawn } from './drawn.ts';
import type { SceneArrow } from './sceneProps.ts';

/** The longest arrow as a share of the truss's size, and the shortest that is still seen as one. */
const LONGEST = 0.11;
const SHORTEST = 0.35;

/** Tail and tip of an arrow: the tip at the outside of the cluster's ball. */
export const arrowEnds = (
  d: Drawn,
  { cluster, towards, share }: SceneArrow,
): { readonly tail: Vec3; readonly tip: Vec3 } | null => {
  const i = d.clusterIndex.get(cluster);
  if (i === undefined) return null;
  const size = LONGEST * distance(d.low, d.high);
  const tip = sub(centreOf(d, i), scale(towards, d.balls[i]! * 1.4));
  return { tip, tail: sub(tip, scale(towards, size * Math.max(SHORTEST, Math.min(1, share)))) };
};

/** Pairs of points of an arrow: its shaft, and four strokes of each head so that it reads from any side. */
export const arrowStrokes = (d: Drawn, arrow: SceneArrow): readonly Vec3[] => {
  const ends = arrowEnds(d, arrow);
  if (!ends) return [];
  const { tip, tail } = ends;
  const head = 0.02 * distance(d.low, d.high);
  const t = arrow.towards;
  const side = unit(cross(t, length(cross(t, [0, 0, 1])) > 0.1 ? [0, 0, 1] : [0, 1, 0]));
  const other = cross(t, side);
  const barbs = (point: Vec3): readonly Vec3[] =>
    [side, scale(side, -1), other, scale(other, -1)].flatMap((s) => [
      point,
      add(sub(point, scale(t, head)), scale(s, head * 0.42)),
    ]);
  return [tail, tip, ...barbs(tip), ...(arrow.turns ? barbs(sub(tip, scale(t, 0.8 * head))) : [])];
};
