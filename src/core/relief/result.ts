import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Tier } from './tier.ts';
import type { CutWhy, ReleaseWhy, SawWhy, TargetNote } from './why.ts';

export type CutVerdict = 'helps' | 'noHelp' | 'needsFixture' | 'refused';

/** What stands in the target before or after: range between the two readings of the bows. */
export interface Left {
  readonly axialLbf: { readonly low: number; readonly high: number };
  readonly momentInLbf: { readonly low: number; readonly high: number };
  /** Locked-in strain energy of the whole truss, in-lbf. */
  readonly energyInLbf: { readonly low: number; readonly high: number };
}

export interface WhereToSaw {
  readonly member: string;
  /** Length to be scrapped, from the member's `from` cluster; null when there is no place that keeps clear. */
  readonly fromIn: number | null;
  readonly toIn: number | null;
  /** Keep at least this far from both finished cuts: one scarf, 1.732 × outside diameter. */
  readonly clearIn: number;
  readonly why: SawWhy;
}

export interface CutCandidate {
  /** Member ids to saw, in order. */
  readonly cuts: readonly string[];
  readonly verdict: CutVerdict;
  /** Source relief (lower reading) or η is at least 0.1, whatever the gate says. */
  readonly helps: boolean;
  /** Share of what other tubes' bends lock into the target that goes, worked both ways; null when none is measured. */
  readonly sourceRelief: { readonly low: number; readonly high: number } | null;
  /** On one reading at least the cut puts more of it into the target, not less. */
  readonly makesWorse: boolean;
  /** Share of a length error in the target itself that goes. */
  readonly eta: number;
  readonly left: Left;
  /** Energy let out at the saw, in-lbf. */
  readonly releasedInLbf: { readonly low: number; readonly high: number };
  /** The kerf opens (+) or closes (−) by this much along the tube, inches; range. */
  readonly opensIn: { readonly low: number; readonly high: number };
  /** Largest growth of own-weight sag at a station point, inches; null for a refused cut. */
  readonly sagIn: number | null;
  /** Clusters that move most when it is cut. */
  readonly moves: readonly { readonly id: string; readonly moveIn: Vec3 }[];
  /** Moves of every cluster when it is cut, springing open and own weight; only for targets asked for. */
  readonly shape?: readonly { readonly id: string; readonly moveIn: Vec3 }[];
  /** Stability figure of the truss without the cut members. */
  readonly mu: number;
  /** What decided its place in the list. */
  readonly decidedBy: 'gate' | 'source' | 'tier' | 'eta' | 'hops' | 'sag' | 'id';
  readonly tier: Tier;
  readonly why: CutWhy;
  readonly whereToSaw: WhereToSaw;
  /** For a pair: where to saw the second tube. */
  readonly thenSaw?: WhereToSaw;
  /** Brace between two station points, of the cut tube's own section, that keeps the sag under the limit. */
  readonly brace?: { readonly from: string; readonly to: string; readonly sagIn: number };
  /** For a sound tube: the repair its own cut would make. */
  readonly ownRepair?: 'splice' | 'replaceTube';
  /** Candidate is itself a measured source and not due to be cut out: straighten it first? */
  readonly straightenFirst: boolean;
}

/** A release that needs no saw. */
export interface Release {
  readonly kind: 'bolted' | 'weight' | 'support';
  readonly id: string;
  readonly why: ReleaseWhy;
  /** Axial force it puts into the target, or holds against, lbf. */
  readonly forceLbf?: number;
}

export interface ReliefTarget {
  readonly member: string;
  readonly withoutSaw: readonly Release[];
  /** Best first. */
  readonly candidates: readonly CutCandidate[];
  /** Never above the others. The best dozen of those near or of help; the others are counted. */
  readonly soundTubes: readonly CutCandidate[];
  readonly soundNotListed: number;
  /** Share of a length error in the target that turns into force. */
  readonly rN: number;
  /** Said once, not for each cut. */
  readonly notes: readonly TargetNote[];
  /** Before any cut. */
  readonly now: Left;
  /** Members near the target with damage found and no size given. */
  readonly measureFirst: readonly string[];
}

/** Stage `relief`. */
export interface Relief {
  readonly kind: 'ranked' | 'notRanked' | 'movesFreely';
  /** Why not ranked: nobody has said how the truss is held. */
  readonly targets: readonly ReliefTarget[];
  readonly issues: readonly Issue[];
}
