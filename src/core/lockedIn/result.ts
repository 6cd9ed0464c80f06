import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import type { LeftOver } from './leftOver.ts';
import type { Misfit } from './misfit.ts';

/** What the measured bends lock into one member, between the two readings of a bow (shortening only … full end slopes). */
export interface LockedMember {
  readonly id: string;
  /** Best estimate: shortening only. Range over both readings. */
  readonly axialLbf: Figure;
  /** Largest end moment of the two readings, at most the plastic moment. */
  readonly endMomentInLbf: Figure;
  readonly stressPsi: Figure;
  /** Ran into yield or collapse: elastic estimate, capped. */
  readonly capped: boolean;
  /** Bent members that strain it, largest share first. */
  readonly because: readonly string[];
}

/** A member nobody has seen a bend in, that the sums put near yield or near column buckling. */
export interface Suspect {
  readonly id: string;
  readonly near: 'yield' | 'buckling';
  readonly share: Figure;
  /** Findings that put it there, largest share first; member ids. */
  readonly because: readonly string[];
}

/** Stage `lockedIn`. */
export interface LockedIn {
  readonly kind: 'worked' | 'nothingMeasured' | 'movesFreely';
  readonly members: readonly LockedMember[];
  readonly suspects: readonly Suspect[];
  /** Members whose bow was used, and those whose size is still missing. */
  readonly sources: readonly string[];
  readonly unmeasured: readonly string[];
  /** What each measured bend would be if it were free; relief works from these. */
  readonly misfits: readonly Misfit[];
  /** Left-over strength of each tube with a measured bend, as information. */
  readonly leftOver: readonly LeftOver[];
  readonly issues: readonly Issue[];
}
