import type { Figure } from '../base/figure.ts';
import type { Fact, Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Scope } from '../disposition/result.ts';
import type { Choice } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';
import type { EndCut } from './endCut.ts';

/** Order is the order shown: the recommended splice first (AC 43.13-1B 4-95), the whole member last. */
export const methods = [
  'innerSleeve',
  'outerSleeve',
  'largerTube',
  'splitSleeve',
  'patch',
  'fullMember',
] as const;
export type Method = (typeof methods)[number];

/** A tube that a member's end is coped against, in the frame of the member's clock. */
export interface CopeTube {
  readonly member: string;
  readonly odIn: number;
  /** Along the tube, from the cluster. Part along the branch (towards its other end), towards its 12, towards its 3 o'clock. */
  readonly direction: Vec3;
  /** A point of its axis, same frame, from the cluster point. */
  readonly offset: Vec3;
  /** On through the cluster; it starts there; or it starts there and its other half is a row of its own. */
  readonly runs: 'through' | 'starts' | 'joined';
}

/** A hole burnt full of weld through the outer tube. */
export interface Rosette {
  /** Tube it is drilled in. */
  readonly in: 'fromStub' | 'section' | 'toStub';
  readonly atIn: Figure;
  readonly clock: number;
  /** From the edge of the hole to the end of the outer tube, and of the inner one. */
  readonly toOuterEndIn: Figure;
  readonly toInnerEndIn: Figure;
}

/** Rosettes of one kind: all alike. */
export interface Rosettes {
  readonly holeIn: Figure;
  /** In the inner tube under each rosette's centre. */
  readonly bleedIn: Figure;
  readonly count: Figure;
  readonly places: readonly Rosette[];
  /** Ring scribed round the sleeve, from its nearest end: it shows in the middle of the first rosette holes when the sleeve is home. */
  readonly markIn: Figure;
}

/** Tube to get and cut. */
export interface Part {
  readonly id: string;
  readonly kind: 'section' | 'sleeve' | 'splitSleeve' | 'largerTube' | 'patch' | 'member';
  readonly tube: Tube;
  readonly material: string;
  /** Home in the truss: its end nearer `from`, its end nearer `to`. */
  readonly ends: readonly [EndCut, EndCut];
  /** Along the tube on its longest line, on its shortest, and on the axis. */
  readonly longIn: Figure;
  readonly shortIn: Figure;
  readonly axisIn: Figure;
  /** Mark square round it that lies over the middle of the joint, from its `from` end on the axis. */
  readonly centreMarkIn?: Figure;
  readonly weightLb: Figure;
  /** Must be on, or in, the tube before the last joint closes. */
  readonly slideOn: boolean;
}

/** What is left of the old tube at one end. */
export interface Stub {
  readonly cluster: string;
  readonly cut: EndCut;
  /** From the cluster point: on the longest line, on the shortest. */
  readonly longIn: Figure;
  readonly shortIn: Figure;
  /** Sound tube from the cluster's weld to the deepest point of the cut. */
  readonly clearIn: Figure;
}

/** Where a sleeve waits while the last piece goes in. */
export interface Insertion {
  readonly part: string;
  /** Null: it goes nowhere, and the method does not fit. */
  readonly into: 'fromStub' | 'section' | 'toStub' | null;
  readonly needIn: Figure;
  readonly stubRoomIn: Figure;
  readonly sectionRoomIn: Figure;
}

/** One row of the fit-up card, ticked one by one before welding, the last by a second person. */
export interface FitUp {
  readonly step:
    | 'proof'
    | 'slideOn'
    | 'bore'
    | 'opening'
    | 'cutLength'
    | 'gap'
    | 'marks'
    | 'clearance'
    | 'stopDrill'
    | 'halves'
    | 'secondPerson';
  readonly part?: string;
  readonly value?: Figure;
}

/** A tube of the stock list held against the rule, or the user's own table. */
export interface SleeveOffer {
  readonly tube: Tube;
  /** Sleeve inside or outside the tube: what is left between the two, on diameter. */
  readonly slackIn: Figure;
  readonly by: 'manual' | 'rule';
  /** Record, for the user's table. */
  readonly record?: string;
  /** Length the table asks for. */
  readonly lengthIn?: Figure;
  /** `inside-mill-tolerance`, `over-slack-limit`, `wall-below-original`, `does-not-enter`, `less-area`, `shorter-than-rule` … */
  readonly says: readonly string[];
}

