import { Matrix, solve } from 'ml-matrix';
import { distance, type Vec3 } from '../../../src/core/base/vec3.ts';
import type { LoadCase } from '../../../src/core/job/modelSchema.ts';
import type { HeldNow } from '../../../src/core/statics/held.ts';
import type { Member, Truss } from '../../../src/core/truss/result.ts';

/**
 * A frame solved the long way, sharing nothing with `core/statics`: the textbook 12 × 12 in local axes, turned by
 * rotation matrices, end releases condensed one freedom at a time, a dense system, ml-matrix LU.
 * Source: Przemieniecki 1968, eq. 5.116; condensation as in McGuire, Gallagher & Ziemian ch. 13.
 */
export interface DenseAnswer {
  /** Moves by cluster, six each. */
  readonly moves: readonly number[];
  /** By member: forces on its ends in local axes, 12 each. */
  readonly local: readonly (readonly number[])[];
  /** By member: the same in aircraft axes. */
  readonly global: readonly (readonly number[])[];
  /** K u − f, six a cluster. */
  readonly unbalanced: readonly number[];
}

export const solveInLocalAxes = (truss: Truss, support: HeldNow, loadCase: LoadCase): DenseAnswer => {
  const index = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const size = 6 * truss.clusters.length;
  const k = Matrix.zeros(size, size);
  const f = new Array<number>(size).fill(0);
  const bars = [...truss.members, ...support.braces].map((m) =>
    bar(truss, index, m, support.joints, loadCase.gravity),
  );
  for (const b of bars) {
    const turned = b.turn.transpose().mmul(b.k).mmul(b.turn);
    const loads = b.turn.transpose().mmul(Matrix.columnVector(b.load)).to1DArray();
    b.freedoms.forEach((r, p) => {
      f[r]! += loads[p]!;
      b.freedoms.forEach((c, q) => {
        k.set(r, c, k.get(r, c) + turned.get(p, q));
      });
    });
  }
  const put = (cluster: string, first: number, v: readonly number[]): void => {
    v.forEach((x, d) => {
      f[6 * index.get(cluster)! + first + d]! += x;
    });
  };
  for (const l of loadCase.loads) {
    put(l.cluster, 0, l.forceLbf ?? []);
    put(l.cluster, 3, l.momentInLbf ?? []);
  }
  for (const w of loadCase.weights ?? [])
    put(
      w.cluster,
      0,
      loadCase.gravity.map((g) => g * w.weightLbf),
    );
  const held = new Set(
    support.held.flatMap((h) =>
      h.fixed.map((d) => 6 * index.get(h.cluster)! + ['x', 'y', 'z', 'rx', 'ry', 'rz'].indexOf(d)),
    ),
  );
  for (let d = 0; d < size; d++) if (k.get(d, d) === 0) held.add(d);
  const free = Array.from({ length: size }, (_, d) => d).filter((d) => !held.has(d));
  const some = solve(k.selection(free, free), Matrix.columnVector(free.map((d) => f[d]!))).to1DArray();
  const moves = new Array<number>(size).fill(0);
  free.forEach((d, at) => {
    moves[d] = some[at]!;
  });
  const back = k.mmul(Matrix.columnVector(moves)).to1DArray();
  const local = bars.map((b) => {
    const u = b.turn.mmul(Matrix.columnVector(b.freedoms.map((d) => moves[d]!)));
    return b.k
      .mmul(u)
      .to1DArray()
      .map((v, d) => v - b.load[d]!);
  });
  return {
    moves,
    local,
    global: bars.map((b, at) => b.turn.transpose().mmul(Matrix.columnVector(local[at]!)).to1DArray()),
    unbalanced: back.map((v, d) => v - f[d]!),
  };
};

