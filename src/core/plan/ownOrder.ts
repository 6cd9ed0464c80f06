import { type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { HeldNow } from '../statics/held.ts';
import { inOrderOf, type Walk, walk } from './check.ts';
import type { Draft } from './draft.ts';
import type { Plan } from './result.ts';
import type { Solver } from './state.ts';

type Manual = readonly RecordOf<'manual'>[];

/** The topic that carries the user's own order: step ids in `words`, one a line. */
export const ORDER_TOPIC = 'plan-order';

/** Step ids of the user's latest order; none when there is no order of their own. */
export const ownIds = (manual: Manual): readonly string[] =>
  (manual.findLast((m) => m.topic === ORDER_TOPIC)?.words ?? '')
    .split('\n')
    .map((id) => id.trim())
    .filter((id) => id !== '');

/** The order the plan is shown in, and what it leads through. */
export interface Ordered {
  readonly steps: readonly Draft[];
  readonly walk: Walk;
  readonly order: Plan['order'];
  readonly issues: readonly Issue[];
}

/** The user's order when there is one and it breaks nothing; else the one worked out, and why. */
export const ordered = (
  worked: readonly Draft[],
  solver: Solver,
  support: HeldNow,
  stray: readonly string[],
  manual: Manual,
): Ordered => {
  const own = manual.findLast((m) => m.topic === ORDER_TOPIC);
  const ids = ownIds(manual);
  const plain = (issues: readonly Issue[]): Ordered => ({
    steps: worked,
    walk: walk(worked, solver, support, stray),
    order: { kind: 'worked' },
    issues,
  });
  if (!own || ids.length === 0) return plain([]);
  const known = new Set(worked.map((s) => s.id));
  const unknown = ids.filter((id) => !known.has(id));
  const issues =
    unknown.length > 0
      ? [issue('plan-order-names-no-step', atRecord(own.id), { ids: unknown }, 'read-the-plan')]
      : [];
  const steps = inOrderOf(worked, ids);
  const walked = walk(steps, solver, support, stray);
  if (walked.broken) {
    const { rule, step, by } = walked.broken;
    return plain([
      ...issues,
      issue('plan-order-refused', atRecord(own.id), { rule, step, by }, 'move-the-step-back'),
    ]);
  }
  return { steps, walk: walked, order: { kind: 'own', record: own.id }, issues };
};
