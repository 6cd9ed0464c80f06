import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import { adjust, covarianceOf, DATUM_STD_IN, networkOf, placeIn } from '../../src/core/trammel/adjust.ts';
import { makeSpan } from '../../src/core/trammel/design.ts';
import type { Observation } from '../../src/core/trammel/observations.ts';
import {
  chiSquared999,
  NONCENTRAL,
  normalisedOf,
  readingsOf,
  redundancyOf,
  SNOOP,
} from '../../src/core/trammel/reliability.ts';
import { clustersOf } from '../../src/core/trammel/shape.ts';
import { expectNear } from '../kit/near.ts';

type Line = readonly [from: string, to: string, lengthIn: number, stdIn: number];

const observationsOf = (at: ReadonlyMap<string, Vec3>, lines: readonly Line[]): Observation[] =>
  lines.map(([a, b, lengthIn, stdIn], k) => {
    const cluster = (id: string) => ({ id, at: at.get(id)!, from: 'added' as const });
    const foot = (id: string) => ({ cluster: id, mark: 'axis' as const, radiusIn: 0, alongIn: 0 });
    return {
      id: `r${k}`,
      hold: 'beforeCutting',
      clusters: [cluster(a), cluster(b)],
      feet: [foot(a), foot(b)],
      lengthIn,
      stdIn,
      stdAssumed: false,
      axisIn: lengthIn,
    };
  });

const solve = (at: ReadonlyMap<string, Vec3>, lines: readonly Line[], fixed: readonly string[]) => {
  const observations = observationsOf(at, lines);
  const weights = Float64Array.from(lines, (l) => l[3] ** -2);
  return adjust(networkOf(at, observations), { weights, datum: new Set(fixed) });
};

describe('published trilaterations', () => {
  // Ghilani, Adjustment Computations, example 14.2: control A, B, C and three distances, feet; data as printed in the
  // book's Mathcad sheet (geolabsolutions.com, chapter 14, read 2024). The answer by NumPy lstsq on the same data,
  // iterated to 1e-12: U = (6861.3168, 3727.8186), residuals −0.0374, 0.0768, −0.0474, S0 = 0.0977, Sx = 0.078, Sy = 0.154.
  it('gives station U of Ghilani 14.2 with residuals and standard deviations', () => {
    const at = new Map<string, Vec3>([
      ['A', [865.4, 4527.15, 0]],
      ['B', [2432.55, 2047.25, 0]],
      ['C', [2865.22, 27.15, 0]],
      ['U', [6860, 3730, 0]],
    ]);
    const s = solve(
      at,
      [
        ['A', 'U', 6049, 1],
        ['B', 'U', 4736.83, 1],
        ['C', 'U', 5446.49, 1],
      ],
      ['A', 'B', 'C'],
    );
    const control = {
      abs: 2e-3,
      because: 'control is held to 1/16 here and fixed in the book; weight 1 : 256, and Sy/S0 is 1.6',
    };
    const u = placeIn(s, 'U');
    expectNear(u[0], 6861.3168, control);
    expectNear(u[1], 3727.8186, control);
    [-0.0374, 0.0768, -0.0474].forEach((v, k) => {
      expectNear(s.residuals[k]!, v, control);
    });
    const s0 = Math.sqrt(s.omega);
    expectNear(s0, 0.0977, { abs: 5e-4, because: 'control held to 1/16' });
    const q = covarianceOf(s, 'U', 'U');
    expectNear(s0 * Math.sqrt(q[0]!), 0.0775, { rel: 0.01, because: 'control held to 1/16' });
    expectNear(s0 * Math.sqrt(q[4]!), 0.1542, { rel: 0.01, because: 'control held to 1/16' });
    const [free] = clustersOf(s).filter((c) => c.id === 'U');
    expect(free?.fixedBy).toBe('some');
    expectNear(Math.abs(free!.free[0]![2]), 1, { abs: 1e-9, because: 'nothing says its height' });
  });

  // Mikhail & Ackermann, Observations and Least Squares (1976), example 9.1, p. 219: P(0, 5), O(0, 0), Q(5, 0), distances
  // 5.10, 7.07, 4.90 to R. Linearised at (5, 5) as there, by hand: N = [1.5 .5; .5 1.5], δ = (0.0996, −0.1004).
  it('gives point R of Mikhail & Ackermann 9.1', () => {
    const at = new Map<string, Vec3>([
      ['P', [0, 5, 0]],
      ['O', [0, 0, 0]],
      ['Q', [5, 0, 0]],
      ['R', [5, 5, 0]],
    ]);
    const s = solve(
      at,
      [
        ['P', 'R', 5.1, 1],
        ['O', 'R', 7.07, 1],
        ['Q', 'R', 4.9, 1],
      ],
      ['P', 'O', 'Q'],
    );
    const r = placeIn(s, 'R');
    const because = 'the book stops after one step; the second changes R by 0.1²/(2·5) = 0.001';
    expectNear(r[0], 5.0996, { abs: 2e-3, because });
    expectNear(r[1], 4.8996, { abs: 2e-3, because });
    // N⁻¹ = ½ [1.5 −.5; −.5 1.5].
    const q = covarianceOf(s, 'R', 'R');
    expectNear(q[0]!, 0.75, { rel: 0.02, because: 'taken at the adjusted point, control held to 1/16' });
    expectNear(q[1]!, -0.25, { rel: 0.05, because: 'taken at the adjusted point, control held to 1/16' });
  });

  // Norrdine, An algebraic solution to the multilateration problem (IPIN 2012), example B: six reference points in
  // space, measured distances (two corrected as there), true point (26.759, −1.342, 1.13), metres.
  it('comes within the stated uncertainty of the true point of Norrdine, example B', () => {
    const at = new Map<string, Vec3>([
      ['P37', [27.297, -4.953, 1.47]],
      ['P31', [20.693, -4.849, 1.93]],
      ['P102', [22.59, 0.524, 1.2]],
      ['P43', [17.113, -3.003, 2.17]],
      ['P208', [22.554, 4.727, 1.77]],
      ['P101', [22.447, -7.88, 1.6]],
      ['N', [26.7, -1.4, 1]],
    ]);
    const std = 0.035;
    const read: [string, number][] = [
      ['P37', 3.652],
      ['P31', 7.036],
      ['P102', 4.586],
      ['P43', 9.84],
      ['P208', 7.402],
      ['P101', 7.883],
    ];
    const s = solve(
      at,
      read.map(([p, d]): Line => [p, 'N', d, std]),
      read.map(([p]) => p),
    );
    const [n, q] = [placeIn(s, 'N'), covarianceOf(s, 'N', 'N')];
    const want = [26.759, -1.342, 1.13];
    for (let k = 0; k < 3; k++)
      expectNear(n[k]!, want[k]!, { abs: 3 * Math.sqrt(q[4 * k]!), because: 'three standard deviations' });
  });

  // Closed form: four spheres of centre 0 and three unit axes, radii to (1, 2, 3)/10: linear differences of squares.
  it('meets four spheres in their common point', () => {
    const p: Vec3 = [0.1, 0.2, 0.3];
    const corners: [string, Vec3][] = [
      ['O', [0, 0, 0]],
      ['X', [1, 0, 0]],
      ['Y', [0, 1, 0]],
      ['Z', [0, 0, 1]],
    ];
    const at = new Map<string, Vec3>([...corners, ['P', [0.2, 0.2, 0.2]]]);
    const lines = corners.map(
      ([id, c]): Line => [
        id,
        'P',
        Math.sqrt((p[0] - c[0]) ** 2 + (p[1] - c[1]) ** 2 + (p[2] - c[2]) ** 2),
        0.01,
      ],
    );
    const got = placeIn(solve(at, lines, ['O', 'X', 'Y', 'Z']), 'P');
    for (let k = 0; k < 3; k++) expectNear(got[k]!, p[k]!, { abs: 1e-8, because: 'steps stop at 1e-10' });
  });
});

