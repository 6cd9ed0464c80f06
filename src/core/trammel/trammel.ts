import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import { type Finding, type Hold, holds, type Reading, type RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import type { Frame } from '../statics/frame.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';
import type { Adjustment } from './adjustment.ts';
import { aimAt } from './aim.ts';
import { type OpenFrame, openFrame, pushApart } from './flexibility.ts';
import { shapeAtHold } from './holdShape.ts';
import { observe } from './observations.ts';
import { pairId } from './pair.ts';
import { markRead, type Planned, planOf } from './plan.ts';
import { type Stiffness, withJobs } from './pushes.ts';
import type { Trammel } from './result.ts';
import { type Flexibility, spreadOf } from './spread.ts';
import { swings } from './swing.ts';
import { placesOf, targets } from './targets.ts';

/** The frame as it is held, without the tubes that are open and with all of them; none when either moves freely. */
const stiffnessOf = (
  frame: Frame | MovesFreely | undefined,
  open: readonly string[],
): Stiffness | undefined => {
  if (!frame || !isFrame(frame)) return undefined;
  const [now, whole] = [openFrame(frame, open), openFrame(frame, [])];
  return now && whole && { now, whole };
};

const flexibilityOf =
  (now: OpenFrame, places: ReadonlyMap<string, Vec3>): Flexibility =>
  (from, to) => {
    const moves = pushApart(now, (id) => places.get(id)!, from, to);
    return new Map(
      now.frame.clusters.map((id, k) => [id, [moves[k * 6]!, moves[k * 6 + 1]!, moves[k * 6 + 2]!]]),
    );
  };

/**
 * Stage `trammel`: the distances to hold, how the measured ones compare, the shape they show at each hold, what to read,
 * and what to spread or draw.
 *
 * @param frame    as it is held now; without it no force and no order is given
 * @param planned  the measuring plan; a stage of its own, so that a reading typed does not rework it
 * @param open     tubes cut and not yet closed
 * @param pushes   progress records of spreadings, earliest first
 */
export const trammel = (
  truss: Truss,
  model: Model,
  readings: readonly Reading[],
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
  frame?: Frame | MovesFreely,
  planned: Planned = planOf(truss, findings, manual),
  open: readonly string[] = [],
  pushes: readonly RecordOf<'progress'>[] = [],
): Trammel => {
  const { observations, issues } = observe(truss, readings, manual);
  const all = targets(truss, model, observations, findings, manual);
  const own = new Set(all.map((t) => t.id));
  const lines = [...planned.plan.readings, ...planned.whole].filter((r) => !own.has(r.target));
  const wanted =
    lines.length === 0
      ? all
      : targets(
          truss,
          model,
          observations,
          findings,
          manual,
          lines.map((r) => [r.from, r.to]),
        );
  const places = placesOf(truss);
  const stiffness = stiffnessOf(frame, open);
  const byHold: Partial<Record<Hold, Adjustment>> = {};
  const said: Issue[] = [...issues];
  let latest: (() => Pick<Trammel, 'latest' | 'spread' | 'swing'>) | undefined;
  for (const hold of holds) {
    const seen = observations.filter((o) => o.hold === hold);
    if (seen.length === 0) continue;
    const shape = shapeAtHold(truss, places, hold, seen, all, findings, manual);
    byHold[hold] = shape.adjustment;
    said.push(...shape.issues);
    latest = () => {
      const aims = all.map((t) => ({ ...t, targetIn: aimAt(t, hold, manual) }));
      const flexibility = stiffness && flexibilityOf(stiffness.now, places);
      const spread = spreadOf(shape.solution, hold, aims, flexibility);
      return {
        latest: hold,
        spread: stiffness ? withJobs(truss, stiffness, spread, pushes) : spread,
        swing: swings(truss, shape.solution, hold, shape.adjustment.clusters),
      };
    };
  }
  const told: Pick<Trammel, 'latest' | 'spread' | 'swing'> = latest?.() ?? {};
  const read = observations
    .filter((o) => o.plane === undefined && o.hold === told.latest)
    .map((o) => pairId(...o.clusters));
  return {
    targets: wanted,
    byHold,
    ...told,
    plan: markRead(planned.plan, new Set(read)),
    issues: [...said, ...planned.issues],
  };
};
