import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import type { Model } from '../../src/core/job/modelSchema.ts';
import { deformations, endForces, type Frame, modeMatrix } from '../../src/core/statics/frame.ts';
import { type HeldNow, heldBySetup } from '../../src/core/statics/held.ts';
import { pinnedCount } from '../../src/core/statics/mechanisms.ts';
import { isFrame, prepareFrame } from '../../src/core/statics/prepareFrame.ts';
import { redundancyBlock } from '../../src/core/statics/redundancy.ts';
import type { SolvedCase } from '../../src/core/statics/result.ts';
import { indeterminacy, statics } from '../../src/core/statics/statics.ts';
import type { Section, Truss } from '../../src/core/truss/result.ts';
import { ALL, type Bar, heldAt, modelOf, POINT, trussOf, tube } from '../core/statics/boxTruss.ts';
import { expectNear } from '../kit/near.ts';

/** A section by its numbers, in whatever consistent units the source uses. */
const section = (
  elasticPsi: number,
  shearPsi: number,
  areaIn2: number,
  inertiaIn4: number,
  torsionIn4: number,
): Section => ({
  ...tube(1, 0.1),
  elasticPsi,
  shearPsi,
  areaIn2,
  inertiaIn4,
  torsionIn4,
  densityLbIn3: 0,
});

type Load = Model['loadCases'][number]['loads'][number];

const standing = (truss: Truss, support: HeldNow): Frame => {
  const frame = prepareFrame(truss, support);
  if (!isFrame(frame)) expect.fail(`moves freely: ${frame.clusters.map((c) => c.id)}`);
  return frame;
};

const solved = (
  truss: Truss,
  support: HeldNow,
  loads: Load[],
  more: Partial<Model['loadCases'][number]> = {},
): SolvedCase => {
  const model = modelOf({
    joints: support.joints,
    loadCases: [{ id: 'case', name: 'case', gravity: [0, 0, 0], loads, ...more }],
  });
  const answer = statics(truss, model, support, prepareFrame(truss, support));
  if (answer.kind !== 'stands') expect.fail('moves freely');
  expect(answer.issues).toEqual([]);
  return answer.cases[0]!;
};

const cluster = (c: SolvedCase, id: string) => c.clusters.find((x) => x.id === id)!;
const member = (c: SolvedCase, id: string) => c.members.find((x) => x.id === id)!;
const reaction = (c: SolvedCase, id: string) => c.reactions.find((x) => x.cluster === id)!;

const expectVector = (
  got: readonly number[],
  want: readonly number[],
  abs: number,
  because: string,
): void => {
  want.forEach((v, k) => {
    expectNear(got[k]!, v, { abs, because });
  });
};

