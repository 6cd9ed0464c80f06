import { describe, expect, it } from 'vitest';
import { bentColumnLbf, bentTieLbf, collapseLbf, leftOver } from '../../../src/core/lockedIn/leftOver.ts';
import type { Misfit } from '../../../src/core/lockedIn/misfit.ts';
import { capacityLbf } from '../../../src/core/statics/capacity.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import type { Member } from '../../../src/core/truss/result.ts';
import { expectNear } from '../../kit/near.ts';
import { ALL, heldAt, modelOf, POINT, trussOf, tube } from '../statics/boxTruss.ts';

/** A 1.000 × .035 tube, 30 in long, of the oracle table. */
const oracle = (fixity: number, lengthIn = 30): Member => {
  const { members } = trussOf({ a: [0, 0, 0], b: [lengthIn, 0, 0] }, [['a', 'b']], tube(1, 0.035));
  return { ...members[0]!, fixity };
};

const bent = (depthIn: number, more: Partial<Misfit> = {}): Misfit => ({
  member: 'a-b',
  findings: ['f1'],
  shortIn: 0,
  depthIn,
  atIn: 15,
  turnFrom: [0, 0, 0],
  turnTo: [0, 0, 0],
  y2: 0,
  y0: [0, 0, 0],
  y1: [0, 0, 0],
  assumed: [],
  ...more,
});

describe('first yield of a bent column', () => {
  // Trade facts, oracle 31: 1.000 × .035, L 30, c 1, bow L/600: 3,327 lb. By P/A + P e c/(I (1 − P/P_E)) = F_y.
  it('is 3,327 lb at a bow of L/600, pinned', () => {
    expectNear(bentColumnLbf(oracle(1), 30 / 600), 3327, { rel: 1e-3, because: 'four printed figures' });
  });

  // Oracle 32: c 2, bow L/300: 4,164 lb; the fixity is used in P_E.
  it('is 4,164 lb at a bow of L/300, fixity 2', () => {
    expectNear(bentColumnLbf(oracle(2), 30 / 300), 4164, { rel: 1e-3, because: 'four printed figures' });
  });

  it('comes to the straight column as the bow vanishes, and is never above it', () => {
    for (const long of [8, 20, 30, 60]) {
      const member = oracle(1, long);
      const straight = capacityLbf(member, 'compression');
      expectNear(bentColumnLbf(member, 0), straight, {
        rel: 0.02,
        because: 'Johnson–Euler against Euler or yield, the smaller',
      });
      for (const depth of [0, 0.001, 0.01, 0.1])
        expect(bentColumnLbf(member, depth)).toBeLessThanOrEqual(straight);
    }
  });
});

describe('collapse of a bent column', () => {
  it('satisfies its own equation, and lies at or above first yield', () => {
    for (const [long, depth] of [
      [30, 0.3],
      [40, 0.4],
      [24, 1],
    ] as const) {
      const member = oracle(1, long);
      const { section } = member;
      const p = collapseLbf(member, depth);
      const euler = (Math.PI ** 2 * section.elasticPsi * section.inertiaIn4) / long ** 2;
      // M_p = F_y (D³ − d³)/6, N_p = F_y A.
      const mp = (75_000 * (1 - 0.93 ** 3)) / 6;
      const np = 75_000 * (Math.PI / 4) * (1 - 0.93 ** 2);
      expectNear((p * depth) / (1 - p / euler), mp * Math.cos((Math.PI * p) / (2 * np)), {
        rel: 1e-9,
        because: 'bisection to the last digits',
      });
      expect(p).toBeGreaterThan(bentColumnLbf(member, depth));
    }
  });
});

// Beam formula: M = F_y I/c and P = M/e when the axial part vanishes; F_y A when the bow does.
it('a pulled bent tube first yields by pull and bending together', () => {
  const member = oracle(1);
  const { areaIn2, inertiaIn4 } = member.section;
  expectNear(bentTieLbf(member, 0), 75_000 * areaIn2, { rel: 1e-12, because: 'closed form' });
  const p = bentTieLbf(member, 0.5);
  expectNear(p / areaIn2 + (p * 0.5 * 0.5) / inertiaIn4, 75_000, { rel: 1e-12, because: 'closed form' });
});

describe('left-over strength', () => {
  const truss = trussOf({ a: [0, 0, 0], b: [30, 0, 0] }, [['a', 'b']], tube(1, 0.035));
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const support = heldAt({ a: ALL, b: ['y', 'z'] });
  const model = modelOf({
    loadCases: [-1000, 500].map((push) => ({
      id: push < 0 ? 'push' : 'pull',
      name: 'along the tube',
      gravity: [0, 0, 0],
      loads: [{ cluster: 'b', forceLbf: [push, 0, 0] }],
    })),
  });
  const solved = statics(truss, model, support, prepareFrame(truss, support));

  it('compares each load case with the straight tube and with the bent one, in its own sense', () => {
    const [row] = leftOver(members, [bent(0.05)], solved);
    const [push, pull] = row!.cases;
    const member = truss.members[0]!;
    // 1,000 lb over oracle 31's 3,327 lb; oracle 10's straight column, 3,899 lb.
    expectNear(push!.ofBent.value, 1000 / 3327, { rel: 1e-3, because: 'four printed figures' });
    expectNear(push!.ofStraight.value, 1000 / 3899, { rel: 1e-3, because: 'four printed figures' });
    expectNear(row!.ratio.value, 3327 / 3899, { rel: 1e-3, because: 'four printed figures' });
    expectNear(pull!.ofStraight.value, 500 / (75_000 * member.section.areaIn2), {
      rel: 1e-9,
      because: 'closed form',
    });
    expectNear(pull!.ofBent.value, 500 / bentTieLbf(member, 0.05), { rel: 1e-9, because: 'same tie' });
  });

  it('has a range when the depth has an uncertainty, and says what it assumed on every figure', () => {
    const [row] = leftOver(members, [bent(0.1, { stdIn: 0.02 })], solved);
    const { firstYieldLbf } = row!;
    expectNear(firstYieldLbf.low!, bentColumnLbf(oracle(1), 0.12), { rel: 1e-12, because: 'same column' });
    expectNear(firstYieldLbf.high!, bentColumnLbf(oracle(1), 0.08), { rel: 1e-12, because: 'same column' });
    for (const f of [row!.straightLbf, firstYieldLbf, row!.collapseLbf, row!.ratio, row!.cases[0]!.ofBent])
      expect(f.assumed.length).toBeGreaterThan(0);
  });

  it('gives no shares without load cases, or for a truss that moves freely', () => {
    expect(leftOver(members, [bent(0.1)], undefined)[0]!.cases).toEqual([]);
    const loose = statics(truss, model, heldAt({ a: POINT }), prepareFrame(truss, heldAt({ a: POINT })));
    expect(loose.kind).toBe('movesFreely');
    expect(leftOver(members, [bent(0.1)], loose)[0]!.cases).toEqual([]);
  });
});
