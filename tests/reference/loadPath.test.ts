import { describe, expect, it } from 'vitest';
import { changedFrame } from '../../src/core/lockedIn/changedFrame.ts';
import { bentColumnLbf } from '../../src/core/lockedIn/leftOver.ts';
import { coupleTo, couplingBlock, cutsOf, letGo, strainAfter } from '../../src/core/relief/release.ts';
import { capacityLbf } from '../../src/core/statics/capacity.ts';
import { deformations, type Frame } from '../../src/core/statics/frame.ts';
import type { HeldNow } from '../../src/core/statics/held.ts';
import { isFrame, prepareFrame } from '../../src/core/statics/prepareFrame.ts';
import { redundancyOf } from '../../src/core/statics/redundancy.ts';
import { statics } from '../../src/core/statics/statics.ts';
import type { Member, Truss } from '../../src/core/truss/result.ts';
import { ALL, heldAt, modelOf, POINT, trussOf, tube } from '../core/statics/boxTruss.ts';
import { expectNear } from '../kit/near.ts';

/** Where load goes when a member is lost, how redundant members are, what a bent column takes; sources at each. */
const near = { rel: 1e-9, because: 'closed form against one factor' };

const frameOf = (truss: Truss, support: HeldNow): Frame => {
  const frame = prepareFrame(truss, support);
  if (!isFrame(frame)) expect.fail('moves freely');
  return frame;
};

/** Axial forces under one load, whole and with a member removed by the low-rank update. */
const withAndWithout = (
  truss: Truss,
  support: HeldNow,
  at: string,
  force: readonly number[],
  cut: string,
) => {
  const frame = frameOf(truss, support);
  const loads = new Float64Array(frame.held.length);
  loads.set(force, frame.clusterIndex.get(at)! * 6);
  const moves = frame.solve(loads);
  const strains = new Float64Array(frame.members.length * 6);
  frame.members.forEach((m, k) => {
    strains.set(deformations(m, moves), k * 6);
  });
  const cuts = cutsOf(changedFrame(frame, [])!);
  const index = frame.memberIndex.get(cut)!;
  const gone = letGo(cuts, index, strains);
  const axial = (id: string): readonly [number, number] => {
    const k = frame.memberIndex.get(id)!;
    const d = frame.members[k]!.stiffness[0]!;
    const coupled = coupleTo(cuts, k);
    const after = strainAfter(coupled, index, couplingBlock(cuts, coupled, index), gone.z, strains);
    return [d * strains[k * 6]!, d * after[0]!];
  };
  return axial;
};

