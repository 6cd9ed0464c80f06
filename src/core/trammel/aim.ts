import { type Figure, figure } from '../base/figure.ts';
import type { Hold, RecordOf } from '../job/jobSchema.ts';
import type { Target } from './result.ts';

/** Holds at which a weld has still to shrink. */
const beforeTheWeld: ReadonlySet<Hold> = new Set(['beforeTacking', 'afterTacking']);

/**
 * What the user lets a weld shrink the distance by: manual record `shrink:U3L–L4L`, else `shrink:diagonal` (its kind),
 * else `shrink`; none when none is entered. No published value is known; it is the user's own.
 */
export const shrinkOf = (
  target: Pick<Target, 'id' | 'kind'>,
  manual: readonly RecordOf<'manual'>[],
): RecordOf<'manual'> | undefined => {
  for (const topic of [`shrink:${target.id}`, `shrink:${target.kind}`, 'shrink']) {
    const own = manual.findLast((m) => m.topic === topic && m.valueIn !== undefined);
    if (own) return own;
  }
  return undefined;
};

/** The distance to hold at one hold: the target, longer by the shrinkage allowance while the weld has still to shrink. */
export const aimAt = (target: Target, hold: Hold, manual: readonly RecordOf<'manual'>[]): Figure => {
  const own = beforeTheWeld.has(hold) ? shrinkOf(target, manual) : undefined;
  if (!own?.valueIn) return target.targetIn;
  const { value, basis, assumed, std } = target.targetIn;
  return figure(
    value + own.valueIn,
    'in',
    basis,
    [...assumed, 'weld-shrinkage-added'],
    std === undefined ? {} : { std },
  );
};
