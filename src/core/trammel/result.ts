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
  /** Of a datum cluster: how hard the readings pull it off its drawing place, √T against √16.27 (moved at 0.1 %). */
  readonly pull?: number;
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
}

/** One line of the measuring plan. */
export interface PlannedReading {
  readonly target: string;
  readonly from: string;
  readonly to: string;
  readonly lengthIn: number;
  /** Needed to fix the shape, or a spare that lets a misreading show. */
  readonly purpose: 'fixes' | 'spare';
  readonly redundancy: number;
  /** Smallest misreading the finished plan would find in this line; null when none. */
  readonly leastSeenIn: number | null;
  /** Read already at the latest hold. */
  readonly read: boolean;
}

/** The shortest list found that fixes the shape and lets a misreading show anywhere, in walking order. */
export interface MeasuringPlan {
  /** Forward station labels of the bays it covers. */
  readonly bays: readonly string[];
  /** Clusters taken as undamaged, and by which rule. */
  readonly datum: readonly string[];
  readonly datumBy: 'named' | 'noFinding' | 'noBend' | 'forwardStations' | 'none';
  readonly readings: readonly PlannedReading[];
  /** Clusters the candidates cannot fix, with the directions left free. */
  readonly loose: readonly { readonly cluster: string; readonly free: readonly Vec3[] }[];
  /** Planned readings in which no misreading could be seen well (redundancy under 0.2): no spare is in reach. */
  readonly unchecked: readonly string[];
  /** Struck by the user; not planned. */
  readonly struck: readonly string[];
  readonly reachIn: Figure;
  /** Largest standard deviation of a cluster's place when all are read, inches. */
  readonly worstStdIn: number | null;
}

/** A distance to spread (push apart) or draw (pull together), from the adjusted shape of the latest hold. */
export interface Spread {
  readonly target: string;
  readonly from: string;
  readonly to: string;
  /** The distance as it stands: longer or shorter than its target. */
  readonly stands: 'long' | 'short';
  readonly action: 'spread' | 'draw';
  /** Adjusted distance between axis points. */
  readonly foundIn: Figure;
  /** Target − found: + push apart, − pull together. */
  readonly amountIn: Figure;
  /** Unit vector from → to as it stands. */
  readonly line: Vec3;
  readonly verdict: Verdict;
  /** |amount| over its standard deviation; largest first is the order of the list. */
  readonly normalised: number;
  /** Force that gives this amount, elastic; only when the frame's flexibility was handed in. */
  readonly forceLbf?: Figure;
  /** What the same push does to other targets, largest first; only with the frame's flexibility. */
  readonly changes?: readonly { readonly target: string; readonly changeIn: number }[];
}

/** How one bay sits against the drawing, from the adjusted moves of its clusters; aft ring against forward ring. */
export interface BaySwing {
  readonly bay: string;
  /** Clusters of the bay that the readings do not fix; then nothing below is told. */
  readonly unknown: readonly string[];
  readonly figures?: {
    /** Aft ring lower than drawn: positive. */
    readonly sagIn: Figure;
    /** Aft ring to the right: positive. */
    readonly sweepIn: Figure;
    /** Right side of the aft ring turned up: positive. */
    readonly twistRad: Figure;
    /** Bay narrower than drawn: positive; mean of its left-right pairs. None where the bay has no such pair. */
    readonly narrowedIn?: Figure;
    /** Bay shorter than drawn: positive. */
    readonly shortenedIn: Figure;
  };
  /** Which of them are larger than 3.29 of their standard deviations. */
  readonly shown: readonly ('sag' | 'sweep' | 'twist' | 'narrowed' | 'shortened')[];
}

/** Stage `trammel`. */
export interface Trammel {
  readonly targets: readonly Target[];
  readonly byHold: Readonly<Partial<Record<Hold, Adjustment>>>;
  /** The last hold with readings; `spread` and `swing` are of it. */
  readonly latest?: Hold;
  readonly plan?: MeasuringPlan;
  readonly spread?: readonly Spread[];
  readonly swing?: readonly BaySwing[];
  readonly issues: readonly Issue[];
}
