import type { Model } from '../job/modelSchema.ts';
import { bracing } from './bracing.ts';
import { clustersOf, placesOf, stationsInOrder } from './clusters.ts';
import { membersOf } from './members.ts';
import { compareIds } from './names.ts';
import { oddities } from './oddities.ts';
import type { Truss } from './result.ts';
import { twins } from './twins.ts';
import { zones } from './zones.ts';

/**
 * The model expanded: station table and bracing words, less the openings, plus the model's own clusters and members.
 *
 * Longerons run between consecutive stations that have clusters at that corner, and merge into a centre cluster.
 * Parts that cannot be made (a tube to nowhere, of no length, of no known size) are left out and listed in `issues`;
 * what is odd but usable is in `odd`. Never throws.
 */
export const expandTruss = (model: Model): Truss => {
  const table = stationsInOrder(model);
  const made = clustersOf(model, table.stations);
  const places = placesOf(made.clusters, table.stations);
  const pattern = bracing(model, table.stations);
  const built = membersOf(model, pattern.ends, made.clusters, places, table.stations);
  const alongIn = (id: string): number => places.get(id)!.alongIn;
  const clusters = [...made.clusters.values()].sort(
    (a, b) => alongIn(a.id) - alongIn(b.id) || compareIds(a.id, b.id),
  );
  const members = built.members.toSorted(
    (a, b) => alongIn(a.from) - alongIn(b.from) || compareIds(a.id, b.id),
  );
  const byId = new Map(clusters.map((c) => [c.id, c]));
  const pairs = twins(clusters, members);
  return {
    clusters,
    members,
    ...zones(table.stations, byId, members),
    pairs,
    odd: [...pattern.odd, ...built.odd, ...oddities(model, byId, members, pairs)],
    issues: [...table.issues, ...made.issues, ...built.issues],
  };
};
