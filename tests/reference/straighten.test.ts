import { describe, expect, it } from 'vitest';
import {
  type BendSection,
  curvatureLeft,
  elasticModulus,
  inertiaOf,
  momentAt,
  plasticModulus,
  type Steel,
  tubeSection,
} from '../../src/core/straighten/bending.ts';
import { roundOut } from '../../src/core/straighten/roundOut.ts';
import { firstYield, hinge, pressAt, pressForSet } from '../../src/core/straighten/springback.ts';
import { stock } from '../../src/core/truss/stock.ts';
import { expectNear } from '../kit/near.ts';

const steel: Steel = { elasticPsi: 29e6, yieldPsi: 75_000 };
const exact = { rel: 1e-9, because: 'closed form' };
/** Thin walls put a square root just outside the range that is integrated. */
const tubeClose = { rel: 1e-7, because: '16-point quadrature of a thin wall' };
/** Width b, depth 2c: through the same code as a tube. */
const bar = (b: number, c: number): BendSection => ({ halfDepthIn: c, widthAt: () => b, breaks: [] });

/**
 * Moment by brute force: strips of equal height, no closed form and none of the code's own integrals. A second
 * formulation, not the one under test.
 */
const stripMoment = (
  s: BendSection,
  { elasticPsi, yieldPsi }: Steel,
  curvature: number,
  strips = 200_000,
): number => {
  let sum = 0;
  const h = s.halfDepthIn / strips;
  for (let i = 0; i < strips; i++) {
    const y = (i + 0.5) * h;
    sum += 2 * s.widthAt(y) * Math.min(yieldPsi, elasticPsi * curvature * y) * y * h;
  }
  return sum;
};

describe('elastic-plastic bending against closed forms', () => {
  it('gives the shape factors of the books: 1.5 bar, 16/3π rod, 4/π thin tube', () => {
    // Source: plastic over elastic modulus, any plasticity text (e.g. Timoshenko, Strength of Materials II, plastic
    // bending); 16/3π also as an examination answer at allpreviousyears.com, read.
    const factor = (s: BendSection): number => plasticModulus(s) / elasticModulus(s);
    expectNear(factor(bar(0.5, 0.25)), 1.5, exact);
    expectNear(factor(tubeSection({ odIn: 0.75, wallIn: 0.375 })), 16 / (3 * Math.PI), exact);
    expectNear(factor(tubeSection({ odIn: 1, wallIn: 0.001 })), 4 / Math.PI, {
      rel: 1.1e-3,
      because: 'wall of D/1000: first order in t/D',
    });
  });

  it('gives area moments and (D³ − d³)/6 of every stock tube', () => {
    // Source: geometry of a circular ring.
    for (const { odIn, wallsIn } of stock)
      for (const wallIn of wallsIn) {
        const s = tubeSection({ odIn, wallIn });
        const d = odIn - 2 * wallIn;
        expectNear(inertiaOf(s), (Math.PI / 64) * (odIn ** 4 - d ** 4), tubeClose);
        expectNear(plasticModulus(s), (odIn ** 3 - d ** 3) / 6, tubeClose);
      }
  });

  it('follows the moment–curvature curve of a bar', () => {
    // Source: M/M_y = 3/2 − 1/2 (κ_y/κ)², Timoshenko, Strength of Materials II; as L. Zhang and others quote it.
    const s = bar(1, 0.5);
    const atYield = steel.yieldPsi / (steel.elasticPsi * 0.5);
    const yieldMoment = (steel.yieldPsi * 1 * 1) / 6;
    for (const [ratio, want] of [
      [0.5, 0.5],
      [1, 1],
      [1.5, 1.5 - 0.5 / 2.25],
      [2, 1.375],
      [5, 1.48],
      [10, 1.495],
    ] as const)
      expectNear(momentAt(s, steel, ratio * atYield) / yieldMoment, want, exact);
  });

  it('follows the closed form of a round rod, and of a tube as rod less rod', () => {
    // Source: methods §7, M_solid = 4[Eκ(R⁴/8 asin(c/R) + c(2c² − R²)√(R² − c²)/8) + F(R² − c²)^{3/2}/3], c = F/Eκ < R.
    const rod = (r: number, k: number): number => {
      const c = steel.yieldPsi / (steel.elasticPsi * k);
      if (c >= r) return (steel.elasticPsi * k * Math.PI * r ** 4) / 4;
      const side = Math.sqrt(r * r - c * c);
      return (
        4 *
        (steel.elasticPsi * k * ((r ** 4 / 8) * Math.asin(c / r) + (c * (2 * c * c - r * r) * side) / 8) +
          (steel.yieldPsi * side ** 3) / 3)
      );
    };
    for (const tube of [
      { odIn: 0.75, wallIn: 0.035 },
      { odIn: 1, wallIn: 0.12 },
      { odIn: 0.5, wallIn: 0.25 },
    ])
      for (const ratio of [0.3, 1, 1.01, 1.3, 2, 5, 40]) {
        const r = tube.odIn / 2;
        const k = (ratio * steel.yieldPsi) / (steel.elasticPsi * r);
        const bore = Math.max(0, r - tube.wallIn);
        expectNear(
          momentAt(tubeSection(tube), steel, k),
          rod(r, k) - (bore > 0 ? rod(bore, k) : 0),
          tubeClose,
        );
      }
  });

  it('agrees with strips added up', () => {
    for (const s of [tubeSection({ odIn: 0.875, wallIn: 0.049 }), bar(0.4, 0.3)])
      for (const ratio of [0.7, 1.2, 3, 12]) {
        const k = (ratio * steel.yieldPsi) / (steel.elasticPsi * s.halfDepthIn);
        expectNear(momentAt(s, steel, k), stripMoment(s, steel, k), { rel: 1e-6, because: '200 000 strips' });
      }
  });

  it('bends back a bar as the sheet-metal text says', () => {
    // Source: R_i/R_f = 4X³ − 3X + 1, X = R_i Y/(E T): Kalpakjian & Schmid, Manufacturing Processes, sheet bending;
    // read at novasolver.jp/en/tools/spring-back.html with its starting values 300 MPa, 210 GPa, 50 mm, 2 mm.
    const metric: Steel = { elasticPsi: 210e3, yieldPsi: 300 };
    for (const [radius, thickness] of [
      [50, 2],
      [100, 2],
      [20, 2],
      [300, 1.5],
      [5, 3],
    ] as const) {
      const x = (radius * 300) / (210e3 * thickness);
      if (x > 0.5) continue;
      const left = curvatureLeft(bar(10, thickness / 2), metric, 1 / radius);
      expectNear(left * radius, 4 * x ** 3 - 3 * x + 1, exact);
    }
  });
});