describe('published space trusses', () => {
  // Levy & Spillers, Analysis of Geometrically Nonlinear Structures, 2nd ed., section 2.4.2: 24-bar dome,
  // E 30e6, A .0155, 220.46 lb at the crown; linear crown deflection −.20641184 in.
  // Read from the test suite of pystran (P. Krysl), which quotes it.
  it('gives the crown of the 24-bar dome of Levy and Spillers its linear deflection', () => {
    const ring = (r: number, z: number, first: number, names: readonly string[]): [string, Vec3][] =>
      names.map((id, k) => [
        id,
        [r * Math.cos(first + (k * Math.PI) / 3), r * Math.sin(first + (k * Math.PI) / 3), z],
      ]);
    const inner = ['b', 'c', 'd', 'e', 'f', 'g'];
    const outer = ['m', 'n', 'o', 'p', 'q', 'r'];
    const places = Object.fromEntries([
      ['a', [0, 0, 3.2346]] as [string, Vec3],
      ...ring(9.8425, 2.4472, 0, inner),
      ...ring(19.685, 0, Math.PI / 6, outer),
    ]);
    const bars = inner.flatMap((id, k): Bar[] => [
      ['a', id],
      [id, inner[(k + 1) % 6]!],
      [id, outer[k]!],
      [id, outer[(k + 5) % 6]!],
    ]);
    const truss = trussOf(places, bars, section(30e6, 11e6, 0.0155, 1, 1));
    const support = heldAt(Object.fromEntries(outer.map((id) => [id, POINT])), 'pinned');
    const got = solved(truss, support, [{ cluster: 'a', forceLbf: [0, 0, -220.46] }]);
    expectNear(cluster(got, 'a').moveIn[2], -0.20641184, {
      rel: 1e-4,
      because: 'the source rounds coordinates to five figures',
    });
    // Maxwell: 24 bars, 21 free freedoms; the dome is rigid, so three states of self-stress.
    expect(pinnedCount(truss, support)).toEqual({ selfStress: 3, mechanisms: 0 });
  });

  // Closed form: the one state of self-stress of a square with both diagonals is 1 in the sides and −√2 in the diagonals;
  // R_kk = F_k s_k² / Σ F s², F = L/EA (von Scheven, Ramm & Bischoff, IJSS 213 (2021) 41): sides 1/(4 + 4√2), diagonals 2√2/(4 + 4√2).
  it('gives the crossed square its redundancy shares, and none to a bar that hangs from it', () => {
    const at = { a: [0, 0, 0], b: [10, 0, 0], c: [10, 10, 0], d: [0, 10, 0], e: [20, 5, 0] } satisfies Record<
      string,
      Vec3
    >;
    const bars: Bar[] = [
      ['a', 'b'],
      ['b', 'c'],
      ['c', 'd'],
      ['d', 'a'],
      ['a', 'c'],
      ['b', 'd'],
      ['b', 'e'],
      ['c', 'e'],
    ];
    const truss = trussOf(at, bars);
    const flat = Object.fromEntries(['c', 'd', 'e'].map((id) => [id, ['z'] as const]));
    const support = heldAt({ a: POINT, b: ['y', 'z'], ...flat }, 'pinned');
    const answer = statics(truss, modelOf({}), support, standing(truss, support));
    if (answer.kind !== 'stands') throw new Error('the square stands');
    const share = new Map(answer.redundancy.map((r) => [r.id, r.pinnedRN!]));
    const because = 'null vectors from a squared matrix';
    for (const side of ['a-b', 'b-c', 'c-d', 'd-a'])
      expectNear(share.get(side)!, 1 / (4 + 4 * Math.SQRT2), { rel: 1e-7, because });
    for (const diagonal of ['a-c', 'b-d'])
      expectNear(share.get(diagonal)!, (2 * Math.SQRT2) / (4 + 4 * Math.SQRT2), { rel: 1e-7, because });
    for (const bar of ['b-e', 'c-e']) expectNear(share.get(bar)!, 0, { abs: 1e-12, because });
  });

  // Ferreira, MATLAB Codes for Finite Element Analysis (Springer 2010), section 5.2, p. 69 (after Logan, 4th ed.,
  // example 3.8): E 1.2e6, areas .302, .729, .187; −1000 lb. Printed values as quoted by the test suite of SharpFE (I. Sproat).
  it('gives the three-bar space truss of Logan and Ferreira its displacements and reactions', () => {
    const at = { n1: [72, 0, 0], n2: [0, 36, 0], n3: [0, 36, 72], n4: [0, 0, -48] } satisfies Record<
      string,
      Vec3
    >;
    const bar = (area: number) => section(1.2e6, 1, area, 1, 1);
    const truss = trussOf(at, [
      ['n1', 'n2', bar(0.302)],
      ['n1', 'n3', bar(0.729)],
      ['n1', 'n4', bar(0.187)],
    ]);
    const support = heldAt({ n1: ['y'], n2: POINT, n3: POINT, n4: POINT }, 'pinned');
    const got = solved(truss, support, [{ cluster: 'n1', forceLbf: [0, 0, -1000] }]);
    const because = 'four printed decimals';
    expectVector(cluster(got, 'n1').moveIn, [-0.0711, 0, -0.2662], 6e-5, because);
    expectVector(reaction(got, 'n2').forceLbf, [256.1226, -128.0613, 0], 6e-5, because);
    expectVector(reaction(got, 'n3').forceLbf, [-702.4491, 351.2245, 702.4491], 6e-5, because);
    expectVector(reaction(got, 'n4').forceLbf, [446.3264, 0, 297.5509], 6e-5, because);
    expectVector(reaction(got, 'n1').forceLbf, [0, -223.1632, 0], 6e-5, because);
  });

  // Ferreira, section 5.3, p. 73: four bars, E 210 GPa, A 1e−4 m², −10 kN in y at the common joint; quoted by SharpFE.
  it('gives the four-bar space truss of Ferreira its reactions and movements', () => {
    const truss = trussOf(
      { n1: [4, 4, 3], n2: [0, 4, 0], n3: [0, 4, 6], n4: [4, 0, 3], n5: [8, -1, 1] },
      ['n2', 'n3', 'n4', 'n5'].map((id): Bar => ['n1', id]),
      section(210e9, 1, 1e-4, 1, 1),
    );
    const support = heldAt({ n2: POINT, n3: POINT, n4: POINT, n5: POINT }, 'pinned');
    const got = solved(truss, support, [{ cluster: 'n1', forceLbf: [0, -10_000, 0] }]);
    expectVector(reaction(got, 'n2').forceLbf, [270.9, 0, 203.2], 0.06, 'one printed decimal');
    expectVector(reaction(got, 'n3').forceLbf, [1354.6, 0, -1016], 0.06, 'one printed decimal');
    expectVector(reaction(got, 'n4').forceLbf, [0, 7968.1, 0], 0.06, 'one printed decimal');
    expectVector(reaction(got, 'n5').forceLbf, [-1625.5, 2031.9, 812.8], 0.06, 'one printed decimal');
    expectVector(
      cluster(got, 'n1').moveIn,
      [-3.024e-4, -1.5177e-3, 2.688e-4],
      6e-8,
      'seven printed decimals',
    );
  });

  // Logan, A First Course in the Finite Element Method, 4th ed., example 3.9: E 210 GPa, A 10e−4 m², 20 kN in x;
  // quoted by SharpFE.
  it('gives the tripod of Logan example 3.9 its movement', () => {
    const truss = trussOf(
      { n1: [12, -3, -4], n2: [0, 0, 0], n3: [12, -3, -7], n4: [14, 6, 0] },
      ['n2', 'n3', 'n4'].map((id): Bar => ['n1', id]),
      section(210e9, 1, 1e-3, 1, 1),
    );
    const support = heldAt({ n2: POINT, n3: POINT, n4: POINT }, 'pinned');
    const got = solved(truss, support, [{ cluster: 'n1', forceLbf: [20_000, 0, 0] }]);
    expectVector(
      cluster(got, 'n1').moveIn,
      [1.383e-3, -5.119e-5, 6.015e-5],
      1e-6,
      'hand-worked with four figures',
    );
  });
});

