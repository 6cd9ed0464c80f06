import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/core/base/seeded.ts';
import { binBound } from '../../src/core/estimate/binBound.ts';
import { nest } from '../../src/core/estimate/binCompletion.ts';
import { shiftOf, sumOf } from '../../src/core/estimate/ledger.ts';
import { type Chance, momentsWith, spreads } from '../../src/core/estimate/spreads.ts';
import { drawSums } from '../../src/core/estimate/total.ts';
import { atShare, momentsOf } from '../../src/core/estimate/triangle.ts';
import { expectNear } from '../kit/near.ts';
import { soak } from '../kit/soak.ts';

const sorted = (sizes: readonly number[]): readonly number[] => sizes.toSorted((a, b) => b - a);

/** Every piece once, none over the room. */
const expectNested = (sizes: readonly number[], room: number, bars: readonly (readonly number[])[]): void => {
  expect(bars.flat().toSorted((a, b) => a - b)).toEqual(sizes.map((_, k) => k));
  for (const bar of bars) expect(bar.reduce((sum, k) => sum + sizes[k]!, 0)).toBeLessThanOrEqual(room);
};

describe('nested cutting against published instances', () => {
  // Cutting of paper rolls: 13 widths, 219 pieces, master roll 5600 mm; optimum 73 (0.401 % waste). Source: Wikipedia,
  // "Cutting stock problem", example; the optimum is also the trivial bound ⌈407160/5600⌉ = 73.
  it('finds the 73 rolls of the paper-roll example and proves them', () => {
    const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
    const demand = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    const sizes = sorted(widths.flatMap((w, k) => new Array<number>(demand[k]!).fill(w)));
    const { bars, proved } = nest(sizes, 5600);
    expectNested(sizes, 5600, bars);
    expect([bars.length, proved]).toEqual([73, true]);
  });

  // S. Martello, P. Toth, Knapsack Problems (Wiley 1990), section 8.3, from memory: n = 9, c = 100; L1 = 3, L2 = 4 = z.
  it('has the bound 4, not 3, for the example of Martello and Toth', () => {
    const sizes = [70, 60, 50, 33, 33, 33, 11, 7, 3];
    expect(Math.ceil(sizes.reduce((a, b) => a + b, 0) / 100)).toBe(3);
    expect(binBound(sizes, 100)).toBe(4);
    expect(nest(sizes, 100)).toMatchObject({ proved: true, atLeast: 4 });
  });

  // E. Falkenauer, Journal of Heuristics 2 (1996) 5: u120_00 and optimum 48. Data: OR-Library (J. E. Beasley), binpack1.txt.
  it('finds the 48 bins of u120_00 of the OR-Library and proves them', () => {
    const sizes = sorted([
      42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73, 49, 70,
      59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39,
      57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84, 37, 93, 91, 43, 73, 85,
      81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78, 73, 62, 36, 44, 94, 69, 32, 96,
      70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
    ]);
    expect(sizes.length).toBe(120);
    const { bars, proved } = nest(sizes, 150);
    expectNested(sizes, 150, bars);
    expect([bars.length, proved]).toEqual([48, true]);
  });

  /** Fewest bars by trying every subset: dynamic programming over sets of pieces, sharing nothing with the search. */
  const fewest = (sizes: readonly number[], room: number): number => {
    const all = 1 << sizes.length;
    const best: [bars: number, used: number][] = [[1, 0]];
    for (let set = 1; set < all; set++) {
      let top: [number, number] = [Number.POSITIVE_INFINITY, 0];
      sizes.forEach((w, k) => {
        if (!(set & (1 << k))) return;
        const [bars, used] = best[set ^ (1 << k)]!;
        const next: [number, number] = used + w <= room ? [bars, used + w] : [bars + 1, w];
        if (next[0] < top[0] || (next[0] === top[0] && next[1] < top[1])) top = next;
      });
      best.push(top);
    }
    return best[all - 1]![0];
  };

  const runs = soak(600);
  it(`needs as many bars as trying every subset does (${runs} instances of up to 11 pieces, seed "nest")`, () => {
    const chance = seeded('nest');
    for (let run = 0; run < runs; run++) {
      const room = chance.whole(20, 60);
      const sizes = sorted(Array.from({ length: chance.whole(1, 11) }, () => chance.whole(3, room)));
      const { bars, proved, atLeast } = nest(sizes, room);
      expectNested(sizes, room, bars);
      expect([bars.length, proved, atLeast], JSON.stringify([room, sizes])).toEqual([
        fewest(sizes, room),
        true,
        bars.length,
      ]);
      expect(binBound(sizes, room)).toBeLessThanOrEqual(bars.length);
    }
  });

  // Triplets with a planted optimum of n/3: Falkenauer 1996, section on the "triplets" class (the hard one for its method).
  it('never shows fewer bars than a planted optimum, nor calls a gap proved (seed "triplets")', () => {
    const chance = seeded('triplets');
    for (let run = 0; run < 6; run++) {
      const sizes = sorted(
        Array.from({ length: 10 }, () => {
          const first = chance.whole(380, 490);
          const second = chance.whole(250, Math.floor((1000 - first) / 2));
          return [first, second, 1000 - first - second];
        }).flat(),
      );
      const { bars, proved, atLeast } = nest(sizes, 1000, 4000);
      expectNested(sizes, 1000, bars);
      expect(bars.length).toBeGreaterThanOrEqual(10);
      expect(atLeast).toBeLessThanOrEqual(10);
      expect(proved).toBe(bars.length === 10);
    }
  });
});

