import { type Issue, issue } from '../base/issue.ts';
import { unit } from '../base/vec3.ts';
import type { Mishap } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { capacityLbf } from '../statics/capacity.ts';
import type { Frame } from '../statics/frame.ts';
import { heldBySetup } from '../statics/held.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import type { Statics } from '../statics/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Evidence, Told } from './evidence.ts';
import { hopsFrom } from './hops.ts';
import { inertiaRelief, lumpedWeights } from './inertia.ts';
import { redistribution } from './redistribution.ts';
import { axialForces, type SamePath, samePath, sharedLoad } from './samePath.ts';

/** Trade habit: the joints of a hurt tube are looked at first. Common practice, no source. */
const NEAR = [0, 0.5, 0.15] as const;
/** Below these a reason is not worth reading. */
const TELL_PATH = 0.02;
const TELL_SHARE = 0.05;
/** A case in which a member carries less than this share of the most used one says nothing about it. */
const IDLE = 1e-3;

/** All evidence of a job, asked for member by member. */
export interface Gathered {
  /** Evidence on a member from damaged members or clusters, and from the blow when `withBlow`. */
  readonly on: (id: string, from: readonly string[], withBlow: boolean) => readonly Evidence[];
  /** Smaller of tension and column capacity, lbf. */
  readonly capacity: ReadonlyMap<string, number>;
  readonly noOtherPath: ReadonlySet<string>;
  readonly issues: readonly Issue[];
}

/** One load case as use of each frame member: |N|/cap. */
interface CaseUse {
  readonly id: string;
  readonly use: ReadonlyMap<string, number>;
  readonly most: number;
}

const caseUse = (
  id: string,
  axial: ReadonlyMap<string, number>,
  capacity: ReadonlyMap<string, number>,
): CaseUse => {
  const use = new Map<string, number>();
  for (const [member, cap] of capacity) use.set(member, Math.abs(axial.get(member) ?? 0) / cap);
  return { id, use, most: Math.max(0, ...use.values()) };
};

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

  const free = prepareFrame(truss, heldBySetup(truss, model, 'free'));
  const balance = inertiaRelief(truss, lumpedWeights(truss, model));
  const coupled = isFrame(free) && balance ? { free, balance } : null;
  if (!coupled) issues.push(issue('no-free-flight-sums', 'model', {}, 'load-path-by-joints-only'));
  const cases: CaseUse[] = [];
  const struck = mishap?.blow;
  const struckIndex = struck ? frame.clusterIndex.get(struck.cluster) : undefined;
  if (struck && struckIndex !== undefined && coupled) {
    const loads = new Float64Array(frame.held.length);
    unit(struck.direction).forEach((part, d) => {
      loads[struckIndex * 6 + d] = part;
    });
    coupled.balance(loads, 1);
    const axial = axialForces(coupled.free, coupled.free.solve(loads));
    cases.push(caseUse('blow', new Map(coupled.free.members.map((m, k) => [m.id, axial[k]!])), capacity));
  }
  if (statics.kind === 'stands')
    for (const solved of statics.cases)
      if (mishap?.cases.includes(solved.id))
        cases.push(caseUse(solved.id, new Map(solved.members.map((m) => [m.id, m.axialLbf])), capacity));
  const path = coupled ? coupling(coupled.free, coupled.balance, known, capacity) : null;

  const samePathOf = (from: string, id: string): { b: number; case?: string } => {
    let best: { b: number; case?: string } | null = null;
    for (const c of cases) {
      const here = c.use.get(from) ?? 0;
      if (here <= IDLE * c.most) continue;
      const b = Math.min(1, (c.use.get(id) ?? 0) / here);
      if (!best || b > best.b) best = { b, case: c.id };
    }
    return best ?? { b: path?.(from, id) ?? 0 };
  };

  const fromMember = (from: string, id: string): Evidence => {
    const h = hops.get(from)?.get(id);
    const a = h === undefined ? 0 : NEAR[h]!;
    const { b, case: by } = samePathOf(from, id);
    const w = energyOf.get(from)?.share?.[frame.memberIndex.get(id) ?? -1] ?? null;
    const reasons: Told[] = [];
    if (h === 1) {
      const cluster = ends.get(id)!.find((c) => ends.get(from)!.includes(c))!;
      reasons.push({ strength: a, reason: { kind: 'sharesCluster', with: from, cluster } });
    } else if (h === 2) reasons.push({ strength: a, reason: { kind: 'nearCluster', with: from, hops: 2 } });
    if (b >= TELL_PATH)
      reasons.push({
        strength: b,
        reason: { kind: 'samePath', with: from, share: b, ...(by === undefined ? {} : { case: by }) },
      });
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
  const near = struck && struckIndex !== undefined ? hopsFrom(truss, [struck.cluster], 2) : null;
  const blow = cases.find((c) => c.id === 'blow');
  const fromBlow = (id: string): readonly Evidence[] => {
    if (!near || !struck) return [];
    const h = near.get(id);
    const a = h === undefined ? 0 : NEAR[h]!;
    const b = blow && blow.most > 0 ? (blow.use.get(id) ?? 0) / blow.most : 0;
    if (a === 0 && b < TELL_PATH) return [];
    const reason = { kind: 'blow', cluster: struck.cluster } as const;
    return [{ from: struck.cluster, a, b, w: null, reasons: [{ strength: Math.max(a, b), reason }] }];
  };
  return {
    capacity,
    noOtherPath: new Set(known.filter((_, k) => energy[k]!.share === null)),
    issues,
    on: (id, from, withBlow) => [
      ...from.map((f) => (ends.has(f) ? fromMember(f, id) : fromCluster(f, id))),
      ...(withBlow ? fromBlow(id) : []),
    ],
  };
};

/** b_ij of the load-case-free coupling, by member ids. */
const coupling = (
  free: Frame,
  balance: (loads: Float64Array, columns: number) => void,
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