describe('published space frames', () => {
  // Weaver, Computer Programs for Structural Analysis, p. 146, problem 8, as printed in the STAAD.Pro 2023 verification
  // manual (quoted by the test suite of pystran): kips, inches, E 30,000, ν .25, A 11, Iy = Iz 56, J 83.
  it("gives Weaver's three-member space frame its reactions and movements", () => {
    const l = 120;
    const truss = trussOf(
      { j1: [0, l, 0], j2: [2 * l, l, 0], j3: [0, 0, 0], j4: [3 * l, 0, l] },
      [
        ['j1', 'j2'],
        ['j3', 'j1'],
        ['j2', 'j4'],
      ],
      section(30_000, 12_000, 11, 56, 83),
    );
    const got = solved(truss, heldAt({ j3: ALL, j4: ALL }), [
      { cluster: 'j1', forceLbf: [2, 0, 0] },
      { cluster: 'j2', forceLbf: [0, -1, 0], momentInLbf: [0, 0, -120] },
    ]);
    expectVector(reaction(got, 'j3').forceLbf, [-1.1041, -0.43222, 0.21731], 6e-5, 'five printed figures');
    expectVector(reaction(got, 'j3').momentInLbf, [48.785, -17.973, 96.122], 6e-4, 'five printed figures');
    expectVector(reaction(got, 'j4').forceLbf, [-0.89588, 1.4322, -0.21731], 6e-5, 'five printed figures');
    expectVector(reaction(got, 'j4').momentInLbf, [123.08, 47.246, -11.72], 6e-3, 'five printed figures');
  });

  // McGuire, Gallagher & Ziemian, Matrix Structural Analysis, 2nd ed., example 5.8, with both second moments 1e−3 m⁴;
  // N, m. Movements as computed by pystran (P. Krysl), an independent program.
  it('gives the space frame of McGuire, Gallagher and Ziemian the movements another program finds', () => {
    const [l, p] = [3, 60_000];
    const truss = trussOf(
      { a: [0, 0, 0], b: [0, l, 0], c: [2 * l, l, 0], d: [3 * l, 0, l], e: [l, l, 0] },
      [
        ['a', 'b'],
        ['b', 'e'],
        ['e', 'c'],
        ['c', 'd'],
      ],
      section(200e9, 80e9, 0.01, 1e-3, 2e-3),
    );
    const got = solved(truss, heldAt({ a: ALL, d: ALL }), [
      { cluster: 'b', forceLbf: [2 * p, 0, 0] },
      { cluster: 'e', forceLbf: [0, 0, 4 * p] },
      { cluster: 'c', forceLbf: [0, -p, 0], momentInLbf: [0, 0, -p * l] },
    ]);
    const because = 'eight printed decimals';
    expectVector(cluster(got, 'b').moveIn, [-8.59409726e-4, 5.77635277e-5, 5.00764459e-3], 1e-10, because);
    expectVector(cluster(got, 'b').turnRad, [2.39333188e-3, -1.62316861e-3, 6.81331291e-4], 1e-10, because);
    expectVector(cluster(got, 'c').moveIn, [-0.00117605, 0.00325316, 0.00525552], 6e-9, because);
    expectVector(cluster(got, 'c').turnRad, [0.00128843, 0.00172094, -0.00077147], 6e-9, because);
  });

  // TU Delft, course CIEM5000 (2026), lecture 2, "Example - 3D frame with torsion": EI 1000, GJ 800 kNm², l = 2 m;
  // [4400 1000; 1000 2400] φ = [2 4], φ₂ ≈ 1e−4 and φ₃ ≈ 1.6e−3; M₁ ≈ .1, M_t4 ≈ −.033 kNm.
  // (Two beams in line along x on supports, two twisted bars along y; the loads are the equivalent nodal ones.)
  it('gives the Delft frame with torsion its rotations and reactions', () => {
    const s = section(1, 1, 1e6, 1000, 800);
    const truss = trussOf({ 1: [0, 0, 0], 2: [2, 0, 0], 3: [4, 0, 0], 4: [2, 2, 0], 5: [4, 2, 0] }, [
      ['1', '2', s],
      ['2', '3', s],
      ['2', '4', s],
      ['3', '5', s],
    ]);
    const turning = ['x', 'y', 'z', 'rx', 'rz'] as const;
    const got = solved(truss, heldAt({ 1: ALL, 2: turning, 3: turning, 4: ALL, 5: ALL }), [
      { cluster: '2', momentInLbf: [0, 2, 0] },
      { cluster: '3', momentInLbf: [0, 4, 0] },
    ]);
    const determinant = 4400 * 2400 - 1000 * 1000;
    const [phi2, phi3] = [(2 * 2400 - 4 * 1000) / determinant, (4 * 4400 - 2 * 1000) / determinant];
    const exact = { rel: 1e-12, because: 'the printed 2 × 2 system solved by hand' };
    expectNear(cluster(got, '2').turnRad[1], phi2, exact);
    expectNear(cluster(got, '3').turnRad[1], phi3, exact);
    expectNear(cluster(got, '3').turnRad[1], 1.6e-3, { abs: 6e-5, because: 'two printed figures' });
    expectNear(reaction(got, '1').momentInLbf[1], 0.1, {
      abs: 0.02,
      because: 'worked with rounded rotations',
    });
    expectNear(reaction(got, '4').momentInLbf[1], -0.033, { abs: 0.001, because: 'two printed figures' });
  });
});

