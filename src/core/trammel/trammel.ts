import type { Issue } from '../base/issue.ts';
import { type Finding, type Hold, holds, type Reading, type RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import { shapeAtHold } from './holdShape.ts';
import { observe } from './observations.ts';
import type { Adjustment, Trammel } from './result.ts';
import { placesOf, targets } from './targets.ts';

/** Stage `trammel`: the distances to hold, how the measured ones compare, and the shape they show at each hold. */
export const trammel = (
  truss: Truss,
  model: Model,
  readings: readonly Reading[],
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
): Trammel => {
  const { observations, issues } = observe(truss, readings, manual);
  const all = targets(truss, model, observations, findings, manual);
  const places = placesOf(truss);
  const byHold: Partial<Record<Hold, Adjustment>> = {};
  const said: Issue[] = [...issues];
  for (const hold of holds) {
    const seen = observations.filter((o) => o.hold === hold);
    if (seen.length === 0) continue;
    const shape = shapeAtHold(truss, places, hold, seen, all, findings, manual);
    byHold[hold] = shape.adjustment;
    said.push(...shape.issues);
  }
  const latest = holds.findLast((h) => byHold[h]);
  return { targets: all, byHold, ...(latest ? { latest } : {}), issues: said };
};
