import type { Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';

/** Where the readings of one hold put a cluster, and how surely. */
export interface AdjustedCluster {
  readonly id: string;
  /** Adjusted − drawing. */
  readonly moveIn: Vec3;
  /** 3 × 3 covariance of the move, row-major, in². */
  readonly covariance: readonly number[];
  /** Fixed by the readings in all three directions, in some, or in none. */
  readonly fixedBy: 'all' | 'some' | 'none';
  /** Directions the readings leave free. */
  readonly free: readonly Vec3[];
  readonly moved: 'moved' | 'notShown' | 'cannotTell';
  readonly datum: boolean;
  /** Of a datum cluster: how hard the readings pull it off its drawing place, √T against √16.27 (moved at 0.1 %). */
  readonly pull?: number;
}

/** What a reading says beside the others of its hold. */
export interface AdjustedReading {
  readonly id: string;
  readonly residualIn: number;
  /** Share of an error in this reading that would show, 0…1. */
  readonly redundancy: number;
  readonly normalised: number;
  /** Smallest misreading that would be found (power 80 %, α 0.1 %); null when none would. */
  readonly leastSeenIn: number | null;
}

/** What best explains readings that do not fit together. */
export type Cause =
  | {
      readonly kind: 'misread';
      readonly reading: string;
      readonly shouldBeIn: number;
      readonly normalised: number;
    }
  | { readonly kind: 'datumMoved'; readonly cluster: string }
  | {
      readonly kind: 'cannotTell';
      /** Target ids that would tell the two best explanations apart, best first. */
      readonly readAlso: readonly string[];
      /** Reading ids and cluster ids between which the readings cannot decide. */
      readonly between?: readonly string[];
    };

/** One adjustment: all the readings of one hold. */
export interface Adjustment {
  readonly hold: Hold;
  readonly readings: readonly AdjustedReading[];
  /** Clusters that a reading touches. */
  readonly clusters: readonly AdjustedCluster[];
  readonly degreesOfFreedom: number;
  readonly varianceFactor: number | null;
  /** Does the whole fit, at 0.1 %, before any reading was set aside? */
  readonly fits: 'fits' | 'doesNotFit' | 'cannotTell';
  /** Most likely cause when it does not. */
  readonly cause?: Cause;
  /** Every cause found, one after the other; the first is `cause`. */
  readonly causes?: readonly Cause[];
  /** Misread readings that the shape above does not lean on. */
  readonly setAside?: readonly string[];
  /** Clusters no reading of this hold touches: nothing is known of them. */
  readonly notMeasured?: readonly string[];
  /** Clusters that the readings fit nearly as well (Ω within 9) mirrored in the plane of their neighbours, and where. */
  readonly folds?: readonly { readonly cluster: string; readonly moveIn: Vec3; readonly omegaMore: number }[];
}
