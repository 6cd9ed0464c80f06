import { describe, expect, it } from 'vitest';
import { dot, length, sub, unit, type Vec3 } from '../../../src/core/base/vec3.ts';
import { pinnedIdealisation } from '../../../src/core/statics/mechanisms.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel } from '../../kit/trusses.ts';
import { boxTruss, heldAt, POINT, trussOf } from './boxTruss.ts';

const runs = soak(60);
const because = 'null vector of a squared matrix, combined by elimination';

describe('movements and self-stress for people to look at', () => {
  it(`keep every length and balance at every cluster, whichever way they are combined, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++) {
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const support = heldAt({ L1L: POINT, L1R: ['x', 'z'], U1L: ['x'] }, 'pinned');
      const held = new Set(['L1L 0', 'L1L 1', 'L1L 2', 'L1R 0', 'L1R 2', 'U1L 0']);
      const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
      const along = (m: { from: string; to: string }): Vec3 => unit(sub(at.get(m.to)!, at.get(m.from)!));
      const { pinned, mechanismShapes, selfStressStates } = pinnedIdealisation(truss, support);
      expect(mechanismShapes.length).toBe(Math.min(8, pinned!.mechanisms));
      expect(selfStressStates.length).toBe(Math.min(8, pinned!.selfStress));
      for (const shape of mechanismShapes) {
        const move = new Map(shape.map((c) => [c.id, c.moveIn]));
        const still: Vec3 = [0, 0, 0];
        expect(Math.max(...shape.map((c) => length(c.moveIn)))).toBeGreaterThanOrEqual(1 - 1e-9);
        for (const m of truss.members)
          expectNear(dot(along(m), sub(move.get(m.to) ?? still, move.get(m.from) ?? still)), 0, {
            abs: 1e-5,
            because,
          });
      }
      for (const state of selfStressStates) {
        const share = new Map(state.members.map((m) => [m.id, m.share]));
        const sum = new Map<string, number>();
        for (const m of truss.members)
          along(m).forEach((e, d) => {
            const part = (share.get(m.id) ?? 0) * e;
            sum.set(`${m.from} ${d}`, (sum.get(`${m.from} ${d}`) ?? 0) + part);
            sum.set(`${m.to} ${d}`, (sum.get(`${m.to} ${d}`) ?? 0) - part);
          });
        for (const [key, v] of sum) if (!held.has(key)) expectNear(v, 0, { abs: 1e-5, because });
      }
    }
  });

  it('show one thing each: two crossed squares apart have a state in each, not mixtures', () => {
    const square = (name: string, x: number) => ({
      [`${name}a`]: [x, 0, 0] as Vec3,
      [`${name}b`]: [x + 10, 0, 0] as Vec3,
      [`${name}c`]: [x + 10, 0, 10] as Vec3,
      [`${name}d`]: [x, 0, 10] as Vec3,
    });
    const bars = (n: string) =>
      [
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'd'],
        ['a', 'd'],
        ['a', 'c'],
        ['b', 'd'],
      ].map(([p, q]) => [`${n}${p}`, `${n}${q}`] as const);
    const truss = trussOf({ ...square('l', 0), ...square('r', 40) }, [...bars('l'), ...bars('r')]);
    const support = heldAt(
      Object.fromEntries(
        ['l', 'r'].flatMap((n) => [
          [`${n}a`, POINT],
          [`${n}b`, ['y', 'z']],
          [`${n}c`, ['y']],
          [`${n}d`, ['y']],
        ]),
      ),
      'pinned',
    );
    const { selfStressStates } = pinnedIdealisation(truss, support);
    expect(selfStressStates.length).toBe(2);
    for (const { members } of selfStressStates) {
      expect(new Set(members.map(({ id }) => id[0])).size).toBe(1);
      // By hand: 1 in the diagonals, −1/√2 in the sides.
      for (const { id, share } of members) {
        const diagonal = /a-.c|b-.d/.test(id);
        expectNear(share, diagonal ? 1 : -Math.SQRT1_2, { abs: 1e-7, because });
      }
    }
  });

  it('are left out beyond 300 members', () => {
    expect(pinnedIdealisation(boxTruss(30), heldAt({}, 'pinned'))).toEqual({
      pinned: null,
      mechanismShapes: [],
      selfStressStates: [],
      basis: null,
    });
  });
});
