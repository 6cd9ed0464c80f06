import { distance, length, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Truss } from '../truss/result.ts';
import { singularValues, symmetricEigen } from './dense.ts';
import type { HeldNow } from './held.ts';
import type { ClusterMove, MechanismShape, SelfStress } from './result.ts';

/** Larger trusses are not decomposed: the work grows with the cube of the members. */
const LARGEST = 300;
/** At most so many movements and states are listed; the counts say how many there are. */
const LISTED = 8;
/** Parts of a listed movement or state smaller than this are rounding. */
const NOTHING = 1e-6;
/** A singular value below this share of the largest counts as zero … */
const ZERO_SHARE = 1e-9;
/** … if the smallest that counts stands this many times above it; else it cannot be decided. */
const GAP = 1e3;

/** States of self-stress and mechanisms of the truss were every joint pinned. */
export interface PinnedCount {
  readonly selfStress: number;
  /** Internal mechanisms: movements besides those of the whole body that the supports leave. */
  readonly mechanisms: number;
}

interface Equilibrium {
  readonly members: readonly string[];
  /** Rows: free freedoms. */
  readonly rows: number[][];
  /** Cluster index × 3 + axis of each row. */
  readonly freedoms: readonly number[];
  readonly rigidLeft: number;
}

/**
 * Counts of the pinned idealisation, from the rank of the equilibrium matrix A (Maxwell's count alone is wrong).
 *
 *   s = b − rank A,  m = freedoms − rank A − rigid motions left by the supports
 *
 * @returns null beyond 300 members, or when the singular values leave no clear gap
 * Source: Pellegrino & Calladine, Int. J. Solids Structures 22 (1986) 409.
 */
export const pinnedCount = (truss: Truss, support: HeldNow): PinnedCount | null => {
  const ranked = rankedOf(truss, support);
  return ranked && countOf(ranked);
};

/** Independent states of self-stress of the pinned idealisation; null when they cannot be told apart. */
export const selfStressStates = (truss: Truss, support: HeldNow): readonly SelfStress[] | null => {
  const ranked = rankedOf(truss, support);
  return ranked && statesOf(ranked, selfStressVectors(ranked));
};

/** Independent free movements of the pinned idealisation, whole-body ones included, the largest movement 1. */
export const pinnedMovements = (
  truss: Truss,
  support: HeldNow,
): readonly (readonly ClusterMove[])[] | null => {
  const ranked = rankedOf(truss, support);
  return ranked && movementsOf(truss, ranked, movementVectors(ranked));
};

/** Orthonormal states of self-stress: `vectors[state][bar]`, bars in the order of `members`. */
export interface SelfStressBasis {
  readonly members: readonly string[];
  readonly vectors: readonly (readonly number[])[];
}

/** Counts, and the first few free movements and states of self-stress, each as local as the others allow. */
export interface Pinned {
  readonly pinned: PinnedCount | null;
  readonly mechanismShapes: readonly MechanismShape[];
  readonly selfStressStates: readonly SelfStress[];
  readonly basis: SelfStressBasis | null;
}

/** The pinned idealisation for people to look at; nothing but null and empty lists beyond 300 members. */
export const pinnedIdealisation = (truss: Truss, support: HeldNow): Pinned => {
  const ranked = rankedOf(truss, support);
  if (!ranked) return { pinned: null, mechanismShapes: [], selfStressStates: [], basis: null };
  const vectors = selfStressVectors(ranked);
  const listed = (vectors: number[][]): number[][] => localised(vectors).slice(0, LISTED);
  return {
    pinned: countOf(ranked),
    mechanismShapes: movementsOf(truss, ranked, listed(movementVectors(ranked))).map((shape) =>
      shape.filter(({ moveIn }) => length(moveIn) > NOTHING).map(({ id, moveIn }) => ({ id, moveIn })),
    ),
    basis: { members: ranked.members, vectors },
    selfStressStates: statesOf(ranked, listed(vectors)).map(({ members }) => ({
      members: members.filter(({ share }) => Math.abs(share) > NOTHING),
    })),
  };
};

interface Ranked extends Equilibrium {
  readonly rank: number;
}

const rankedOf = (truss: Truss, support: HeldNow): Ranked | null => {
  const a = equilibrium(truss, support);
  const rank = a.members.length > LARGEST ? null : rankOf(a);
  return rank === null ? null : { ...a, rank };
};

const countOf = (a: Ranked): PinnedCount => ({
  selfStress: a.members.length - a.rank,
  mechanisms: a.freedoms.length - a.rank - a.rigidLeft,
});

const selfStressVectors = (a: Ranked): number[][] =>
  nullVectors(transposed(a.rows, a.members.length), a.members.length - a.rank);

const movementVectors = (a: Ranked): number[][] => nullVectors(a.rows, a.freedoms.length - a.rank);

const statesOf = (a: Ranked, vectors: number[][]): SelfStress[] =>
  vectors.map((vector) => {
    const whole = largestToOne(vector);
    return { members: a.members.map((id, k) => ({ id, share: whole[k]! })) };
  });

