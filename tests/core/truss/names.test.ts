import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  comparePlaces,
  mirrorCluster,
  readCluster,
  readMember,
  sayCluster,
  sayMember,
} from '../../../src/core/truss/names.ts';
import { soak } from '../../kit/soak.ts';

const label = fc
  .tuple(fc.integer({ min: 0, max: 999 }), fc.constantFrom('', 'a', 'z'))
  .map(([n, letter]) => `${n}${letter}`);
const clusterName = fc.record({
  height: fc.constantFrom('U', 'L'),
  station: label,
  side: fc.constantFrom('L', 'R', 'C'),
});

describe('names', () => {
  it('a cluster id reads back as it was said (seed 7)', () => {
    fc.assert(
      fc.property(clusterName, (name) => {
        expect(readCluster(sayCluster(name))).toEqual(name);
      }),
      { seed: 7, numRuns: soak(2000) },
    );
  });

  it('a member id reads back as it was said, the second tube too (seed 8)', () => {
    fc.assert(
      fc.property(clusterName, clusterName, fc.integer({ min: 1, max: 20 }), (a, b, nth) => {
        const [from, to] = [sayCluster(a), sayCluster(b)];
        expect(readMember(sayMember(from, to, nth))).toEqual({ from, to, nth });
      }),
      { seed: 8, numRuns: soak(2000) },
    );
  });

  it('reads the ids of shapes.md and refuses what is not of the form', () => {
    expect(readCluster('U4R')).toEqual({ height: 'U', station: '4', side: 'R' });
    expect(readCluster('L12C')).toEqual({ height: 'L', station: '12', side: 'C' });
    expect(readCluster('U4aL')).toEqual({ height: 'U', station: '4a', side: 'L' });
    expect(readMember('U3R-U4R#2')).toEqual({ from: 'U3R', to: 'U4R', nth: 2 });
    for (const odd of ['', 'U4', '4R', 'UR', 'u4R', 'U4RR', 'GEAR', 'U4R '])
      expect(readCluster(odd)).toBeNull();
    for (const odd of ['', 'U3R', 'U3R-', 'A-B-C', 'U3R-U4R#1', 'U3R-U4R#x'])
      expect(readMember(odd)).toBeNull();
  });

  it('the opposite hand of the opposite hand is the cluster itself; a centre cluster has none (seed 9)', () => {
    fc.assert(
      fc.property(clusterName, (name) => {
        const id = sayCluster(name);
        const other = mirrorCluster(id);
        if (name.side === 'C') expect(other).toBeNull();
        else expect(mirrorCluster(other!)).toBe(id);
      }),
      { seed: 9, numRuns: soak(500) },
    );
  });

  it('orders ends forward first, then U before L, then L, C, R', () => {
    const order = ['U3R', 'U4L', 'U4C', 'U4R', 'L4L', 'L4C', 'L4R'];
    const places = order.map((id) => ({ id, alongIn: id.includes('3') ? 30 : 40 }));
    expect(
      places
        .toReversed()
        .sort(comparePlaces)
        .map((p) => p.id),
    ).toEqual(order);
  });
});