describe('a three-point press against closed forms', () => {
  const tube = { odIn: 0.75, wallIn: 0.035 };
  const s = tubeSection(tube);

  it('is elastic as PL³/48EI up to first yield', () => {
    // Source: beam tables; oracle 33 of trade-facts: 1.000 OD, blocks 30 in apart, 75 ksi: .388 in whatever the wall.
    const first = firstYield(s, steel, 20);
    expectNear(first.travelIn, (first.clampLbf * 20 ** 3) / (48 * 29e6 * inertiaOf(s)), exact);
    for (const wallIn of [0.035, 0.065, 0.5])
      expectNear(firstYield(tubeSection({ odIn: 1, wallIn }), steel, 30).travelIn, 0.388, {
        abs: 5e-4,
        because: 'three decimals in the source',
      });
    expect(pressAt(s, steel, 20, first.travelIn * 0.999).setIn).toBe(0);
  });

  it('gives 3/4 × .035 over 20 in .105 of set before it hinges, and .3065 of springback there', () => {
    // Source: methods §7.
    const last = hinge(s, steel, 20);
    expectNear(last.setIn, 0.105, { abs: 5e-4, because: 'three decimals in the source' });
    expectNear(last.travelIn - last.setIn, 0.3065, { abs: 5e-5, because: 'four decimals in the source' });
    expectNear(last.clampLbf, (4 * steel.yieldPsi * (0.75 ** 3 - 0.68 ** 3)) / 6 / 20, exact);
  });

  it('takes a bar to 20/9 of its yield deflection as the hinge forms', () => {
    // Source: centrally loaded rectangular beam at collapse, δ = 20/9 δ_y: Prager & Hodge, Theory of Perfectly Plastic
    // Solids, and Timoshenko, Strength of Materials II (from memory); worked here by hand: with m = M/M_y, κ/κ_y =
    // 1/√(3 − 2m), ∫ m κ dm over 0…3/2 = 1/3 + ∫₁^{3/2} m/√(3 − 2m) dm = 1/3 + 4/3, and δ = (4/9)·3·(5/3) δ_y.
    const plank = bar(0.6, 0.2);
    expectNear(hinge(plank, steel, 12).travelIn / firstYield(plank, steel, 12).travelIn, 20 / 9, exact);
  });

  it('agrees with curvature integrated twice along the tube', () => {
    // Independent: the curvature at each station is found by bisection on the moment, then integrated by the trapezium
    // rule from the middle, slope zero there, stations close together where the tube yields most.
    for (const setIn of [0.02, 0.06, 0.09]) {
      const press = pressForSet(s, steel, 20, setIn);
      const curvature = (moment: number): number => {
        let [low, high] = [0, 60 * (steel.yieldPsi / (steel.elasticPsi * 0.375))];
        for (let i = 0; i < 60; i++) {
          const half = (low + high) / 2;
          if (momentAt(s, steel, half) < moment) low = half;
          else high = half;
        }
        return (low + high) / 2;
      };
      const steps = 4000;
      // From the middle outwards; moment P/2 · (10 − x).
      const station = (i: number): number => 10 * (i / steps) ** 3;
      let [slope, down, before] = [0, 0, curvature((press.clampLbf / 2) * 10)];
      for (let i = 1; i <= steps; i++) {
        const dx = station(i) - station(i - 1);
        const k = curvature((press.clampLbf / 2) * (10 - station(i)));
        const next = slope + ((k + before) / 2) * dx;
        down += ((slope + next) / 2) * dx;
        slope = next;
        before = k;
      }
      expectNear(down, press.travelIn, { rel: 2e-5, because: 'trapezium rule, 4000 steps' });
      const elastic = (press.clampLbf * 20 ** 2) / (16 * 29e6 * inertiaOf(s));
      expectNear(2 * (slope - elastic), press.setRad, {
        rel: 1e-3,
        because: 'difference of two like numbers',
      });
    }
  });
});

