import { type Issue, issue } from '../base/issue.ts';
import type { Mishap } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { capacityLbf } from '../statics/capacity.ts';
import type { Frame } from '../statics/frame.ts';
import { heldBySetup } from '../statics/held.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import type { Statics } from '../statics/result.ts';
import type { Truss } from '../truss/result.ts';
import { type CaseUse, casesOf, type FreeFlight, shareInCase, speaksFor } from './cases.ts';
import type { Evidence, Told } from './evidence.ts';
import { hopsFrom } from './hops.ts';
import { inertiaRelief, lumpedWeights } from './inertia.ts';
import { redistribution } from './redistribution.ts';
import { type SamePath, samePath, sharedLoad } from './samePath.ts';

/** Trade habit: the joints of a hurt tube are looked at first. Common practice, no source. */
const NEAR = [0, 0.5, 0.15] as const;
/** Below these a reason is not worth reading. */
const TELL_PATH = 0.02;
const TELL_SHARE = 0.05;
/** All evidence of a job, asked for member by member. */
export interface Gathered {
  /** Evidence on a member from damaged members or clusters, and from the blow when `withBlow`. */
  readonly on: (id: string, from: readonly string[], withBlow: boolean) => readonly Evidence[];
  /** Smaller of tension and column capacity, lbf. */
  readonly capacity: ReadonlyMap<string, number>;
  readonly noOtherPath: ReadonlySet<string>;
  readonly issues: readonly Issue[];
}

/** Works out everything that does not depend on which member is looked at. */
export const gather = (
  truss: Truss,
  model: Model,
  frame: Frame,
  statics: Statics,
  mishap: Mishap | undefined,
  asked: readonly string[],
  hurtClusters: readonly string[],
): Gathered => {
  const issues: Issue[] = [];
  const capacity = new Map(
    truss.members.map((m) => [m.id, Math.min(capacityLbf(m, 'tension'), capacityLbf(m, 'compression'))]),
  );
  const ends = new Map(truss.members.map((m) => [m.id, [m.from, m.to]]));
  const known = asked.filter((id) => frame.memberIndex.has(id));
  const hops = new Map([
    ...asked.map((id) => [id, hopsFrom(truss, ends.get(id)!, 2)] as const),
    ...hurtClusters.map((id) => [id, hopsFrom(truss, [id], 2)] as const),
  ]);
  const energy = redistribution(
    frame,
    known.map((id) => frame.memberIndex.get(id)!),
  );
  const energyOf = new Map(known.map((id, k) => [id, energy[k]!]));

  const flying = prepareFrame(truss, heldBySetup(truss, model, 'free'));
  const balance = inertiaRelief(truss, lumpedWeights(truss, model));
  const free = isFrame(flying) && balance ? { frame: flying, balance } : null;
  if (!free) issues.push(issue('no-free-flight-sums', 'model', {}, 'load-path-by-joints-only'));
  const cases = casesOf(mishap, free, statics, capacity);
  const path = free ? coupling(free, known, capacity) : null;

  const fromMember = (from: string, id: string): Evidence => {
    const h = hops.get(from)?.get(id);
    const a = h === undefined ? 0 : NEAR[h]!;
    const b = cases.some((c) => speaksFor(c, from)) ? 0 : (path?.(from, id) ?? 0);
    const w = energyOf.get(from)?.share?.[frame.memberIndex.get(id) ?? -1] ?? null;
    const reasons: Told[] = [];
    if (h === 1) {
      const cluster = ends.get(id)!.find((c) => ends.get(from)!.includes(c))!;
      reasons.push({ strength: a, reason: { kind: 'sharesCluster', with: from, cluster } });
    } else if (h === 2) reasons.push({ strength: a, reason: { kind: 'nearCluster', with: from, hops: 2 } });
    if (b >= TELL_PATH) reasons.push({ strength: b, reason: { kind: 'samePath', with: from, share: b } });
    if (w !== null && w >= TELL_SHARE)
      reasons.push({ strength: w / 10, reason: { kind: 'takesOver', with: from, share: w } });
    return { from, a, b, w, reasons };
  };
  const fromCluster = (cluster: string, id: string): Evidence => {
    const h = hops.get(cluster)?.get(id);
    const a = h === undefined ? 0 : NEAR[h]!;
    const reasons: Told[] =
      h === 1
        ? [{ strength: a, reason: { kind: 'sharesCluster', with: cluster, cluster } }]
        : h === 2
          ? [{ strength: a, reason: { kind: 'nearCluster', with: cluster, hops: 2 } }]
          : [];
    return { from: cluster, a, b: 0, w: null, reasons };
  };
  const fromCase = (c: CaseUse, hurt: readonly string[], id: string): readonly Evidence[] => {
    const found = shareInCase(c, hurt, id);
    if (!found || found.share < TELL_PATH) return [];
    const reason = { kind: 'samePath', with: found.with, share: found.share, case: c.id } as const;
    return [
      { from: found.with, a: 0, b: found.share, w: null, reasons: [{ strength: found.share, reason }] },
    ];
  };
  const struck = mishap?.blow?.cluster;
  const near = struck !== undefined && frame.clusterIndex.has(struck) ? hopsFrom(truss, [struck], 2) : null;
  const blow = cases.find((c) => c.id === 'blow');
  /** The blow itself; the share of the load only while nothing it speaks for has been found hurt. */
  const fromBlow = (id: string, hurt: readonly string[]): readonly Evidence[] => {
    if (!near || struck === undefined) return [];
    const h = near.get(id);
    const a = h === undefined ? 0 : NEAR[h]!;
    const alone = blow && blow.most > 0 && !hurt.some((i) => speaksFor(blow, i));
    const b = alone ? (blow.use.get(id) ?? 0) / blow.most : 0;
    if (a === 0 && b < TELL_PATH) return [];
    const reason = { kind: 'blow', cluster: struck } as const;
    return [{ from: struck, a, b, w: null, reasons: [{ strength: Math.max(a, b), reason }] }];
  };
  return {
    capacity,
    noOtherPath: new Set(known.filter((_, k) => energy[k]!.share === null)),
    issues,
    on: (id, from, withBlow) => [
      ...from.map((f) => (ends.has(f) ? fromMember(f, id) : fromCluster(f, id))),
      ...cases.flatMap((c) => fromCase(c, from, id)),
      ...(withBlow ? fromBlow(id, from) : []),
    ],
  };
};

/** b_ij of the load-case-free coupling, by member ids. */
const coupling = (
  { frame: free, balance }: FreeFlight,
  asked: readonly string[],
  capacity: ReadonlyMap<string, number>,
): ((from: string, id: string) => number) => {
  const inFrame = asked.filter((id) => free.memberIndex.has(id));
  const rowOf = new Map(inFrame.map((id, k) => [id, k]));
  const path: SamePath = samePath(
    free,
    balance,
    inFrame.map((id) => free.memberIndex.get(id)!),
  );
  const caps = Float64Array.from(free.members, (m) => capacity.get(m.id) ?? Number.POSITIVE_INFINITY);
  return (from, id) => {
    const row = rowOf.get(from);
    const j = free.memberIndex.get(id);
    if (row === undefined || j === undefined) return 0;
    return sharedLoad(path, row, free.memberIndex.get(from)!, j, caps);
  };
};