const movementsOf = (truss: Truss, a: Ranked, vectors: number[][]): (readonly ClusterMove[])[] =>
  vectors.map((vector) => {
    const moves = new Float64Array(3 * truss.clusters.length);
    largestToOne(vector).forEach((v, k) => {
      moves[a.freedoms[k]!] = v;
    });
    return truss.clusters.map(({ id }, c) => ({
      id,
      moveIn: [moves[3 * c]!, moves[3 * c + 1]!, moves[3 * c + 2]!] as const,
      turnRad: [0, 0, 0] as const,
    }));
  });

/**
 * The same space by other vectors: each is the only one that is not 0 at its own entry (Gauss–Jordan, the largest entry
 * left as the pivot), so that one movement or state shows one thing.
 */
const localised = (vectors: number[][]): number[][] => {
  const rows = vectors.map((v) => [...v]);
  rows.forEach((_, k) => {
    let best = { row: k, at: 0, size: 0 };
    for (let r = k; r < rows.length; r++)
      rows[r]!.forEach((v, at) => {
        if (Math.abs(v) > best.size * (1 + 1e-9)) best = { row: r, at, size: Math.abs(v) };
      });
    [rows[k], rows[best.row]] = [rows[best.row]!, rows[k]!];
    const pivot = rows[k]!;
    const by = pivot[best.at]!;
    for (let c = 0; c < pivot.length; c++) pivot[c]! /= by;
    rows.forEach((row, r) => {
      const times = row[best.at]!;
      if (r !== k && times !== 0) for (let c = 0; c < row.length; c++) row[c]! -= times * pivot[c]!;
    });
  });
  return rows;
};

const equilibrium = (truss: Truss, support: HeldNow): Equilibrium => {
  const index = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const bars = [...truss.members, ...support.braces].flatMap((m) => {
    const i = index.get(m.from);
    const j = index.get(m.to);
    if (i === undefined || j === undefined) return [];
    const e = unit(sub(truss.clusters[j]!.at, truss.clusters[i]!.at));
    return length(e) === 0 ? [] : [{ id: m.id, i, j, e }];
  });
  const used = new Set(bars.flatMap((m) => [m.i, m.j]));
  const held = new Set(
    support.held.flatMap(({ cluster, fixed }) =>
      fixed.map((f) => 3 * index.get(cluster)! + 'xyz'.indexOf(f)),
    ),
  );
  const all = [...used].sort((p, q) => p - q).flatMap((c) => [3 * c, 3 * c + 1, 3 * c + 2]);
  const freedoms = all.filter((f) => !held.has(f));
  const rows = freedoms.map((f) => {
    const c = Math.floor(f / 3);
    return bars.map((m) => (m.i === c ? m.e[f % 3]! : m.j === c ? -m.e[f % 3]! : 0));
  });
  const rigid = rigidMotions(truss, all);
  const heldRows = all.flatMap((f, k) => (held.has(f) ? [rigid[k]!] : []));
  return {
    members: bars.map((m) => m.id),
    rows,
    freedoms,
    rigidLeft: plainRank(rigid) - plainRank(heldRows),
  };
};

/** The six motions of a rigid body at each freedom, turning measured over the size of the truss. */
const rigidMotions = (truss: Truss, freedoms: readonly number[]): number[][] => {
  const places = truss.clusters.map((c) => c.at);
  const origin = places[0] ?? ([0, 0, 0] as Vec3);
  const size = Math.max(...places.map((at) => distance(at, origin))) || 1;
  return freedoms.map((f) => {
    const [x, y, z] = scale(sub(places[Math.floor(f / 3)]!, origin), 1 / size);
    if (f % 3 === 0) return [1, 0, 0, 0, z, -y];
    if (f % 3 === 1) return [0, 1, 0, -z, 0, x];
    return [0, 0, 1, y, -x, 0];
  });
};

const plainRank = (rows: number[][]): number => {
  if (rows.length === 0) return 0;
  const values = singularValues(rows);
  return values.filter((s) => s > ZERO_SHARE * values[0]!).length;
};

const rankOf = (a: Equilibrium): number | null => {
  if (a.rows.length === 0 || a.members.length === 0) return 0;
  const values = singularValues(a.rows);
  const rank = values.filter((s) => s > ZERO_SHARE * values[0]!).length;
  const next = values[rank] ?? 0;
  return rank > 0 && next > 0 && values[rank - 1]! / next < GAP ? null : rank;
};

/** Unit vectors x with xᵀA = 0, as many as asked for. */
const nullVectors = (rows: number[][], count: number): number[][] => {
  if (count === 0) return [];
  const square = rows.map((p) => rows.map((q) => p.reduce((s, v, k) => s + v * q[k]!, 0)));
  return symmetricEigen(square).vectors.slice(0, count);
};

const transposed = (rows: number[][], columns: number): number[][] =>
  Array.from({ length: columns }, (_, c) => rows.map((row) => row[c]!));

/** Scaled so that the entry of largest size is 1; the first of equal ones decides the sign. */
const largestToOne = (vector: readonly number[]): number[] => {
  const largest = vector.reduce((best, v) => (Math.abs(v) > Math.abs(best) * (1 + 1e-9) ? v : best), 0);
  return vector.map((v) => (largest === 0 ? 0 : v / largest));
};
