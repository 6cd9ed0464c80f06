import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import type { Finding } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';
import type { Method } from '../splice/result.ts';
import type { Counts } from '../walkRound/result.ts';

/** Whose damage a line is for. `both`: findings of this accident and others on one tube. `job`: belongs to no one tube. */
export const origins = ['thisAccident', 'older', 'unknown', 'both', 'job'] as const;
export type Origin = (typeof origins)[number];
export type FindingOrigin = Finding['origin'];

/** One length to be cut off a bar. */
export interface StockPiece {
  /** `U3R-U4R section`. */
  readonly id: string;
  readonly member: string;
  readonly part: string;
  /** Net length on the axis, what the angled ends add, what the saw takes. */
  readonly netIn: Figure;
  readonly scarfIn: Figure;
  readonly kerfIn: Figure;
  /** Sum of the three. */
  readonly takesIn: Figure;
}

/** One bought length and the pieces cut from it, longest first. */
export interface Bar {
  readonly pieces: readonly string[];
  readonly leftIn: number;
}

/** Pieces of one tube nested on stock lengths. */
export interface StockLine {
  readonly tube: Tube;
  readonly material: string;
  readonly pieces: readonly StockPiece[];
  readonly stockIn: Figure;
  readonly bars: readonly Bar[];
  /** Fewest bars that can be: proved bound. */
  readonly atLeast: number;
  /** Bars = bound: no plan needs fewer. Else the gap is bars − atLeast. */
  readonly proved: boolean;
  readonly boughtIn: Figure;
  readonly wasteIn: Figure;
  /** Pieces longer than a stock length: in no bar. */
  readonly tooLong: readonly string[];
}

/** What one repair takes besides tube. Absent figure: not designed, so not told. */
export interface RepairTakes {
  readonly member: string;
  readonly method: Method | null;
  readonly origin: Origin;
  readonly rosettes: Figure | null;
  readonly weldIn: Figure | null;
  readonly rodLb: Figure | null;
  readonly primerIn2: Figure | null;
}

/** One row of the weight ledger. */
export interface LedgerRow {
  readonly member: string;
  readonly addedLb: Figure;
  /** Station of the middle of what was added. */
  readonly armIn: Figure;
  readonly momentLbIn: Figure;
}

/** A published threshold and the sum held against it. Never a statement that weighing is not needed. */
export interface ThresholdHeld {
  /** Row of `estimate/limits.ts`. */
  readonly rule: string;
  readonly says: 'inside' | 'outside' | 'cannotSay';
  readonly value: Figure | null;
  readonly limit: Figure | null;
  /** Manual topics that are missing to say. */
  readonly missing: readonly string[];
}

export interface Ledger {
  readonly rows: readonly LedgerRow[];
  readonly addedLb: Figure;
  readonly momentLbIn: Figure;
  /** Shift of the empty-weight centre of gravity; null without empty weight and its station. */
  readonly shiftIn: Figure | null;
  readonly thresholds: readonly ThresholdHeld[];
  /** Members whose weight change is not known yet. */
  readonly notKnown: readonly string[];
}

/** Stage `takeoff`. */
export interface Takeoff {
  readonly stock: readonly StockLine[];
  readonly repairs: readonly RepairTakes[];
  readonly ledger: Ledger;
  readonly issues: readonly Issue[];
}

/** Hours as a triangle: least, most likely, most. */
export interface ThreePoint {
  readonly best: number;
  readonly likely: number;
  readonly worst: number;
}

/** One row of the rate table as it counts now. */
export interface Rate {
  readonly operation: string;
  /** For each piece, tube or step. */
  readonly each: ThreePoint;
  /** Once a bay, however many tubes of the bay need it. */
  readonly setUp: ThreePoint;
  /** Record that overrides our invented row. */
  readonly record?: string;
}

export const lineGroups = [
  'access',
  'inspection',
  'structure',
  'jig',
  'geometry',
  'protection',
  'reassembly',
  'paper',
  'weighing',
] as const;
export type LineGroup = (typeof lineGroups)[number];

/** One line of the estimate. */
export interface EstimateLine {
  /** `weld:U3R-U4R`, `weld:bay 3` for a shared set-up. */
  readonly id: string;
  readonly group: LineGroup;
  readonly operation: string;
  readonly kind: 'each' | 'setUp';
  readonly of?: string;
  readonly bay?: string;
  readonly origin: Origin;
  readonly count: number;
  readonly hours: ThreePoint;
  readonly basis: 'invented' | 'rate';
  readonly record?: string;
}

/** A sum of hours, worked twice. */
export interface Total {
  /** By drawing the lines with a fixed seed: 10 %, 50 % and 90 % of the sums lie under these. */
  readonly bestH: Figure;
  readonly likelyH: Figure;
  readonly worstH: Figure;
  /** Closed form: mean, and standard deviation when each rate holds for all its lines. */
  readonly meanH: Figure;
  readonly stdH: number;
  /** The same if every line went its own way (narrower), and if everything went wrong together (no sum is wider). */
  readonly stdApartH: number;
  readonly stdTogetherH: number;
  readonly draws: number;
}

/** Members nobody has looked at, by how high they stand in "look here next". */
export const bands = ['first', 'second', 'rest'] as const;
export type Band = (typeof bands)[number];

export interface HiddenBand {
  readonly band: Band;
  readonly members: readonly string[];
  /** The user's chance that one is damaged; null: none given, so counted and not priced. */
  readonly chance: Figure | null;
  readonly record?: string;
  /** Expected hours of the band; null when not priced. */
  readonly meanH: number | null;
  readonly stdH: number | null;
}

/** What one hour of looking takes off the uncertainty. */
export interface NextHour {
  readonly band: Band;
  /** Members to look at in that hour, first of the list first. */
  readonly members: readonly string[];
  readonly stdBeforeH: number;
  /** Expected standard deviation of the total afterwards. */
  readonly stdAfterH: number;
  /** Damaged tubes to expect among them. */
  readonly finds: number;
}

/** Stage `estimate`. */
export interface Estimate {
  readonly rates: readonly Rate[];
  readonly lines: readonly EstimateLine[];
  /** The lines alone. */
  readonly known: Total;
  /** Lines and the priced part of what nobody has looked at. */
  readonly withHidden: Total;
  readonly hidden: readonly HiddenBand[];
  readonly nextHour: NextHour | null;
  /** Members, in the fixed order of counts. */
  readonly counts: Counts;
  readonly byOrigin: Readonly<Record<Origin, { readonly lines: number; readonly meanH: number }>>;
  /** Money, when the user has given a rate for an hour. */
  readonly money?: {
    readonly perHour: number;
    readonly currency: string;
    readonly record: string;
    readonly best: number;
    readonly likely: number;
    readonly worst: number;
  };
  /** Said in words: what the sum leaves out. */
  readonly excluded: readonly string[];
  readonly issues: readonly Issue[];
}
