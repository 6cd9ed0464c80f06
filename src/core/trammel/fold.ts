import { type Issue, issue } from '../base/issue.ts';
import { add, cross, distance, dot, length, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';
import { adjust, type Network, networkOf, placeIn, type Setting, type Solution } from './adjust.ts';
import type { Adjustment } from './adjustment.ts';
import type { Observation } from './observations.ts';

/** Ω within this of the best: the readings cannot tell the two apart. methods.md 6. */
const NEARLY = 9;
/** Mirrored less than this far it is the same place: the covariance says it. Ours. */
const SAME_PLACE_IN = 0.5;
/** A reading of the cluster that is further off than this at the mirrored place keeps it from there. Ours. */
const KEPT_OUT_IN = 6;
type Neighbours = ReadonlyMap<string, ReadonlySet<string>>;

interface Around {
  readonly net: Network;
  readonly setting: Setting;
}

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

/** Is one of the cluster's readings far from fitting at the mirrored place, its neighbours where they are? */
const keptOut = (s: Solution, id: string, there: Vec3): boolean =>
  s.network.observations.some(({ clusters: [a, b], plane, axisIn }, n) => {
    if (plane || s.setting.weights[n] === 0 || (a.id !== id && b.id !== id)) return false;
    const other = placeIn(s, a.id === id ? b.id : a.id);
    return Math.abs(distance(there, other) - axisIn) > KEPT_OUT_IN;
  });

/** The cluster, its neighbours and theirs; those outermost are held to 1/16 of where they are. */
const around = (s: Solution, id: string, neighbours: Neighbours): Around => {
  const inner = new Set([id, ...(neighbours.get(id) ?? [])]);
  const inside = ({ clusters }: Observation): boolean => clusters.some((c) => inner.has(c.id));
  const own = s.network.observations.flatMap((o, n) => (inside(o) ? [n] : []));
  const observations = own.map((n) => s.network.observations[n]!);
  const ids = new Set(observations.flatMap((o) => o.clusters.map((c) => c.id)));
  const places = new Map([...ids].map((one) => [one, placeIn(s, one)]));
  const near = networkOf(places, observations);
  const net = { ...near, elsewhere: new Map([...s.network.elsewhere, ...places]) };
  const held = (one: string): boolean => !inner.has(one) || s.setting.datum.has(one);
  return {
    net,
    setting: {
      weights: Float64Array.from(own, (n) => s.setting.weights[n]!),
      datum: new Set([...ids].filter(held)),
    },
  };
};

/**
 * Clusters that the readings fit nearly as well (Ω within 9) on the other side of their neighbours: each free cluster is
 * mirrored in the plane of its three nearest measured neighbours and adjusted from there with all around it.
 *
 * Assumes: a fold is a matter of the cluster, its neighbours and theirs; those further off stay within 1/16 in.
 * Source: flip ambiguity of distance networks, Hendrickson, Conditions for unique graph realizations, SIAM J. Comput. 21 (1992).
 */
export const foldsOf = (s: Solution): NonNullable<Adjustment['folds']> => {
  const neighbours = neighboursOf(s);
  return s.network.clusters.flatMap((cluster) => {
    if (s.setting.datum.has(cluster)) return [];
    const here = placeIn(s, cluster);
    const there = mirrored(s, cluster, neighbours);
    if (!there || distance(there, here) < SAME_PLACE_IN || keptOut(s, cluster, there)) return [];
    const { net, setting } = around(s, cluster, neighbours);
    const from = Float64Array.from(net.drawing);
    from.set(there, 3 * net.index.get(cluster)!);
    const folded = adjust(net, setting, from);
    const place = placeIn(folded, cluster);
    if (distance(place, here) < SAME_PLACE_IN) return [];
    const omegaMore = folded.omega - adjust(net, setting).omega;
    if (omegaMore > NEARLY) return [];
    return [{ cluster, moveIn: sub(place, s.network.elsewhere.get(cluster)!), omegaMore }];
  });
};

/** Further from the drawing than this, eyes tell on which side a cluster stands. Ours. */
const EYES_TELL_IN = 6;

/** Each fold near the drawing by itself, those that eyes tell together. */
export const foldIssues = (
  folds: NonNullable<Adjustment['folds']>,
  hold: Hold,
  where: string,
): readonly Issue[] => {
  const far = folds.filter((f) => length(f.moveIn) > EYES_TELL_IN).map((f) => f.cluster);
  return [
    ...folds
      .filter((f) => !far.includes(f.cluster))
      .map(({ cluster, moveIn }) =>
        issue('fold-fits-too', where, { hold, cluster, moveIn: length(moveIn) }, 'read-one-across-it'),
      ),
    ...(far.length > 0
      ? [issue('folds-fit-far-off', where, { hold, clusters: far }, 'look-or-read-across')]
      : []),
  ];
};
