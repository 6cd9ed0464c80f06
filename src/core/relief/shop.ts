import type { Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';
import type { LockedIn } from '../lockedIn/result.ts';
import type { Frame } from '../statics/frame.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { Coverage, Mark } from '../walkRound/result.ts';
import { type Brace, bestBrace } from './brace.ts';
import { cutLoads, letGo } from './release.ts';
import { growthBetween, sagGrowth } from './sag.ts';
import { afterCutting, type Situation, situationOf } from './situation.ts';

/** What all targets of one job share, each thing worked out once, when it is first asked for. */
export interface Shop {
  readonly truss: Truss;
  readonly locked: LockedIn;
  readonly now: Situation;
  readonly members: ReadonlyMap<string, Member>;
  readonly marks: ReadonlyMap<string, Mark>;
  readonly findings: (member: string) => readonly Finding[];
  /** Half the largest outside diameter at a cluster, inches. */
  readonly reach: ReadonlyMap<string, number>;
  /** Growth of own-weight sag for each frame member's cut, inches. */
  readonly sagIn: Float64Array;
  readonly after: (cut: number) => Situation | null;
  readonly brace: (cut: Member) => Brace | null;
  /** Clusters that move most when the tubes are cut in order, with their moves: springing open and own weight. */
  readonly moves: (cuts: readonly number[]) => readonly { readonly id: string; readonly moveIn: Vec3 }[];
  /** Growth of sag for a pair, inches. */
  readonly pairSag: (first: number, second: number) => number;
}

const MOST_MOVED = 3;

const kept = <K, V>(work: (key: K) => V): ((key: K) => V) => {
  const done = new Map<K, V>();
  return (key) => {
    if (!done.has(key)) done.set(key, work(key));
    return done.get(key)!;
  };
};

export const shop = (truss: Truss, frame: Frame, coverage: Coverage, locked: LockedIn): Shop | null => {
  const now = situationOf(truss, frame, locked.misfits);
  if (!now) return null;
  const reach = new Map<string, number>();
  for (const m of truss.members)
    for (const end of [m.from, m.to]) reach.set(end, Math.max(reach.get(end) ?? 0, m.section.odIn / 2));
  const after = kept((cut: number) => afterCutting(now, cut));
  const size = frame.held.length;
  const moved = (s: Situation, cut: number): Float64Array => {
    const loads = new Float64Array(size);
    cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.strains.short).z, loads);
    cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.weighed.strains).z, loads);
    return s.changed.solve(loads);
  };
  const sags = (s: Situation, cut: number): Float64Array => {
    const loads = new Float64Array(size);
    cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.weighed.strains).z, loads);
    const grown = s.changed.solve(loads);
    return s.weighed.moves.map((u, k) => u + grown[k]!);
  };
  const movedOnce = kept((cut: number) => moved(now, cut));
  return {
    truss,
    locked,
    now,
    members: new Map(truss.members.map((m) => [m.id, m])),
    marks: new Map(coverage.marks.map((m) => [m.id, m])),
    findings: (member) => coverage.findings.filter((f) => f.of === member),
    reach,
    sagIn: sagGrowth(now.cuts, now.weighed),
    after,
    brace: kept((cut: Member) => {
      const s = after(frame.memberIndex.get(cut.id)!);
      return s && bestBrace(truss, now, s, cut);
    }),
    moves: ([first, second]) => {
      const u = movedOnce(first!);
      const s = second === undefined ? null : after(first!);
      const more = s ? moved(s, second!) : null;
      const far = frame.clusters.map((id, c) => {
        const at = (d: number): number => u[c * 6 + d]! + (more?.[c * 6 + d] ?? 0);
        return { id, moveIn: [at(0), at(1), at(2)] as Vec3 };
      });
      return far.toSorted((p, q) => Math.hypot(...q.moveIn) - Math.hypot(...p.moveIn)).slice(0, MOST_MOVED);
    },
    pairSag: (first, second) => growthBetween(now.weighed.moves, sags(after(first)!, second)),
  };
};
