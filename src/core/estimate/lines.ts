import type { Plan, Step } from '../plan/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { originOf } from './origin.ts';
import { inventedRates, type Operation } from './rates.ts';
import type { EstimateLine, Rate, ThreePoint } from './result.ts';

const operationOf = (step: Step): Operation =>
  step.kind === 'trammel' && step.scope === 'job' ? 'trammelWhole' : step.kind;

const times = (t: ThreePoint, n: number): ThreePoint => ({
  best: t.best * n,
  likely: t.likely * n,
  worst: t.worst * n,
});
const takesTime = (t: ThreePoint): boolean => t.worst > 0;

/** The lines of the estimate: one for each operation on each tube, and one set-up a bay that its tubes share. */
export const linesOf = (plan: Plan, coverage: Coverage, rates: readonly Rate[]): readonly EstimateLine[] => {
  if (plan.steps.length === 0) return [];
  const rateOf = new Map(rates.map((r) => [r.operation, r]));
  const lines = new Map<string, EstimateLine>();
  const put = (
    kind: EstimateLine['kind'],
    operation: Operation,
    place: Pick<EstimateLine, 'of' | 'bay'>,
    origin: EstimateLine['origin'],
  ): void => {
    const rate = rateOf.get(operation)!;
    const hours = kind === 'each' ? rate.each : rate.setUp;
    if (!takesTime(hours)) return;
    const where = place.of ?? (place.bay === undefined ? 'job' : `bay ${place.bay}`);
    const id = kind === 'each' ? `${operation}:${where}` : `${operation}:${where}:set-up`;
    const before = lines.get(id);
    // A set-up is shared; the same thing done twice to one tube counts twice.
    const count = kind === 'setUp' ? 1 : (before?.count ?? 0) + 1;
    lines.set(id, {
      id,
      group: inventedRates[operation].group,
      operation,
      kind,
      ...place,
      origin,
      count,
      hours: times(hours, count),
      basis: rate.record === undefined ? 'invented' : 'rate',
      ...(rate.record === undefined ? {} : { record: rate.record }),
    });
  };
  for (const step of plan.steps) {
    const operation = operationOf(step);
    const bay = step.bay === undefined ? {} : { bay: step.bay };
    const single = step.of !== undefined;
    put(
      'each',
      operation,
      single ? { of: step.of!, ...bay } : bay,
      single ? originOf(coverage, step.of!) : 'job',
    );
    if (step.bay !== undefined) put('setUp', operation, bay, 'job');
  }
  put('each', 'paper', {}, 'job');
  return [...lines.values()];
};