describe('a published level net as distances on a line', () => {
  // Mikhail & Ackermann (1976), table 7-1, p. 147: eight height differences, weights by length. Heights on one line are
  // distances; every loop's misclosure is shared out. Second opinion: the normal equations of the net, solved by hand-made
  // Gaussian elimination below, A fixed.
  const rows: [string, string, number, number][] = [
    ['A', 'B', 25.42, 18.1],
    ['B', 'C', 10.34, 9.4],
    ['C', 'A', -35.2, 14.2],
    ['B', 'D', -15.54, 17.6],
    ['D', 'E', 21.32, 13.5],
    ['E', 'C', 4.82, 9.9],
    ['E', 'A', -31.02, 13.8],
    ['C', 'D', -26.11, 14],
  ];
  const normalEquations = (): { heights: number[]; inverse: number[][] } => {
    const ids = ['B', 'C', 'D', 'E'];
    const n = ids.map(() => [0, 0, 0, 0, 0, 1, 0, 0, 0].slice(0, 4));
    const t = [0, 0, 0, 0];
    for (const [a, b, dh, km] of rows) {
      const [i, j] = [ids.indexOf(a), ids.indexOf(b)];
      for (const [p, s] of [
        [i, -1],
        [j, 1],
      ] as const) {
        if (p < 0) continue;
        t[p] = t[p]! + (s * dh) / km;
        n[p]![p] = n[p]![p]! + 1 / km;
      }
      if (i >= 0 && j >= 0) {
        n[i]![j] = n[i]![j]! - 1 / km;
        n[j]![i] = n[j]![i]! - 1 / km;
      }
    }
    const m = n.map((row, i) => [...row, ...[0, 1, 2, 3].map((k) => (k === i ? 1 : 0)), t[i]!]);
    for (let k = 0; k < 4; k++)
      for (let i = 0; i < 4; i++) {
        if (i === k) continue;
        const f = m[i]![k]! / m[k]![k]!;
        m[i] = m[i]!.map((v, j) => v - f * m[k]![j]!);
      }
    return {
      heights: m.map((row, k) => row[8]! / row[k]!),
      inverse: m.map((row, k) => row.slice(4, 8).map((v) => v / row[k]!)),
    };
  };

  it('gives the heights, variances, redundancies and standardised residuals of the net', () => {
    const start: Record<string, number> = { A: 0, B: 25, C: 36, D: 10, E: 31 };
    const at = new Map(Object.entries(start).map(([id, z]): [string, Vec3] => [id, [0, 0, z]]));
    // σ² = length/100, so that the datum's 1/16 is small beside a kilometre's 0.1.
    const lines = rows.map(([a, b, dh, km]): Line => [a, b, Math.abs(dh), Math.sqrt(km) / 10]);
    const s = solve(at, lines, ['A']);
    const { heights, inverse } = normalEquations();
    ['B', 'C', 'D', 'E'].forEach((id, k) => {
      expectNear(placeIn(s, id)[2], heights[k]!, {
        abs: 1e-6,
        because: 'a line is linear; one datum point pulls nothing',
      });
      expectNear(covarianceOf(s, id, id)[8]!, inverse[k]![k]! / 100 + DATUM_STD_IN ** 2, {
        rel: 1e-4,
        because: 'the datum point adds its own variance',
      });
    });
    const sum = rows.reduce((total, _, n) => total + redundancyOf(s, n), 0);
    expectNear(sum, 4, { abs: 1e-4, because: 'eight differences, four heights' });
    rows.forEach(([a, b, dh, km], n) => {
      const h = (id: string): number => (id === 'A' ? 0 : heights['BCDE'.indexOf(id)]!);
      const q = (x: string, y: string): number =>
        x === 'A' || y === 'A' ? 0 : inverse['BCDE'.indexOf(x)]!['BCDE'.indexOf(y)]!;
      const residual = (h(b) - h(a) - dh) * Math.sign(dh);
      const r = 1 - (q(a, a) + q(b, b) - 2 * q(a, b)) / km;
      expectNear(redundancyOf(s, n), r, { abs: 1e-4, because: 'loose weight 1e-6' });
      expectNear(normalisedOf(s, n), residual / Math.sqrt((km / 100) * r), { abs: 1e-4, because: 'same' });
    });
  });
});

