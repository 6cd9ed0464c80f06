import { describe, expect, it, vi } from 'vitest';
import { dot, sub, unit } from '../../../src/core/base/vec3.ts';
import { pinnedCount, pinnedMovements, selfStressStates } from '../../../src/core/statics/mechanisms.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel } from '../../kit/trusses.ts';
import { boxTruss, heldAt, POINT, trussOf } from './boxTruss.ts';

// A soak takes minutes on a busy machine.
vi.setConfig({ testTimeout: 600_000 });

const runs = soak(100);

describe('pinned null spaces', () => {
  it(`gives self-stress that balances at every free cluster and movements that keep every length, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++) {
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const support = heldAt({ L1L: POINT, L1R: ['x', 'z'], U1L: ['x'] }, 'pinned');
      const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
      const direction = (from: string, to: string) => unit(sub(at.get(to)!, at.get(from)!));
      const count = pinnedCount(truss, support)!;
      const states = selfStressStates(truss, support)!;
      const movements = pinnedMovements(truss, support)!;
      expect(states.length).toBe(count.selfStress);
      expect(movements.length).toBe(count.mechanisms);
      const held = new Set(['L1L 0', 'L1L 1', 'L1L 2', 'L1R 0', 'L1R 2', 'U1L 0']);
      for (const state of states) {
        expectNear(Math.max(...state.members.map((m) => m.share)), 1, {
          rel: 1e-8,
          because: 'the first of equally large ones is made 1',
        });
        const sum = new Map<string, number>();
        truss.members.forEach((m, k) => {
          const e = direction(m.from, m.to);
          for (let d = 0; d < 3; d++) {
            sum.set(`${m.from} ${d}`, (sum.get(`${m.from} ${d}`) ?? 0) + state.members[k]!.share * e[d]!);
            sum.set(`${m.to} ${d}`, (sum.get(`${m.to} ${d}`) ?? 0) - state.members[k]!.share * e[d]!);
          }
        });
        for (const [key, v] of sum)
          if (!held.has(key)) expectNear(v, 0, { abs: 1e-7, because: 'null vector of a squared matrix' });
      }
      for (const movement of movements) {
        const move = new Map(movement.map((c) => [c.id, c.moveIn]));
        for (const m of truss.members)
          expectNear(dot(direction(m.from, m.to), sub(move.get(m.to)!, move.get(m.from)!)), 0, {
            abs: 1e-7,
            because: 'null vector of a squared matrix',
          });
      }
    }
  });

  it('counts the same however the whole body is held', () => {
    const truss = boxTruss(4);
    const free = pinnedCount(truss, heldAt({}, 'pinned'));
    expect(pinnedCount(truss, heldAt({ U0L: POINT, L0R: ['x', 'z'], U0R: ['x'] }, 'pinned'))).toEqual(free);
    // Maxwell–Calladine: s − m = b − 3 n + 6.
    expect(free!.selfStress - free!.mechanisms).toBe(truss.members.length - 3 * 20 + 6);
  });

  it('cannot decide when the singular values leave no gap', () => {
    // Two pairs of bars, each out of line by a hair: singular values of about 1e-9 and a third of it.
    const pairs = (one: number, other: number) =>
      trussOf(
        { a: [0, 0, 0], b: [10, 0, one], c: [20, 0, 0], d: [0, 9, 0], e: [10, 9, other], f: [20, 9, 0] },
        [
          ['a', 'b'],
          ['b', 'c'],
          ['d', 'e'],
          ['e', 'f'],
        ],
      );
    const ends = heldAt({ a: POINT, b: ['y'], c: POINT, d: POINT, e: ['y'], f: POINT }, 'pinned');
    expect(pinnedCount(pairs(1, 1), ends)).toEqual({ selfStress: 0, mechanisms: 0 });
    expect(pinnedCount(pairs(0, 1), ends)).toEqual({ selfStress: 1, mechanisms: 1 });
    expect(pinnedCount(pairs(0, 0), ends)).toEqual({ selfStress: 2, mechanisms: 2 });
    expect(pinnedCount(pairs(2e-8, 5e-9), ends)).toBeNull();
    expect(selfStressStates(pairs(2e-8, 5e-9), ends)).toBeNull();
  });

  it('leaves trusses of more than 300 members undecided', () => {
    expect(pinnedCount(boxTruss(30), heldAt({}, 'pinned'))).toBeNull();
  });
});
