import { figure } from '../base/figure.ts';
import { type Issue, issue } from '../base/issue.ts';
import { distance, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import { DATUM_STD_IN } from './adjust.ts';
import { type Datum, datumOf, spansPlane } from './datum.ts';
import { type Candidate, choose, makeSpan, WANTED_REDUNDANCY } from './design.ts';
import { ASSUMED_STD_IN } from './observations.ts';
import { compareClusters, pairId } from './pair.ts';
import { NONCENTRAL, UNCHECKED } from './reliability.ts';
import type { MeasuringPlan, PlannedReading } from './result.ts';
import { sightIn } from './sight.ts';
import { principal } from './sym3.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Longest distance a shop trammel spans. Common practice, no source; the user's own: manual record `trammel-reach`. */
export const ASSUMED_REACH_IN = 120;
/** Free clusters may stand this far off before anything is read (one standard deviation). methods.md 6. */
const FREE_STD_IN = 1;
const STATIONS_APART = 2;

/** Bays with findings and one sound bay each side; the whole truss when nothing is found. */
const baysConcerned = (truss: Truss, findings: readonly Finding[]): number[] => {
  const hurt = new Set(findings.map((f) => f.of));
  const hit = truss.bays.map(
    (b) => b.members.some((id) => hurt.has(id)) || b.clusters.some((id) => hurt.has(id)),
  );
  if (!hit.includes(true)) return hit.map((_, k) => k);
  return hit.flatMap((_, k) => (hit[k - 1] || hit[k] || hit[k + 1] ? [k] : []));
};

/** Bays to plan for, widened until they hold enough of the datum. */
const scopeOf = (
  truss: Truss,
  findings: readonly Finding[],
  manual: Manual,
): { bays: readonly number[]; clusters: readonly Cluster[]; datum: Datum } => {
  const inBays = (bays: readonly number[]): Cluster[] => {
    const ids = new Set(bays.flatMap((k) => truss.bays[k]!.clusters));
    return truss.bays.length === 0 ? [...truss.clusters] : truss.clusters.filter((c) => ids.has(c.id));
  };
  const bays = baysConcerned(truss, findings);
  const zone = datumOf(truss, findings, manual);
  const spans = (cs: readonly Cluster[]): boolean =>
    spansPlane(cs.filter((c) => zone.clusters.has(c.id)).map((c) => c.at));
  const named = zone.by === 'named';
  if ((findings.length === 0 && !named) || zone.by === 'none') {
    const clusters = inBays(bays);
    const [first] = clusters;
    const ring = clusters.filter((c) => c.station !== undefined && c.station === first?.station);
    return { bays, clusters, datum: { clusters: new Set(ring.map((c) => c.id)), by: 'forwardStations' } };
  }
  let wide = bays;
  while (!spans(inBays(wide)) && wide.length < truss.bays.length)
    wide = truss.bays.flatMap((_, k) => (wide.some((b) => Math.abs(b - k) <= 1) ? [k] : []));
  return { bays: wide, clusters: inBays(wide), datum: zone };
};

/** Lines the user has struck (`strike:U3L–L4L`, either way round, hyphen or dash), and strikes that name no line. */
const struckLines = (
  truss: Truss,
  manual: Manual,
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

interface Line extends Candidate {
  readonly id: string;
  readonly from: Cluster;
  readonly to: Cluster;
  readonly lengthIn: number;
}

const linesOf = (
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

/** From the front aft; at each station the line whose end is nearest to where the last one ended. */
const walk = <T extends { readonly line: Line }>(planned: readonly T[]): T[] => {
  const left = [...planned].sort(
    (a, b) => compareClusters(a.line.from, b.line.from) || compareClusters(a.line.to, b.line.to),
  );
  const path: T[] = [];
  const steps = (last: T | undefined, next: T): number => {
    if (!last) return 0;
    const ends = [last.line.from.at, last.line.to.at];
    return Math.min(...ends.flatMap((p) => [next.line.from.at, next.line.to.at].map((q) => distance(p, q))));
  };
  while (left.length > 0) {
    const [{ line: first }] = left as [T, ...T[]];
    const group = left.filter(
      ({ line }) =>
        line === first || (first.from.station !== undefined && line.from.station === first.from.station),
    );
    const next = group.reduce((best, p) => (steps(path.at(-1), p) < steps(path.at(-1), best) ? p : best));
    path.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return path;
};

/** Σ ← Σ − Σa aᵀΣ/(σ² + aᵀΣa) for every line read; the largest standard deviation of a cluster along any direction. */
const worstStd = (
  lines: readonly Line[],
  prior: Float64Array,
  clusters: number,
  stdIn: number,
): number | null => {
  const n = prior.length;
  if (n === 0) return null;
  const s = new Float64Array(n * n);
  for (let i = 0; i < n; i++) s[i * n + i] = prior[i]!;
  const column = new Float64Array(n);
  for (const { at, value } of lines) {
    for (let i = 0; i < n; i++) column[i] = at.reduce((sum, j, p) => sum + s[i * n + j]! * value[p]!, 0);
    const whole = stdIn ** 2 + at.reduce((sum, j, p) => sum + column[j]! * value[p]!, 0);
    for (let i = 0; i < n; i++) {
      const f = column[i]! / whole;
      if (f !== 0) for (let j = 0; j < n; j++) s[i * n + j] = s[i * n + j]! - f * column[j]!;
    }
  }
  let worst = 0;
  for (let c = 0; c < clusters; c++) {
    const block = [0, 1, 2, 3, 4, 5, 6, 7, 8].map(
      (k) => s[(3 * c + Math.floor(k / 3)) * n + 3 * c + (k % 3)]!,
    );
    worst = Math.max(worst, principal(block)[0]!.value);
  }
  return Math.sqrt(worst);
};

/** Directions of each free cluster that lie outside the span of the rows. */
const looseOf = (
  clusters: readonly Cluster[],
  free: readonly boolean[],
  lines: readonly Line[],
): MeasuringPlan['loose'] => {
  const span = makeSpan(lines, free);
  for (;;) {
    let best = -1;
    lines.forEach((_, c) => {
      if (span.left(c) > 1e-3 && (best < 0 || span.left(c) > span.left(best))) best = c;
    });
    if (best < 0) break;
    span.choose(best);
  }
  return clusters.flatMap((c, k) => {
    if (!free[3 * k]) return [];
    const open = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((n) => {
      const [i, j] = [3 * k + Math.floor(n / 3), 3 * k + (n % 3)];
      return (i === j ? 1 : 0) - span.basis.reduce((sum, q) => sum + q[i]! * q[j]!, 0);
    });
    const axes = principal(open).filter((a) => a.value > 1e-6);
    return axes.length > 0 ? [{ cluster: c.id, free: axes.map((a): Vec3 => a.axis) }] : [];
  });
};

/**
 * The measuring plan: the shortest list found of distances that fixes every cluster of the bays concerned in three
 * dimensions from the undamaged zone, with spares enough that an error in any line shows a fifth of itself at least.
 * Candidates lie within the trammel's reach, two stations apart at most, with a clear line; the user's struck lines
 * (manual records `strike:U3L–L4L`) are left out and the plan is made without them.
 */
export const planOf = (
  truss: Truss,
  findings: readonly Finding[],
  manual: Manual,
): { readonly plan: MeasuringPlan; readonly issues: readonly Issue[] } => {
  const { bays, clusters, datum } = scopeOf(truss, findings, manual);
  const own = manual.findLast((m) => m.topic === 'trammel-reach' && (m.valueIn ?? 0) > 0);
  const reachIn = own
    ? figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id })
    : figure(ASSUMED_REACH_IN, 'in', { kind: 'assumed', ref: 'trammel reach' }, ['trammel-reach-120']);
  const stdIn =
    manual.findLast((m) => m.topic === 'std:trammel' && (m.valueIn ?? 0) > 0)?.valueIn ?? ASSUMED_STD_IN;
  const { ids: struck, issues } = struckLines(truss, manual);
  const lines = linesOf(truss, clusters, datum.clusters, struck, reachIn.value);
  const free = clusters.flatMap((c) => Array<boolean>(3).fill(!datum.clusters.has(c.id)));
  const prior = Float64Array.from(free, (f) => (f ? FREE_STD_IN : DATUM_STD_IN) ** 2);
  const chosen = choose(lines, prior, free, stdIn).map((c) => ({ ...c, line: lines[c.candidate]! }));
  const readings = walk(chosen).map(
    ({ line, purpose, redundancy }): PlannedReading => ({
      target: line.id,
      from: line.from.id,
      to: line.to.id,
      lengthIn: line.lengthIn,
      purpose,
      redundancy,
      leastSeenIn: redundancy < UNCHECKED ? null : (NONCENTRAL * stdIn) / Math.sqrt(redundancy),
      read: false,
    }),
  );
  const planned = chosen.map((c) => c.line);
  const plan: MeasuringPlan = {
    bays: bays.map((k) => truss.bays[k]!.id),
    datum: clusters.filter((c) => datum.clusters.has(c.id)).map((c) => c.id),
    datumBy: datum.by,
    readings,
    loose: looseOf(clusters, free, planned),
    unchecked: readings.filter((r) => r.redundancy < WANTED_REDUNDANCY - 1e-9).map((r) => r.target),
    struck: [...struck].sort(),
    reachIn,
    worstStdIn: worstStd(planned, prior, clusters.length, stdIn),
  };
  return { plan, issues };
};

/** The plan with the lines marked that are read already; the plan itself does not lean on readings. */
export const markRead = (plan: MeasuringPlan, read: ReadonlySet<string>): MeasuringPlan => ({
  ...plan,
  readings: plan.readings.map((r) => (read.has(r.target) ? { ...r, read: true } : r)),
});
