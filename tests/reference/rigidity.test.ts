import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import { adjust, networkOf } from '../../src/core/trammel/adjust.ts';
import { clustersOf } from '../../src/core/trammel/shape.ts';
import { makeSpan } from '../../src/core/trammel/span.ts';
import { type Line, observationsOf } from './network.ts';

describe('rigidity of published frameworks', () => {
  const rank = (points: readonly Vec3[], bars: readonly (readonly [number, number])[]): number => {
    const rows = bars.map(([a, b]) => {
      const [p, q] = [points[a]!, points[b]!];
      const d = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
      const e = [0, 1, 2].map((k) => (q[k]! - p[k]!) / d);
      return {
        at: [3 * a, 3 * a + 1, 3 * a + 2, 3 * b, 3 * b + 1, 3 * b + 2],
        value: [...e.map((v) => -v), ...e],
      };
    });
    const span = makeSpan(rows, Array<boolean>(3 * points.length).fill(true));
    for (;;) {
      const next = rows.findIndex((_, c) => span.left(c) > 1e-7);
      if (next < 0) return span.basis.length;
      span.choose(next);
    }
  };
  const all = (n: number): [number, number][] =>
    Array.from({ length: n }, (_, a) =>
      Array.from({ length: n - a - 1 }, (_k, k): [number, number] => [a, a + 1 + k]),
    ).flat();

  const octahedron: Vec3[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  const cube: Vec3[] = Array.from({ length: 8 }, (_, k): Vec3 => [k & 1, (k >> 1) & 1, (k >> 2) & 1]);
  const edges = (points: readonly Vec3[], length: number): [number, number][] =>
    all(points.length).filter(([a, b]) => {
      const [p, q] = [points[a]!, points[b]!];
      return Math.abs(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) - length) < 1e-9;
    });

  // Cauchy 1813, Dehn 1916, Asimow & Roth 1978: convex polyhedra with triangular faces are infinitesimally rigid.
  it('finds the octahedron rigid: rank 12 = 3·6 − 6', () => {
    expect(rank(octahedron, edges(octahedron, Math.SQRT2))).toBe(12);
  });
  // Maxwell's count: 8·3 − 6 − 12 = 6 internal mechanisms; one diagonal a face makes it rigid.
  it('finds six internal mechanisms in the bare cube, and none with a diagonal in each face', () => {
    const sides = edges(cube, 1);
    expect(24 - 6 - rank(cube, sides)).toBe(6);
    const diagonals: [number, number][] = [
      [0, 3],
      [4, 7],
      [0, 5],
      [2, 7],
      [0, 6],
      [1, 7],
    ];
    expect(rank(cube, [...sides, ...diagonals])).toBe(18);
  });
  it('finds K4 just rigid (rank 6) and K5 with one self-stress (rank 9 of 10) in space', () => {
    const p: Vec3[] = [
      [0, 0, 0],
      [1, 0.1, 0],
      [0.2, 1, 0.1],
      [0.1, 0.3, 1],
      [0.7, 0.8, 0.9],
    ];
    expect(rank(p.slice(0, 4), all(4))).toBe(6);
    expect(rank(p, all(5))).toBe(9);
  });
  // Plane frameworks: triangular prism (Desargues) is rigid in general (rank 9 = 2·6 − 3), and not when the three joining
  // bars meet in one point. Crapo & Whiteley 1982; Whiteley, Matroids from discrete applied geometry.
  it('finds the prism of Desargues rigid in general and loose when its three bars meet', () => {
    const bars: [number, number][] = [
      [0, 1],
      [1, 2],
      [0, 2],
      [3, 4],
      [4, 5],
      [3, 5],
      [0, 3],
      [1, 4],
      [2, 5],
    ];
    const outer: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [4, 9, 0],
    ];
    const middle = [4.5, 3, 0];
    const inner = (by: number): Vec3[] =>
      outer.map((p, k) => [
        middle[0]! + by * (p[0] - middle[0]!) + (k === 1 && by > 0.5 ? 0.4 : 0),
        middle[1]! + by * (p[1] - middle[1]!) + (k === 2 && by > 0.5 ? 0.3 : 0),
        0,
      ]);
    const skew: Vec3[] = [
      [2, 1.5, 0],
      [7, 1, 0],
      [5, 6, 0],
    ];
    expect(rank([...outer, ...skew], bars)).toBe(9);
    expect(rank([...outer, ...inner(0.4)], bars)).toBe(8);
  });
  // Bolker & Roth, When is a bipartite graph a rigid framework? (1980): K3,3 in the plane is loose just when its six points
  // lie on a conic.
  it('finds K3,3 rigid in general and loose on a conic', () => {
    const bars: [number, number][] = [0, 1, 2].flatMap((a) => [3, 4, 5].map((b): [number, number] => [a, b]));
    const circle: Vec3[] = [0.2, 1.1, 2.5, 3.3, 4.4, 5.9].map((t) => [Math.cos(t), Math.sin(t), 0]);
    expect(rank(circle, bars)).toBe(8);
    const off = circle.map((p, k): Vec3 => (k === 4 ? [p[0] * 1.5, p[1] * 1.2, 0] : p));
    expect(rank(off, bars)).toBe(9);
  });

  it('says through the adjustment which corners of a bare cube on its held base are loose', () => {
    const at = new Map(cube.map((p, k): [string, Vec3] => [`c${k}`, [30 * p[0], 30 * p[1], 30 * p[2]]]));
    const lines = edges(cube, 1).map(([a, b]): Line => [`c${a}`, `c${b}`, 30, 1 / 32]);
    const observations = observationsOf(at, lines);
    const datum = new Set(['c0', 'c1', 'c2', 'c3']);
    const weights = Float64Array.from(lines, (l) => l[3] ** -2);
    const found = clustersOf(adjust(networkOf(at, observations), { weights, datum }));
    // Each top corner keeps its height and the lengths of the top square; the square may swing and shear: 3 loose motions,
    // two directions at every corner.
    for (const c of found.filter((k) => !k.datum)) {
      expect(c.fixedBy).toBe('some');
      expect(c.free).toHaveLength(2);
    }
  });
});