describe('a member that is removed', () => {
  // Springs in parallel (any strength of materials text): n equal bars carry P/n each, n − 1 carry P/(n − 1).
  it('leaves its share to the bars beside it, in equal parts', () => {
    const truss = trussOf({ a: [0, 0, 0], b: [20, 0, 0] }, [
      ['a', 'b'],
      ['a', 'b'],
      ['a', 'b'],
      ['a', 'b'],
    ]);
    const members = truss.members.map((m, k) => ({ ...m, id: `bar ${k}` }));
    const support = heldAt({ a: ALL, b: ['y', 'z', 'rx', 'ry', 'rz'] });
    const axial = withAndWithout({ ...truss, members }, support, 'b', [900, 0, 0], 'bar 0');
    for (const id of ['bar 1', 'bar 2', 'bar 3']) {
      expectNear(axial(id)[0], 900 / 4, near);
      expectNear(axial(id)[1], 900 / 3, near);
    }
    expectNear(axial('bar 0')[1], 0, { abs: 1e-9, because: 'a cut bar carries nothing' });
  });

  // Timoshenko, Strength of Materials, part I (3rd ed.), art. 9: three bars of one section to a joint, side bars at α:
  // N = P/(1 + 2cos³α), sides N cos²α; without the middle one P/(2 cos α) (equilibrium).
  it('of three that meet gives the sides what equilibrium asks', () => {
    for (const degrees of [30, 45, 60]) {
      const alpha = (degrees * Math.PI) / 180;
      const side = 10 * Math.tan(alpha);
      const truss = trussOf({ j: [0, 0, 0], l: [-side, 0, 10], m: [0, 0, 10], r: [side, 0, 10] }, [
        ['j', 'l'],
        ['j', 'm'],
        ['j', 'r'],
      ]);
      const support = heldAt({ j: ['y'], l: POINT, m: POINT, r: POINT }, 'pinned');
      const axial = withAndWithout(truss, support, 'j', [0, 0, -500], 'j-m');
      const c = Math.cos(alpha);
      expectNear(axial('j-m')[0], 500 / (1 + 2 * c ** 3), near);
      expectNear(axial('j-l')[0], (500 * c * c) / (1 + 2 * c ** 3), near);
      for (const id of ['j-l', 'j-r']) expectNear(axial(id)[1], 500 / (2 * c), near);
    }
  });

  // Force method, Hibbeler, Structural Analysis, 8th ed., ch. 10.6 (truss with one redundant): square with two diagonals,
  // one EA, pushed sideways at a top corner: the diagonals share as ±P/√2; without one the other carries √2 P.
  it('of two crossed diagonals leaves the other twice its load', () => {
    const truss = trussOf({ a: [0, 0, 0], b: [10, 0, 0], c: [10, 0, 10], d: [0, 0, 10] }, [
      ['a', 'b'],
      ['b', 'c'],
      ['c', 'd'],
      ['a', 'd'],
      ['a', 'c'],
      ['b', 'd'],
    ]);
    const support = heldAt({ a: POINT, b: ['y', 'z'], c: ['y'], d: ['y'] }, 'pinned');
    const axial = withAndWithout(truss, support, 'd', [300, 0, 0], 'b-d');
    expectNear(axial('a-c')[0], 300 / Math.SQRT2, near);
    expectNear(axial('b-d')[0], -300 / Math.SQRT2, near);
    expectNear(axial('a-c')[1], 300 * Math.SQRT2, near);
    expectNear(axial('b-c')[1], -300, near);
    expectNear(axial('c-d')[1], -300, near);
    expectNear(axial('a-d')[1], 0, { abs: 1e-6, because: 'a bar without load, of 300' });
  });

  // Statics in space: a pyramid of four equal legs carries P/(4 cos α) in each (symmetry); without one leg the leg across
  // from it has nothing to lean on and carries none, the other two P/(2 cos α) (equilibrium of the apex).
  it('of a four-legged pyramid unloads the leg across and doubles the other two', () => {
    const truss = trussOf({ top: [0, 0, 12], n: [0, 9, 0], s: [0, -9, 0], e: [9, 0, 0], w: [-9, 0, 0] }, [
      ['top', 'n'],
      ['top', 's'],
      ['top', 'e'],
      ['top', 'w'],
    ]);
    const support = heldAt({ n: POINT, s: POINT, e: POINT, w: POINT }, 'pinned');
    const axial = withAndWithout(truss, support, 'top', [0, 0, -800], 'top-n');
    const cosine = 12 / 15;
    for (const id of ['top-n', 'top-s', 'top-e', 'top-w'])
      expectNear(axial(id)[0], -800 / (4 * cosine), near);
    expectNear(axial('top-s')[1], 0, { abs: 1e-6, because: 'a leg without load, of 250' });
    for (const id of ['top-e', 'top-w']) expectNear(axial(id)[1], -800 / (2 * cosine), near);
  });
});

describe('redundancy', () => {
  // Linkwitz 1961; Bahndorf 1991: redundancies add up to the degree of redundancy, and of springs in series between
  // walls each has r_i = f_i/Σf, f = L/EA: a length error is taken up by the others in proportion to their give.
  it('of bars in line between walls is shared by their give, and adds up to one', () => {
    const sections = [tube(0.5, 0.035), tube(1, 0.049), tube(0.75, 0.035)] as const;
    const truss = trussOf({ a: [0, 0, 0], b: [8, 0, 0], c: [30, 0, 0], d: [41, 0, 0] }, [
      ['a', 'b', sections[0]],
      ['b', 'c', sections[1]],
      ['c', 'd', sections[2]],
    ]);
    const support = heldAt({ a: POINT, b: ['y', 'z'], c: ['y', 'z'], d: POINT }, 'pinned');
    const give = [8, 22, 11].map((l, k) => l / sections[k]!.areaIn2);
    const all = give.reduce((s, f) => s + f, 0);
    const rows = redundancyOf(frameOf(truss, support));
    rows.forEach(({ rN }, k) => {
      expectNear(rN, give[k]! / all, near);
    });
    expectNear(
      rows.reduce((s, { rN }) => s + rN, 0),
      1,
      near,
    );
  });

  // Same source, parallel: n equal bars, n − 1 redundants, each (n − 1)/n.
  it('of bars side by side is the same for each, and adds up to one less than their number', () => {
    for (const n of [2, 3, 5]) {
      const truss = trussOf(
        { a: [0, 0, 0], b: [20, 0, 0] },
        Array.from({ length: n }, () => ['a', 'b'] as const),
      );
      const members = truss.members.map((m, k) => ({ ...m, id: `bar ${k}` }));
      const rows = redundancyOf(
        frameOf({ ...truss, members }, heldAt({ a: POINT, b: ['y', 'z'] }, 'pinned')),
      );
      for (const { rN } of rows) expectNear(rN, (n - 1) / n, near);
    }
  });
});

