import type { Issue } from './base/issue.ts';
import type { Disposition } from './disposition/result.ts';
import type { Estimate, Takeoff } from './estimate/result.ts';
import type { LoadPath } from './loadPath/result.ts';
import type { LockedIn } from './lockedIn/result.ts';
import type { Plan } from './plan/result.ts';
import type { Relief } from './relief/result.ts';
import type { Splices } from './splice/result.ts';
import type { Statics } from './statics/result.ts';
import type { Straighten } from './straighten/result.ts';
import type { Trammel } from './trammel/result.ts';
import type { Truss } from './truss/result.ts';
import type { Coverage } from './walkRound/result.ts';

/** What to work the relief and the load path for, besides every member with a finding or a decision. */
export interface Ask {
  readonly targets?: readonly string[];
}

/** Every result of a job, one field a stage, in the order of the chain. */
export interface Assessment {
  readonly truss: Truss;
  readonly coverage: Coverage;
  readonly statics: Statics;
  readonly trammel: Trammel;
  readonly lockedIn: LockedIn;
  readonly loadPath: LoadPath;
  readonly relief: Relief;
  readonly disposition: Disposition;
  readonly straighten: Straighten;
  readonly splice: Splices;
  readonly plan: Plan;
  readonly takeoff: Takeoff;
  readonly estimate: Estimate;
  /** Issues of the job as a whole: records that point to nothing, clashes. */
  readonly issues: readonly Issue[];
}

/** Stage names as words of the terminal (`--only`), in order. */
export const stages = [
  'truss',
  'coverage',
  'statics',
  'trammel',
  'lockedIn',
  'loadPath',
  'relief',
  'disposition',
  'straighten',
  'splice',
  'plan',
  'takeoff',
  'estimate',
] as const;
export type Stage = (typeof stages)[number];
