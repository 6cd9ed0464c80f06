import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import { covarianceOf, placeIn } from '../../src/core/trammel/adjust.ts';
import { explain } from '../../src/core/trammel/cause.ts';
import {
  chiSquared999,
  NONCENTRAL,
  normalisedOf,
  readingsOf,
  redundancyOf,
  SNOOP,
} from '../../src/core/trammel/reliability.ts';
import { expectNear } from '../kit/near.ts';
import { blankenbachWillert, hoepke } from './krumm.ts';
import { type Line, type Published, solve, solvePublished } from './network.ts';

/** Heights on one upright line are distances: the level net in millimetres, by height difference. */
const levels = (
  heights: Readonly<Record<string, number>>,
  rows: readonly (readonly [from: string, to: string, differenceM: number, stdMm: number])[],
  control: string,
) => {
  const at = new Map(
    Object.entries(heights).map(([id, z]): [string, Vec3] => [id, [0, 0, (z - heights[control]!) * 1000]]),
  );
  const s = solve(
    at,
    rows.map(([a, b, d, std]): Line => [a, b, Math.abs(d) * 1000, std]),
    [control],
  );
  return {
    solution: s,
    heightM: (id: string): number => heights[control]! + placeIn(s, id)[2] / 1000,
    stdMm: (id: string): number => Math.sqrt(covarianceOf(s, id, id)[8]!),
    /** Correction of the height difference as entered, millimetres. */
    correctionMm: (n: number): number => s.residuals[n]! * Math.sign(rows[n]![2]),
  };
};

