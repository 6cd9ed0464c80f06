import type { Truss } from '../truss/result.ts';

/** How many clusters lie between two members: 1 when they share one. Missing when further than `most`. */
export type Hops = ReadonlyMap<string, number>;

/** Members at each cluster, in the truss's order. */
export const membersAt = (truss: Truss): ReadonlyMap<string, readonly string[]> => {
  const at = new Map<string, string[]>(truss.clusters.map((c) => [c.id, []]));
  for (const m of truss.members) {
    at.get(m.from)?.push(m.id);
    if (m.to !== m.from) at.get(m.to)?.push(m.id);
  }
  return at;
};

/** Hops from some clusters to every member within reach; a member at one of them is 1 away. */
export const hopsFrom = (truss: Truss, start: readonly string[], most: number): Hops => {
  const at = membersAt(truss);
  const ends = new Map(truss.members.map((m) => [m.id, [m.from, m.to] as const]));
  const hops = new Map<string, number>();
  const seen = new Set(start);
  let edge: readonly string[] = start;
  for (let h = 1; h <= most && edge.length > 0; h++) {
    const next: string[] = [];
    for (const cluster of edge)
      for (const id of at.get(cluster) ?? []) {
        if (hops.has(id)) continue;
        hops.set(id, h);
        for (const end of ends.get(id)!)
          if (!seen.has(end)) {
            seen.add(end);
            next.push(end);
          }
      }
    edge = next;
  }
  return hops;
};
