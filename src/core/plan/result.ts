import type { Figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import type { Hold } from '../job/jobSchema.ts';
import type { StepKind } from './kinds.ts';

/** One arrow of the plan: `step` must be done first, by a row of `plan/rules.ts`. */
export interface Need {
  readonly step: string;
  readonly rule: string;
}

/** Hold points of the work, in their order. Not the trammel's holds. */
export const gateNames = ['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7', 'H8', 'H9', 'H10'] as const;
export type GateName = (typeof gateNames)[number];

/** Who marked it, and when. */
export interface Stamp {
  readonly record: string;
  readonly by: string;
  readonly at: string;
}

/** What a hold point wants to see. Worded in `present`. */
export interface Evidence {
  /** `baseline`, `photo`, `restraint`, `brace`, `noNeighbourOpen`, `fitUp`, `secondPerson`, `frozenPlan` … */
  readonly what: string;
  /** Null: a person has to see to it, nothing entered can tell. */
  readonly there: boolean | null;
  /** Ids concerned: what is missing, or the record that shows it. */
  readonly ids: readonly string[];
}

/** One hold point at one thing: one item, one tick. */
export interface Gate {
  /** `H4:U3R-U4R`; `H1` for the whole job. A progress record with this step marks it done, or opens it with a reason. */
  readonly id: string;
  readonly name: GateName;
  /** Member, or nothing for the whole job. */
  readonly of?: string;
  readonly evidence: readonly Evidence[];
  /** Starting proposal of ours, yours to change; no source. */
  readonly secondPerson: 'yes' | 'advised' | 'qualified' | 'inspector' | 'entitled';
  /** `waits`: something is missing. `ready`: everything is there, nobody has ticked it. */
  readonly state: 'waits' | 'ready' | 'done' | 'openedByName';
  readonly done?: Stamp;
  /** Name and reason that opened it although something was missing. */
  readonly opened?: Stamp & { readonly reason: string };
}

/** The truss as it stands after a step: solved with its open tubes out and its braces in. */
export interface SolvedState {
  /** Tubes out, each once, sorted. */
  readonly open: readonly string[];
  /** Braces of the plan in place: step ids. */
  readonly braces: readonly string[];
  /**
   * `stands`: under the limit. `sags`: over it. `notJudged`: stands, but nobody has said how the truss is held, so that
   * no sag is told. `mechanism`: moves freely.
   */
  readonly says: 'stands' | 'sags' | 'notJudged' | 'mechanism';
  /** Largest growth of own-weight sag against the truss uncut; absent when not told. */
  readonly sagIn?: Figure;
  /** Clusters that move most. */
  readonly clusters: readonly string[];
}

/** A tube clamped or tacked in for the work. */
export interface PlanBrace {
  /** Step that puts it in: `brace:U3R-U4R:U3R-U4R`, what it is for and where it goes. */
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly odIn: number;
  readonly wallIn: number;
  /** Cut tubes that it holds. */
  readonly holds: readonly string[];
  /** `ownEnds`: along the cut tube, end to end. */
  readonly why: 'ownEnds' | 'sag' | 'mechanism' | 'neighbourOpen';
}

/** Something to have at the step. */
export interface Material {
  readonly what: 'section' | 'sleeve' | 'splitSleeve' | 'largerTube' | 'patch' | 'member' | 'brace';
  readonly odIn: number;
  readonly wallIn: number;
  /** Longest line of the part; null: not designed yet. */
  readonly lengthIn: number | null;
}

/** One step of the work. */
export interface Step {
  /** `cut:U3R-U4R`: kind and what it is done to; stable. Progress records carry it. */
  readonly id: string;
  readonly kind: StepKind;
  readonly scope: 'job' | 'bay' | 'member' | 'cluster';
  /** Member or cluster; absent for a whole bay or job. */
  readonly of?: string;
  /** Bay (forward station label) in which one stands to do it. */
  readonly bay?: string;
  /** Tubes concerned. */
  readonly members: readonly string[];
  readonly needs: readonly Need[];
  /** Ids of gates that must be done, or opened by name, before it, and those that follow from it. */
  readonly gatesBefore: readonly string[];
  readonly gatesAfter: readonly string[];
  /** For a trammel step: the readings' hold. */
  readonly hold?: Hold;
  readonly brace?: PlanBrace;
  readonly tools: readonly string[];
  readonly materials: readonly Material[];
  /** Ids of cautions in `present/words/cautions.ts`. */
  readonly cautions: readonly string[];
  /** After the step; only where it differs from the step before. */
  readonly solved?: SolvedState;
  readonly done?: Stamp;
}

/** A decided repair that is not in the plan, and why. */
export interface NotPlanned {
  readonly id: string;
  readonly why:
    | 'movesFreely'
    | 'noBraceHolds'
    | 'noFixtureForCluster'
    | 'refer'
    | 'undecided'
    | 'clusterNotBent';
  readonly clusters: readonly string[];
}

/** The plan as agreed, and what is different since. */
export interface Frozen {
  readonly record: string;
  readonly by: string;
  readonly at: string;
  readonly digest: string;
  readonly added: readonly string[];
  readonly removed: readonly string[];
  readonly altered: readonly string[];
  /** The same steps in another order. */
  readonly reordered: boolean;
}

/** What the next shift must know. */
export interface HandOver {
  readonly openGates: readonly string[];
  readonly cutNotClosed: readonly string[];
  readonly tackedNotWelded: readonly string[];
  /** Parts made and not yet closed in: members whose sleeves may be loose on their tubes. */
  readonly loose: readonly string[];
  /** Step ids done of bracing and spreading not yet taken out. */
  readonly inPlace: readonly string[];
  readonly heldAs: string;
  /** The latest readings, newest first: record ids. */
  readonly lastReadings: readonly string[];
  /** Next steps that nothing stands before: step ids, in order. */
  readonly next: readonly string[];
  /** Names in the progress records, latest first. */
  readonly who: readonly string[];
}

/** Stage `plan`. Steps are in order of work. */
export interface Plan {
  readonly steps: readonly Step[];
  readonly gates: readonly Gate[];
  readonly notPlanned: readonly NotPlanned[];
  /** `own`: in the user's order (its record). */
  readonly order: { readonly kind: 'worked' | 'own'; readonly record?: string };
  /** Limit on the growth of sag: the user's, else the starting value. */
  readonly sagLimitIn: Figure;
  readonly digest: string;
  readonly frozen?: Frozen;
  readonly handOver: HandOver;
  /** Braces put in, cuts put later, own order refused, records that name no step. */
  readonly issues: readonly Issue[];
}

/** A step put elsewhere, or why not. */
export type Moved =
  | { readonly ok: true; readonly order: readonly string[] }
  | { readonly ok: false; readonly rule: string; readonly step: string; readonly by: string };
