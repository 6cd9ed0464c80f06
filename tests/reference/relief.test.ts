import { describe, expect, it } from 'vitest';
import { redistribution } from '../../src/core/loadPath/redistribution.ts';
import { addEndForces } from '../../src/core/lockedIn/lockedState.ts';
import { effectOf, viewOf } from '../../src/core/relief/effect.ts';
import { situationOf } from '../../src/core/relief/situation.ts';
import { deformations, type Frame } from '../../src/core/statics/frame.ts';
import { isFrame, prepareFrame } from '../../src/core/statics/prepareFrame.ts';
import type { Truss } from '../../src/core/truss/result.ts';
import { bareTruss, cluster, heldAt, tubeMember } from '../core/relief/trusses.ts';
import { expectNear } from '../kit/near.ts';

/** Closed forms of lack of fit; the source stands at each. */
const near = { rel: 1e-9, because: 'closed form against one solve' };
const E = 29e6;

const pinned = (
  truss: Truss,
  held: Readonly<Record<string, readonly ('x' | 'y' | 'z' | 'rx' | 'ry' | 'rz')[]>>,
): Frame => {
  const frame = prepareFrame(truss, { ...heldAt(new Map(Object.entries(held))), joints: 'pinned' });
  if (!isFrame(frame)) throw new Error('reference truss moves freely');
  return frame;
};

/** Axial forces when one member is `shortIn` too short. */
const forces = (frame: Frame, id: string, shortIn: number): Map<string, number> => {
  const index = frame.memberIndex.get(id)!;
  const m = frame.members[index]!;
  const loads = new Float64Array(frame.held.length);
  addEndForces(m, [-m.stiffness[0]! * shortIn, 0, 0, 0, 0, 0], loads);
  const moves = frame.solve(loads);
  return new Map(
    frame.members.map((x, k) => [
      x.id,
      x.stiffness[0]! * (deformations(x, moves)[0]! + (k === index ? shortIn : 0)),
    ]),
  );
};

const xyz = ['x', 'y', 'z'] as const;
const flat = ['z'] as const;

describe('three bars that meet in one point, the middle one too short', () => {
  // Timoshenko, Strength of Materials, part I (3rd ed.), art. 10: initial stresses in statically indeterminate systems;
  // also Gere & Goodno, Mechanics of Materials, 9th ed., section 2.5 (misfits and prestrains). Equal bars, side bars at α:
  //   X = δ (EA/L) · 2cos³α/(1 + 2cos³α),  side bars −X/(2 cos α)
  const alpha = Math.PI / 5;
  const length = 30;
  const bottom = cluster('O', 0, 0, 0);
  const top = (id: string, x: number) => cluster(id, x, length, 0);
  const spread = length * Math.tan(alpha);
  const truss = bareTruss(
    [top('L', -spread), top('M', 0), bottom, top('R', spread)],
    [
      tubeMember('L-O', top('L', -spread), bottom, 0.75, 0.035),
      tubeMember('M-O', top('M', 0), bottom, 0.75, 0.035),
      tubeMember('R-O', top('R', spread), bottom, 0.75, 0.035),
    ],
  );
  const frame = pinned(truss, { L: xyz, M: xyz, R: xyz, O: flat });
  const stiff = (E * truss.members[1]!.section.areaIn2) / length;
  const share = (2 * Math.cos(alpha) ** 3) / (1 + 2 * Math.cos(alpha) ** 3);

  it('pulls the middle and pushes the sides as the book says', () => {
    const f = forces(frame, 'M-O', 0.02);
    expectNear(f.get('M-O')!, 0.02 * stiff * share, near);
    expectNear(f.get('L-O')!, (-0.02 * stiff * share) / (2 * Math.cos(alpha)), near);
    expectNear(f.get('R-O')!, (-0.02 * stiff * share) / (2 * Math.cos(alpha)), near);
  });
  it('turns that share of the length error into force, and the sides hold the energy in equal halves', () => {
    const [r] = redistribution(frame, [frame.memberIndex.get('M-O')!]);
    expectNear(r!.rN, share, near);
    expectNear(r!.share![frame.memberIndex.get('L-O')!]!, 0.5, near);
    expectNear(r!.share![frame.memberIndex.get('R-O')!]!, 0.5, near);
  });
});

