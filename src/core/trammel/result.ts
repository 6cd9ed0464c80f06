import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';

/** What a distance is in the truss. */
export type DistanceKind = 'longeron' | 'vertical' | 'crossMember' | 'diagonal' | 'ringDiagonal' | 'long';

export type Verdict = 'inside' | 'outside' | 'cannotTell' | 'noLimit';

/** A target compared with what was measured at one hold. */
export interface Compared {
  readonly hold: Hold;
  /** Reading records pooled here. */
  readonly readings: readonly string[];
  /** Axis distance the readings say. */
  readonly foundIn: Figure;
  /** Found − target: positive is long. */
  readonly differenceIn: Figure;
  readonly verdict: Verdict;
  /** Spread between repeats, when there are two or more. */
  readonly scatterIn?: number;
}

/** The distance to hold between two station points. */
export interface Target {
  /** `U3L–L4L`: clusters forward first, as in a member id but with an en dash. */
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly kind: DistanceKind;
  /** Bays and faces it belongs to: `4 left`, `4 ring`. */
  readonly faces: readonly string[];
  /** Bay (forward station label); for a ring distance the station's own label. */
  readonly bay: string;
  readonly targetIn: Figure;
  readonly toleranceIn?: Figure;
  readonly compared: readonly Compared[];
}

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
}

export interface AdjustedReading {
  readonly id: string;
  readonly residualIn: number;
  /** Share of an error in this reading that would show, 0…1. */
  readonly redundancy: number;
  readonly normalised: number;
  /** Smallest misreading that would be found (power 80 %, α 0.1 %); null when none would. */
  readonly leastSeenIn: number | null;
}

/** One adjustment: all the readings of one hold. */
export interface Adjustment {
  readonly hold: Hold;
  readonly readings: readonly AdjustedReading[];
  readonly clusters: readonly AdjustedCluster[];
  readonly degreesOfFreedom: number;
  readonly varianceFactor: number | null;
  /** Does the whole fit, at 0.1 %? */
  readonly fits: 'fits' | 'doesNotFit' | 'cannotTell';
  /** Most likely cause when it does not. */
  readonly cause?:
    | {
        readonly kind: 'misread';
        readonly reading: string;
        readonly shouldBeIn: number;
        readonly normalised: number;
      }
    | { readonly kind: 'datumMoved'; readonly cluster: string }
    | { readonly kind: 'cannotTell'; readonly readAlso: readonly string[] };
}

/** Stage `trammel`. */
export interface Trammel {
  readonly targets: readonly Target[];
  readonly byHold: Readonly<Partial<Record<Hold, Adjustment>>>;
  readonly issues: readonly Issue[];
}