/** The sleeve stock for one method: the user's table outranks, and both are shown. */
export interface SleeveChoice {
  /** Null: nothing in the stock list goes. */
  readonly chosen: SleeveOffer | null;
  /** What the general rule would take, when the table says otherwise. */
  readonly byRule: SleeveOffer | null;
  /** Everything that the rule allows, smallest slack first. */
  readonly others: readonly SleeveOffer[];
  /** Why nothing goes: the nearest sizes with the number that fails. */
  readonly refused: readonly SleeveOffer[];
}

/** A rule held against the numbers. */
export interface RuleHeld {
  /** Row of `splice/rules.ts`. */
  readonly rule: string;
  /** Null: a person has to see to it, or a number is missing. */
  readonly held: boolean | null;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** The number that fails: what the rule needs (or allows at most), and what is there. */
export interface Failing {
  readonly rule: string;
  /** Cluster or part where it fails. */
  readonly at: string;
  readonly needIn: Figure;
  readonly haveIn: Figure;
}

/** Every dimension of a repair that fits. */
export interface Plan {
  readonly stubs: readonly [Stub, Stub] | null;
  /** Left for the weld at each joint, along the tube; the other reading, square to the cut, gives the other length. */
  readonly gapIn: Figure;
  readonly gapOtherIn: Figure;
  /** Cut to cut on the axis; to be measured after spreading. The section follows from it: opening less both gaps. */
  readonly openingIn: Figure | null;
  readonly parts: readonly Part[];
  readonly rosettes: Rosettes | null;
  readonly insertion: readonly Insertion[];
  /** Clock positions of the two long seams of a split sleeve. */
  readonly seamClocks: readonly number[];
  readonly weldIn: Figure;
  /** Strength of the weld round one sleeve end that lies over the tube; null for welds of another kind. */
  readonly endWeldLbf: Figure | null;
  readonly addedLb: Figure;
  readonly fitUp: readonly FitUp[];
}

/** One method on one tube. */
export interface Design {
  readonly method: Method;
  readonly fits: 'fits' | 'doesNotFit' | 'cannotSay';
  /** Why the weld is closed here; empty when it is not. */
  readonly closed: readonly Scope[];
  /** Never empty when it does not fit and is not closed. */
  readonly failing: readonly Failing[];
  /** What is missing to say: `damage`, `alongIn`, `patch-overlap`, `stock`, `runs-through`, `place-guessed:CLUSTER` … */
  readonly missing: readonly string[];
  readonly rules: readonly RuleHeld[];
  readonly sleeve: SleeveChoice | null;
  /** Only when it fits: never a shortened part. */
  readonly plan: Plan | null;
  /** `near-weld`, `try-fit`, `less-area` … worded in `present`. */
  readonly cautions: readonly string[];
}

/** One end of the tube to be mended. */
export interface PieceEnd {
  readonly cluster: string;
  /** Weld toe, from the cluster point. */
  readonly toeIn: Figure;
  /** Null: the tube is the main one here or runs through, and has no cope. Empty: what it meets is not known. */
  readonly cope: readonly CopeTube[] | null;
}

/** One tube to be mended, with a truss around it or on the bench. */
export interface Piece {
  readonly id: string;
  readonly tube: Tube;
  readonly material: string;
  readonly densityLbIn3: number;
  /** Between its cluster points. */
  readonly lengthIn: number;
  readonly ends: readonly [PieceEnd, PieceEnd];
  /** The clock is read looking from `from` to `to` (1) or back (−1). */
  readonly looks: 1 | -1;
  /** Place from `from`; null: not known. */
  readonly damage: Damage | null;
  readonly scope: readonly Scope[];
  /** Ends whose place in the model is a guess: no length along the tube is given until they are measured. */
  readonly guessed?: readonly string[];
}

/** What is to be cut out or covered. */
export interface Damage {
  readonly fromIn: number;
  readonly toIn: number;
  /** False: the length along the tube was not measured. */
  readonly lengthKnown: boolean;
  readonly clock?: number;
  /** A dent or hole, when that is all there is. */
  readonly dent?: { readonly depthIn?: number; readonly alongIn?: number; readonly aroundIn?: number };
  readonly cracked: boolean;
  readonly parted: boolean;
}

/** One member with a decision, or asked for. */
export interface SpliceRow {
  readonly member: string;
  readonly choice: Choice | null;
  readonly piece: Piece;
  /** In the order of `methods`, each once. */
  readonly designs: readonly Design[];
}

/** Stage `splice`: every member decided to be spliced, split-sleeved, patched or replaced. */
export interface Splices {
  readonly members: readonly SpliceRow[];
  readonly issues: readonly Issue[];
}
