import type { Vec3 } from '../base/vec3.ts';
import { choleskyOf, type Envelope, entry, envelopeOf, inverseWithin, solveWith } from './normal.ts';
import type { Observation } from './observations.ts';
import { offLine, spanBetween } from './surface.ts';

/** Undamaged clusters are held to the drawing this closely, so that a wrong "undamaged" can show. */
export const DATUM_STD_IN = 1 / 16;
/** Holds free clusters near the last step while iterating; it draws them nowhere. */
const STEP_WEIGHT = 1 / 5 ** 2;
/** Stands in for the readings in directions they leave free: one standard deviation of 1,000 in. */
const LOOSE_WEIGHT = 1e-6;

/** The unknown places of one hold and what is observed of them. */
export interface Network {
  readonly clusters: readonly string[];
  readonly index: ReadonlyMap<string, number>;
  /** Drawing places, three a cluster. */
  readonly drawing: Float64Array;
  readonly observations: readonly Observation[];
  readonly envelope: Envelope;
  readonly elsewhere: ReadonlyMap<string, Vec3>;
}

/**
 * Numbers the clusters that readings touch, in the order of the truss.
 *
 * @param  places   drawing places, in order of the truss
 * @param  asked    pairs whose covariance will be asked for besides those read
 */
export const networkOf = (
  places: ReadonlyMap<string, Vec3>,
  observations: readonly Observation[],
  asked: Iterable<readonly [string, string]> = [],
): Network => {
  const touched = new Set(observations.flatMap((o) => o.clusters.map((c) => c.id)));
  const clusters = [...places.keys()].filter((id) => touched.has(id));
  const index = new Map(clusters.map((id, k) => [id, k]));
  const drawing = Float64Array.from(clusters.flatMap((id) => places.get(id)!));
  const first = Int32Array.from({ length: clusters.length }, (_, k) => k);
  const join = (ids: readonly (string | undefined)[]): void => {
    const known = ids.flatMap((id) => index.get(id ?? '') ?? []);
    const least = Math.min(...known);
    for (const k of known) first[k] = Math.min(first[k]!, least);
  };
  for (const o of observations) join(o.feet.flatMap((f) => [f.cluster, f.toward]));
  for (const pair of asked) if (pair.every((id) => index.has(id))) join(pair);
  const rows = Int32Array.from({ length: drawing.length }, (_, i) => 3 * first[Math.floor(i / 3)]!);
  return { clusters, index, drawing, observations, envelope: envelopeOf(rows), elsewhere: places };
};

/** What is set for one solution: weights of the readings (0 = set aside) and the clusters held to the drawing. */
export interface Setting {
  readonly weights: Float64Array;
  readonly datum: ReadonlySet<string>;
}

export interface Solution {
  readonly network: Network;
  readonly setting: Setting;
  readonly places: Float64Array;
  /** Adjusted − read, per observation. */
  readonly residuals: Float64Array;
  /** Ω: weighted squares of the readings and of the datum's moves. */
  readonly omega: number;
  /** Variance a N⁻¹ aᵀ of each adjusted reading. */
  readonly variances: Float64Array;
  /** Entry of N⁻¹ between two coordinates; in the envelope only. */
  readonly cofactor: (i: number, j: number) => number;
}

