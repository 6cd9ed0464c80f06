import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/core/base/figure.ts';
import { tubeSection } from '../../../src/core/straighten/bending.ts';
import { calibrate } from '../../../src/core/straighten/calibrate.ts';
import { flatteningLoad, mostClampLbf, pressFor } from '../../../src/core/straighten/pressFor.ts';
import { hinge, pressAt, pressForSet, pressForTurn } from '../../../src/core/straighten/springback.ts';
import { stock } from '../../../src/core/truss/stock.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';

const psi = (low: number, high = low): Figure => ({
  value: low,
  low,
  high,
  unit: 'psi',
  basis: { kind: 'assumed', ref: 't' },
  assumed: [],
});
const elasticPsi = 29e6;
const press = (
  tube: { odIn: number; wallIn: number },
  spanIn: number,
  wantedSetIn: number,
  yieldPsi = psi(75_000),
) => pressFor({ tube, elasticPsi, yieldPsi, spanIn, wantedSetIn });
const small = { odIn: 0.75, wallIn: 0.035 };

const anyTube = fc.constantFrom(
  ...stock.flatMap((r) => r.wallsIn.map((wallIn) => ({ odIn: r.odIn, wallIn }))),
);
const anySpan = fc.double({ min: 8, max: 40, noNaN: true });
/** Share of the set at the hinge. */
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const runs = { seed: 7301, numRuns: soak(400) };

describe('a press for a wanted set', { timeout: 120_000 }, () => {
  it('needs no more travel than set and springback, and no more clamp than the hinge', () => {
    fc.assert(
      fc.property(anyTube, anySpan, share, (tube, span, part) => {
        const most = hinge(tubeSection(tube), { elasticPsi, yieldPsi: 75_000 }, span);
        const p = press(tube, span, part * most.setIn);
        expectNear(p.pressIn.value, p.setIn.value + p.springBackIn.value, {
          rel: 1e-9,
          because: 'root found to 1e-10 of the radius',
        });
        expect(p.clampLbf.value).toBeLessThanOrEqual(mostClampLbf(tube, 75_000, span) * (1 + 1e-9));
        expectNear(p.blockLbf.value, p.clampLbf.value / 2, { rel: 1e-12, because: 'half each' });
        expect(p.pressIn.value).toBeGreaterThan(p.firstYieldIn.value);
        expect(p.warnings).not.toContain('past-hinge');
      }),
      runs,
    );
  });

  it('grows with the set wanted, in travel and in force (seed 7301)', () => {
    fc.assert(
      fc.property(anyTube, anySpan, share, share, (tube, span, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-3);
        const most = hinge(tubeSection(tube), { elasticPsi, yieldPsi: 75_000 }, span).setIn;
        const [less, more] = [
          press(tube, span, Math.min(a, b) * most),
          press(tube, span, Math.max(a, b) * most),
        ];
        expect(more.pressIn.value).toBeGreaterThan(less.pressIn.value);
        expect(more.clampLbf.value).toBeGreaterThan(less.clampLbf.value);
        expect(more.springBackIn.value).toBeGreaterThan(less.springBackIn.value);
      }),
      runs,
    );
  });

  it('scales: everything twice as long gives twice the travel and four times the force (seed 7301)', () => {
    fc.assert(
      fc.property(
        anyTube,
        anySpan,
        share,
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (tube, span, part, k) => {
          const set = part * hinge(tubeSection(tube), { elasticPsi, yieldPsi: 75_000 }, span).setIn;
          const one = press(tube, span, set);
          const big = press({ odIn: tube.odIn * k, wallIn: tube.wallIn * k }, span * k, set * k);
          expectNear(big.pressIn.value, one.pressIn.value * k, {
            rel: 1e-7,
            because: 'root found to 1e-10 of the radius',
          });
          expectNear(big.clampLbf.value, one.clampLbf.value * k * k, {
            rel: 1e-7,
            because: 'root found to 1e-10 of the radius',
          });
        },
      ),
      runs,
    );
  });

  it('undoes itself: the travel it names leaves the set it was asked for (seed 7301)', () => {
    fc.assert(
      fc.property(anyTube, anySpan, fc.double({ min: 0.01, max: 1.6, noNaN: true }), (tube, span, part) => {
        const s = tubeSection(tube);
        const steel = { elasticPsi, yieldPsi: 75_000 };
        const set = part * hinge(s, steel, span).setIn;
        const there = pressForSet(s, steel, span, set);
        expectNear(pressAt(s, steel, span, there.travelIn).setIn, set, {
          rel: 1e-6,
          abs: 1e-9,
          because: 'two roots, each to 1e-10 of the radius',
        });
        if (part < 1)
          expectNear(pressForTurn(s, steel, span, there.setRad)!.setIn, set, {
            rel: 1e-6,
            because: 'two roots',
          });
        else expect(pressForTurn(s, steel, span, there.setRad * 1.001)).toBeNull();
      }),
      runs,
    );
  });

  it('shows the yield strength’s scatter as a range and starts with the low end', () => {
    const p = press(small, 20, 0.06, psi(75_000, 100_000));
    expect(p.pressIn.value).toBe(p.pressIn.low);
    expect(p.pressIn.high!).toBeGreaterThan(p.pressIn.low!);
    // The low end can never overshoot a tube that is stronger.
    const left = pressAt(tubeSection(small), { elasticPsi, yieldPsi: 100_000 }, 20, p.pressIn.value).setIn;
    expect(left).toBeLessThan(0.06);
  });

  it('warns past the hinge: .105 in is the most of 3/4 × .035 over 20 in', () => {
    // Source: methods §7.
    expect(press(small, 20, 0.104).warnings).not.toContain('past-hinge');
    expect(press(small, 20, 0.106).warnings).toContain('past-hinge');
    expectNear(press(small, 20, 0.2).pressIn.value, 0.2 + 0.3065, {
      abs: 5e-5,
      because: 'four decimals in methods §7',
    });
  });

  it('asks for grooved blocks where flat ones of 1.5 D would start to flatten the tube', () => {
    // Independent: ring of the tube between flat plates, 8 (F t²/4)/(D − t) per inch: 1 × .035 at 75 ksi.
    expectNear(flatteningLoad({ odIn: 1, wallIn: 0.035 }, 75_000), (8 * (75_000 * 0.035 ** 2)) / 4 / 0.965, {
      rel: 1e-12,
      because: 'arithmetic',
    });
    expect(press({ odIn: 1, wallIn: 0.035 }, 12, 0.02).warnings).toContain('grooved-blocks');
    expect(press({ odIn: 0.5, wallIn: 0.065 }, 30, 0.02).warnings).toEqual([]);
    expect(press({ odIn: 0.5, wallIn: 0.25 }, 12, 0.02).flatPadIn.value).toBe(0);
  });

  it('presses softer over a longer span', () => {
    expect(press(small, 24, 0.04).clampLbf.value).toBeLessThan(press(small, 16, 0.04).clampLbf.value);
  });
});

