import { add, dot, scale, type Vec3 } from '../base/vec3.ts';
import { covarianceOf, moveIn, type Solution } from './adjust.ts';
import type { AdjustedCluster } from './adjustment.ts';
import { chiSquared999, datumTests } from './reliability.ts';
import { principal } from './sym3.ts';

/** A direction known no better than this is not fixed by the readings. */
export const FREE_STD_IN = 3;

const NONE: Vec3 = [0, 0, 0];

/**
 * Move and covariance of every cluster read. What the readings leave free is named, and left out of the move and of the
 * covariance. A free cluster has moved when dᵀ Q⁻¹ d over the fixed directions passes χ² at 0.1 % (16.27 for three);
 * a datum cluster when its pull on the drawing place does.
 */
export const clustersOf = (s: Solution): readonly AdjustedCluster[] => {
  const pulls = new Map(datumTests(s).map((d) => [d.cluster, d.test]));
  return s.network.clusters.map((id): AdjustedCluster => {
    const axes = principal(covarianceOf(s, id, id));
    const free = axes.filter((a) => Math.sqrt(a.value) > FREE_STD_IN).map((a) => a.axis);
    const fixed = axes.slice(free.length);
    const whole = moveIn(s, id);
    const move = fixed.reduce<Vec3>((sum, a) => add(sum, scale(a.axis, dot(a.axis, whole))), NONE);
    const covariance = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((k) =>
      fixed.reduce((sum, a) => sum + a.value * a.axis[Math.floor(k / 3)]! * a.axis[k % 3]!, 0),
    );
    const datum = s.setting.datum.has(id);
    const test = datum
      ? pulls.get(id)! / chiSquared999(3)
      : fixed.reduce((sum, a) => sum + dot(a.axis, whole) ** 2 / a.value, 0) /
        chiSquared999(fixed.length || 1);
    const unsure = free.length > 0 ? 'cannotTell' : 'notShown';
    return {
      id,
      moveIn: move,
      covariance,
      fixedBy: free.length === 0 ? 'all' : free.length === 3 ? 'none' : 'some',
      free,
      moved: fixed.length > 0 && test > 1 ? 'moved' : unsure,
      datum,
      ...(datum ? { pull: Math.sqrt(pulls.get(id)!) } : {}),
    };
  });
};