describe('published level nets as distances on a line', () => {
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
    // σ² = length/100.
    const lines = rows.map(([a, b, dh, km]): Line => [a, b, Math.abs(dh), Math.sqrt(km) / 10]);
    const s = solve(at, lines, ['A']);
    const { heights, inverse } = normalEquations();
    ['B', 'C', 'D', 'E'].forEach((id, k) => {
      expectNear(placeIn(s, id)[2], heights[k]!, { abs: 1e-6, because: 'a line is linear' });
      expectNear(covarianceOf(s, id, id)[8]!, inverse[k]![k]! / 100, {
        rel: 1e-4,
        because: 'loose weight 1e-6',
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

  // Siki, Level network adjustment and data snooping (Budapest University of Technology, OSGeoLab course notes,
  // english/data_processing/level_net.rst): six height differences, 0.7 mm/km, point 4 held; corrections, adjusted
  // heights, U = |v|/σ_v and r as printed there. Read in a stored copy of the notes.
  it('gives the corrections, test values and redundancies printed for the Budapest course net', () => {
    const rows = [
      ['1', '2', -0.749, 1.1 * 0.7],
      ['1', '3', -1.274, 1.8 * 0.7],
      ['1', '4', -2.89, 1.4 * 0.7],
      ['2', '3', -0.53, 1.5 * 0.7],
      ['2', '4', -2.141, 1.9 * 0.7],
      ['3', '4', -1.614, 0.9 * 0.7],
    ] as const;
    const net = levels({ 1: 104.234, 2: 103.487, 3: 102.958, 4: 101.345 }, rows, '4');
    const s0 = Math.sqrt(net.solution.omega / 3);
    expectNear(s0, 1.65, { abs: 5e-3, because: 'printed to two decimals' });
    expectNear(net.solution.omega, 8.217, { abs: 1e-3, because: 'printed to three decimals' });
    const heights = { 1: [104.235, 1.13], 2: [103.4868, 1.19], 3: [102.9588, 0.91] };
    for (const [id, [heightM, stdMm]] of Object.entries(heights)) {
      expectNear(net.heightM(id), heightM!, { abs: 5.1e-5, because: 'printed to four decimals' });
      expectNear(s0 * net.stdMm(id), stdMm!, { abs: 5.1e-3, because: 'printed to two decimals' });
    }
    const printed = [
      [0.81, 1.9, 0.3],
      [-2.18, 2.1, 0.7],
      [0, 0, 0.5],
      [2.01, 2.6, 0.5],
      [-0.81, 0.7, 0.7],
      [0.18, 0.6, 0.2],
    ];
    const tenth = { abs: 0.0505, because: 'printed to one decimal' };
    printed.forEach(([correctionMm, test, redundancy], n) => {
      expectNear(net.correctionMm(n), correctionMm!, { abs: 5.1e-3, because: 'printed to two decimals' });
      expectNear(Math.abs(normalisedOf(net.solution, n)), test!, tenth);
      expectNear(redundancyOf(net.solution, n), redundancy!, tenth);
    });
  });

  // A listing of GNU Gama 1.5.09 (vrmapper.com/gama/1doutput.html): a level loop read forward and back, 5 mm each, 1a held.
  // Read in a stored copy of the page.
  it('gives the heights and the largest normalised residual that GNU Gama lists for a loop read twice', () => {
    const rows = [
      ['1a', '4', -1.225, 5],
      ['4', '3', -0.848, 5],
      ['3', '2', 1.342, 5],
      ['2', '1a', 0.72, 5],
      ['1a', '2', -0.724, 5],
      ['2', '3', -1.335, 5],
      ['3', '4', 0.842, 5],
      ['4', '1a', 1.231, 5],
    ] as const;
    const net = levels({ '1a': 1000, 4: 998.775, 3: 997.927, 2: 999.269 }, rows, '1a');
    expectNear(net.solution.omega * 25, 146.625, { abs: 1e-3, because: 'printed to six figures' });
    for (const [id, heightM, stdMm] of [
      ['4', 998.77513, 3.1],
      ['3', 997.93325, 3.5],
      ['2', 999.27487, 3.1],
    ] as const) {
      expectNear(net.heightM(id), heightM, { abs: 6e-6, because: 'printed to five decimals' });
      expectNear(net.stdMm(id), stdMm, { abs: 0.051, because: 'printed to one decimal' });
    }
    const tests = rows.map((_, n) => Math.abs(normalisedOf(net.solution, n)));
    const most = Math.max(...tests);
    expectNear(most, 1.68, { abs: 5.1e-3, because: 'printed to two decimals' });
    expect(tests.indexOf(most) + 1).toBe(6);
  });
});

describe('published misreads', () => {
  const found = (net: Published) => {
    const { causes } = explain(solvePublished(net).solution, []);
    return causes.map((c) =>
      c.kind === 'misread' ? { reading: c.reading, shouldBe: c.shouldBeIn * net.unit } : c,
    );
  };

  it('are named in the eight distances of Blankenbach & Willert, both and no other', () => {
    expect(found(blankenbachWillert).map((c) => 'reading' in c && c.reading)).toEqual([
      '1: MS–51',
      '7: MS–103',
    ]);
  });

  it('are named in the net of Höpke as the book lists it, and the length of its results is given back', () => {
    const without = solvePublished(hoepke);
    // Σ v²/(27 − 16 + 3), from the net without it.
    const std = Math.sqrt(without.solution.omega / 14) * hoepke.unit;
    const listed: Published = {
      ...hoepke,
      lines: hoepke.lines.map(([a, b, d]) => [a, b, a === '1059' && b === '75' ? 1789.499 : d, std] as const),
    };
    const n = listed.lines.findIndex(([a, b]) => a === '1059' && b === '75');
    const [one, ...others] = found(listed);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ reading: `${n + 1}: 1059–75` });
    expectNear((one as { shouldBe: number }).shouldBe, 1789.449, {
      abs: (3 * std) / Math.sqrt(redundancyOf(without.solution, n)),
      because: 'three of its standard deviations, σ/√r',
    });
    expect(found({ ...listed, lines: hoepke.lines.map(([a, b, d]) => [a, b, d, std] as const) })).toEqual([]);
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
