import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import { covarianceOf, placeIn } from '../../src/core/trammel/adjust.ts';
import { clustersOf } from '../../src/core/trammel/shape.ts';
import { expectNear } from '../kit/near.ts';
import { answered } from './krumm.ts';
import { type Line, solve, solvePublished } from './network.ts';

// Sources and pages in krumm.ts.
describe('textbook networks of distances, as Krumm printed their answers', () => {
  for (const net of answered) {
    it(`gives the printed places${Object.keys(net.stdCm).length > 0 ? ' and standard deviations' : ''} of ${net.name}`, () => {
      const { place, std } = solvePublished(net);
      for (const [id, want] of Object.entries(net.places))
        want.forEach((v, k) => {
          expectNear(place(id)[k]!, v, { abs: 0.6e-4, because: 'printed to four decimals of a metre' });
        });
      for (const [id, want] of Object.entries(net.stdCm))
        want.forEach((v, k) => {
          expectNear(std(id)[k]! * 100, v, {
            abs: 1e-3,
            rel: 1e-5,
            because: 'printed to three decimals of a centimetre; the loose weight adds 1e-5',
          });
        });
    });
  }
});

describe('single points from distances', () => {
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
    const printed = { abs: 0.6e-4, because: 'printed to four decimals' };
    const u = placeIn(s, 'U');
    expectNear(u[0], 6861.3168, printed);
    expectNear(u[1], 3727.8186, printed);
    [-0.0374, 0.0768, -0.0474].forEach((v, k) => {
      expectNear(s.residuals[k]!, v, printed);
    });
    const s0 = Math.sqrt(s.omega);
    expectNear(s0, 0.0977, printed);
    const q = covarianceOf(s, 'U', 'U');
    expectNear(s0 * Math.sqrt(q[0]!), 0.0775, { abs: 1e-4, because: 'printed to four decimals' });
    expectNear(s0 * Math.sqrt(q[4]!), 0.1542, { abs: 1e-4, because: 'printed to four decimals' });
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
    expectNear(q[0]!, 0.75, { rel: 0.02, because: 'taken at the adjusted point' });
    expectNear(q[1]!, -0.25, { rel: 0.05, because: 'taken at the adjusted point' });
  });

  // Norrdine, An algebraic solution to the multilateration problem (IPIN 2012), example B: six reference points in
  // space, measured distances (two corrected as there), true point (26.759, −1.342, 1.13), metres.
  it('comes within the stated uncertainty of the true point of Norrdine, example B', () => {
    const at = {
      P37: [27.297, -4.953, 1.47],
      P31: [20.693, -4.849, 1.93],
      P102: [22.59, 0.524, 1.2],
      P43: [17.113, -3.003, 2.17],
      P208: [22.554, 4.727, 1.77],
      P101: [22.447, -7.88, 1.6],
      N: [26.7, -1.4, 1],
    };
    const std = 0.035;
    const read: [string, number][] = [
      ['P37', 3.652],
      ['P31', 7.036],
      ['P102', 4.586],
      ['P43', 9.84],
      ['P208', 7.402],
      ['P101', 7.883],
    ];
    const { solution, place } = solvePublished({
      unit: std,
      at,
      lines: read.map(([p, d]) => [p, 'N', d, std] as const),
      control: read.map(([p]) => p),
    });
    const q = covarianceOf(solution, 'N', 'N');
    [26.759, -1.342, 1.13].forEach((want, k) => {
      expectNear(place('N')[k]!, want, {
        abs: 3 * std * Math.sqrt(q[4 * k]!),
        because: 'three standard deviations',
      });
    });
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