describe('hours by draws against closed forms', () => {
  const lines = [
    { best: 1, likely: 2, worst: 6 },
    { best: 0, likely: 0, worst: 3 },
    { best: 2, likely: 5, worst: 5 },
    { best: 4, likely: 4, worst: 4 },
  ];

  // Triangular (0, 0, 1): density 2(1 − x), mean 1/3, variance 1/18, median 1 − 1/√2, by integration.
  it('has the mean, variance and median of the right-angled triangle', () => {
    const t = { best: 0, likely: 0, worst: 1 };
    const exact = { rel: 1e-12, because: 'closed form, rounding only' };
    expectNear(momentsOf(t).mean, 1 / 3, exact);
    expectNear(momentsOf(t).variance, 1 / 18, exact);
    expectNear(atShare(t, 0.5), 1 - Math.SQRT1_2, exact);
  });

  it('integrates its inverse to the mean and variance by Simpson’s rule', () => {
    for (const t of lines) {
      const n = 20_000;
      const integral = (f: (x: number) => number): number => {
        let sum = 0;
        for (let k = 0; k <= n; k++) sum += f(atShare(t, k / n)) * (k === 0 || k === n ? 1 : k % 2 ? 4 : 2);
        return sum / (3 * n);
      };
      const { mean, variance } = momentsOf(t);
      const ends = { rel: 2e-6, abs: 1e-9, because: 'the inverse has root-like ends: n^-1.5' };
      expectNear(
        integral((x) => x),
        mean,
        ends,
      );
      expectNear(
        integral((x) => (x - mean) ** 2),
        variance,
        { ...ends, rel: 1e-5 },
      );
    }
  });

  const draws = 60_000;
  const drawn = (work: readonly Chance[], together: 'rate' | 'apart') => {
    const sums = drawSums(work, together, draws, 'check');
    const mean = sums.reduce((a, b) => a + b, 0) / draws;
    return { mean, variance: sums.reduce((a, b) => a + (b - mean) ** 2, 0) / (draws - 1) };
  };
  const expectDrawn = (work: readonly Chance[], together: 'rate' | 'apart', mean: number, std: number) => {
    const got = drawn(work, together);
    expectNear(got.mean, mean, {
      abs: (4 * std) / Math.sqrt(draws),
      because: 'four standard errors of a mean',
    });
    expectNear(got.variance, std * std, {
      rel: 4 * Math.sqrt(2 / draws) * 1.5,
      because: 'four standard errors of a variance, half as much again for the tails',
    });
  };
  const hidden: Chance = { rate: 'hidden', chance: 0.3, many: 7, hours: { best: 3, likely: 6, worst: 12 } };
  /** Each triangle on one, two and three tubes: work of four rates, and what nobody has looked at. */
  const work: readonly Chance[] = [
    ...lines.flatMap((t, r) =>
      [1, 2, 3].map((k) => ({
        rate: `rate ${r}`,
        chance: 1,
        many: 1,
        hours: { best: k * t.best, likely: k * t.likely, worst: k * t.worst },
      })),
    ),
    hidden,
  ];
  const meanOf = (t: (typeof lines)[number]): number => (t.best + t.likely + t.worst) / 3;
  const mean = lines.reduce((sum, t) => sum + 6 * meanOf(t), 0) + 0.3 * 7 * meanOf(hidden.hours);

  it('draws each line by itself to the closed sum of independent lines, chances too', () => {
    // Var = Σ k²σ² over k = 1, 2, 3, and for the hidden n (p(σ² + μ²) − p²μ²): law of total variance.
    const t = momentsOf(hidden.hours);
    const variance =
      lines.reduce((sum, one) => sum + 14 * momentsOf(one).variance, 0) +
      7 * (0.3 * (t.variance + t.mean ** 2) - 0.09 * t.mean ** 2);
    expectNear(spreads(work).apart, Math.sqrt(variance), { rel: 1e-12, because: 'the same sum' });
    expectDrawn(work, 'apart', mean, Math.sqrt(variance));
  });

  it('draws a rate once for all its lines to the closed sum of six times its triangle', () => {
    // One triangle T for one, two and three tubes: 6T, so 36σ². Hidden K·T, K binomial: E[K²]E[T²] − (E[K]E[T])².
    const t = momentsOf(hidden.hours);
    const [k1, k2] = [2.1, 7 * 0.3 * 0.7 + 2.1 ** 2];
    const variance =
      lines.reduce((sum, one) => sum + 36 * momentsOf(one).variance, 0) +
      k2 * (t.variance + t.mean ** 2) -
      (k1 * t.mean) ** 2;
    expectNear(spreads(work).byRate, Math.sqrt(variance), { rel: 1e-12, because: 'the same sum' });
    expectDrawn(work, 'rate', mean, Math.sqrt(variance));
  });

  it('has the very quantiles of one triangle when all the work is of one rate', () => {
    const one = work.filter((w) => w.rate === 'rate 0');
    const sums = drawSums(one, 'rate', draws, 'check');
    for (const share of [0.1, 0.5, 0.9])
      expectNear(sums[Math.round(share * (draws - 1))]!, 6 * atShare(lines[0]!, share), {
        rel: 0.01,
        because: 'four standard errors of a quantile of 60,000 draws',
      });
  });

  it('is never surer than independent lines, nor less sure than all going wrong together', () => {
    const { apart, byRate, together } = spreads(work);
    expect(apart).toBeLessThan(byRate);
    expect(byRate).toBeLessThan(together);
  });

  // Seven tubes with chance p: number damaged is binomial; mean n p, variance n p (1 − p). Fixed hours make the sum that.
  it('is the binomial when a find always costs the same', () => {
    const { mean, variance } = momentsWith({ chance: 0.2, many: 7, hours: { best: 5, likely: 5, worst: 5 } });
    const exact = { rel: 1e-12, because: 'closed form, rounding only' };
    expectNear(mean, 5 * 7 * 0.2, exact);
    expectNear(variance, 25 * 7 * 0.2 * 0.8, exact);
  });
});

