import { add, cross, distance, dot, length, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import { adjust, placeIn, type Solution } from './adjust.ts';
import type { Adjustment } from './result.ts';

/** Ω within this of the best: the readings cannot tell the two apart. methods.md 6. */
const NEARLY = 9;
/** Mirrored less than this far it is the same place; further than the other, eyes tell without a trammel. Ours. */
const SAME_PLACE_IN = 0.5;
const EYES_TELL_IN = 6;

type Neighbours = ReadonlyMap<string, ReadonlySet<string>>;

const neighboursOf = (s: Solution): Neighbours => {
  const next = new Map<string, Set<string>>();
  for (const { clusters, plane } of s.network.observations) {
    if (plane) continue;
    const [a, b] = clusters;
    next.set(a.id, (next.get(a.id) ?? new Set()).add(b.id));
    next.set(b.id, (next.get(b.id) ?? new Set()).add(a.id));
  }
  return next;
};

/** A point mirrored in the plane of its three nearest measured neighbours. */
const mirrored = (s: Solution, id: string, neighbours: Neighbours): Vec3 | undefined => {
  const p = placeIn(s, id);
  const [a, b, c] = [...(neighbours.get(id) ?? [])]
    .map((n) => placeIn(s, n))
    .sort((x, y) => distance(x, p) - distance(y, p));
  if (!a || !b || !c) return undefined;
  const normal = cross(sub(b, a), sub(c, a));
  if (length(normal) < 1e-6 * distance(a, b) * distance(a, c)) return undefined;
  const n = unit(normal);
  return add(p, scale(n, -2 * dot(n, sub(p, a))));
};

/**
 * Clusters that the readings fit nearly as well on the other side of their neighbours: each free cluster is mirrored in
 * the plane of its three nearest measured neighbours and all is adjusted from there.
 *
 * Left out: a mirrored place within 1/2 in (the covariance says it) or more than 6 in from the drawing (eyes say it).
 * Source: flip ambiguity of distance networks, Hendrickson, Conditions for unique graph realizations, SIAM J. Comput. 21 (1992).
 */
export const foldsOf = (s: Solution): NonNullable<Adjustment['folds']> => {
  const neighbours = neighboursOf(s);
  return s.network.clusters.flatMap((cluster) => {
    if (s.setting.datum.has(cluster)) return [];
    const there = mirrored(s, cluster, neighbours);
    const drawn = s.network.elsewhere.get(cluster)!;
    if (
      !there ||
      distance(there, placeIn(s, cluster)) < SAME_PLACE_IN ||
      distance(there, drawn) > EYES_TELL_IN
    )
      return [];
    const from = Float64Array.from(s.places);
    const k = 3 * s.network.index.get(cluster)!;
    for (let c = 0; c < 3; c++) from[k + c] = there[c]!;
    const folded = adjust(s.network, s.setting, from);
    const place = placeIn(folded, cluster);
    const omegaMore = folded.omega - s.omega;
    if (omegaMore > NEARLY || distance(place, placeIn(s, cluster)) < SAME_PLACE_IN) return [];
    return [{ cluster, moveIn: sub(place, drawn), omegaMore }];
  });
};
