import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';

/** Where a member's axis lies, from straight-edge readings. */
export interface AxisFit {
  /** Greatest departure from the line through the ends of the readings. */
  readonly bowIn: Figure;
  /** Length of tube the readings span. */
  readonly chordIn: number;
  /** Place of the greatest bend, from the member's `from` cluster: push here first. */
  readonly atIn: Figure;
  /** Clock position the crown points to: the ram’s side. Within the one plane read when not all round; null: no bend. */
  readonly clock: number | null;
  readonly shape: 'smooth' | 'kinked' | 'cannotTell';
  /** Angle the tube turns through over the readings. */
  readonly turnRad: Figure;
  /** Root mean square of what the fit leaves. */
  readonly leftOverIn: number;
  /** Read from two sides a quarter turn apart or more (or as good as that). */
  readonly allRound: boolean;
  /** The fitted axis, for drawing: distance from `from`, departure in the plane of the bend. */
  readonly line: readonly { readonly atIn: number; readonly bowIn: number }[];
  /** Progress records the readings are from. */
  readonly records: readonly string[];
}

/** What one three-point press of a tube will take and leave. */
export interface Press {
  /** Block to block. */
  readonly spanIn: number;
  /** Ram or clamp in the middle; each block carries half. */
  readonly clampLbf: Figure;
  readonly blockLbf: Figure;
  /** Travel at the ram from where the tube lay. Low to high: the yield strength's scatter. Start with the low end. */
  readonly pressIn: Figure;
  readonly springBackIn: Figure;
  readonly setIn: Figure;
  /** Travel that leaves nothing yet. */
  readonly firstYieldIn: Figure;
  /** Most set this span gives before the tube hinges under the ram. */
  readonly mostSetIn: Figure;
  /** Pad length from which even flat blocks would not start to flatten the tube; shorter ones must be grooved. */
  readonly flatPadIn: Figure;
  /** Mean pressure of the clamp on grooved pads 1.5 D long. */
  readonly bearingPsi: Figure;
  /** `grooved-blocks`, `past-hinge`, `wrinkle-strain` … worded in `present/words.ts`. */
  readonly warnings: readonly string[];
}

/** One place of the blocks. */
export interface SetUp {
  /** 1, 2 … in order of work. */
  readonly no: number;
  /** Ram, from the member's `from` cluster. */
  readonly atIn: number;
  readonly blocksIn: readonly [number, number];
  /** Side the ram stands on (the crown of the bend); null when the way it is bent is not known. */
  readonly ramClock: number | null;
  readonly press: Press;
  /** What this set-up takes off the bow as measured over the whole chord. */
  readonly takesOffIn: Figure;
}

/** One logged push. */
export interface Push {
  readonly record: string;
  readonly atIn: number;
  readonly spanIn: number;
  readonly pressedIn: number;
  readonly leftIn: number;
  readonly forceLbf?: number;
  /** Pushed back against the push before. */
  readonly reversal: boolean;
  /** Yield strength that would have given this response; null: elastic, or the reading says nothing. */
  readonly yieldPsi: Figure | null;
  readonly says: 'informs' | 'elastic' | 'doesNotFit';
}

/** Largest and smallest diameter at one place, and how to round it out. */
export interface Roundness {
  readonly atIn: number | null;
  readonly largestIn: number;
  readonly smallestIn: number;
  /** 100 (Dmax − Dmin)/D. */
  readonly ovality: Figure;
  readonly limit: Figure | null;
  readonly verdict: 'inside' | 'outside' | 'cannotTell' | 'noLimit';
  /** Bore of the formed blocks. */
  readonly boreIn: Figure;
  /** How far past round to squeeze the large diameter, because it springs back. */
  readonly overSqueezeIn: Figure;
  readonly record: string;
}

/** A stop: cut out, do not go on straightening. */
export interface Stop {
  readonly why: 'kink' | 'crack' | 'wall' | 'dent' | 'break' | 'hole';
  /** Finding or progress record. */
  readonly record: string;
}

/** What must hold before "straight" is said, each by itself. */
export interface Check {
  readonly of: 'straightEdge' | 'roundness' | 'bend' | 'pressPoints' | 'endWelds';
  readonly verdict: 'inside' | 'outside' | 'cannotTell' | 'noLimit' | 'notDone' | 'clear' | 'crack';
  /** Progress record; none: not done since the last push. */
  readonly record?: string;
}

/** One member on the bench or in the frame. */
export interface StraightenRow {
  readonly member: string;
  /** As found, or after the latest push when it was read again. */
  readonly fit: AxisFit | null;
  /** Why there is no fit. */
  readonly noFit?: 'no-readings' | 'too-few-stations';
  readonly setups: readonly SetUp[];
  /** The next push, from the response measured; absent before the first push or when nothing is left to do. */
  readonly next?: SetUp;
  readonly pushes: readonly Push[];
  readonly reversals: number;
  /** `reversed`, `wrong-plane` … worded in `present/words.ts`. */
  readonly cautions: readonly string[];
  /** Effective yield strength after the measured pushes. */
  readonly yieldPsi: Figure;
  readonly roundness: readonly Roundness[];
  readonly stops: readonly Stop[];
  readonly checks: readonly Check[];
  /** `straight`: every check since the last push is within the user's limits and clear of cracks. */
  readonly says:
    | 'stop'
    | 'straight'
    | 'straightenedNoLimit'
    | 'outside'
    | 'cannotTell'
    | 'notChecked'
    | 'notStarted';
  /** The `done` record that accepts the result as it stands, with its name. */
  readonly accepted?: { readonly record: string; readonly by: string };
}

/** Stage `straighten`: every member with a bow, kink or oval, or decided to be straightened or rounded out. */
export interface Straighten {
  readonly members: readonly StraightenRow[];
  readonly issues: readonly Issue[];
}
