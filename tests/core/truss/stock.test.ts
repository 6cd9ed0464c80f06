import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inStock, materials, roundSection, stock, tubeOfSection } from '../../../src/core/truss/stock.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';

describe('stock', () => {
  it('a wall of half the diameter is a solid rod', () => {
    // A = π D²/4 and I = π D⁴/64 of a solid circle, D = 0.5.
    const rod = roundSection({ odIn: 0.5, wallIn: 0.25 })!;
    expectNear(rod.areaIn2, Math.PI / 16, { rel: 1e-12, because: 'rounding only' });
    expectNear(rod.inertiaIn4, Math.PI / 1024, { rel: 1e-12, because: 'rounding only' });
  });

  it('a wall of more than half the diameter has no section', () => {
    expect(roundSection({ odIn: 0.5, wallIn: 0.26 })).toBeNull();
  });

  it('every listed size has a section, and walls grow along the row', () => {
    for (const row of stock) {
      expect(row.wallsIn).toEqual(row.wallsIn.toSorted((a, b) => a - b));
      for (const wallIn of row.wallsIn) expect(roundSection({ odIn: row.odIn, wallIn })).not.toBeNull();
    }
  });

  it('finds a listed size typed in millimetres, and not one a gauge off', () => {
    expect(inStock({ odIn: 19.05 / 25.4, wallIn: 0.89 / 25.4 })).toBe(true);
    expect(inStock({ odIn: 0.75, wallIn: 0.042 })).toBe(false);
    expect(inStock({ odIn: 0.9, wallIn: 0.035 })).toBe(false);
  });

  it('the tube of an area and second moment is the tube they came from (seed 41)', () => {
    const size = fc.record({
      odIn: fc.double({ min: 0.2, max: 3, noNaN: true }),
      part: fc.double({ min: 0.02, max: 0.45, noNaN: true }),
    });
    fc.assert(
      fc.property(size, ({ odIn, part }) => {
        const section = roundSection({ odIn, wallIn: odIn * part })!;
        const back = tubeOfSection(section.areaIn2, section.inertiaIn4);
        expectNear(back.odIn, odIn, { rel: 1e-9, because: 'two square roots' });
        expectNear(back.wallIn, odIn * part, { rel: 1e-6, because: 'difference of near numbers' });
      }),
      { seed: 41, numRuns: soak(2000) },
    );
  });

  it('every material says where each of its numbers is from', () => {
    for (const m of materials)
      for (const source of Object.values(m.sources)) expect(source.length).toBeGreaterThan(5);
  });
});