describe('a bar between rigid walls', () => {
  // Gere & Goodno, Mechanics of Materials, section 2.5: N = EAδ/L; of two lengths in series N = δ/(L₁/EA₁ + L₂/EA₂).
  it('takes the whole of a length error', () => {
    const [a, b, c] = [cluster('A', 0, 0, 0), cluster('B', 40, 0, 0), cluster('C', 0, 9, 0)];
    const truss = bareTruss(
      [a, b, c],
      [tubeMember('A-B', a, b, 1, 0.049), tubeMember('A-C', a, c, 1, 0.049)],
    );
    const frame = prepareFrame(
      truss,
      heldAt(
        new Map([
          ['A', [...xyz, 'rx', 'ry', 'rz']],
          ['B', [...xyz, 'rx', 'ry', 'rz']],
        ] as const),
      ),
    );
    if (!isFrame(frame)) throw new Error('walls hold it');
    expectNear(
      forces(frame, 'A-B', 0.01).get('A-B')!,
      (E * truss.members[0]!.section.areaIn2 * 0.01) / 40,
      near,
    );
    expectNear(redistribution(frame, [0])[0]!.rN, 1, near);
  });
  it('shares it with a bar in line', () => {
    const [a, b, c] = [cluster('A', 0, 0, 0), cluster('B', 18, 0, 0), cluster('C', 50, 0, 0)];
    const truss = bareTruss(
      [a, b, c],
      [tubeMember('A-B', a, b, 1, 0.049), tubeMember('B-C', b, c, 0.625, 0.035)],
    );
    const six = [...xyz, 'rx', 'ry', 'rz'] as const;
    const frame = prepareFrame(
      truss,
      heldAt(
        new Map([
          ['A', six],
          ['C', six],
        ]),
      ),
    );
    if (!isFrame(frame)) throw new Error('walls hold it');
    const [one, two] = truss.members.map((m) => m.lengthIn / (E * m.section.areaIn2));
    const f = forces(frame, 'A-B', 0.01);
    expectNear(f.get('A-B')!, 0.01 / (one! + two!), near);
    expectNear(f.get('B-C')!, 0.01 / (one! + two!), near);
    expectNear(redistribution(frame, [0])[0]!.rN, one! / (one! + two!), near);
  });
});

describe('a square panel with two diagonals, one too short', () => {
  // Force method, Hibbeler, Structural Analysis, 8th ed., ch. 10 (trusses with one redundant, fabrication errors);
  // unit forces 1 in the diagonals, −1/√2 in the sides: X = δ/Σ(n²L/EA) = δEA/(2a(1 + √2)).
  const a = 25;
  const p = [
    cluster('A', 0, 0, 0),
    cluster('B', a, 0, 0),
    cluster('C', a, a, 0),
    cluster('D', 0, a, 0),
  ] as const;
  const bar = (i: 0 | 1 | 2 | 3, j: 0 | 1 | 2 | 3) =>
    tubeMember(`${p[i].id}-${p[j].id}`, p[i], p[j], 0.75, 0.035);
  const truss = bareTruss(p, [bar(0, 1), bar(1, 2), bar(2, 3), bar(0, 3), bar(0, 2), bar(1, 3)]);
  const frame = pinned(truss, { A: xyz, B: ['y', 'z'], C: flat, D: flat });
  const ea = E * truss.members[0]!.section.areaIn2;
  const x = (0.02 * ea) / (2 * a * (1 + Math.SQRT2));

  it('draws both diagonals and pushes all four sides', () => {
    const f = forces(frame, 'A-C', 0.02);
    expectNear(f.get('A-C')!, x, near);
    expectNear(f.get('B-D')!, x, near);
    for (const id of ['A-B', 'B-C', 'C-D', 'A-D']) expectNear(f.get(id)!, -x / Math.SQRT2, near);
  });

  it('is relieved wholly by any one cut: with one redundant, every other bar is its whole other path', () => {
    const s = situationOf(truss, frame, [])!;
    const view = viewOf(s, 4, truss.members[4]!);
    for (const cut of [0, 1, 2, 3, 5]) {
      expectNear(effectOf(s, view, cut).eta, 1, near);
      // Stability figure of a bar is its own r_N = n²L/EA over the sum.
      const n2l = cut === 5 ? Math.SQRT2 * a : a / 2;
      expectNear(s.cuts.mu[cut]!, n2l / (2 * a * (1 + Math.SQRT2)), near);
    }
    expectNear(view.rN, (Math.SQRT2 * a) / (2 * a * (1 + Math.SQRT2)), near);
  });
});

