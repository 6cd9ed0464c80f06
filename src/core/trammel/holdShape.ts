import { type Issue, issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Finding, Hold, RecordOf } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import { adjust, fullWeights, networkOf, type Solution } from './adjust.ts';
import type { Adjustment } from './adjustment.ts';
import { explain, fitsTogether } from './cause.ts';
import { datumOf, spansPlane } from './datum.ts';
import { foldIssues, foldsOf } from './fold.ts';
import type { Observation } from './observations.ts';
import { degreesOf, readingsOf } from './reliability.ts';
import type { Target } from './result.ts';
import { clustersOf } from './shape.ts';

/** Pairs whose covariance the spread and the swing of bays ask for. */
function* askedPairs(truss: Truss, targets: readonly Target[]): Iterable<readonly [string, string]> {
  for (const t of targets) yield [t.from, t.to];
  for (const b of truss.bays)
    for (const [k, a] of b.clusters.entries()) for (const c of b.clusters.slice(k + 1)) yield [a, c];
}

/**
 * One adjustment of all readings of one hold, and the solution its shape is taken from.
 *
 * Assumes: readings independent; clusters of the undamaged zone within 1/16 in of the drawing (one standard deviation).
 */
export const shapeAtHold = (
  truss: Truss,
  places: ReadonlyMap<string, Vec3>,
  hold: Hold,
  observations: readonly Observation[],
  targets: readonly Target[],
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
): { readonly adjustment: Adjustment; readonly solution: Solution; readonly issues: readonly Issue[] } => {
  const network = networkOf(places, observations, askedPairs(truss, targets));
  const read = new Set(network.clusters);
  const zone = datumOf(truss, findings, manual, read);
  const datum = new Set(network.clusters.filter((id) => zone.clusters.has(id)));
  const whole = adjust(network, { weights: fullWeights(observations), datum });
  const dof = degreesOf(whole);
  const { solution, causes } = dof > 0 ? explain(whole, targets) : { solution: whole, causes: [] };
  const aside = observations.filter((_, n) => solution.setting.weights[n] === 0).map((o) => o.id);
  const left = degreesOf(solution);
  const at = `records[hold=${hold}]`;
  const datumFacts = { hold, clusters: [...datum] };
  const issues: Issue[] = !spansPlane([...datum].map((id) => places.get(id)!))
    ? [issue('datum-too-small', at, datumFacts, 'read-undamaged-clusters')]
    : datum.size < 4
      ? [issue('datum-cannot-be-cross-checked', at, datumFacts, 'read-more-undamaged-clusters')]
      : [];
  const folds = foldsOf(solution);
  issues.push(...foldIssues(folds, hold, at));
  const [cause] = causes;
  return {
    adjustment: {
      hold,
      readings: readingsOf(solution),
      clusters: clustersOf(solution),
      degreesOfFreedom: left,
      varianceFactor: left > 0 ? solution.omega / left : null,
      fits: dof === 0 ? 'cannotTell' : fitsTogether(whole) ? 'fits' : 'doesNotFit',
      ...(cause ? { cause, causes } : {}),
      setAside: aside,
      ...(folds.length > 0 ? { folds } : {}),
      notMeasured: truss.clusters.map((c) => c.id).filter((id) => !read.has(id)),
    },
    solution,
    issues,
  };
};