describe('columns with a bow', () => {
  const column = (lengthIn: number, fixity: number): Member => {
    const { members } = trussOf({ a: [0, 0, 0], b: [lengthIn, 0, 0] }, [['a', 'b']], tube(1, 0.035));
    return { ...members[0]!, fixity };
  };

  // EN 1993-1-1:2005, 6.3.1.2, eq. (6.49), after Ayrton and Perry: χ = 1/(Φ + √(Φ² − λ̄²)), Φ = (1 + η + λ̄²)/2,
  // η = e₀ A/W, λ̄ = √(A f_y/N_cr).
  it('yield first where the buckling curves of EN 1993-1-1 have it for the same imperfection', () => {
    for (const [long, fixity, bow] of [
      [24, 1, 0.1],
      [30, 1, 0.05],
      [30, 2, 0.1],
      [60, 1, 0.5],
      [40, 2, 0.8],
    ] as const) {
      const member = column(long, fixity);
      const { areaIn2, inertiaIn4, elasticPsi, yieldPsi, odIn } = member.section;
      const critical = (Math.PI ** 2 * elasticPsi * inertiaIn4 * fixity) / long ** 2;
      const lambda = Math.sqrt((areaIn2 * yieldPsi) / critical);
      const eta = (bow * areaIn2 * (odIn / 2)) / inertiaIn4;
      const phi = (1 + eta + lambda ** 2) / 2;
      const chi = 1 / (phi + Math.sqrt(phi ** 2 - lambda ** 2));
      expect(chi * areaIn2 * yieldPsi).toBeLessThan(capacityLbf(member, 'compression'));
      expectNear(bentColumnLbf(member, bow), chi * areaIn2 * yieldPsi, near);
    }
  });

  // Timoshenko & Gere, Theory of Elastic Stability, 1.12: a half-sine bow under P grows to e/(1 − P/P_E). Here the
  // differential equation EI y'' = −P (y₀ + y) itself, by finite differences, its largest moment against first yield.
  it('have at first yield the moment that the differential equation of the bowed beam gives', () => {
    const member = column(30, 1);
    const { areaIn2, inertiaIn4, elasticPsi, odIn } = member.section;
    const bow = 0.2;
    const load = bentColumnLbf(member, bow);
    const n = 400;
    const h = 30 / n;
    const k = (load * h * h) / (elasticPsi * inertiaIn4);
    // y(i−1) + (k − 2) y(i) + y(i+1) = −k y₀(i): Thomas elimination.
    const initial = (i: number): number => bow * Math.sin((Math.PI * i) / n);
    const c: number[] = [0];
    const d: number[] = [0];
    for (let i = 1; i < n; i++) {
      const pivot = k - 2 - c[i - 1]!;
      c.push(1 / pivot);
      d.push((-k * initial(i) - d[i - 1]!) / pivot);
    }
    const y = new Float64Array(n + 1);
    for (let i = n - 1; i > 0; i--) y[i] = d[i]! - c[i]! * y[i + 1]!;
    const moment = load * (bow + y[n / 2]!);
    expectNear(load / areaIn2 + (moment * (odIn / 2)) / inertiaIn4, 75_000, {
      rel: 1e-4,
      because: 'second-order differences over 400 steps',
    });
  });

  // Trade facts, oracle 33: 1.000 OD, L 30, load in the middle: .388 in of deflection at yield, F_y L²/6ED.
  it('lie .388 in out of line when a load across the middle first yields them', () => {
    const truss = trussOf(
      { a: [0, 0, 0], b: [15, 0, 0], c: [30, 0, 0] },
      [
        ['a', 'b'],
        ['b', 'c'],
      ],
      { ...tube(1, 0.035), densityLbIn3: 0 },
    );
    const { inertiaIn4 } = tube(1, 0.035);
    // M = P L/4 = F_y I/c.
    const load = (75_000 * inertiaIn4) / 0.5 / (30 / 4);
    const support = heldAt({ a: [...POINT, 'rx'], c: ['y', 'z'] });
    const model = modelOf({
      loadCases: [
        { id: 'p', name: 'p', gravity: [0, 0, 0], loads: [{ cluster: 'b', forceLbf: [0, 0, -load] }] },
      ],
    });
    const answer = statics(truss, model, support, prepareFrame(truss, support));
    if (answer.kind !== 'stands') expect.fail('moves freely');
    const [solved] = answer.cases;
    const middle = solved!.clusters.find(({ id }) => id === 'b')!;
    expectNear(-middle.moveIn[2], 0.388, { rel: 1e-3, because: 'three printed figures' });
    expectNear(solved!.members[0]!.stressPsi, 75_000, { rel: 1e-9, because: 'beam formula' });
  });
});
