import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisFit, type StraightEdge } from '../../../src/core/straighten/axisFit.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { seededRandom } from '../../kit/trusses.ts';

const basis = { kind: 'measured', ref: 'p1' } as const;

/** Gaps an edge on each side would show over a tube bent so; the edge lies askew. */
const read = (
  bow: (x: number) => number,
  crown: number,
  clocks: readonly number[],
  { stations = [2, 5, 8, 11, 14, 17, 20, 23, 26], noise = (): number => 0, stdIn = 0.002 } = {},
): readonly StraightEdge[] =>
  clocks.map((clock, k) => ({
    stationsIn: stations,
    offsetsIn: stations.map(
      (x) =>
        0.5 + 0.01 * k + 0.003 * (k + 1) * x - bow(x) * Math.cos(((crown - clock) * Math.PI) / 6) + noise(),
    ),
    clock,
    stdIn,
  }));
const sine =
  (depth: number, from = 2, to = 26) =>
  (x: number): number =>
    depth * Math.sin((Math.PI * (x - from)) / (to - from));
const kink =
  (depth: number, at: number, from = 2, to = 26) =>
  (x: number): number =>
    depth * (x < at ? (x - from) / (at - from) : (to - x) / (to - at));

describe('the axis from straight-edge readings', { timeout: 120_000 }, () => {
  it('finds the depth, place and direction of a smooth bow', () => {
    const fit = axisFit(read(sine(0.3), 2, [12, 3, 6, 9]), basis)!;
    expect(fit.shape).toBe('smooth');
    expectNear(fit.bowIn.value, 0.3, {
      rel: 0.04,
      because: 'a cubic is not a sine: 3.4 % at most by least squares',
    });
    expectNear(fit.atIn.value, 14, { abs: 0.3, because: 'one step of the search' });
    expectNear(fit.clock!, 2, { abs: 1e-6, because: 'no noise' });
    expect(fit.allRound).toBe(true);
  });

  it('finds the place of a kink and how far the tube turns there', () => {
    const fit = axisFit(read(kink(0.25, 9), 7, [12, 3]), basis)!;
    expect(fit.shape).toBe('kinked');
    expectNear(fit.atIn.value, 9, { abs: 0.2, because: 'one step of the search, 24/120 in' });
    expectNear(fit.bowIn.value, 0.25, { rel: 0.02, because: 'place to one step' });
    expectNear(fit.clock!, 7, { abs: 0.02, because: 'place to one step' });
    // Independent: two straight legs, e/a + e/b.
    expectNear(fit.turnRad.value, 0.25 / 7 + 0.25 / 17, { rel: 0.03, because: 'place to one step' });
  });

  it('does not tell the shape of a bow that is small beside the reading', () => {
    const random = seededRandom(11);
    const noise = (): number => 0.03 * (random() - 0.5);
    expect(axisFit(read(sine(0.02), 2, [12, 3], { noise, stdIn: 1 / 64 }), basis)!.shape).toBe('cannotTell');
  });

  it('knows only the plane it was read in from one side', () => {
    const fit = axisFit(read(sine(0.2), 12, [12]), basis)!;
    expect(fit).toMatchObject({ allRound: false, clock: 12 });
    expect(fit.bowIn.assumed).toContain('one-side-read');
    // The hollow side is read: the crown lies opposite.
    expect(axisFit(read(sine(0.2), 12, [6]), basis)!.clock).toBe(12);
    expect(axisFit(read(sine(0.2), 12, [12, 6]), basis)!.allRound).toBe(false);
  });

  it('needs four stations on a side, and lists of one length', () => {
    expect(axisFit([], basis)).toBeNull();
    expect(axisFit(read(sine(0.2), 12, [12, 3], { stations: [2, 14, 26] }), basis)).toBeNull();
    expect(axisFit([{ stationsIn: [1, 2, 3, 4, 5], offsetsIn: [0, 0, 0], clock: 12 }], basis)).toBeNull();
  });

  it('is straight for a straight tube', () => {
    const fit = axisFit(
      read(() => 0, 12, [12, 3]),
      basis,
    )!;
    expect(fit.bowIn.value).toBeLessThan(1e-9);
    expect(fit.shape).toBe('cannotTell');
  });

  it('states 1/64 in when no standard deviation is given, and widens when the readings scatter more', () => {
    const bare = read(sine(0.2), 12, [12, 3]).map(({ stdIn: _, ...r }) => r);
    expect(axisFit(bare, basis)!.bowIn.assumed).toContain('std-1/64');
    const random = seededRandom(5);
    const noise = (): number => 0.1 * (random() - 0.5);
    const [calm, rough] = [
      axisFit(read(sine(0.2), 12, [12, 3]), basis)!,
      axisFit(read(sine(0.2), 12, [12, 3], { noise }), basis)!,
    ];
    expect(rough.bowIn.std!).toBeGreaterThan(3 * calm.bowIn.std!);
  });

  const depth = fc.double({ min: 0.05, max: 0.6, noNaN: true });
  const crown = fc.double({ min: 0.1, max: 11.9, noNaN: true });
  const at = fc.double({ min: 7, max: 21, noNaN: true });
  const shape = fc.constantFrom('sine', 'kink');
  const runs = { seed: 7302, numRuns: soak(60) };
  const bent = (kind: string, d: number, a: number) => (kind === 'sine' ? sine(d) : kink(d, a));

  it('does not care which end the stations are counted from (seed 7302)', () => {
    fc.assert(
      fc.property(shape, depth, at, crown, (kind, d, a, c) => {
        const one = axisFit(read(bent(kind, d, a), c, [12, 3]), basis)!;
        const turned = axisFit(
          read(bent(kind, d, a), c, [12, 3]).map((r) => ({
            ...r,
            stationsIn: r.stationsIn.map((x) => 28 - x),
          })),
          basis,
        )!;
        expectNear(turned.bowIn.value, one.bowIn.value, { rel: 1e-6, because: 'sums in another order' });
        expectNear(turned.atIn.value, 28 - one.atIn.value, { abs: 1e-6, because: 'the grid is even' });
        expect(turned.shape).toBe(one.shape);
      }),
      runs,
    );
  });

  it('turns with the clock, and bends alike up or down (seed 7302)', () => {
    fc.assert(
      fc.property(shape, depth, at, crown, (kind, d, a, c) => {
        const one = axisFit(read(bent(kind, d, a), c, [12, 3]), basis)!;
        const other = axisFit(read(bent(kind, d, a), c + 6, [12, 3]), basis)!;
        expectNear(other.bowIn.value, one.bowIn.value, { rel: 1e-6, because: 'sums in another order' });
        expectNear(Math.cos(((other.clock! - one.clock!) * Math.PI) / 6), -1, {
          abs: 1e-9,
          because: 'half a turn',
        });
      }),
      runs,
    );
  });

  it('scales with the tube (seed 7302)', () => {
    fc.assert(
      fc.property(
        shape,
        depth,
        at,
        crown,
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (kind, d, a, c, k) => {
          const readings = read(bent(kind, d, a), c, [12, 3]);
          const one = axisFit(readings, basis)!;
          const big = axisFit(
            readings.map((r) => ({
              ...r,
              stationsIn: r.stationsIn.map((x) => x * k),
              offsetsIn: r.offsetsIn.map((x) => x * k),
              stdIn: r.stdIn! * k,
            })),
            basis,
          )!;
          expectNear(big.bowIn.value, one.bowIn.value * k, { rel: 1e-6, because: 'rounding' });
          expectNear(big.atIn.value, one.atIn.value * k, { rel: 1e-6, because: 'rounding' });
          expect(big.shape).toBe(one.shape);
        },
      ),
      runs,
    );
  });

  it('covers the true depth with two standard deviations nineteen times in twenty (seed 7302)', () => {
    const random = seededRandom(7302);
    const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const stdIn = 1 / 64;
    let inside = 0;
    const count = soak(200);
    for (let i = 0; i < count; i++) {
      const fit = axisFit(
        read(kink(0.3, 14), 4, [12, 3, 6, 9], { noise: () => stdIn * gauss(), stdIn }),
        basis,
      )!;
      if (Math.abs(fit.bowIn.value - 0.3) <= 2.5 * fit.bowIn.std! + 0.3 * (0.2 / 12)) inside += 1;
    }
    // 2.5 standard deviations hold 98.8 %; of 10 tries 8 are missed once in a thousand runs of the seed.
    expect(inside / count).toBeGreaterThanOrEqual(0.8);
  });
});
