import { figure } from '../base/figure.ts';
import type { Issue } from '../base/issue.ts';
import { distance, type Vec3 } from '../base/vec3.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import { DATUM_STD_IN } from './adjust.ts';
import { choose, WANTED_REDUNDANCY } from './design.ts';
import { type Line, linesOf, struckLines } from './lines.ts';
import { ASSUMED_STD_IN } from './observations.ts';
import { compareClusters } from './pair.ts';
import { NONCENTRAL, UNCHECKED } from './reliability.ts';
import type { MeasuringPlan, PlannedReading } from './result.ts';
import { type Scope, scopeOf, wholeScope, windowsOf } from './scope.ts';
import { makeSpan } from './span.ts';
import { principal } from './sym3.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Longest distance a shop trammel spans. Common practice, no source; the user's own: manual record `trammel-reach`. */
export const ASSUMED_REACH_IN = 120;
/** Free clusters may stand this far off before anything is read (one standard deviation). methods.md 6. */
const FREE_STD_IN = 3;

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

/** The measuring plan of the bays concerned, and the readings of the whole truss for baseline and as-left. */
export interface Planned {
  readonly plan: MeasuringPlan;
  /** Readings that fix the whole truss; those of the plan when it covers the whole already. */
  readonly whole: readonly PlannedReading[];
  readonly issues: readonly Issue[];
}

interface Chosen {
  readonly clusters: readonly Cluster[];
  readonly free: readonly boolean[];
  readonly prior: Float64Array;
  readonly lines: readonly Line[];
  readonly readings: readonly PlannedReading[];
}

const chosenFor = (
  truss: Truss,
  { clusters, datum }: Pick<Scope, 'clusters' | 'datum'>,
  struck: ReadonlySet<string>,
  reachIn: number,
  stdIn: number,
): Chosen => {
  const lines = linesOf(truss, clusters, datum.clusters, struck, reachIn);
  const free = clusters.flatMap((c) => Array<boolean>(3).fill(!datum.clusters.has(c.id)));
  const prior = Float64Array.from(free, (f) => (f ? FREE_STD_IN : DATUM_STD_IN) ** 2);
  const chosen = choose(lines, prior, free, stdIn).map((c) => ({ ...c, line: lines[c.candidate]! }));
  const readings = walk(chosen).map(
    ({ line, purpose, redundancy }): PlannedReading => ({
      target: line.id,
      from: line.from.id,
      to: line.to.id,
      lengthIn: line.lengthIn,
      ...(line.from.assumed || line.to.assumed ? { guessed: true as const } : {}),
      purpose,
      redundancy,
      leastSeenIn: redundancy < UNCHECKED ? null : (NONCENTRAL * stdIn) / Math.sqrt(redundancy),
      read: false,
    }),
  );
  return { clusters, free, prior, lines: chosen.map((c) => c.line), readings };
};

/** More clusters than this are planned window by window: choosing among all lines at once grows with their cube. */
const MOST_AT_ONCE = 48;

interface Pieces {
  readonly readings: readonly PlannedReading[];
  readonly loose: MeasuringPlan['loose'];
  /** Null when it was planned in windows: then no one sum holds all. */
  readonly worstStdIn: number | null;
}

/**
 * Readings for a scope: at once, or in windows of a few bays outward from the datum, each from the ring that the one
 * before has fixed (taken as known to 1/16 in, as the datum is).
 */
const piecesFor = (
  truss: Truss,
  scope: Scope,
  struck: ReadonlySet<string>,
  reachIn: number,
  stdIn: number,
): Pieces => {
  const pieces = scope.clusters.length > MOST_AT_ONCE ? windowsOf(truss, scope) : [scope];
  const chosen = pieces.map((piece) => chosenFor(truss, piece, struck, reachIn, stdIn));
  const [only] = chosen;
  const place = new Map(truss.clusters.map((c, k) => [c.id, k]));
  return {
    readings:
      chosen.length === 1
        ? only!.readings
        : chosen.flatMap((c) => c.readings).sort((a, b) => place.get(a.from)! - place.get(b.from)!),
    loose: chosen.flatMap((c) => looseOf(c.clusters, c.free, c.lines)),
    worstStdIn: chosen.length === 1 ? worstStd(only!.lines, only!.prior, only!.clusters.length, stdIn) : null,
  };
};

/**
 * The measuring plan: the shortest list found of distances that fixes every cluster of the bays concerned in three
 * dimensions from the undamaged zone, with spares enough that an error in any line shows a fifth of itself at least.
 * Candidates lie within the trammel's reach, two stations apart at most, with a clear line; the user's struck lines
 * (manual records `strike:U3L–L4L`) are left out and the plan is made without them. Leans on no reading, so that
 * entering one does not rework it.
 */
export const planOf = (truss: Truss, findings: readonly Finding[], manual: Manual): Planned => {
  const scope = scopeOf(truss, findings, manual);
  const own = manual.findLast((m) => m.topic === 'trammel-reach' && (m.valueIn ?? 0) > 0);
  const reachIn = own
    ? figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id })
    : figure(ASSUMED_REACH_IN, 'in', { kind: 'assumed', ref: 'trammel reach' }, ['trammel-reach-120']);
  const stdIn =
    manual.findLast((m) => m.topic === 'std:trammel' && (m.valueIn ?? 0) > 0)?.valueIn ?? ASSUMED_STD_IN;
  const { ids: struck, issues } = struckLines(truss, manual);
  const chosen = piecesFor(truss, scope, struck, reachIn.value, stdIn);
  const covered = scope.datum.by === 'forwardStations' && scope.bays.length === truss.bays.length;
  const { readings, loose, worstStdIn } = chosen;
  const whole = covered
    ? readings
    : piecesFor(truss, wholeScope(truss, scope), struck, reachIn.value, stdIn).readings;
  const plan: MeasuringPlan = {
    bays: scope.bays.map((k) => truss.bays[k]!.id),
    datum: scope.clusters.filter((c) => scope.datum.clusters.has(c.id)).map((c) => c.id),
    datumBy: scope.datum.by,
    readings,
    loose,
    unchecked: readings.filter((r) => r.redundancy < WANTED_REDUNDANCY - 1e-9).map((r) => r.target),
    struck: [...struck].sort(),
    reachIn,
    worstStdIn,
  };
  return { plan, whole, issues };
};

/** The plan with the lines marked that are read already; the plan itself does not lean on readings. */
export const markRead = (plan: MeasuringPlan, read: ReadonlySet<string>): MeasuringPlan => ({
  ...plan,
  readings: plan.readings.map((r) => (read.has(r.target) ? { ...r, read: true } : r)),
});
