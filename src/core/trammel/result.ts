import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';
import type { Adjustment } from './adjustment.ts';

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
  /** What it is compared with when that is not the target: the target and what the weld will shrink. */
  readonly aimIn?: Figure;
  /** Found − target (or aim): positive is long. */
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

/** One line of the measuring plan. */
export interface PlannedReading {
  readonly target: string;
  readonly from: string;
  readonly to: string;
  readonly lengthIn: number;
  /** An end stands where it was guessed: the length is for planning only, and is not shown. */
  readonly guessed?: true;
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
  /** Place in the order of the work when there are several: 1 first. Only with the frame's flexibility. */
  readonly order?: number;
  /** The earlier one of the list after which this one is within its uncertainty: measure before touching it. */
  readonly settledBy?: string;
  /** Spreader or puller left in until tacked, set to the target. Only with the frame's flexibility. */
  readonly hold?: {
    /** What goes back when it is taken out, every tube whole again. */
    readonly comesBackIn: Figure;
    /** What then loads the tubes that were open: + tension. */
    readonly tacks: readonly { readonly member: string; readonly axialLbf: Figure }[];
  };
  /** Pushed or pulled and let go. Only with the frame's flexibility. */
  readonly set?: {
    /** What springs back: observed at the last push here, else the spring up to first yield. */
    readonly springIn: Figure;
    /** Distance to push or pull to, so that the target stays. */
    readonly pushToIn: Figure;
    /** Force at which the first tube would yield; under it nothing stays. */
    readonly yields?: { readonly member: string; readonly forceLbf: Figure };
  };
}

/** One reading that a hold asks for. */
export interface AskedReading {
  readonly target: string;
  readonly from: string;
  readonly to: string;
  readonly why: 'plan' | 'canMove' | 'wasSpread';
  /** Distance to hold at this hold, the weld's shrinkage in it. */
  readonly aimIn: Figure;
  readonly toleranceIn?: Figure;
  /** Readings taken at this hold; 0: not read. */
  readonly taken: number;
  readonly differenceIn?: Figure;
  readonly verdict?: Verdict;
}

/** How one joint fitted before it was tacked, and what its record lacks. */
export interface FitUp {
  readonly member: string;
  readonly record?: string;
  readonly lacks: readonly ('gap' | 'overlap' | 'marks' | 'secondPerson' | 'secondPersonIsDoer')[];
}

/** Whether a hold can be marked done: nothing asked for is outside, unread, or without its fit-up. */
export interface Gate {
  readonly opens: boolean;
  readonly outside: readonly string[];
  readonly notRead: readonly string[];
  /** Cannot tell after one reading: repeat it once, or use a better instrument. Does not close the gate. */
  readonly repeat: readonly string[];
  readonly fitUp: readonly string[];
}

/** A point of the work at which it stops to be measured. */
export interface HoldPoint {
  readonly hold: Hold;
  readonly covers: 'wholeTruss' | 'whatCanMove';
  readonly asks: readonly AskedReading[];
  /** Joints to be seen before tacking. */
  readonly fitUps: readonly FitUp[];
  readonly gate: Gate;
  readonly done?: { readonly record: string; readonly by: string; readonly reason?: string };
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
  /** The hold points, in the order of the work. */
  readonly holds?: readonly HoldPoint[];
  readonly issues: readonly Issue[];
}
