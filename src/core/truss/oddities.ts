import { type Issue, issue } from '../base/issue.ts';
import { distance } from '../base/vec3.ts';
import type { Model } from '../job/modelSchema.ts';
import { groupBy } from './groupBy.ts';
import type { Cluster, Member, Pair } from './result.ts';
import { inStock } from './stock.ts';

/** Tolerance of a drawing distance that states none (`shapes.md`). */
const DRAWING_TOLERANCE_IN = 1 / 32;
/** A difference between twins that a rounded drawing may show. */
const TWIN_TOLERANCE_IN = 1 / 64;
/** With more twins than this share unlike, the truss is not meant to be symmetric and nothing is said. */
const UNLIKE_SHARE = 0.1;

const looseClusters = (clusters: readonly Cluster[], members: readonly Member[]): readonly Issue[] => {
  const tied = new Set(members.flatMap((m) => [m.from, m.to]));
  return clusters
    .filter((c) => !tied.has(c.id))
    .map((c) => issue('loose-cluster', '', { id: c.id }, 'join-or-take-out'));
};

const doubledMembers = (members: readonly Member[]): readonly Issue[] =>
  [...groupBy(members, (m) => JSON.stringify([m.from, m.to])).values()]
    .filter((group) => group.length > 1)
    .map((group) => issue('doubled-member', '', { ids: group.map((m) => m.id) }, 'check-that-both-exist'));

const notInStock = (members: readonly Member[]): readonly Issue[] =>
  [
    ...groupBy(
      members.filter((m) => m.tube && !inStock(m.tube)),
      (m) => `${m.tube!.odIn} ${m.tube!.wallIn}`,
    ).values(),
  ].map((group) => {
    const { odIn, wallIn } = group[0]!.tube!;
    return issue('tube-not-in-stock', '', { odIn, wallIn, ids: group.map((m) => m.id) }, 'check-the-size');
  });

const unknownClusters = (model: Model, clusters: ReadonlyMap<string, Cluster>): readonly Issue[] => {
  const named: (readonly [string, string])[] = [
    ...model.setups.flatMap((s, k) => s.held.map((h, j) => [`setups[${k}].held[${j}]`, h.cluster] as const)),
    ...model.loadCases.flatMap((c, k) => [
      ...c.loads.map((l, j) => [`loadCases[${k}].loads[${j}]`, l.cluster] as const),
      ...(c.weights ?? []).map((w, j) => [`loadCases[${k}].weights[${j}]`, w.cluster] as const),
    ]),
    ...model.distances.flatMap((d, k) => [
      [`distances[${k}].from`, d.from] as const,
      [`distances[${k}].to`, d.to] as const,
    ]),
  ];
  return named
    .filter(([, id]) => !clusters.has(id))
    .map(([at, id]) => issue('unknown-cluster', at, { cluster: id }, 'name-a-cluster-of-the-model'));
};

const againstDrawing = (model: Model, clusters: ReadonlyMap<string, Cluster>): readonly Issue[] =>
  model.distances.flatMap((d, k) => {
    const from = clusters.get(d.from);
    const to = clusters.get(d.to);
    if (!from || !to) return [];
    const modelIn = distance(from.at, to.at);
    const toleranceIn = d.toleranceIn ?? DRAWING_TOLERANCE_IN;
    if (Math.abs(modelIn - d.lengthIn) <= toleranceIn) return [];
    const facts = { from: d.from, to: d.to, drawingIn: d.lengthIn, modelIn, toleranceIn };
    return [issue('drawing-against-stations', `distances[${k}]`, facts, 'check-drawing-and-stations')];
  });

/** A lone diagonal across the centre plane has no twin by nature; these roles are expected to have one. */
const handed: ReadonlySet<string> = new Set(['upperLongeron', 'lowerLongeron', 'vertical', 'sideDiagonal']);

const unlikeTwins = (
  clusters: ReadonlyMap<string, Cluster>,
  members: readonly Member[],
  pairs: readonly Pair[],
): readonly Issue[] => {
  const byId = new Map(members.map((m) => [m.id, m]));
  const paired = new Set(pairs.flatMap((p) => [p.left, p.right]));
  const unlike = pairs.flatMap((p): readonly Issue[] => {
    const facts = { left: p.left, right: p.right };
    if (p.kind === 'cluster') {
      const [x, y, z] = clusters.get(p.left)!.at;
      const offIn = distance([x, -y, z], clusters.get(p.right)!.at);
      return offIn > TWIN_TOLERANCE_IN
        ? [issue('twins-differ', '', { ...facts, offIn }, 'check-both-sides')]
        : [];
    }
    const a = byId.get(p.left)!;
    const b = byId.get(p.right)!;
    const same =
      a.material === b.material &&
      a.section.areaIn2 === b.section.areaIn2 &&
      a.section.inertiaIn4 === b.section.inertiaIn4;
    return same ? [] : [issue('twins-differ', '', facts, 'check-both-sides')];
  });
  const single = members
    .filter((m) => handed.has(m.role) && m.side !== 'C' && !paired.has(m.id))
    .map((m) => issue('no-twin', '', { id: m.id }, 'check-both-sides'));
  const found = [...unlike, ...single];
  return found.length <= UNLIKE_SHARE * (pairs.length + single.length) ? found : [];
};

/** What is odd about a model and its expanded truss, each with what to do about it; nothing here is left out. */
export const oddities = (
  model: Model,
  clusters: ReadonlyMap<string, Cluster>,
  members: readonly Member[],
  pairs: readonly Pair[],
): readonly Issue[] => [
  ...looseClusters([...clusters.values()], members),
  ...doubledMembers(members),
  ...notInStock(members),
  ...unknownClusters(model, clusters),
  ...againstDrawing(model, clusters),
  ...unlikeTwins(clusters, members, pairs),
];
