import { type Issue, issue } from '../base/issue.ts';
import { cross, length, sub, type Vec3 } from '../base/vec3.ts';
import type { Adjustment } from '../trammel/adjustment.ts';
import type { Trammel } from '../trammel/result.ts';
import type { Truss } from '../truss/result.ts';
import type { ChangedFrame } from './changedFrame.ts';
import { sourcesOn } from './lockedState.ts';
import type { Misfit } from './misfit.ts';
import { eliminate, root, solveLower } from './smallDense.ts';

/** Depth of a bow is known this well when nobody said how well: 1/32 in. Our assumption, as for a reading. */
const DEPTH_STD_IN = 1 / 32;
/** A shortening is never known better than this, inches. */
const LEAST_STD_IN = 1e-3;

/** What the measured shape says about the bends: their shortenings with it taken in, or that they do not explain it. */
export interface ShapeTaken {
  readonly kind: 'none' | 'taken' | 'doesNotExplain';
  readonly misfits: readonly Misfit[];
  readonly issues: readonly Issue[];
}

/** One standard deviation of a shortening δ ∝ e²: 2 δ σ_e/e, inches. */
const stretchStd = (m: Misfit): number =>
  Math.max(LEAST_STD_IN, (2 * m.shortIn * (m.stdIn ?? DEPTH_STD_IN)) / m.depthIn);

/** χ² that 0.1 % of sound adjustments exceed. Source: Wilson & Hilferty 1931; within 2 % of the tables from 3 freedoms up. */
export const chi2At999 = (freedoms: number): number => {
  const v = 2 / (9 * freedoms);
  return freedoms * (1 - v + 3.0902 * Math.sqrt(v)) ** 3;
};

interface Seen {
  readonly id: string;
  readonly at: Vec3;
  readonly move: Vec3;
  /** L of Q = L Lᵀ. */
  readonly whiten: Float64Array;
}

const seenIn = (truss: Truss, adjustment: Adjustment): Seen[] => {
  const places = new Map(truss.clusters.map((c) => [c.id, c.at]));
  return adjustment.clusters.flatMap((c) => {
    const at = places.get(c.id);
    if (!at || c.fixedBy !== 'all') return [];
    const whiten = root(Float64Array.from(c.covariance), 3);
    return whiten[0] && whiten[4] && whiten[8] ? [{ id: c.id, at, move: c.moveIn, whiten }] : [];
  });
};

const whitened = (s: Seen, v: Vec3): Float64Array => {
  const out = Float64Array.from(v);
  solveLower(s.whiten, 3, out);
  return out;
};

/**
 * Shortenings of the measured bends with the moves of the clusters taken in.
 *
 *   min (d − K⁻¹BᵀD x − R g)ᵀ Q⁻¹ (…) + Σ ((x_i + δ_i)/σ_i)²,   R g any rigid motion
 *
 * Moves are never taken as elastic: only the tubes with a finding may have changed length. When χ² at 0.1 % rejects, the
 * recorded damage does not explain the shape: said, with the worst bay, and the bows are used alone.
 *
 * @param changed  frame with the bent tubes as soft as they are
 * Assumes: readings before cutting; each cluster's own covariance, none between clusters; shortening only.
 * Source: methods section 3; Ghilani, Adjustment Computations (prior knowledge as observations).
 */
export const withMovedClusters = (
  truss: Truss,
  changed: ChangedFrame,
  misfits: readonly Misfit[],
  trammel: Trammel,
): ShapeTaken => {
  const none: ShapeTaken = { kind: 'none', misfits, issues: [] };
  const adjustment = trammel.byHold.beforeCutting;
  if (!adjustment) return none;
  const { frame } = changed;
  const bent = misfits.filter((m) => frame.memberIndex.has(m.member));
  const seen = seenIn(truss, adjustment);
  const unknowns = bent.length + 6;
  if (3 * seen.length <= 6) return none;
  const unit = sourcesOn(
    changed,
    bent.map((m) => ({ ...m, shortIn: -1 })),
  );
  const centre = seen[0]!.at;
  const span = Math.max(1, ...seen.map((s) => length(sub(s.at, centre))));
  const normal = new Float64Array(unknowns * unknowns);
  const right = new Float64Array(unknowns);
  const rows = seen.map((s) => {
    const c = frame.clusterIndex.get(s.id)! * 6;
    const columns = [
      ...unit.map((u): Vec3 => [u.moves.short[c]!, u.moves.short[c + 1]!, u.moves.short[c + 2]!]),
      ...rigidAt(sub(s.at, centre), span),
    ].map((v) => whitened(s, v));
    const d = whitened(s, s.move);
    columns.forEach((p, i) => {
      right[i]! += dot3(p, d);
      columns.forEach((q, j) => {
        normal[i * unknowns + j]! += dot3(p, q);
      });
    });
    return { s, columns, d };
  });
  bent.forEach((m, i) => {
    const weight = 1 / stretchStd(m) ** 2;
    normal[i * unknowns + i]! += weight;
    right[i]! -= weight * m.shortIn;
  });
  const x = right.slice();
  if (eliminate(normal, unknowns, x, 1) < 1e-13) return none;
  const squares = rows.map(({ s, columns, d }) => ({
    id: s.id,
    omega: d.reduce((sum, v, k) => sum + (v - columns.reduce((t, p, i) => t + p[k]! * x[i]!, 0)) ** 2, 0),
  }));
  const prior = bent.reduce((sum, m, i) => sum + ((x[i]! + m.shortIn) / stretchStd(m)) ** 2, 0);
  const omega = squares.reduce((sum, p) => sum + p.omega, prior);
  const freedoms = 3 * seen.length - 6;
  if (omega > chi2At999(freedoms)) {
    const facts = { bay: worstBay(truss, squares), chi2: omega, limit: chi2At999(freedoms), freedoms };
    const said = issue('damage-does-not-explain-shape', 'readings', facts, 'look-for-damage-in-this-bay');
    return { kind: 'doesNotExplain', misfits, issues: [said] };
  }
  const stretch = new Map(bent.map((m, i) => [m.member, x[i]!]));
  return {
    kind: 'taken',
    misfits: misfits.map((m) => ({ ...m, shortIn: -(stretch.get(m.member) ?? -m.shortIn) })),
    issues: [],
  };
};

const dot3 = (a: Float64Array, b: Float64Array): number => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;

/** The six rigid motions at a place; turns scaled by the span. */
const rigidAt = (arm: Vec3, span: number): Vec3[] => {
  const axes: Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return [...axes, ...axes.map((a): Vec3 => cross(a, [arm[0] / span, arm[1] / span, arm[2] / span]))];
};

/** The bay whose clusters fit worst. */
const worstBay = (
  truss: Truss,
  squares: readonly { readonly id: string; readonly omega: number }[],
): string => {
  const of = new Map(squares.map((s) => [s.id, s.omega]));
  let worst = { id: '', sum: -1 };
  for (const bay of truss.bays) {
    const known = bay.clusters.filter((c) => of.has(c));
    if (known.length === 0) continue;
    const sum = known.reduce((t, c) => t + of.get(c)!, 0) / known.length;
    if (sum > worst.sum) worst = { id: bay.id, sum };
  }
  return worst.id;
};