interface Row {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

const lookUp = (net: Network, x: Float64Array): ((id: string) => Vec3) => {
  return (id) => {
    const k = net.index.get(id);
    return k === undefined ? net.elsewhere.get(id)! : [x[3 * k]!, x[3 * k + 1]!, x[3 * k + 2]!];
  };
};

const rowsAt = (net: Network, x: Float64Array): { rows: Row[]; residuals: Float64Array } => {
  const at = lookUp(net, x);
  const residuals = new Float64Array(net.observations.length);
  const rows = net.observations.map((o, n): Row => {
    const { lengthIn, gradient } = o.plane
      ? offLine(o.feet[0], o.plane.axis, o.plane.lineAtIn, at)
      : spanBetween(o.feet[0], o.feet[1], at);
    residuals[n] = lengthIn - o.lengthIn;
    const where: number[] = [];
    const value: number[] = [];
    for (const [id, g] of gradient) {
      const k = net.index.get(id);
      if (k === undefined) continue;
      where.push(3 * k, 3 * k + 1, 3 * k + 2);
      value.push(...g);
    }
    return { at: where, value };
  });
  return { rows, residuals };
};

const held = (net: Network, set: Setting): number[] =>
  net.clusters.flatMap((id, k) => (set.datum.has(id) ? [3 * k, 3 * k + 1, 3 * k + 2] : []));

const omegaOf = (net: Network, set: Setting, x: Float64Array, residuals: Float64Array): number =>
  residuals.reduce((sum, v, n) => sum + set.weights[n]! * v * v, 0) +
  held(net, set).reduce((sum, i) => sum + ((x[i]! - net.drawing[i]!) / DATUM_STD_IN) ** 2, 0);

const normalOf = (net: Network, set: Setting, rows: readonly Row[], loose: number): Float64Array => {
  const { start, size, length } = net.envelope;
  const a = new Float64Array(length);
  rows.forEach((row, n) => {
    const w = set.weights[n]!;
    if (w === 0) return;
    for (let p = 0; p < row.at.length; p++)
      for (let q = 0; q < row.at.length; q++) {
        const i = row.at[p]!;
        const j = row.at[q]!;
        if (j <= i) a[start[i]! + j] = a[start[i]! + j]! + w * row.value[p]! * row.value[q]!;
      }
  });
  for (let i = 0; i < size; i++) a[start[i]! + i] = a[start[i]! + i]! + loose;
  for (const i of held(net, set)) a[start[i]! + i] = a[start[i]! + i]! + DATUM_STD_IN ** -2;
  return a;
};

/** Weight 1/s² of every reading, nothing set aside. */
export const fullWeights = (observations: readonly Observation[]): Float64Array =>
  Float64Array.from(observations, (o) => o.stdIn ** -2);

/**
 * The places that make the weighted squares least.
 *
 *   Ω = Σ ((s_k(X) − l_k)/σ_k)² + Σ_datum |X − X₀|²/σ_d²,   (JᵀWJ + D) δ = −(JᵀWv + D(X − X₀))
 *
 * Gauss–Newton from the drawing with halved steps, at most 40, to 1e−10 in. Directions the readings leave free stay
 * where they were and come out with a very large variance.
 * Source: Mikhail & Ackermann, Observations and Least Squares (1976), ch. 5; Ghilani, Adjustment Computations, trilateration.
 */
export const adjust = (net: Network, setting: Setting, from: Float64Array = net.drawing): Solution => {
  const { envelope } = net;
  const factor = (rows: readonly Row[], loose: number): Float64Array => {
    const l = choleskyOf(envelope, normalOf(net, setting, rows, loose));
    if (!l) throw new Error('normal matrix not positive definite');
    return l;
  };
  let x = new Float64Array(from);
  let now = rowsAt(net, x);
  let omega = omegaOf(net, setting, x, now.residuals);
  for (let round = 0; round < 40; round++) {
    const b = new Float64Array(envelope.size);
    now.rows.forEach((row, n) => {
      const push = -setting.weights[n]! * now.residuals[n]!;
      row.at.forEach((i, p) => {
        b[i] = b[i]! + push * row.value[p]!;
      });
    });
    for (const i of held(net, setting)) b[i] = b[i]! - (x[i]! - net.drawing[i]!) / DATUM_STD_IN ** 2;
    const step = solveWith(envelope, factor(now.rows, STEP_WEIGHT), b);
    let share = 1;
    let tried = x;
    let then = now;
    let better = omega;
    for (; share > 1e-3; share /= 2) {
      tried = x.map((v, i) => v + share * step[i]!);
      then = rowsAt(net, tried);
      better = omegaOf(net, setting, tried, then.residuals);
      if (better <= omega * (1 + 1e-12) + 1e-20) break;
    }
    if (share <= 1e-3) break;
    const size = step.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
    x = tried;
    now = then;
    omega = better;
    if (size < 1e-10) break;
  }
  const inverse = inverseWithin(envelope, factor(now.rows, LOOSE_WEIGHT));
  const cofactor = (i: number, j: number): number => entry(envelope, inverse, i, j);
  const variances = Float64Array.from(now.rows, (row) => {
    let sum = 0;
    for (let p = 0; p < row.at.length; p++)
      for (let q = 0; q < row.at.length; q++)
        sum += row.value[p]! * row.value[q]! * cofactor(row.at[p]!, row.at[q]!);
    return sum;
  });
  return { network: net, setting, places: x, residuals: now.residuals, omega, variances, cofactor };
};

/** Place of a cluster in a solution; its drawing place when no reading touches it. */
export const placeIn = (s: Solution, id: string): Vec3 => lookUp(s.network, s.places)(id);

/** Adjusted − drawing. */
export const moveIn = (s: Solution, id: string): Vec3 => {
  const k = s.network.index.get(id)!;
  const at = (c: number): number => s.places[3 * k + c]! - s.network.drawing[3 * k + c]!;
  return [at(0), at(1), at(2)];
};

/** Covariance of two clusters' places, 3 × 3 row-major, in². */
export const covarianceOf = (s: Solution, a: string, b: string): readonly number[] => {
  const i = 3 * s.network.index.get(a)!;
  const j = 3 * s.network.index.get(b)!;
  return [0, 1, 2, 3, 4, 5, 6, 7, 8].map((k) => s.cofactor(i + Math.floor(k / 3), j + (k % 3)));
};

/** A sum of moves, Σ wᵀ (X − X₀), and its standard deviation; every pair of clusters must lie in the envelope. */
export const sumOfMoves = (
  s: Solution,
  terms: ReadonlyMap<string, Vec3>,
): { readonly value: number; readonly std: number } => {
  const flat = [...terms].flatMap(([id, w]) => {
    const k = 3 * s.network.index.get(id)!;
    return w.map((weight, c) => ({ at: k + c, weight }));
  });
  const value = flat.reduce((sum, t) => sum + t.weight * (s.places[t.at]! - s.network.drawing[t.at]!), 0);
  let variance = 0;
  for (const p of flat) for (const q of flat) variance += p.weight * q.weight * s.cofactor(p.at, q.at);
  return { value, std: Math.sqrt(Math.max(0, variance)) };
};
