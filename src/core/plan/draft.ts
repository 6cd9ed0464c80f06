import type { Hold } from '../job/jobSchema.ts';
import type { StepKind } from './kinds.ts';
import type { Material, Need, PlanBrace, Step } from './result.ts';
import type { RuleId } from './rules.ts';

/** A step before it is known what stands, what is done, and which hold points close it. */
export interface Draft {
  readonly id: string;
  readonly kind: StepKind;
  readonly scope: Step['scope'];
  readonly of?: string;
  readonly bay?: string;
  readonly members: readonly string[];
  readonly needs: readonly Need[];
  readonly hold?: Hold;
  readonly brace?: PlanBrace;
  readonly materials: readonly Material[];
}

export const need = (rule: RuleId, ...steps: readonly string[]): readonly Need[] =>
  steps.map((step) => ({ step, rule }));

/** Ids of steps. Records of progress carry them, so they are made here alone. */
export const idOf = (kind: StepKind, of: string): string => `${kind}:${of}`;
export const inBay = (bay: string): string => `bay ${bay}`;
export const holdId = (hold: Hold, of?: string): string =>
  of === undefined ? `hold:${hold}` : `hold:${hold}:${of}`;
