import { describe, expect, it } from 'vitest';
import { expectNear, isNear } from './near.ts';

describe('near', () => {
  it('accepts what lies inside and fails on a near miss, absolute and relative', () => {
    expect(isNear(1.01, 1, { abs: 0.0101, because: 'test' })).toBe(true);
    expect(isNear(1.01, 1, { abs: 0.0099, because: 'test' })).toBe(false);
    expect(isNear(1e-6, 1.02e-6, { rel: 0.02, because: 'test' })).toBe(true);
    expect(isNear(1e-6, 1.03e-6, { rel: 0.02, because: 'test' })).toBe(false);
    expect(() => expectNear(5, 6, { rel: 0.1, because: 'test' })).toThrow(/want 6/);
  });

  it('never calls NaN near', () => {
    expect(isNear(Number.NaN, 1, { abs: 1e9, because: 'test' })).toBe(false);
    expect(isNear(1, Number.NaN, { rel: 1e9, because: 'test' })).toBe(false);
  });
});