const bar = (
  truss: Truss,
  index: ReadonlyMap<string, number>,
  m: Pick<Member, 'from' | 'to' | 'section' | 'ends'>,
  joints: HeldNow['joints'],
  gravity: Vec3,
) => {
  const [i, j] = [index.get(m.from)!, index.get(m.to)!];
  const [a, b] = [truss.clusters[i]!.at, truss.clusters[j]!.at];
  const l = distance(a, b);
  const x = [0, 1, 2].map((d) => (b[d]! - a[d]!) / l);
  // Local y lies level unless the tube is upright: any choice gives the same answer for a round tube.
  const level = Math.hypot(x[0]!, x[1]!);
  const y = level > 1e-6 ? [-x[1]! / level, x[0]! / level, 0] : [0, 1, 0];
  const z = [x[1]! * y[2]! - x[2]! * y[1]!, x[2]! * y[0]! - x[0]! * y[2]!, x[0]! * y[1]! - x[1]! * y[0]!];
  const turn = Matrix.zeros(12, 12);
  for (let block = 0; block < 4; block++)
    [x, y, z].forEach((axis, r) => {
      axis.forEach((v, c) => {
        turn.set(3 * block + r, 3 * block + c, v);
      });
    });
  const {
    areaIn2: area,
    inertiaIn4: inertia,
    torsionIn4: torsion,
    elasticPsi: e,
    shearPsi: g,
    densityLbIn3,
  } = m.section;
  const k = Matrix.zeros(12, 12);
  const pair = (p: number, q: number, v: number): void => {
    k.set(p, q, v);
    k.set(q, p, v);
  };
  for (const [d, v] of [
    [0, (e * area) / l],
    [3, (g * torsion) / l],
  ] as const) {
    pair(d, d, v);
    pair(d + 6, d + 6, v);
    pair(d, d + 6, -v);
  }
  const [k12, k6, k4, k2] = [
    (12 * e * inertia) / l ** 3,
    (6 * e * inertia) / l ** 2,
    (4 * e * inertia) / l,
    (2 * e * inertia) / l,
  ];
  // Bending in the x–y plane: v, θz. In the x–z plane: w, θy, where a positive turn lowers the far end.
  for (const [v, t, s] of [
    [1, 5, 1],
    [2, 4, -1],
  ] as const) {
    pair(v, v, k12);
    pair(v + 6, v + 6, k12);
    pair(v, v + 6, -k12);
    pair(v, t, s * k6);
    pair(v, t + 6, s * k6);
    pair(v + 6, t, -s * k6);
    pair(v + 6, t + 6, -s * k6);
    pair(t, t, k4);
    pair(t + 6, t + 6, k4);
    pair(t, t + 6, k2);
  }
  const w = [x, y, z].map((axis) => axis.reduce((s, v, d) => s + v * gravity[d]! * area * densityLbIn3, 0));
  const load = [
    w[0]! * (l / 2),
    w[1]! * (l / 2),
    w[2]! * (l / 2),
    0,
    (-w[2]! * l * l) / 12,
    (w[1]! * l * l) / 12,
  ];
  load.push(...load.slice(0, 3), 0, (w[2]! * l * l) / 12, (-w[1]! * l * l) / 12);
  const balls = joints === 'pinned' ? [true, true] : m.ends.map((end) => end === 'ball');
  const released = balls.flatMap((ball, end) => (ball ? [3, 4, 5].map((d) => d + 6 * end) : []));
  for (const r of released) {
    const pivot = k.get(r, r);
    // Zero: the far end has been released already and nothing is left to release.
    if (Math.abs(pivot) < 1e-9 * k.get(0, 0)) {
      for (let d = 0; d < 12; d++) pair(r, d, 0);
      continue;
    }
    const row = k.getRow(r).slice();
    const moved = load[r]!;
    for (let p = 0; p < 12; p++) {
      load[p]! -= (row[p]! / pivot) * moved;
      for (let q = 0; q < 12; q++) k.set(p, q, k.get(p, q) - (row[p]! * row[q]!) / pivot);
    }
    load[r] = 0;
    for (let d = 0; d < 12; d++) pair(r, d, 0);
  }
  const freedoms = [i, j].flatMap((c) => [0, 1, 2, 3, 4, 5].map((d) => 6 * c + d));
  return { k, load, turn, freedoms };
};