describe('what a measured push says', { timeout: 120_000 }, () => {
  it('finds the yield strength of the tube that was pushed (seed 7301)', () => {
    fc.assert(
      fc.property(
        anyTube,
        anySpan,
        fc.double({ min: 40_000, max: 160_000, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (tube, spanIn, yieldPsi, part) => {
          const s = tubeSection(tube);
          const steel = { elasticPsi, yieldPsi };
          const leftIn = part * hinge(s, steel, spanIn).setIn;
          fc.pre(leftIn > 1 / 64);
          const pressedIn = pressForSet(s, steel, spanIn, leftIn).travelIn;
          const said = calibrate(tube, elasticPsi, { spanIn, pressedIn, leftIn }, 'p1');
          expect(said.says).toBe('informs');
          expectNear(said.yieldPsi!.value, yieldPsi, { rel: 1e-4, because: 'root to 1 psi' });
          expect(said.yieldPsi!.low!).toBeLessThanOrEqual(said.yieldPsi!.value);
          expect(said.yieldPsi!.high!).toBeGreaterThanOrEqual(said.yieldPsi!.value);
        },
      ),
      runs,
    );
  });

  it('is nothing but a low end when the push was elastic', () => {
    // Source: first yield δ = F S²/6ED; 1.000 OD, 30 in, pressed .388: 75 ksi (oracle 33).
    const said = calibrate(
      { odIn: 1, wallIn: 0.035 },
      elasticPsi,
      { spanIn: 30, pressedIn: 0.388, leftIn: 0 },
      'p1',
    );
    expect(said.says).toBe('elastic');
    expectNear(said.yieldPsi!.value, 75_000, { rel: 1e-3, because: 'three decimals in the source' });
  });

  it('does not fit when more stayed than was pressed', () => {
    expect(calibrate(small, elasticPsi, { spanIn: 20, pressedIn: 0.2, leftIn: 0.25 }, 'p1')).toEqual({
      says: 'doesNotFit',
      yieldPsi: null,
    });
  });
});
