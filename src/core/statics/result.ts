import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';

/** End forces of one member in one case. Tension positive. Moments are those the cluster puts on the end, aircraft axes. */
export interface MemberForce {
  readonly id: string;
  readonly axialLbf: number;
  readonly torqueInLbf: number;
  readonly momentFromInLbf: Vec3;
  readonly momentToInLbf: Vec3;
  /** Largest stress on the tube from axial force and bending together. */
  readonly stressPsi: number;
}

export interface ClusterMove {
  readonly id: string;
  readonly moveIn: Vec3;
  readonly turnRad: Vec3;
}

export interface Reaction {
  readonly cluster: string;
  readonly forceLbf: Vec3;
  readonly momentInLbf: Vec3;
}

export interface SolvedCase {
  readonly id: string;
  readonly setup: string;
  readonly members: readonly MemberForce[];
  readonly clusters: readonly ClusterMove[];
  readonly reactions: readonly Reaction[];
  /** ‖K u − f‖ over ‖f‖ after refinement. */
  readonly residual: number;
}

/** Redundancy of one member: what share of a length error in it turns into force (1 = clamped, 0 = nothing else holds it). */
export interface MemberRedundancy {
  readonly id: string;
  readonly rN: number;
  /** Stability figure when it is cut; 0 means the cut makes a mechanism. */
  readonly mu: number;
  /** r_N were every joint pinned: 0 means that only welds hold the truss without it; null where it was not worked. */
  readonly pinnedRN: number | null;
}

/** One free movement of the pinned idealisation: the clusters that move, the largest move 1. */
export type MechanismShape = readonly { readonly id: string; readonly moveIn: Vec3 }[];

/** One state of self-stress: forces in balance without any load, the largest 1, tension positive. */
export interface SelfStress {
  readonly members: readonly { readonly id: string; readonly share: number }[];
}

/** Stage `statics`. A mechanism is an answer. */
export type Statics =
  | {
      readonly kind: 'stands';
      readonly heldAs: string;
      readonly cases: readonly SolvedCase[];
      /** Degree of statical indeterminacy of the welded frame: 6 b − free freedoms. */
      readonly indeterminacy: number;
      /** Pinned idealisation: states of self-stress and internal mechanisms; null when it cannot be decided. */
      readonly pinned: { readonly selfStress: number; readonly mechanisms: number } | null;
      /**
       * Pinned idealisation, worked up to 300 members: the first few free movements (the largest move 1) and states of
       * self-stress (the largest force 1, tension positive). `pinned` says how many there are in all.
       */
      readonly mechanismShapes: readonly MechanismShape[];
      readonly selfStressStates: readonly SelfStress[];
      readonly redundancy: readonly MemberRedundancy[];
      readonly condition: number;
      readonly issues: readonly Issue[];
    }
  | {
      readonly kind: 'movesFreely';
      readonly heldAs: string;
      /** Clusters that can move, most first, with the direction of the free movement (largest = 1). */
      readonly clusters: readonly ClusterMove[];
      readonly issues: readonly Issue[];
    };
