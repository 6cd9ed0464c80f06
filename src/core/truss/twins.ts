import { groupBy } from './groupBy.ts';
import { mirrorCluster } from './names.ts';
import type { Cluster, Member, Pair } from './result.ts';

/** Two added points count as opposite hands when they mirror within this; a tape cannot tell less. */
const SAME_PLACE_IN = 1 / 64;

/** The opposite-hand cluster of each cluster: by name, else by place; a centre cluster is its own. */
const mirrorIds = (clusters: readonly Cluster[]): ReadonlyMap<string, string> => {
  const ids = new Set(clusters.map((c) => c.id));
  const unnamed = clusters.filter((c) => c.station === undefined);
  const twin = (c: Cluster): string | undefined => {
    if (c.side === 'C') return c.id;
    const named = mirrorCluster(c.id);
    if (named !== null) return ids.has(named) ? named : undefined;
    const across = unnamed.find((o) =>
      [o.at[0] - c.at[0], o.at[1] + c.at[1], o.at[2] - c.at[2]].every((v) => Math.abs(v) <= SAME_PLACE_IN),
    );
    return across?.id;
  };
  return new Map(
    clusters.flatMap((c) => {
      const other = twin(c);
      return other === undefined ? [] : [[c.id, other] as const];
    }),
  );
};

const endsKey = (a: string, b: string): string => JSON.stringify(a < b ? [a, b] : [b, a]);

/** Opposite-hand twins, left first: clusters, then members; a member that is its own mirror image has none. */
export const twins = (clusters: readonly Cluster[], members: readonly Member[]): readonly Pair[] => {
  const mirror = mirrorIds(clusters);
  const y = new Map(clusters.map((c) => [c.id, c.at[1]]));
  const clusterPairs = clusters.flatMap((c): readonly Pair[] => {
    const other = mirror.get(c.id);
    const isLeft = c.side ? c.side === 'L' : c.at[1] < 0;
    return isLeft && other !== undefined && other !== c.id
      ? [{ kind: 'cluster', left: c.id, right: other }]
      : [];
  });
  const byEnds = groupBy(members, (m) => endsKey(m.from, m.to));
  const memberPairs = [...byEnds.values()].flatMap((group): readonly Pair[] => {
    const first = group[0]!;
    const from = mirror.get(first.from);
    const to = mirror.get(first.to);
    if (from === undefined || to === undefined) return [];
    const others = byEnds.get(endsKey(from, to)) ?? [];
    if (others === group) return [];
    // A tube across the centre plane is on the hand of its first end.
    const reach = (y.get(first.from) ?? 0) || (y.get(first.to) ?? 0);
    if (reach >= 0) return [];
    return group.flatMap((m, k) => {
      const other = others[k];
      return other ? [{ kind: 'member' as const, left: m.id, right: other.id }] : [];
    });
  });
  return [...clusterPairs, ...memberPairs];
};
