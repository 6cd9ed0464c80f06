import { type Issue, issue } from '../base/issue.ts';
import { distance, scale, sub, unit } from '../base/vec3.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import type { Candidate } from './cofactors.ts';
import { compareClusters, pairId } from './pair.ts';
import { sightIn } from './sight.ts';

const STATIONS_APART = 2;

/** Lines the user has struck (`strike:U3L–L4L`, either way round, hyphen or dash), and strikes that name no line. */
export const struckLines = (
  truss: Truss,
  manual: readonly RecordOf<'manual'>[],
): { readonly ids: ReadonlySet<string>; readonly issues: readonly Issue[] } => {
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const ids = new Set<string>();
  const issues: Issue[] = [];
  for (const m of manual) {
    if (!m.topic.startsWith('strike:')) continue;
    const [a, b] = m.topic
      .slice('strike:'.length)
      .split(/[–-]/)
      .map((id) => clusters.get(id.trim()));
    if (a && b) ids.add(pairId(a, b));
    else
      issues.push(issue('strike-names-no-line', `records[${m.id}]`, { topic: m.topic }, 'name-two-clusters'));
  }
  return { ids, issues };
};

/** A line that a trammel could be laid along, with its row over the coordinates of the clusters planned for. */
export interface Line extends Candidate {
  readonly id: string;
  readonly from: Cluster;
  readonly to: Cluster;
  readonly lengthIn: number;
}

/** Lines between the clusters within reach, two stations apart at most, with a clear line, and not both ends datum. */
export const linesOf = (
  truss: Truss,
  clusters: readonly Cluster[],
  datum: ReadonlySet<string>,
  struck: ReadonlySet<string>,
  reachIn: number,
): readonly Line[] => {
  const order = new Map([...truss.bays.map((b) => b.id), truss.bays.at(-1)?.aft].map((id, k) => [id, k]));
  const stationOf = (c: Cluster): number | undefined => order.get(c.station);
  const clear = sightIn(truss);
  const lines: Line[] = [];
  clusters.forEach((a, i) => {
    for (const [j, b] of clusters.entries()) {
      if (j <= i || (datum.has(a.id) && datum.has(b.id))) continue;
      const [s, t] = [stationOf(a), stationOf(b)];
      const lengthIn = distance(a.at, b.at);
      if (s !== undefined && t !== undefined && Math.abs(s - t) > STATIONS_APART) continue;
      if (lengthIn > reachIn || lengthIn === 0 || struck.has(pairId(a, b)) || !clear(a.id, b.id)) continue;
      const e = unit(sub(b.at, a.at));
      lines.push({
        id: pairId(a, b),
        from: compareClusters(a, b) <= 0 ? a : b,
        to: compareClusters(a, b) <= 0 ? b : a,
        lengthIn,
        at: [0, 1, 2].flatMap((c) => [3 * i + c]).concat([3 * j, 3 * j + 1, 3 * j + 2]),
        value: [...scale(e, -1), ...e],
      });
    }
  });
  return lines;
};
