import { describe, expect, it } from 'vitest';
import { figure } from '../../src/core/base/figure.ts';
import {
  fixed,
  showAxial,
  showDifference,
  showFigure,
  showLength,
  showOpenings,
  showRange,
  showStress,
  showTime,
  showTube,
} from '../../src/present/show.ts';

const basis = { kind: 'measured', ref: 'r1' } as const;

describe('showing numbers', () => {
  // 23 5/16 in = 23.3125 in = 592.1375 mm, by hand; the form is that of look.md
  it('shows a length as decimal with the nearest fraction, as decimal alone, or in mm', () => {
    expect(showLength(23.3125, 'inFraction')).toBe('23.313 in · 23 5/16');
    expect(showLength(23.3125, 'inDecimal')).toBe('23.313 in');
    expect(showLength(23.3125, 'mm')).toBe('592.1 mm');
  });

  // 0.015625 = 1/64: at 32nds it is half a step and goes up
  it('takes the step of the fraction it is told', () => {
    expect(showLength(0.015625, 'inFraction', 64)).toBe('0.016 in · 1/64');
    expect(showLength(5.328125, 'inFraction', 64)).toBe('5.328 in · 5 21/64');
  });

  it('says short and long in words, with the work only where it is asked for', () => {
    expect(showDifference(-3 / 32, 'inFraction', true)).toBe('found 3/32 short: spread 3/32');
    expect(showDifference(3 / 32, 'inFraction', true)).toBe('found 3/32 long: draw in 3/32');
    expect(showDifference(-3 / 32, 'mm', false)).toBe('found 2.4 mm short');
    expect(showDifference(0.09375, 'inDecimal', false)).toBe('found 0.094 in long');
  });

  it('never says "0 short": what rounds to nothing is no difference to the step shown', () => {
    for (const d of [0, 0.004, -0.0155, 0.0155])
      expect(showDifference(d, 'inFraction', true)).toBe('no difference to 1/32');
    expect(showDifference(0.001, 'mm', true)).toBe('no difference to 0.1 mm');
  });

  it('shows a minus zero as zero and what is not finite as not known', () => {
    expect(fixed(-0.0001, 2)).toBe('0.00');
    expect(fixed(Number.NaN, 2)).toBe('not known');
    expect(fixed(Number.POSITIVE_INFINITY, 2)).toBe('not known');
  });

  it('says the unit of a range once', () => {
    expect(showRange({ low: -23, high: 6 }, 'lbf', 'inFraction')).toBe('-23 to 6 lbf');
    expect(showRange({ low: 600, high: 5800 }, 'psi', 'inFraction')).toBe('0.6 to 5.8 ksi');
    expect(showRange({ low: 4, high: 4.2 }, 'lbf', 'inFraction')).toBe('4 lbf');
  });

  it('shows a figure with its range or its uncertainty', () => {
    expect(showFigure(figure(12.5, 'in', basis, [], { std: 0.03125 }), 'inDecimal')).toBe(
      '12.500 in ± 0.031 in',
    );
    expect(showFigure(figure(4, 'in-lbf', basis, [], { low: 0, high: 2310 }), 'mm')).toBe(
      '0 to 2,310 in-lbf',
    );
  });

  it('says tension and compression in words and stresses in ksi', () => {
    expect(showAxial(-1234.4)).toBe('1,234 lbf compression');
    expect(showAxial(88)).toBe('88 lbf tension');
    expect(showStress(41_250)).toBe('41.3 ksi');
  });

  it('says which way a kerf moves on both readings', () => {
    expect(showOpenings({ low: -0.012, high: 0.041 }, 'inFraction')).toBe('closes 0.012 to opens 0.041 in');
    expect(showOpenings({ low: 0.007, high: 0.022 }, 'inFraction')).toBe('opens 0.007 to 0.022 in');
    expect(showOpenings({ low: -0.022, high: -0.007 }, 'inFraction')).toBe('closes 0.007 to 0.022 in');
    expect(showOpenings({ low: 0, high: 0 }, 'mm')).toBe('does not move');
  });

  // 0.035 in = 0.889 mm
  it('shows tubes as the shop writes them, and a solid rod as a rod', () => {
    expect(showTube({ odIn: 0.75, wallIn: 0.035 }, 'inFraction')).toBe('3/4 × .035');
    expect(showTube({ odIn: 0.75, wallIn: 0.035 }, 'mm')).toBe('19.1 × 0.89 mm');
    expect(showTube({ odIn: 0.5, wallIn: 0.25 }, 'inFraction')).toBe('1/2 rod');
  });

  it('shows the time that stands in a record, in the zone it was written in', () => {
    expect(showTime('2026-03-14T09:05:00Z')).toBe('2026-03-14 09:05 UTC');
    expect(showTime('2026-03-14T09:05:33.120+01:00')).toBe('2026-03-14 09:05 +01:00');
  });
});
