import { describe, expect, it } from 'vitest';
import { hashOf, nextState, seeded } from '../../../src/core/base/seeded.ts';
import { expectNear } from '../../kit/near.ts';

describe('seeded', () => {
  it('is the minimal standard generator', () => {
    // ISO C++ [rand.predef]: the 10000th value of minstd_rand from its default seed 1 is 399268537.
    let state = 1;
    for (let i = 0; i < 10_000; i++) state = nextState(state);
    expect(state).toBe(399_268_537);
  });

  it('hashes by FNV-1a', () => {
    // Test vectors of the FNV reference code (test_fnv.c), 32 bits, FNV-1a.
    expect(hashOf('')).toBe(0x811c9dc5);
    expect(hashOf('a')).toBe(0xe40c292c);
    expect(hashOf('foobar')).toBe(0xbf9cf968);
  });

  it('gives the same row for the same seed and another for another', () => {
    const row = (seed: string): readonly number[] => {
      const chance = seeded(seed);
      return Array.from({ length: 20 }, () => chance.whole(0, 999));
    };
    expect(row('lesson 1')).toEqual(row('lesson 1'));
    expect(row('lesson 1')).not.toEqual(row('lesson 2'));
  });

  it('stays within its bounds and reaches each of them, evenly', () => {
    const chance = seeded('bounds');
    const counts = [0, 0, 0, 0, 0, 0];
    for (let i = 0; i < 60_000; i++) counts[chance.whole(1, 6) - 1]! += 1;
    // Binomial, n = 60000, p = 1/6: standard deviation 91; five of them.
    for (const count of counts) expectNear(count, 10_000, { abs: 456, because: 'five standard deviations' });
    for (let i = 0; i < 1000; i++) {
      const share = chance.share();
      expect(share >= 0 && share < 1).toBe(true);
      expect(['a', 'b']).toContain(chance.pick(['a', 'b']));
    }
  });
});
