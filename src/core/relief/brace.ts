import { sub, unit } from '../base/vec3.ts';
import type { Member, Truss } from '../truss/result.ts';
import { growthBetween, SAG_LIMIT_IN } from './sag.ts';
import type { Situation } from './situation.ts';

/** A brace between two station points, and the growth of sag that is left with it. */
export interface Brace {
  readonly from: string;
  readonly to: string;
  readonly sagIn: number;
}

/** Station points worth bracing between: the cut's own ends, and corners of the bays and faces it touches. */
const pairsNear = (truss: Truss, cut: Member): readonly (readonly [string, string])[] => {
  const touches = (corners: readonly string[]): boolean =>
    corners.includes(cut.from) || corners.includes(cut.to);
  const seen = new Set<string>();
  const joined = new Set(
    truss.members.filter((m) => m.id !== cut.id).map((m) => [m.from, m.to].sort().join()),
  );
  const out: (readonly [string, string])[] = [[cut.from, cut.to]];
  seen.add([cut.from, cut.to].sort().join());
  for (const { corners } of truss.faces)
    if (touches(corners))
      for (let p = 0; p < corners.length; p++)
        for (let q = p + 1; q < corners.length; q++) {
          const key = [corners[p]!, corners[q]!].sort().join();
          if (seen.has(key) || joined.has(key)) continue;
          seen.add(key);
          out.push([corners[p]!, corners[q]!]);
        }
  return out;
};

/**
 * The one temporary brace that best keeps the truss from sagging when a tube is cut; null when none brings the growth
 * under the limit.
 *
 *   u'' = u' − K'⁻¹b (1/k + bᵀK'⁻¹b)⁻¹ bᵀu',  k = EA/L of a tube like the one cut, clamped at both ends
 *
 * Source: rank-one update; that the brace is of the cut tube's section is our assumption.
 */
export const bestBrace = (truss: Truss, before: Situation, after: Situation, cut: Member): Brace | null => {
  const { frame } = after.changed;
  const size = frame.held.length;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const pairs = pairsNear(truss, cut);
  const loads = new Float64Array(size * pairs.length);
  const stiffness = pairs.map(([from, to], k) => {
    const along = sub(at.get(to)!, at.get(from)!);
    const e = unit(along);
    const [i, j] = [frame.clusterIndex.get(from)!, frame.clusterIndex.get(to)!];
    for (let d = 0; d < 3; d++) {
      loads[k * size + i * 6 + d]! -= e[d]!;
      loads[k * size + j * 6 + d]! += e[d]!;
    }
    return (cut.section.elasticPsi * cut.section.areaIn2) / Math.hypot(...along);
  });
  const moves = after.changed.solve(loads, pairs.length);
  const hanging = after.weighed.moves;
  let best: Brace | null = null;
  pairs.forEach(([from, to], k) => {
    let soft = 1 / stiffness[k]!;
    let stretch = 0;
    for (let p = 0; p < size; p++) {
      const b = loads[k * size + p]!;
      if (b === 0) continue;
      soft += b * moves[k * size + p]!;
      stretch += b * hanging[p]!;
    }
    const pull = stretch / soft;
    const braced = hanging.map((u, p) => u - moves[k * size + p]! * pull);
    const sagIn = growthBetween(before.weighed.moves, braced);
    if (!best || sagIn < best.sagIn) best = { from, to, sagIn };
  });
  const found = best as Brace | null;
  return found && found.sagIn <= SAG_LIMIT_IN ? found : null;
};
