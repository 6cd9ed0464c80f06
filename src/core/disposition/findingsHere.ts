import type { Decision, Finding, RecordOf } from '../job/jobSchema.ts';
import { latestOf } from '../job/stampOrder.ts';
import type { Cluster, Member, Truss } from '../truss/result.ts';
import type { Coverage, Mark } from '../walkRound/result.ts';
import { type Extent, extentOf, joined } from './extent.ts';
import { limitChecks } from './ownLimits.ts';
import type { Room, Scope } from './result.ts';
import { roomAround } from './room.ts';
import { scopeOf } from './scope.ts';
import { weldToe } from './weldToe.ts';

type Manual = readonly RecordOf<'manual'>[];

/** A finding with where it lies: in the bay, at a cluster, or not known. */
export interface Placed {
  readonly finding: Finding;
  readonly member?: Member;
  readonly extent: Extent | null;
  readonly at: 'bay' | 'cluster' | 'notKnown';
  /** The cluster it reaches, when it does. */
  readonly cluster?: string;
}

/** All that is known of one member or cluster, put together once for every way of repair. */
export interface Here {
  readonly mark: Mark;
  readonly member?: Member;
  readonly cluster?: Cluster;
  /** The member itself, or every tube at the cluster. */
  readonly tubes: readonly Member[];
  readonly placed: readonly Placed[];
  readonly scope: readonly Scope[];
  readonly room?: Room;
  /** Looked at with the finish off, by magnifier, penetrant or magnetic particle. */
  readonly lookedClosely: boolean;
  /** What sits at the cluster, or at an end that the damage reaches. */
  readonly fitting?: string;
  /** Findings inside the user's own limit: they may stay. */
  readonly within: ReadonlySet<string>;
  readonly decision?: Decision;
}

const closeMethods: ReadonlySet<string> = new Set(['magnifier', 'penetrant', 'magneticParticle']);
const atWeld: ReadonlySet<string> = new Set(['weldToe', 'bead', 'gusset', 'fitting']);

/**
 * Where a finding on a member lies: at a cluster when its edge reaches the cluster's weld toe, or when it is a crack in a
 * weld, gusset or fitting; a bow without a place is the bay's.
 * Source: common practice, no source; AC 43.13-1B 4-91c and 4-91d tell the two apart without a distance.
 */
export const placeFinding = (truss: Truss, member: Member, finding: Finding, manual: Manual): Placed => {
  const extent = extentOf(member, finding);
  const toe = (cluster: string): number => weldToe(truss, member, cluster, manual).value;
  const near = (at: Extent): string =>
    (at.fromIn + at.toIn) / 2 <= member.lengthIn / 2 ? member.from : member.to;
  const base = { finding, member, extent };
  if (finding.damage === 'crack' && finding.where !== undefined && atWeld.has(finding.where))
    return { ...base, at: 'cluster', ...(extent && { cluster: near(extent) }) };
  if (!extent) return { ...base, at: finding.damage === 'bow' ? 'bay' : 'notKnown' };
  if (extent.fromIn <= toe(member.from)) return { ...base, at: 'cluster', cluster: member.from };
  if (extent.toIn >= member.lengthIn - toe(member.to)) return { ...base, at: 'cluster', cluster: member.to };
  return { ...base, at: 'bay' };
};

const withinOwn = (
  member: Member | undefined,
  placed: readonly Placed[],
  manual: Manual,
): ReadonlySet<string> => {
  const checks = member
    ? limitChecks(
        member,
        placed.map((p) => p.finding),
        manual,
      )
    : [];
  return new Set(checks.filter((c) => c.verdict === 'inside').map((c) => c.finding));
};

/** Every marked member and cluster that has a finding or a decision, in the order of the marks. */
export const findingsHere = (truss: Truss, coverage: Coverage, manual: Manual): readonly Here[] => {
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const placed = coverage.findings.map((finding): Placed => {
    const member = members.get(finding.of);
    return member
      ? placeFinding(truss, member, finding, manual)
      : { finding, extent: null, at: 'cluster', cluster: finding.of };
  });
  const closely = (mark: Mark): boolean => {
    const look = coverage.looks.find((l) => l.id === mark.look);
    return mark.finishRemoved && look !== undefined && closeMethods.has(look.method);
  };
  return coverage.marks
    .filter((mark) => mark.findings.length > 0 || mark.choice)
    .map((mark): Here => {
      const member = members.get(mark.id);
      const cluster = clusters.get(mark.id);
      const mine = placed.filter((p) =>
        cluster ? p.finding.of === mark.id || p.cluster === mark.id : p.finding.of === mark.id,
      );
      const reached = cluster ? [cluster] : mine.flatMap((p) => clusters.get(p.cluster ?? '') ?? []);
      const tubes = member ? [member] : truss.members.filter((m) => m.from === mark.id || m.to === mark.id);
      const extents = mine.flatMap((p) => p.extent ?? []);
      const fitting = reached.find((c) => c.fitting)?.fitting;
      const decision = latestOf(coverage.decisions.filter((d) => d.of === mark.id));
      return {
        mark,
        tubes,
        placed: mine,
        scope: scopeOf(mark.id, tubes, reached[0], manual),
        lookedClosely: closely(mark),
        within: withinOwn(member, mine, manual),
        ...(member && { member }),
        ...(cluster && { cluster }),
        ...(member &&
          !member.guessed &&
          extents.length > 0 && { room: roomAround(truss, member, joined(extents), manual) }),
        ...(fitting && { fitting }),
        ...(decision && { decision }),
      };
    });
};
