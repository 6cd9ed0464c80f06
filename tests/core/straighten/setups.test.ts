import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/core/base/figure.ts';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { tubeSection } from '../../../src/core/straighten/bending.ts';
import { fitOfFinding } from '../../../src/core/straighten/fitOfFinding.ts';
import type { AxisFit } from '../../../src/core/straighten/result.ts';
import { type Bench, nextPush, setUps } from '../../../src/core/straighten/setups.ts';
import { hinge } from '../../../src/core/straighten/springback.ts';
import type { Member } from '../../../src/core/truss/result.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { finding } from '../disposition/shop.ts';

const yieldPsi: Figure = {
  value: 75_000,
  low: 75_000,
  high: 100_000,
  unit: 'psi',
  basis: { kind: 'assumed', ref: 't' },
  assumed: [],
};
const bench = (lengthIn: number, more: Partial<Bench> = {}): Bench => ({
  tube: { odIn: 0.75, wallIn: 0.035 },
  elasticPsi: 29e6,
  yieldPsi,
  clearIn: [1, lengthIn - 1],
  ...more,
});
const bowed = (
  lengthIn: number,
  depthIn: number,
  more: Partial<Extract<Finding, { damage: 'bow' }>> = {},
): AxisFit =>
  fitOfFinding(
    { id: 'A-B', from: 'A', to: 'B', lengthIn } as Member,
    finding('f1', { damage: 'bow', depthIn, clock: 3, ...more }) as Extract<Finding, { damage: 'bow' }>,
  )!;

describe('set-ups along a bend', { timeout: 120_000 }, () => {
  it('ask no one for more than it gives before hinging: .5 in over 24 in takes several, blocks moved along', () => {
    // Source: methods §7: 3/4 × .035, blocks 20 in apart: .105 in of set is the most.
    const plan = setUps(bowed(24, 0.5), bench(24, { spanIn: 20 }));
    expect(plan.length).toBeGreaterThan(3);
    for (const s of plan) {
      expect(s.press.spanIn).toBe(20);
      expect(s.press.setIn.value).toBeLessThanOrEqual(0.105);
      expect(s.press.warnings).not.toContain('past-hinge');
    }
    expect(new Set(plan.map((s) => s.atIn)).size).toBeGreaterThan(1);
  });

  it('start at the greatest bend, the ram on the crown', () => {
    const plan = setUps(bowed(36, 0.3, { place: { from: 'A', atIn: 14 } }), bench(36));
    expect(plan[0]).toMatchObject({ no: 1, atIn: 14, ramClock: 3 });
  });

  const runs = { seed: 7303, numRuns: soak(200) };
  const length = fc.double({ min: 14, max: 50, noNaN: true });
  const depth = fc.double({ min: 0.04, max: 0.5, noNaN: true });
  const place = fc.double({ min: 0.15, max: 0.85, noNaN: true });

  it('together take the bow to 1/64, none more than half of it, blocks always on clear tube (seed 7303)', () => {
    fc.assert(
      fc.property(
        length,
        depth,
        place,
        fc.constantFrom('smooth' as const, 'kinked' as const),
        (l, e, share, shape) => {
          const f = bowed(l, e, { place: { from: 'A', atIn: share * l }, shape });
          const plan = setUps(f, bench(l));
          if (plan.length === 0) return;
          const sum = plan.reduce((total, s) => total + s.takesOffIn.value, 0);
          expectNear(sum, e - 1 / 64, { rel: 1e-9, because: 'a sum' });
          for (const s of plan) {
            expect(s.takesOffIn.value).toBeLessThanOrEqual(e / 2 + 1e-9);
            expect(s.blocksIn[0]).toBeGreaterThanOrEqual(1 - 1e-9);
            expect(s.blocksIn[1]).toBeLessThanOrEqual(l - 1 + 1e-9);
            const most = hinge(
              tubeSection(bench(l).tube),
              { elasticPsi: 29e6, yieldPsi: 75_000 },
              s.press.spanIn,
            );
            expect(s.press.setIn.value).toBeLessThanOrEqual(most.setIn * (1 + 1e-9));
          }
        },
      ),
      runs,
    );
  });

  it('with blocks close together never take more than half the bow in the middle', () => {
    // Three pushes 20 in apart would take 15 : 5 : 5 parts of .104 in: .063 in the middle.
    const plan = setUps(bowed(60, 0.12), bench(60, { spanIn: 8 }));
    expect(plan.length).toBeGreaterThan(3);
    for (const s of plan) expect(s.takesOffIn.value).toBeLessThanOrEqual(0.06);
  });

  it('are the mirrored ones for the mirrored bow (seed 7303)', () => {
    fc.assert(
      fc.property(length, depth, place, (l, e, share) => {
        const one = setUps(bowed(l, e, { place: { from: 'A', atIn: share * l }, shape: 'kinked' }), bench(l));
        const two = setUps(bowed(l, e, { place: { from: 'B', atIn: share * l }, shape: 'kinked' }), bench(l));
        expect(two.length).toBe(one.length);
        const places = (plan: typeof one, flip: boolean) =>
          plan.map((s) => (flip ? l - s.atIn : s.atIn)).sort((a, b) => a - b);
        places(one, false).forEach((x, k) => {
          expectNear(places(two, true)[k]!, x, { abs: 1e-6, because: 'rounding' });
        });
      }),
      runs,
    );
  });

  it('are none for a bow of 1/64 or less, or where no block can stand', () => {
    expect(setUps(bowed(24, 1 / 64), bench(24))).toEqual([]);
    expect(setUps(bowed(24, 0.3), bench(24, { clearIn: [14, 10] }))).toEqual([]);
  });

  it('after a push go on with half of what is left, until 1/64', () => {
    const f = bowed(30, 0.2);
    const next = nextPush(f, 0.12, 2, bench(30))!;
    expectNear(next.takesOffIn.value, 0.06, { rel: 1e-9, because: 'half' });
    expectNear(nextPush(f, 0.02, 2, bench(30))!.takesOffIn.value, 0.02 - 1 / 64, {
      rel: 1e-9,
      because: '1/64 short',
    });
    expect(nextPush(f, 1 / 64, 2, bench(30))).toBeNull();
    expect(nextPush(f, -0.05, 2, bench(30))).toBeNull();
  });
});
