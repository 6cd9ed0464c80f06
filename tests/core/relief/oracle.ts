import { Matrix, solve } from 'ml-matrix';
import type { Truss } from '../../../src/core/truss/result.ts';

/**
 * The independent opinion: a frame assembled from the textbook local-axes 12 × 12 stiffness, factored again by a
 * general-purpose library for every question. Shares no arithmetic with `src`.
 * Source of the matrix: Przemieniecki, Theory of Matrix Structural Analysis (1968), eq. 5.116 (no shear).
 */
export interface NaiveOptions {
  readonly truss: Truss;
  /** `cluster → fixed freedoms 0…5`. */
  readonly fixed: ReadonlyMap<string, readonly number[]>;
  /** Members sawn through. */
  readonly gone?: ReadonlySet<string>;
  /** Free end displacements (12, aircraft axes) of members that do not fit. */
  readonly free?: ReadonlyMap<string, readonly number[]>;
  /** Local stiffness in place of the straight tube's, and the frame it is written in. */
  readonly soft?: ReadonlyMap<string, Matrix>;
  readonly loads?: readonly number[];
}

export interface NaiveMember {
  readonly id: string;
  /** Forces on the two ends, aircraft axes, 12. */
  readonly ends: readonly number[];
  readonly axial: number;
  /** Largest bending moment of the two ends. */
  readonly moment: number;
}

export interface NaiveAnswer {
  readonly moves: readonly number[];
  readonly members: ReadonlyMap<string, NaiveMember>;
  readonly energy: number;
}

const axesOf = (a: readonly number[], b: readonly number[]): number[][] => {
  const d = [b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!];
  const l = Math.hypot(...d);
  const x = d.map((v) => v / l);
  // Textbook reference vector: vertical, or aft for a vertical member.
  const up = Math.abs(x[2]!) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const cross = (p: number[], q: number[]): number[] => [
    p[1]! * q[2]! - p[2]! * q[1]!,
    p[2]! * q[0]! - p[0]! * q[2]!,
    p[0]! * q[1]! - p[1]! * q[0]!,
  ];
  const y0 = cross(up, x);
  const yl = Math.hypot(...y0);
  const y = y0.map((v) => v / yl);
  return [x, y, cross(x, y)];
};

export const straightStiffness = (ea: number, ei: number, gj: number, l: number): Matrix => {
  const k = Matrix.zeros(12, 12);
  const set = (r: number, c: number, v: number): void => {
    k.set(r, c, v);
    k.set(c, r, v);
  };
  set(0, 0, ea / l);
  set(6, 6, ea / l);
  set(0, 6, -ea / l);
  set(3, 3, gj / l);
  set(9, 9, gj / l);
  set(3, 9, -gj / l);
  const b = (12 * ei) / l ** 3;
  const m = (6 * ei) / l ** 2;
  for (const d of [1, 2]) {
    set(d, d, b);
    set(d + 6, d + 6, b);
    set(d, d + 6, -b);
  }
  // y with rz, z with ry (opposite sign).
  set(1, 5, m);
  set(1, 11, m);
  set(5, 7, -m);
  set(7, 11, -m);
  set(2, 4, -m);
  set(2, 10, -m);
  set(4, 8, m);
  set(8, 10, m);
  for (const d of [4, 5]) {
    set(d, d, (4 * ei) / l);
    set(d + 6, d + 6, (4 * ei) / l);
    set(d, d + 6, (2 * ei) / l);
  }
  return k;
};

/** Turns 12 end values from aircraft axes into a member's own. */
export const turnOf = (a: readonly number[], b: readonly number[]): Matrix => {
  const axes = axesOf(a, b);
  const t = Matrix.zeros(12, 12);
  for (let block = 0; block < 4; block++)
    for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) t.set(block * 3 + r, block * 3 + c, axes[r]![c]!);
  return t;
};

export const naive = ({ truss, fixed, gone, free, soft, loads }: NaiveOptions): NaiveAnswer => {
  const at = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const n = truss.clusters.length * 6;
  const k = Matrix.zeros(n, n);
  const f = new Array<number>(n).fill(0);
  loads?.forEach((v, p) => {
    f[p] = v;
  });
  const held = new Set<number>();
  for (const [id, freedoms] of fixed) for (const d of freedoms) held.add(at.get(id)! * 6 + d);
  const parts = truss.members
    .filter((m) => !gone?.has(m.id))
    .map((m) => {
      const i = at.get(m.from)!;
      const j = at.get(m.to)!;
      const a = truss.clusters[i]!.at;
      const b = truss.clusters[j]!.at;
      const l = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      const { elasticPsi: e, areaIn2, inertiaIn4, shearPsi, torsionIn4 } = m.section;
      const t = turnOf(a, b);
      const local =
        soft?.get(m.id) ?? straightStiffness(e * areaIn2, e * inertiaIn4, shearPsi * torsionIn4, l);
      const global = t.transpose().mmul(local).mmul(t);
      const dof = [
        ...Array.from({ length: 6 }, (_, d) => i * 6 + d),
        ...Array.from({ length: 6 }, (_, d) => j * 6 + d),
      ];
      const u0 = free?.get(m.id) ?? new Array<number>(12).fill(0);
      const push = global.mmul(Matrix.columnVector([...u0])).to1DArray();
      dof.forEach((p, r) => {
        f[p]! += push[r]!;
        dof.forEach((q, c) => {
          k.set(p, q, k.get(p, q) + global.get(r, c));
        });
      });
      return { m, t, global, dof, u0 };
    });
  for (const p of held) {
    for (let q = 0; q < n; q++) {
      k.set(p, q, 0);
      k.set(q, p, 0);
    }
    k.set(p, p, 1);
    f[p] = 0;
  }
  // Clusters that nothing reaches any more stay where they are.
  for (let p = 0; p < n; p++) if (k.get(p, p) === 0) k.set(p, p, 1);
  const moves = solve(k, Matrix.columnVector(f)).to1DArray();
  let energy = 0;
  const members = new Map(
    parts.map(({ m, t, global, dof, u0 }) => {
      const v = dof.map((p, r) => moves[p]! - u0[r]!);
      const ends = global.mmul(Matrix.columnVector(v)).to1DArray();
      energy += 0.5 * ends.reduce((s, q, r) => s + q * v[r]!, 0);
      const local = t.mmul(Matrix.columnVector(ends)).to1DArray();
      const moment = Math.max(Math.hypot(local[4]!, local[5]!), Math.hypot(local[10]!, local[11]!));
      return [m.id, { id: m.id, ends, axial: local[6]!, moment }] as const;
    }),
  );
  return { moves, members, energy };
};
