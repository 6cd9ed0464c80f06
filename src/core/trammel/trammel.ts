import type { Issue } from '../base/issue.ts';
import { type Finding, type Hold, holds, type Reading, type RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import { shapeAtHold } from './holdShape.ts';
import { observe } from './observations.ts';
import { pairId } from './pair.ts';
import { markRead, planOf } from './plan.ts';
import type { Adjustment, Trammel } from './result.ts';
import { spreadOf } from './spread.ts';
import { swings } from './swing.ts';
import { placesOf, targets } from './targets.ts';

/**
 * Stage `trammel`: the distances to hold, how the measured ones compare, the shape they show at each hold, what to read,
 * and what to spread or draw.
 */
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
  let latest: Pick<Trammel, 'latest' | 'spread' | 'swing'> = {};
  for (const hold of holds) {
    const seen = observations.filter((o) => o.hold === hold);
    if (seen.length === 0) continue;
    const shape = shapeAtHold(truss, places, hold, seen, all, findings, manual);
    byHold[hold] = shape.adjustment;
    said.push(...shape.issues);
    latest = {
      latest: hold,
      spread: spreadOf(shape.solution, hold, all),
      swing: swings(truss, shape.solution, hold, shape.adjustment.clusters),
    };
  }
  const read = observations.filter((o) => o.hold === latest.latest).map((o) => pairId(...o.clusters));
  const planned = planOf(truss, findings, manual);
  return {
    targets: all,
    byHold,
    ...latest,
    plan: markRead(planned.plan, new Set(read)),
    issues: [...said, ...planned.issues],
  };
};