describe('a ring squeezed round', () => {
  it('closes and bends as Castigliano’s ring', () => {
    // Source: Timoshenko, Strength of Materials I, as example 4 of the MIDAS/Gen verification manual quotes it: R = 2 m,
    // EI = 2e11 × 1.33333e-8, P = 8 N: moment under the load 5.09 N m, movement of the loaded point 1.79e-3 m (their
    // models 1.78e-3); and (π/4 − 2/π) PR³/EI at solver-docs.pages.dev/verification/pinched_ring.html.
    const ei = 2e11 * 1.33333e-8;
    const closing = Math.PI / 4 - 2 / Math.PI;
    expectNear((closing * 8 * 2 ** 3) / ei / 2, 1.79e-3, { rel: 5e-3, because: 'three figures' });
    expectNear((8 * 2) / Math.PI, 5.09, { abs: 5e-3, because: 'three figures' });
    // The tube as that ring, one inch long: closing at first yield of the wall, W = π M_y/R.
    const yieldPsi = {
      value: 75_000,
      unit: 'psi',
      basis: { kind: 'assumed', ref: 't' },
      assumed: [],
    } as const;
    const [radius, wall] = [0.4825, 0.035];
    const load = (Math.PI * (75_000 * wall ** 2)) / 6 / radius;
    const want = (closing * load * radius ** 3) / (29e6 * (wall ** 3 / 12));
    const { overSqueezeIn } = roundOut({ odIn: 1, wallIn: wall }, 29e6, yieldPsi);
    expectNear(overSqueezeIn.value, want, exact);
    // At collapse the four hinges carry W = 4 M_p/R: 6/π times as much.
    expectNear(overSqueezeIn.high!, (want * 6) / Math.PI, exact);
  });

  it('closes the same by its own bending added up', () => {
    // Independent: moment of the upper quarter M(θ) = WR(½ sin θ' …) with the redundant found by ∫M = 0, closing by
    // ∫ M ∂M/∂W; 20 000 steps.
    const steps = 20_000;
    const h = Math.PI / 2 / steps;
    // Cut at the side (θ = 0 there, load at θ = π/2): M = M₀ − (W/2)R(1 − cos θ), ∫M dθ = 0.
    let mean = 0;
    for (let i = 0; i < steps; i++) mean += (1 - Math.cos((i + 0.5) * h)) / 2 / steps;
    let energy = 0;
    for (let i = 0; i < steps; i++) energy += (mean - (1 - Math.cos((i + 0.5) * h)) / 2) ** 2 * h;
    expectNear(4 * energy, Math.PI / 4 - 2 / Math.PI, { rel: 1e-7, because: 'midpoint rule' });
  });
});
