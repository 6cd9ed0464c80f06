import { type Issue, issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import { type Hold, holds, type Reading, type RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import { type Foot, footOf, offLine, spanBetween } from './surface.ts';

/** Standard deviation of a reading whose instrument says none. Common practice, no source: a tape read to 1/32. */
export const ASSUMED_STD_IN = 1 / 32;

/** A reading as the adjustment sees it. */
export interface Observation {
  readonly id: string;
  readonly hold: Hold;
  /** Clusters the reading is between, as entered. */
  readonly clusters: readonly [Cluster, Cluster];
  readonly feet: readonly [Foot, Foot];
  readonly lengthIn: number;
  readonly stdIn: number;
  readonly stdAssumed: boolean;
  /** Axis distance it says, marks taken off at drawing positions. */
  readonly axisIn: number;
  /** Off a string (1: butt line) or a level line (2: water line) that lies at `lineAtIn`; both clusters are then the same. */
  readonly plane?: { readonly axis: 1 | 2; readonly lineAtIn: number };
}

/** The user's standard deviation per instrument: manual records with topic `std:trammel`. */
export const instrumentStd = (
  manual: readonly RecordOf<'manual'>[],
  instrument: string,
): number | undefined =>
  manual.findLast((m) => m.topic === `std:${instrument}` && (m.valueIn ?? 0) > 0)?.valueIn;

/** Length a reading says: as read, or what the trammel was set to less how far its point stood beyond the mark. */
export const lengthRead = (r: Reading): number | undefined =>
  r.lengthIn ?? (r.setAndMiss ? r.setAndMiss.setIn - r.setAndMiss.missIn : undefined);

const planeOf = (r: Reading): Observation['plane'] =>
  r.plane && { axis: r.plane.line === 'centreLine' ? 1 : 2, lineAtIn: r.plane.lineAtIn ?? 0 };

/**
 * Turns readings into observations. A reading that lacks a fact is left out and said so; nothing is filled in.
 *
 * @returns observations in order of hold, then as entered, and issues
 */
export const observe = (
  truss: Truss,
  readings: readonly Reading[],
  manual: readonly RecordOf<'manual'>[],
): { readonly observations: readonly Observation[]; readonly issues: readonly Issue[] } => {
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const at = (id: string): Vec3 => clusters.get(id)!.at;
  const issues: Issue[] = [];
  const observations: Observation[] = [];
  for (const r of readings) {
    const [a, b] = r.ends.map((e) => clusters.get(e.cluster));
    const where = `records[${r.id}]`;
    const say = (code: string, facts: Issue['facts'], mend: string): void => {
      issues.push(issue(code, where, { reading: r.id, ...facts }, mend));
    };
    if (!a || !b) {
      const unknown = r.ends.filter((e) => !clusters.has(e.cluster)).map((e) => e.cluster);
      say('reading-cluster-unknown', { clusters: unknown }, 'name-a-cluster');
      continue;
    }
    const plane = planeOf(r);
    if (a.id === b.id && !plane) {
      say('reading-to-itself', { cluster: a.id }, 'name-two-clusters');
      continue;
    }
    const feet = r.ends.map((e) => footOf(e, (id) => members.get(id)));
    const missing = feet.flatMap((f) => ('missing' in f ? [f.missing] : []));
    if (missing.length > 0) {
      say('reading-mark-incomplete', { missing }, 'say-tube-and-clock');
      continue;
    }
    const lengthIn = r.plane?.offIn ?? lengthRead(r);
    if (lengthIn === undefined || !(plane || lengthIn > 0)) {
      say('reading-without-length', {}, 'enter-length');
      continue;
    }
    const [p, q] = feet as [Foot, Foot];
    const own = r.stdIn ?? instrumentStd(manual, r.instrument);
    const span = plane ? offLine(p, plane.axis, plane.lineAtIn, at).lengthIn : spanBetween(p, q, at).lengthIn;
    const axis = plane
      ? a.at[plane.axis] - plane.lineAtIn
      : Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], a.at[2] - b.at[2]);
    observations.push({
      id: r.id,
      hold: r.hold,
      clusters: [a, b],
      feet: [p, q],
      lengthIn,
      stdIn: own ?? ASSUMED_STD_IN,
      stdAssumed: own === undefined,
      axisIn: axis + lengthIn - span,
      ...(plane ? { plane } : {}),
    });
  }
  const kinds = new Set(readings.flatMap((r) => r.ends.map((e) => e.mark)));
  if (kinds.size > 1)
    issues.push(issue('reading-marks-mixed', 'records', { marks: [...kinds].sort() }, 'check-marks'));
  observations.sort((x, y) => holds.indexOf(x.hold) - holds.indexOf(y.hold));
  return { observations, issues };
};

/** Repeats of one distance taken together. */
export interface Pooled {
  readonly readings: readonly string[];
  readonly axisIn: number;
  readonly stdIn: number;
  /** Sample standard deviation of the repeats. */
  readonly scatterIn?: number;
  readonly stdAssumed: boolean;
  readonly marked: boolean;
}

/**
 * Weighted mean of repeats: weights 1/s², standard deviation (Σ 1/s²)^−½, which is s/√n for equal ones.
 * Source: Ghilani, Adjustment Computations, weighted mean of repeated observations.
 */
export const pool = (repeats: readonly Observation[]): Pooled => {
  const weight = repeats.reduce((sum, o) => sum + o.stdIn ** -2, 0);
  const axisIn = repeats.reduce((sum, o) => sum + o.axisIn * o.stdIn ** -2, 0) / weight;
  const mean = repeats.reduce((sum, o) => sum + o.axisIn, 0) / repeats.length;
  const squares = repeats.reduce((sum, o) => sum + (o.axisIn - mean) ** 2, 0);
  return {
    readings: repeats.map((o) => o.id),
    axisIn,
    stdIn: weight ** -0.5,
    ...(repeats.length > 1 ? { scatterIn: Math.sqrt(squares / (repeats.length - 1)) } : {}),
    stdAssumed: repeats.some((o) => o.stdAssumed),
    marked: repeats.some((o) => o.feet.some((f) => f.mark !== 'axis' || f.alongIn > 0)),
  };
};
