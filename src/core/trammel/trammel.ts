import type { Finding, Reading, RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import { observe } from './observations.ts';
import type { Trammel } from './result.ts';
import { targets } from './targets.ts';

/** Stage `trammel`: the distances to hold and how the measured ones compare. */
export const trammel = (
  truss: Truss,
  model: Model,
  readings: readonly Reading[],
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
): Trammel => {
  const { observations, issues } = observe(truss, readings, manual);
  return { targets: targets(truss, model, observations, findings, manual), byHold: {}, issues };
};
