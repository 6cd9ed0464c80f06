import { length, type Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';
import type { LockedIn } from '../lockedIn/result.ts';
import type { Frame } from '../statics/frame.ts';
import type { Statics } from '../statics/result.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { Coverage, Mark } from '../walkRound/result.ts';
import { type Brace, bestBrace } from './brace.ts';
import { cutLoads, letGo } from './release.ts';
import type { CutCandidate } from './result.ts';
import { growthBetween, sagGrowth } from './sag.ts';
import { afterCutting, type Situation, situationOf } from './situation.ts';

/** What all targets of one job share, each thing worked out once, when it is first asked for. */
export interface Shop {
  readonly truss: Truss;
  readonly locked: LockedIn;
  readonly now: Situation;
  /** r_N of the pinned idealisation, by member, where it was worked. */
  readonly pinnedRN: ReadonlyMap<string, number | null>;
  readonly members: ReadonlyMap<string, Member>;
  readonly marks: ReadonlyMap<string, Mark>;
  readonly findings: (member: string) => readonly Finding[];
  /** Half the largest outside diameter at a cluster, inches. */
  readonly reach: ReadonlyMap<string, number>;
  /** Growth of own-weight sag for each frame member's cut, inches. */
  readonly sagIn: Float64Array;
  readonly after: (cut: number) => Situation | null;
  readonly brace: (cut: string) => Brace | null;
  /** Moves of every cluster when one tube is cut: springing open and own weight. */
  readonly moves: (cuts: readonly string[]) => Moved;
  readonly pairMoves: (first: number, second: number) => Moved;
  /** Works the moves of many candidates in one solve. */
  readonly prepareMoves: (candidates: readonly CutCandidate[]) => void;
  /** Growth of sag for a pair, inches. */
  readonly pairSag: (first: number, second: number) => number;
}

type Moved = CutCandidate['moves'];

const MOST_MOVED = 3;

/** The few that move most. */
export const furthest = (moved: Moved): Moved =>
  [...moved].sort((p, q) => length(q.moveIn) - length(p.moveIn)).slice(0, MOST_MOVED);

const kept = <K, V>(work: (key: K) => V): ((key: K) => V) => {
  const done = new Map<K, V>();
  return (key) => {
    if (!done.has(key)) done.set(key, work(key));
    return done.get(key)!;
  };
};

export const shop = (
  truss: Truss,
  frame: Frame,
  coverage: Coverage,
  locked: LockedIn,
  solved: Statics,
): Shop | null => {
  const now = situationOf(truss, frame, locked.misfits);
  if (!now) return null;
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const reach = new Map<string, number>();
  for (const m of truss.members)
    for (const end of [m.from, m.to]) reach.set(end, Math.max(reach.get(end) ?? 0, m.section.odIn / 2));
  const after = kept((cut: number) => afterCutting(now, cut));
  const size = frame.held.length;
  /** Moves of several single cuts in one solve. */
  const moved = (s: Situation, cuts: readonly number[]): Float64Array => {
    const loads = new Float64Array(size * cuts.length);
    cuts.forEach((cut, k) => {
      cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.strains.short).z, loads, k * size);
      cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.weighed.strains).z, loads, k * size);
    });
    return s.changed.solve(loads, cuts.length);
  };
  const sags = (s: Situation, cut: number): Float64Array => {
    const loads = new Float64Array(size);
    cutLoads(s.cuts, cut, letGo(s.cuts, cut, s.weighed.strains).z, loads);
    const grown = s.changed.solve(loads);
    return s.weighed.moves.map((u, k) => u + grown[k]!);
  };
  const movesIn = (u: Float64Array): Moved =>
    frame.clusters.map((id, c) => ({ id, moveIn: [u[c * 6]!, u[c * 6 + 1]!, u[c * 6 + 2]!] as Vec3 }));
  const movesOf = new Map<string, Moved>();
  const indices = (ids: readonly string[]): number[] => ids.map((id) => frame.memberIndex.get(id)!);
  const prepareMoves = (candidates: readonly CutCandidate[]): void => {
    const ids = candidates.flatMap((c) =>
      c.verdict === 'refused' || c.cuts.length > 1 || movesOf.has(c.cuts[0]!) ? [] : [c.cuts[0]!],
    );
    const u = moved(now, indices(ids));
    ids.forEach((id, k) => {
      movesOf.set(id, movesIn(u.subarray(k * size, (k + 1) * size)));
    });
  };
  return {
    truss,
    locked,
    now,
    pinnedRN: new Map(solved.kind === 'stands' ? solved.redundancy.map((r) => [r.id, r.pinnedRN]) : []),
    members,
    marks: new Map(coverage.marks.map((m) => [m.id, m])),
    findings: (member) => coverage.findings.filter((f) => f.of === member),
    reach,
    sagIn: sagGrowth(now.cuts, now.weighed),
    after,
    brace: kept((id: string) => {
      const s = after(frame.memberIndex.get(id)!);
      return s && bestBrace(truss, now, s, members.get(id)!);
    }),
    prepareMoves,
    moves: ([id]) => movesOf.get(id!)!,
    pairMoves: (first, second) => {
      const u = moved(now, [first]);
      const more = moved(after(first)!, [second]);
      return movesIn(u.map((v, k) => v + more[k]!));
    },
    pairSag: (first, second) => growthBetween(now.weighed.moves, sags(after(first)!, second)),
  };
};
