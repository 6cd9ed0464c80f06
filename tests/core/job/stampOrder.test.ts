import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byStamp, secondsOf } from '../../../src/core/job/stampOrder.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';

describe('secondsOf', () => {
  it('agrees with the platform’s own reading of ISO 8601, in any zone (seed 451)', () => {
    const two = (n: number): string => String(n).padStart(2, '0');
    const zone = fc.oneof(
      fc.constant('Z'),
      fc
        .tuple(fc.constantFrom('+', '-'), fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
        .map(([sign, h, m]) => `${sign}${two(h)}:${two(m)}`),
    );
    const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2199-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(day, zone, fc.boolean(), (date, where, fraction) => {
        const iso = date.toISOString();
        const at = `${fraction ? iso.slice(0, 23) : iso.slice(0, 19)}${where}`;
        // Sums of up to 8e9 s and thousandths: doubles hold them to 1e-6.
        expectNear(secondsOf(at), Date.parse(at) / 1000, { abs: 1e-5, because: 'rounding of the fraction' });
      }),
      { seed: 451, numRuns: soak(10_000) },
    );
  });

  it('orders records at one instant by id', () => {
    const a = { id: 'a', at: '2026-03-01T10:00:00+01:00' };
    const b = { id: 'b', at: '2026-03-01T09:00:00Z' };
    expect([b, a].sort(byStamp)).toEqual([a, b]);
  });
});