describe("Baarda's reliability", () => {
  // Baarda, A testing procedure for use in geodetic networks (1968): α₀ = 0.001, β₀ = 0.80 gives the critical value 3.29
  // and λ₀ = 17.07, δ₀ = √λ₀ = 4.13.
  it('uses the published pair of significance and power', () => {
    expectNear(SNOOP, 3.2905, { abs: 1e-3, because: 'printed to two decimals' });
    expectNear(NONCENTRAL ** 2, 17.075, { abs: 0.03, because: 'printed to two decimals' });
    // Φ(δ₀ − 3.29) = 0.80: from any normal table Φ(0.84) = 0.7995.
    expectNear(NONCENTRAL - SNOOP, 0.8416, { abs: 5e-3, because: 'printed to two decimals' });
  });

  // Closed form: n repeats of one distance between two points held by nothing else: r = 1 − 1/n, error seen 4.13 σ √(n/(n−1)).
  it('gives repeats of one distance their closed-form redundancy and least visible error', () => {
    const at = new Map<string, Vec3>([
      ['A', [0, 0, 0]],
      ['B', [30, 0, 0]],
    ]);
    for (const n of [2, 3, 4, 10]) {
      const s = solve(
        at,
        Array.from({ length: n }, (_, k): Line => ['A', 'B', 30 + k / 100, 1 / 32]),
        [],
      );
      for (const r of readingsOf(s)) {
        expectNear(r.redundancy, 1 - 1 / n, { abs: 1e-6, because: 'loose weight 1e-6' });
        expectNear(r.leastSeenIn!, (4.13 / 32) * Math.sqrt(n / (n - 1)), {
          rel: 1e-5,
          because: 'loose weight',
        });
      }
    }
  });

  // χ² at 0.1 %: Abramowitz & Stegun, table 26.8 (0.999 column): 3: 16.266, 11: 31.264, 20: 45.315, 30: 59.703, 100: 149.449.
  it('takes χ² at 0.1 % from the table, and by Wilson–Hilferty within 0.6 %', () => {
    for (const [k, want] of [
      [3, 16.266],
      [11, 31.264],
      [20, 45.315],
      [30, 59.703],
      [100, 149.449],
    ] as const)
      expectNear(chiSquared999(k), want, { rel: 6e-3, because: 'Wilson & Hilferty 1931, worst at 11' });
  });
});

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
    const found = clustersOf(solve(at, lines, ['c0', 'c1', 'c2', 'c3']));
    // Each top corner keeps its height and the lengths of the top square; the square may swing and shear: 3 loose motions,
    // two directions at every corner.
    for (const c of found.filter((k) => !k.datum)) {
      expect(c.fixedBy).toBe('some');
      expect(c.free).toHaveLength(2);
    }
  });
});