describe('closed forms', () => {
  const s = tube(1, 0.049);
  const [ei, gj] = [s.elasticPsi * s.inertiaIn4, s.shearPsi * s.torsionIn4];
  const exact = { rel: 1e-9, because: 'closed form, rounding times condition' };

  // Castigliano, any strength of materials text: right-angle bent, held leg a, free leg b, tip load P out of its plane:
  // δ = P (a³ + b³)/3EI + P a b²/GJ.
  it('bends and twists a right-angle bent as Castigliano has it', () => {
    const [a, b, p] = [30, 18, 50];
    const got = solved(
      trussOf(
        { root: [0, 0, 0], knee: [a, 0, 0], tip: [a, b, 0] },
        [
          ['root', 'knee'],
          ['knee', 'tip'],
        ],
        s,
      ),
      heldAt({ root: ALL }),
      [{ cluster: 'tip', forceLbf: [0, 0, -p] }],
    );
    expectNear(
      cluster(got, 'tip').moveIn[2],
      -((p * (a ** 3 + b ** 3)) / (3 * ei) + (p * a * b * b) / gj),
      exact,
    );
    expectNear(Math.abs(member(got, 'root-knee').torqueInLbf), p * b, exact);
    // Stress at the root: bending P a, no axial force: M c/I.
    expectNear(member(got, 'root-knee').stressPsi, (p * a * 0.5) / s.inertiaIn4, exact);
  });

  // Beam tables: cantilever w l⁴/8EI and root moment w l²/2; propped cantilever 5wl/8, wl²/8; fixed beam w l²/12.
  it('carries own weight as the beam tables have it', () => {
    const l = 60;
    const w = s.densityLbIn3 * s.areaIn2;
    const gravity = [0, 0, -1] as [number, number, number];
    const places = { a: [0, 0, 0], b: [l, 0, 0] } satisfies Record<string, Vec3>;
    const cantilever = solved(trussOf(places, [['a', 'b']], s), heldAt({ a: ALL }), [], { gravity });
    expectNear(cluster(cantilever, 'b').moveIn[2], (-w * l ** 4) / (8 * ei), exact);
    expectNear(reaction(cantilever, 'a').momentInLbf[1], (-w * l * l) / 2, exact);
    expectNear(member(cantilever, 'a-b').momentFromInLbf[1], (-w * l * l) / 2, exact);
    const propped = solved(
      trussOf(places, [['a', 'b', s, ['welded', 'ball']]]),
      heldAt({ a: ALL, b: POINT }),
      [],
      { gravity },
    );
    expectNear(reaction(propped, 'a').forceLbf[2], (5 * w * l) / 8, exact);
    expectNear(reaction(propped, 'b').forceLbf[2], (3 * w * l) / 8, exact);
    expectNear(reaction(propped, 'a').momentInLbf[1], (-w * l * l) / 8, exact);
    const fixed = solved(trussOf(places, [['a', 'b', s]]), heldAt({ a: ALL, b: ALL }), [], { gravity });
    expectNear(member(fixed, 'a-b').momentFromInLbf[1], (-w * l * l) / 12, exact);
    expectNear(member(fixed, 'a-b').momentToInLbf[1], (w * l * l) / 12, exact);
    expectNear(member(fixed, 'a-b').stressPsi, ((w * l * l) / 12) * (0.5 / s.inertiaIn4), exact);
  });

  // Beam tables: an end moment M turns that end of a beam on two points by M l/3EI.
  it('turns the welded end of a ball-ended tube by M l / 3EI', () => {
    const l = 24;
    const got = solved(
      trussOf({ a: [0, 0, 0], b: [0, 0, l] }, [['a', 'b', s, ['ball', 'welded']]]),
      heldAt({ a: ALL, b: ['x', 'y', 'z', 'rz'] }),
      [{ cluster: 'b', momentInLbf: [100, 0, 0] }],
    );
    expectNear(cluster(got, 'b').turnRad[0], (100 * l) / (3 * ei), exact);
    expectVector(member(got, 'a-b').momentFromInLbf, [0, 0, 0], 1e-9, 'a ball passes no moment');
  });

  // Kleinlogel, Rahmenformeln, fixed portal under a side load P at the beam, rigid lengthwise; from memory:
  // foot P h (3k + 1)/(2(6k + 1)), knee P h 3k/(2(6k + 1)), k = 1 for a square one of a single section.
  it("gives a square portal the moments of Kleinlogel's formulas", () => {
    const h = 40;
    const stiff = { ...s, areaIn2: 1e6 * s.areaIn2 };
    const got = solved(
      trussOf(
        { f1: [0, 0, 0], k1: [0, 0, h], k2: [h, 0, h], f2: [h, 0, 0] },
        [
          ['f1', 'k1'],
          ['k1', 'k2'],
          ['k2', 'f2'],
        ],
        stiff,
      ),
      heldAt({ f1: ALL, f2: ALL }),
      [
        { cluster: 'k1', forceLbf: [50, 0, 0] },
        { cluster: 'k2', forceLbf: [50, 0, 0] },
      ],
    );
    const because = 'stretch a million times stiffer than the tube, not rigid';
    expectNear(Math.abs(reaction(got, 'f1').momentInLbf[1]), (100 * h * 4) / 14, { rel: 1e-5, because });
    expectNear(Math.abs(member(got, 'k1-k2').momentFromInLbf[1]), (100 * h * 3) / 14, { rel: 1e-5, because });
  });

  // Strength of materials: three parallel bars of one length held between rigid ends, the middle one made Δ too short:
  // with n equal bars N = EA Δ/L (1 − 1/n); here between two clusters, so n = 3 gives 2/3 EA Δ/L. (Initial strain.)
  it('locks in two thirds of the force of a misfit with three equal tubes side by side', () => {
    const l = 20;
    const places = { a: [0, 0, 0], b: [l, 0, 0] } satisfies Record<string, Vec3>;
    const frame = standing(
      trussOf(
        places,
        [
          ['a', 'b'],
          ['a', 'b'],
          ['a', 'b'],
        ],
        s,
      ),
      heldAt({ a: ALL, b: ['y', 'z', 'rx', 'ry', 'rz'] }),
    );
    const m = frame.members[1]!;
    const misfit = 0.01;
    // A tube too short by x pulls: load Bᵀ D v⁰ with v⁰ = −x, force D (v − v⁰).
    const b = modeMatrix(m);
    const loads = new Float64Array(12);
    for (let d = 0; d < 12; d++)
      loads[(d < 6 ? 6 * m.i : 6 * m.j - 6) + d]! += b[d]! * m.stiffness[0]! * -misfit;
    const v = deformations(m, frame.solve(loads));
    const force = m.stiffness[0]! * (v[0]! + misfit);
    expectNear(force, ((s.elasticPsi * s.areaIn2 * misfit) / l) * (2 / 3), exact);
    expectNear(redundancyBlock(frame, 1)[0]![0]!, 2 / 3, exact);
    expectVector(
      endForces(m, [force, 0, 0, 0, 0, 0]).subarray(6, 9) as unknown as number[],
      [force, 0, 0],
      1e-9,
      'along x',
    );
  });

  // Rigid body dynamics by hand: a free rod of two equal halves, weight lumped ¼ at either end and ½ in the middle,
  // pushed across by P in the middle: each end drags back P/4, so M in the middle = P/4 · L/2 = P L/8.
  it('balances a free rod pushed in the middle by its own inertia', () => {
    const l = 48;
    const truss = trussOf(
      { a: [0, 0, 0], b: [l / 2, 0, 0], c: [l, 0, 0], d: [l / 2, 10, 0] },
      [
        ['a', 'b'],
        ['b', 'c'],
        ['b', 'd', { ...s, densityLbIn3: 1e-9 }],
      ],
      s,
    );
    const support = heldBySetup(truss, modelOf({}), 'free');
    const got = solved(truss, support, [{ cluster: 'b', forceLbf: [0, 0, 80] }], { setup: 'free' });
    const loose = { rel: 1e-6, because: 'the side arm that fixes the roll has a millionth of the weight' };
    expectNear(Math.abs(member(got, 'a-b').momentToInLbf[1]), (80 * l) / 8, loose);
    for (const r of got.reactions)
      for (const f of [...r.forceLbf, ...r.momentInLbf])
        expectNear(f, 0, { abs: 80e-8, because: '1e-8 of the load' });
  });
});

