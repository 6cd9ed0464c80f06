import type { Figure } from '../base/figure.ts';
import type { Fact, Issue } from '../base/issue.ts';
import type { Choice } from '../job/jobSchema.ts';
import type { State } from '../walkRound/result.ts';

/** What the rules loaded say to one way of repair. Nothing is ever preselected. */
export type Answer = 'applies' | 'doesNotApply' | 'cannotSay';

/** One rule held against the findings: a row of `rules.ts` (or the user's own `manual` record) and the facts it met. */
export interface Reason {
  /** Id of a row of `disposition/rules.ts`; `manual` for the user's own data, its record named in the facts. */
  readonly rule: string;
  /** What this rule alone would answer. */
  readonly says: Answer;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** A measurement, proof or datum that is still missing to decide. */
export interface Missing {
  /** `depthIn`, `place`, `crackInspection`, `material`, `manual:straighten-only` … worded in `present/words.ts`. */
  readonly name: string;
  /** Finding that lacks it, when it is one's. */
  readonly finding?: string;
}

/** One way to go on, with everything that speaks for, against, or is not known. */
export interface Option {
  readonly choice: Choice;
  readonly answer: Answer;
  /** Those that decided first. Never empty. */
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  /** What the rule pairs with it, to be met while doing it: ids of rows of `rules.ts`. */
  readonly conditions: readonly string[];
}

/** Why the weld choices are closed here. */
export type Scope =
  | 'heatTreated'
  | 'brazed'
  | 'coldWorked'
  | 'engineMountRing'
  | 'axle'
  | 'streamline'
  | 'unknownMaterial'
  | 'otherScope';

/** The user's own limit for a size, and what the measured size is against it. There is no published one. */
export interface LimitCheck {
  readonly of: 'bow' | 'ovality' | 'wallLoss' | 'dentDepth';
  readonly finding: string;
  /** In the limit's unit when there is a limit, else inches. */
  readonly measured: Figure | null;
  /** Basis `manual`; null: no limit loaded. */
  readonly limit: Figure | null;
  readonly verdict: 'inside' | 'outside' | 'cannotTell' | 'noLimit' | 'notMeasured';
}

/** Clear tube at one side of the damage, and what each repair needs there. */
export interface RoomSide {
  /** Cluster at that end. */
  readonly cluster: string;
  /** From the edge of the damage to the cluster's weld, along the tube. Negative: the damage reaches into the cluster. */
  readonly clearIn: Figure;
}

/** Where the damage that has a place lies along a member, and how much sound tube is left at either side. */
export interface Room {
  /** From the member's `from` cluster centre; all findings with a place taken together. */
  readonly fromIn: number;
  readonly toIn: number;
  /** At the `from` cluster, at the `to` cluster. */
  readonly sides: readonly [RoomSide, RoomSide];
  /** Weld of the `from` cluster to weld of the `to` cluster. */
  readonly clearLengthIn: Figure;
}

/** The standing decision, held against the rules. */
export interface Decided {
  readonly record: string;
  readonly choice: Choice;
  readonly answer: Answer;
  /** The rules say that it does not apply here. */
  readonly against: boolean;
  /** Against the rule, or its basis is missing: a written reason is needed. */
  readonly reasonNeeded: boolean;
  readonly reasonWritten: boolean;
}

/** Everything about one member or cluster with a finding or a decision. */
export interface DispositionRow {
  readonly id: string;
  readonly kind: 'member' | 'cluster';
  readonly state: State;
  /** Standing findings judged together, oldest first; record ids. A cluster has those of its tubes that reach into it too. */
  readonly findings: readonly string[];
  readonly scope: readonly Scope[];
  /** In the order of `choices` of the job schema, each once. */
  readonly options: readonly Option[];
  /** Every missing thing once, in order of the options. */
  readonly missing: readonly Missing[];
  readonly limits: readonly LimitCheck[];
  /** Members with a placed finding only. */
  readonly room?: Room;
  readonly decided?: Decided;
}

/** Members and clusters that share a state. */
export interface DispositionGroup {
  readonly state: State;
  readonly members: readonly string[];
  readonly clusters: readonly string[];
}

/** Stage `disposition`: what may be done, what may not, and what is missing to say, for every finding. */
export interface Disposition {
  /** Undecided first, then the order of counts; within one, by station, then id. */
  readonly rows: readonly DispositionRow[];
  /** Undecided, straighten, split sleeve, splice, replace: each once, empty or not. */
  readonly groups: readonly DispositionGroup[];
  readonly issues: readonly Issue[];
}