describe('rings of bars about a hub', () => {
  // Spoked wheel of n equal spokes and n rim bars, pinned, in its plane: self-stress s in each spoke (tension) needs
  // −s/(2 sin(π/n)) in each rim bar (equilibrium of a rim joint). One degree of redundancy when the hub is one joint:
  // a rim bar too long by δ gives X = δ/Σ(n²L/EA). Derived from joint equilibrium; no book needed.
  for (const n of [5, 6, 9])
    it(`spread a long rim bar over all of a wheel of ${n} spokes`, () => {
      const r = 20;
      const hub = cluster('H', 0, 0, 0);
      const rim = Array.from({ length: n }, (_, k) =>
        cluster(`P${k}`, r * Math.cos((2 * Math.PI * k) / n), r * Math.sin((2 * Math.PI * k) / n), 0),
      );
      const truss = bareTruss(
        [hub, ...rim],
        rim.flatMap((c, k) => [
          tubeMember(`spoke${k}`, hub, c, 0.75, 0.035),
          tubeMember(`rim${k}`, c, rim[(k + 1) % n]!, 0.75, 0.035),
        ]),
      );
      const held = Object.fromEntries(rim.map((c) => [c.id, flat as readonly 'z'[]]));
      const frame = pinned(truss, { ...held, H: xyz, P0: ['y', 'z'] });
      const ea = E * truss.members[0]!.section.areaIn2;
      const half = Math.sin(Math.PI / n);
      // Unit force in the rim, −2 sin(π/n) in the spokes; rim bar 2 r sin(π/n).
      const soft = (n * (2 * r * half) + n * r * (2 * half) ** 2) / ea;
      const x = 0.03 / soft;
      const f = forces(frame, 'rim0', 0.03);
      for (let k = 0; k < n; k++) {
        expectNear(f.get(`rim${k}`)!, x, near);
        expectNear(f.get(`spoke${k}`)!, -2 * half * x, near);
      }
      const rN = redistribution(
        frame,
        truss.members.map((_, k) => k),
      ).map((v) => v.rN);
      // Redundancy sum rule: the shares add up to the degree of redundancy, here one (Linkwitz 1961).
      expectNear(
        rN.reduce((s, v) => s + v, 0),
        1,
        near,
      );
    });
});

describe('a clamped beam whose free ends are turned', () => {
  // Slope-deflection (Hibbeler, Structural Analysis, ch. 11): M = 4EIθ/L for one end, 2EI(θ_i − θ_j … ) = 2EIs/L when both turn in.
  it('carries 2EIs/L when both free ends slope s towards each other, 4EIs/L and 2EIs/L when one does', () => {
    const six = [...xyz, 'rx', 'ry', 'rz'] as const;
    const [a, b, c] = [cluster('A', 0, 0, 0), cluster('B', 36, 0, 0), cluster('C', 0, 12, 0)];
    const truss = bareTruss(
      [a, b, c],
      [tubeMember('A-B', a, b, 1, 0.049), tubeMember('A-C', a, c, 1, 0.049)],
    );
    const frame = prepareFrame(
      truss,
      heldAt(
        new Map([
          ['A', six],
          ['B', six],
        ]),
      ),
    );
    if (!isFrame(frame)) throw new Error('walls hold it');
    const ei = E * truss.members[0]!.section.inertiaIn4;
    const bare = {
      member: 'A-B',
      findings: [],
      shortIn: 0,
      depthIn: 0,
      atIn: 18,
      y2: 0,
      y0: [0, 0, 0],
      y1: [0, 0, 0],
      assumed: [],
    } as const;
    const both = situationOf(truss, frame, [{ ...bare, turnFrom: [0, 0, 0.01], turnTo: [0, 0, -0.01] }])!;
    const one = situationOf(truss, frame, [{ ...bare, turnFrom: [0, 0, 0.01], turnTo: [0, 0, 0] }])!;
    const moment = (s: typeof both): number => viewMoment(s);
    expectNear(moment(both), (2 * ei * 0.01) / 36, near);
    expectNear(moment(one), (4 * ei * 0.01) / 36, near);
    expect(both.sources.length).toBe(1);
  });
});

const viewMoment = (s: NonNullable<ReturnType<typeof situationOf>>): number => {
  const strain = s.strains.full.subarray(0, 6);
  const m = s.changed.frame.members[0]!;
  const q = m.stiffness.map((d, k) => d * strain[k]!);
  // M_i = q₅ + q₃ about z and y (natural modes).
  return Math.max(Math.hypot(q[4]! + q[2]!, q[5]! + q[3]!), Math.hypot(q[4]! - q[2]!, q[5]! - q[3]!));
};