describe('counting', () => {
  // Pellegrino & Calladine, IJSS 22 (1986) 409, figure of two bars in line: Maxwell 0, yet s = 1 and m = 1 in the plane;
  // in space the middle point moves two ways across: m = 2.
  it('finds one self-stress and two mechanisms in two bars in line', () => {
    const truss = trussOf({ a: [0, 0, 0], b: [10, 0, 0], c: [20, 0, 0] }, [
      ['a', 'b'],
      ['b', 'c'],
    ]);
    expect(pinnedCount(truss, heldAt({ a: POINT, c: POINT }, 'pinned'))).toEqual({
      selfStress: 1,
      mechanisms: 2,
    });
  });

  // Maxwell 1864: a tetrahedron is just rigid, 6 = 3·4 − 6; an octahedron likewise, 12 = 3·6 − 6; Cauchy: convex ones are.
  it('calls the tetrahedron and the octahedron just rigid, the cube six short', () => {
    const tetra = { a: [0, 0, 0], b: [1, 0, 0], c: [0, 1, 0], d: [0, 0, 1] } satisfies Record<string, Vec3>;
    const all = (ids: readonly string[], not: readonly string[] = []): Bar[] =>
      ids.flatMap((p, k) => ids.slice(k + 1).flatMap((q): Bar[] => (not.includes(p + q) ? [] : [[p, q]])));
    expect(pinnedCount(trussOf(tetra, all(['a', 'b', 'c', 'd'])), heldAt({}, 'pinned'))).toEqual({
      selfStress: 0,
      mechanisms: 0,
    });
    const octa = {
      a: [1, 0, 0],
      b: [-1, 0, 0],
      c: [0, 1, 0],
      d: [0, -1, 0],
      e: [0, 0, 1],
      f: [0, 0, -1],
    } satisfies Record<string, Vec3>;
    expect(
      pinnedCount(
        trussOf(octa, all(['a', 'b', 'c', 'd', 'e', 'f'], ['ab', 'cd', 'ef'])),
        heldAt({}, 'pinned'),
      ),
    ).toEqual({
      selfStress: 0,
      mechanisms: 0,
    });
    const corner = (k: number): Vec3 => [k & 1, (k >> 1) & 1, (k >> 2) & 1];
    const cube = Object.fromEntries([0, 1, 2, 3, 4, 5, 6, 7].map((k) => [`${k}`, corner(k)]));
    const edges = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((k) =>
      [1, 2, 4].flatMap((d): Bar[] => (k & d ? [] : [[`${k}`, `${k | d}`]])),
    );
    expect(pinnedCount(trussOf(cube, edges), heldAt({}, 'pinned'))).toEqual({ selfStress: 0, mechanisms: 6 });
  });

  // Bahndorf 1991; von Scheven, Ramm & Bischoff, IJSS 213 (2021) 41, eq. (trace): redundancies add up to the degree of
  // statical indeterminacy. Square with both diagonals, pinned: s = 1; by hand, force method: all bars of one EA,
  // state of self-stress 1 in the diagonals, −1/√2 in the sides; S²L: sides ½·1, diagonals √2 each: share of a side
  // ½/(4·½ + 2√2), of a diagonal √2/(2 + 2√2).
  it('shares one redundancy over a crossed square as the force method does', () => {
    const square = trussOf({ a: [0, 0, 0], b: [10, 0, 0], c: [10, 0, 10], d: [0, 0, 10] }, [
      ['a', 'b'],
      ['b', 'c'],
      ['c', 'd'],
      ['a', 'd'],
      ['a', 'c'],
      ['b', 'd'],
    ]);
    const support = heldAt({ a: POINT, b: ['y', 'z'], c: ['y'], d: ['y'] }, 'pinned');
    const frame = standing(square, support);
    const answer = statics(square, modelOf({ joints: 'pinned' }), support, frame);
    if (answer.kind !== 'stands') expect.fail('moves freely');
    expect(indeterminacy(frame)).toBe(1);
    const tight = { rel: 1e-9, because: 'closed form' };
    for (const row of answer.redundancy) {
      const diagonal = row.id === 'a-c' || row.id === 'b-d';
      expectNear(row.rN, (diagonal ? Math.SQRT2 : 0.5) / (2 + 2 * Math.SQRT2), tight);
      expectNear(row.mu, row.rN, tight);
    }
    expectNear(
      answer.redundancy.reduce((sum, r) => sum + r.rN, 0),
      1,
      tight,
    );
  });

  // A ring of three welded tubes in space has one closed loop: six redundants (McGuire, Gallagher & Ziemian ch. 1).
  it('counts six redundants for each closed welded loop', () => {
    const ring = trussOf({ a: [0, 0, 0], b: [10, 0, 0], c: [0, 10, 3] }, [
      ['a', 'b'],
      ['b', 'c'],
      ['a', 'c'],
    ]);
    expect(indeterminacy(standing(ring, heldAt({ a: ALL })))).toBe(6);
    expect(indeterminacy(standing(ring, heldAt({ a: ALL, b: POINT })))).toBe(9);
  });
});