describe('weight and moment against published arithmetic', () => {
  // FAA AC 43.13-1B (9/8/98), figure 10-10, page 10-13: an empty weight of 1,169 lb at +10.6 in, and what is added to it.
  const empty = { lb: 1169, cgIn: 10.6 };
  const forward = [
    { lb: 17, armIn: -49, momentLbIn: -833 },
    { lb: 170, armIn: 16, momentLbIn: 2720 },
    { lb: 83, armIn: 22, momentLbIn: 1826 },
  ];
  // The same, figure 10-11, page 10-14.
  const rearward = [
    { lb: 17, armIn: -49, momentLbIn: -833 },
    { lb: 170, armIn: 16, momentLbIn: 2720 },
    { lb: 340, armIn: 48, momentLbIn: 16320 },
    { lb: 240, armIn: 22, momentLbIn: 5280 },
    { lb: 100, armIn: 75.5, momentLbIn: 7550 },
  ];
  const published = [
    { what: 'most forward', added: forward, totalLb: 1439, totalMoment: 16104, cgIn: 11.2 },
    { what: 'most rearward', added: rearward, totalLb: 2036, totalMoment: 43428, cgIn: 21.33 },
  ] as const;

  for (const { what, added, totalLb, totalMoment, cgIn } of published)
    it(`adds to the total weight, moment and centre of gravity of the ${what} example of AC 43.13-1B`, () => {
      for (const row of added) expect(sumOf([row]).momentLbIn).toBe(row.momentLbIn);
      const { lb, momentLbIn } = sumOf(added);
      expect(empty.lb + lb).toBe(totalLb);
      expectNear(empty.lb * empty.cgIn + momentLbIn, totalMoment, {
        abs: 0.5,
        because: 'the page rounds 12,391.4 to 12,391',
      });
      expectNear(empty.cgIn + shiftOf(added, empty), cgIn, {
        abs: 0.05,
        because: 'the page gives a tenth of an inch for the one, its quotient is taken for the other',
      });
    });

  it('takes away what it added: weight removed has a minus sign', () => {
    const there = shiftOf(forward, empty);
    const heavy = { lb: 1439, cgIn: empty.cgIn + there };
    const back = shiftOf(
      forward.map((r) => ({ ...r, lb: -r.lb })),
      heavy,
    );
    expectNear(back, -there, { abs: 1e-9, because: 'rounding only' });
  });

  // The number is shared/needs.md 0.1: 0.3 lb placed 120 in aft of the centre of gravity of 1,000 lb moves it 0.036 in.
  it('moves the centre of gravity of 1,000 lb by 0.036 in for 0.3 lb 120 in aft of it', () => {
    const shift = shiftOf([{ lb: 0.3, armIn: 200 }], { lb: 1000, cgIn: 80 });
    expectNear(shift, 0.036, { abs: 0.0005, because: 'the published figure has three places' });
    expectNear(shift, (0.3 * 120) / 1000.3, {
      rel: 1e-9,
      because: 'the short formula: added weight × its distance over the new weight',
    });
  });

  it('moves nothing for weight added at the centre of gravity, and adds up whatever the order', () => {
    expectNear(shiftOf([{ lb: 2, armIn: 80 }], { lb: 1000, cgIn: 80 }), 0, {
      abs: 1e-12,
      because: 'rounding only',
    });
    const rows = [
      { lb: 0.4, armIn: 150 },
      { lb: -0.1, armIn: 20 },
      { lb: 0.7, armIn: 90 },
    ];
    const both = shiftOf(rows, { lb: 900, cgIn: 77 });
    expectNear(shiftOf(rows.toReversed(), { lb: 900, cgIn: 77 }), both, {
      abs: 1e-12,
      because: 'rounding only',
    });
  });
});
