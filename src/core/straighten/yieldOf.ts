import { type Figure, figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import { materialOf } from '../truss/stock.ts';
import type { Calibration } from './calibrate.ts';

/** A tube may be this much stronger than its specified least: a starting value of ours, yours to change. */
const SCATTER = 1.35;

/**
 * The yield strength to reckon with: the user's own (`manual`, topic `yield:MEMBER` or `yield`, psi), else the member's
 * specified least, up to 1.35 of it.
 *
 * Assumes: `yield-scatter-1.35`; no published scatter was found: common practice, no source.
 */
export const yieldOf = (
  member: Pick<Member, 'id' | 'material'> & { readonly section: Pick<Member['section'], 'yieldPsi'> },
  manual: readonly RecordOf<'manual'>[],
): Figure => {
  for (const topic of [`yield:${member.id}`, 'yield']) {
    const own = manual.findLast((m) => m.topic === topic && m.unit === 'psi' && (m.value ?? 0) > 0);
    if (own)
      return figure(own.value!, 'psi', { kind: 'manual', ref: own.id }, [], {
        low: own.value!,
        high: own.value!,
      });
  }
  const least = member.section.yieldPsi;
  const source = materialOf(member.material)?.sources.yieldPsi ?? 'model';
  return figure(least, 'psi', { kind: 'assumed', ref: source }, ['yield-scatter-1.35'], {
    low: least,
    high: SCATTER * least,
  });
};

/** The same after the measured pushes: the latest that informs; an elastic one only lifts the low end. */
export const yieldAfter = (before: Figure, calibrations: readonly Calibration[]): Figure => {
  const informed = calibrations.findLast((c) => c.says === 'informs')?.yieldPsi;
  if (informed) return informed;
  const least = Math.max(
    before.low ?? before.value,
    ...calibrations.flatMap((c) => (c.says === 'elastic' ? (c.yieldPsi?.value ?? 0) : 0)),
  );
  if (least <= (before.low ?? before.value)) return before;
  const assumed = [...before.assumed, 'elastic-push-lifts-the-low-end'];
  return figure(least, 'psi', before.basis, assumed, {
    low: least,
    high: Math.max(least, before.high ?? before.value),
  });
};
