import type { Issue } from '../base/issue.ts';
import type { Choice, Damage, Decision, Finding, Look } from '../job/jobSchema.ts';

/** Order is the order of counts everywhere. */
export const states = [
  'straighten',
  'splitSleeve',
  'splice',
  'replace',
  'undecided',
  'lookAgain',
  'lookedAt',
  'notLookedAt',
] as const;
export type State = (typeof states)[number];

/** One member or cluster on the damage map. */
export interface Mark {
  readonly id: string;
  readonly kind: 'member' | 'cluster';
  readonly state: State;
  /** Standing findings, oldest first; record ids. */
  readonly findings: readonly string[];
  /** Kinds of damage found, in order of the findings, once each. */
  readonly damage: readonly Damage[];
  readonly choice?: Choice;
  /** Standing look record, when there is one. */
  readonly look?: string;
  /** Looked at with the finish off and by which method: only that drops a member from the look-next list. */
  readonly finishRemoved: boolean;
}

export type Counts = Readonly<Record<State, number>>;

/** How far one face of one bay, or one ring, has been looked at. */
export interface Zone {
  readonly id: string;
  readonly members: readonly string[];
  readonly notLookedAt: readonly string[];
  readonly access?: 'covered' | 'open' | 'stripped' | 'blasted';
}

/** Two standing records that replace the same one: both stand until a person decides. */
export interface Clash {
  readonly replaced: string;
  readonly by: readonly string[];
}

/** Opposite-hand twins both with findings in a bay: ask "same side?" once. */
export interface TwinAsk {
  readonly bay: string;
  readonly left: string;
  readonly right: string;
}

/** Stage `coverage`. */
export interface Coverage {
  readonly marks: readonly Mark[];
  readonly members: Counts;
  readonly clusters: Counts;
  readonly notLookedAt: { readonly members: readonly string[]; readonly clusters: readonly string[] };
  readonly zones: readonly Zone[];
  readonly findings: readonly Finding[];
  readonly looks: readonly Look[];
  readonly decisions: readonly Decision[];
  readonly clashes: readonly Clash[];
  readonly twins: readonly TwinAsk[];
  readonly issues: readonly Issue[];
}
