import { describe, it } from 'vitest';
import { type Bend, depthOverTube, halfSine, kinkAt } from '../../../src/core/lockedIn/bend.ts';
import { expectNear } from '../../kit/near.ts';

/** Composite Simpson over 0…L; exact enough for a sine at 2,000 steps. */
const integrate = (f: (x: number) => number, from: number, to: number, steps = 2000): number => {
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let k = 1; k < steps; k++) sum += (k % 2 ? 4 : 2) * f(from + k * h);
  return (sum * h) / 3;
};

/**
 * Chord lost by a tube of fixed arc length S bent to the shape y over its chord: arc-length quadrature
 * ∫√(1 + y'²) dx = S, less the chord.
 */
const lost = (slope: (x: number) => number, chord: number): number =>
  integrate((x) => Math.hypot(1, slope(x)), 0, chord) - chord;

describe('half-sine', () => {
  const chord = 24;
  for (const share of [1 / 600, 1 / 100, 1 / 40]) {
    const e = chord * share;
    const y = (x: number): number => e * Math.sin((Math.PI * x) / chord);
    it(`shortens by π²e²/4L within 0.3 % at e/L = 1/${Math.round(1 / share)}`, () => {
      const want = lost((x) => ((Math.PI * e) / chord) * Math.cos((Math.PI * x) / chord), chord);
      expectNear(halfSine(e, chord).shortIn, want, {
        rel: 0.003,
        because: 'methods section 3 states 0.3 % at 1/40',
      });
    });
    it(`has the table's slopes and integrals at e/L = 1/${Math.round(1 / share)}`, () => {
      checkIntegrals(halfSine(e, chord), y, chord);
    });
  }
});

describe('kink', () => {
  const chord = 30;
  for (const a of [5, 12, 15, 26])
    for (const share of [1 / 600, 1 / 100, 1 / 40]) {
      const b = chord - a;
      const e = chord * share * Math.min(1, (4 * Math.min(a, b)) / chord / 2);
      it(`at ${a} of ${chord} shortens as two straight legs do, within 0.3 %, e = ${e.toFixed(3)}`, () => {
        // Two straight legs over the chord: exact geometry.
        const want = Math.hypot(a, e) + Math.hypot(b, e) - chord;
        expectNear(kinkAt(e, chord, a).shortIn, want, {
          rel: 0.003,
          because: 'methods section 3 states 0.3 %',
        });
      });
      it(`at ${a} of ${chord} has the table's slopes and integrals, e = ${e.toFixed(3)}`, () => {
        checkIntegrals(kinkAt(e, chord, a), (x) => (x < a ? (e * x) / a : (e * (chord - x)) / b), chord, a);
      });
    }
});

const checkIntegrals = (bend: Bend, y: (x: number) => number, chord: number, kink = chord / 2): void => {
  const near = { rel: 1e-9, because: 'Simpson, 2,000 steps on either side of the kink' };
  const over = (f: (x: number) => number): number => integrate(f, 0, kink) + integrate(f, kink, chord);
  expectNear(
    bend.y2,
    over((x) => y(x) ** 2),
    near,
  );
  expectNear(
    bend.momentFrom,
    over((x) => y(x) * (1 - x / chord)),
    near,
  );
  expectNear(
    bend.momentTo,
    over((x) => (y(x) * x) / chord),
    near,
  );
  const h = 1e-6;
  const slope = { rel: 1e-6, because: 'one-sided difference over a millionth of an inch' };
  expectNear(bend.slopeFrom, y(h) / h, slope);
  expectNear(bend.slopeTo, y(chord - h) / h, slope);
};

describe('depth over the whole tube', () => {
  it('of a uniform arc grows with the square of the chord', () => {
    // Trade facts table 10, case 37: a 10 in gauge reads .010, L = 30: bow .090. Computed there from the circle.
    expectNear(depthOverTube(0.01, 10, 30, null), 0.09, { rel: 1e-12, because: 'the rule itself' });
    // A true circle of radius R has sagitta R − √(R² − c²/4).
    const sagitta = (c: number): number => 1250 - Math.sqrt(1250 ** 2 - c ** 2 / 4);
    expectNear(depthOverTube(sagitta(10), 10, 30, null), sagitta(30), { rel: 1e-4, because: 'a flat arc' });
  });
  it('of a kink follows from two straight legs, the gauge over the kink', () => {
    // Legs that turn by φ at 12 of 30: depth over the tube φ ab/L, over a 10 in gauge centred there φ 10/4.
    const turn = 0.01;
    expectNear(depthOverTube((turn * 10) / 4, 10, 30, 12), (turn * 12 * 18) / 30, {
      rel: 1e-12,
      because: 'geometry',
    });
  });
  it('is the reading itself when the gauge spans the tube', () => {
    expectNear(depthOverTube(0.2, 30, 30, 7), 0.2, { rel: 1e-12, because: 'geometry' });
    expectNear(depthOverTube(0.2, 30, 30, null), 0.2, { rel: 1e-12, because: 'geometry' });
  });
});
