import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { cross, dot, scale, sub, unit, type Vec3 } from '../../../src/core/base/vec3.ts';
import type { LoadCase, Model } from '../../../src/core/job/modelSchema.ts';
import type { Frame } from '../../../src/core/statics/frame.ts';
import { type HeldNow, heldBySetup, heldNow } from '../../../src/core/statics/held.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { redundancyBlock } from '../../../src/core/statics/redundancy.ts';
import type { SolvedCase, Statics } from '../../../src/core/statics/result.ts';
import { indeterminacy, statics } from '../../../src/core/statics/statics.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel, frozen, seededRandom } from '../../kit/trusses.ts';
import { ALL, boxTruss, heldAt, modelOf, POINT, trussOf, tube } from './boxTruss.ts';

// A soak takes minutes on a busy machine.
vi.setConfig({ testTimeout: 600_000 });

type Stands = Extract<Statics, { kind: 'stands' }>;
const runs = soak(200);
const seeds = Array.from({ length: runs }, (_, k) => k + 1);

const stands = (truss: Truss, model: Model, support: HeldNow): Stands => {
  const answer = statics(truss, model, support, prepareFrame(truss, support));
  if (answer.kind !== 'stands') expect.fail(`moves freely: ${answer.clusters.map((c) => c.id)}`);
  return answer;
};
const frameOf = (truss: Truss, support: HeldNow): Frame => {
  const frame = prepareFrame(truss, support);
  if (!isFrame(frame)) expect.fail('moves freely');
  return frame;
};
/** Loads of seed `seed` at every cluster, forces and moments; no weight unless gravity is given. */
const randomCase = (truss: Truss, seed: number, gravity: [number, number, number] = [0, 0, 0]): LoadCase => {
  const random = seededRandom(seed);
  const three = (): [number, number, number] =>
    [random() - 0.5, random() - 0.5, random() - 0.5].map((v) => 100 * v) as [number, number, number];
  return {
    id: 'case',
    name: 'case',
    gravity,
    loads: truss.clusters.map((c) => ({ cluster: c.id, forceLbf: three(), momentInLbf: three() })),
  };
};
const modelFiles = readdirSync('models').filter((f) => f.endsWith('.json'));
const readModel = (file: string): Model => JSON.parse(readFileSync(`models/${file}`, 'utf8')) as Model;

const largest = (list: readonly number[]): number => list.reduce((s, v) => Math.max(s, Math.abs(v)), 0);
const expectSame = (
  got: readonly number[],
  want: readonly number[],
  share: number,
  because: string,
): void => {
  expect(got.length).toBe(want.length);
  const size = Math.max(largest(want), 1e-9);
  got.forEach((v, k) => {
    expectNear(v, want[k]!, { abs: share * size, because });
  });
};
const axial = (c: SolvedCase): number[] => c.members.map((m) => m.axialLbf);

/**
 * Forces and moments left over at each cluster from what is reported: the ends' shear follows from the moments by the
 * member's own balance, the weight is half at either end.
 */
const leftOver = (truss: Truss, support: HeldNow, loadCase: LoadCase, got: SolvedCase): number[] => {
  const at = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const sum = new Array<number>(6 * truss.clusters.length).fill(0);
  const put = (cluster: string, first: number, v: readonly number[], s = 1): void => {
    v.forEach((x, d) => {
      sum[6 * at.get(cluster)! + first + d]! += s * x;
    });
  };
  for (const l of loadCase.loads) {
    put(l.cluster, 0, l.forceLbf ?? []);
    put(l.cluster, 3, l.momentInLbf ?? []);
  }
  for (const w of loadCase.weights ?? []) put(w.cluster, 0, loadCase.gravity, w.weightLbf);
  for (const r of got.reactions) {
    put(r.cluster, 0, r.forceLbf);
    put(r.cluster, 3, r.momentInLbf);
  }
  const bars = [...truss.members, ...support.braces];
  got.members.forEach((f, k) => {
    const m = bars[k]!;
    expect(f.id).toBe(m.id);
    const [a, b] = [truss.clusters[at.get(m.from)!]!.at, truss.clusters[at.get(m.to)!]!.at];
    const span = sub(b, a);
    const e = unit(span);
    const length = dot(span, e);
    const weight = scale(loadCase.gravity, m.section.areaIn2 * m.section.densityLbIn3 * length);
    const moments: Vec3 = [0, 1, 2].map(
      (d) => f.momentFromInLbf[d]! + f.momentToInLbf[d]!,
    ) as unknown as Vec3;
    // Balance about the far end; the part along the tube is the axial force at mid-length.
    const across = scale(cross(e, moments), -1 / length);
    const from: Vec3 = [0, 1, 2].map(
      (d) => across[d]! - weight[d]! / 2 - f.axialLbf * e[d]!,
    ) as unknown as Vec3;
    const to = [0, 1, 2].map((d) => -from[d]! - weight[d]!);
    put(m.from, 0, from, -1);
    put(m.from, 3, f.momentFromInLbf, -1);
    put(m.to, 0, to, -1);
    put(m.to, 3, f.momentToInLbf, -1);
  });
  return sum;
};

describe('equilibrium', () => {
  const check = (model: Model): void => {
    const truss = expandTruss(model);
    const support = heldNow(truss, model, []);
    const answer = stands(truss, model, support);
    for (const got of answer.cases) {
      const loadCase = model.loadCases.find((c) => c.id === got.id)!;
      const scaleOf = largest([...axial(got), ...got.reactions.flatMap((r) => [...r.forceLbf])]);
      for (const v of leftOver(truss, support, loadCase, got))
        expectNear(v, 0, { abs: 1e-8 * scaleOf, because: '1e-8 of the largest force' });
    }
  };
  for (const file of modelFiles)
    it(`holds at every cluster of every load case of models/${file}, from the reported end forces`, () => {
      check(readModel(file));
    });
  it(`holds on random boxes, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) check(boxModel(seed, { bracing: 'random' }));
  });
  it('gives the ground the whole weight and its moment', () => {
    const truss = boxTruss(8);
    const support = heldAt({ U0L: ALL, L0R: POINT });
    const got = stands(truss, modelOf({}), support).cases[0]!;
    const weight = truss.members.reduce(
      (s, m) => s + m.section.areaIn2 * m.section.densityLbIn3 * m.lengthIn,
      0,
    );
    expectNear(
      got.reactions.reduce((s, r) => s + r.forceLbf[2], 0),
      weight,
      { rel: 1e-10, because: 'sum of the weights' },
    );
    expect(got.id).toBe('ownWeight');
    expect(got.residual).toBeLessThan(1e-10);
  });
});

describe('indifference', () => {
  const support = heldAt({ U1L: POINT, L1R: POINT, L1L: POINT });
  // A rotation by a product of two turns, orthogonal to the last bit that matters.
  const [c, s, d, t] = [Math.cos(0.7), Math.sin(0.7), Math.cos(-1.1), Math.sin(-1.1)];
  const turned = ([x, y, z]: Vec3): [number, number, number] => {
    const [p, q] = [c * x - s * y, s * x + c * y];
    return [p, d * q - t * z, t * q + d * z];
  };

  it(`turns its answers with the truss, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) {
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const loadCase = randomCase(truss, seed, [1, -2, -3]);
      const other = { ...truss, clusters: truss.clusters.map((k) => ({ ...k, at: turned(k.at) })) };
      const otherCase: LoadCase = {
        ...loadCase,
        gravity: turned(loadCase.gravity),
        loads: loadCase.loads.map((l) => ({
          ...l,
          forceLbf: turned(l.forceLbf!),
          momentInLbf: turned(l.momentInLbf!),
        })),
      };
      const a = stands(truss, modelOf({ loadCases: [loadCase] }), support);
      const b = stands(other, modelOf({ loadCases: [otherCase] }), support);
      const [p, q] = [a.cases[0]!, b.cases[0]!];
      const because = 'the same frame in other axes; rounding times condition';
      expectSame(axial(q), axial(p), 1e-7, because);
      expectSame(
        q.members.map((m) => m.stressPsi),
        p.members.map((m) => m.stressPsi),
        1e-7,
        because,
      );
      expectSame(
        q.clusters.flatMap((k) => [...k.moveIn]),
        p.clusters.flatMap((k) => turned(k.moveIn)),
        1e-7,
        because,
      );
      expectSame(
        q.members.flatMap((m) => [...m.momentToInLbf]),
        p.members.flatMap((m) => turned(m.momentToInLbf)),
        1e-7,
        because,
      );
      expectSame(
        b.redundancy.map((r) => r.rN),
        a.redundancy.map((r) => r.rN),
        1e-8,
        because,
      );
    }
  });

  it(`does not care about the order of clusters and members, nor which end comes first, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) {
      const random = seededRandom(seed);
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const shuffled = <T>(list: readonly T[]): T[] =>
        list
          .map((v) => ({ v, k: random() }))
          .sort((x, y) => x.k - y.k)
          .map(({ v }) => v);
      const other: Truss = {
        ...truss,
        clusters: shuffled(truss.clusters),
        members: shuffled(truss.members).map((m) => (random() < 0.5 ? m : { ...m, from: m.to, to: m.from })),
      };
      const model = modelOf({ loadCases: [randomCase(truss, seed, [0, 0, -1])] });
      const a = stands(truss, model, support).cases[0]!;
      const b = stands(other, model, support).cases[0]!;
      const byId = new Map(b.members.map((m) => [m.id, m]));
      const moveById = new Map(b.clusters.map((k) => [k.id, k]));
      expectSame(
        a.members.map((m) => byId.get(m.id)!.axialLbf),
        axial(a),
        1e-7,
        'order of elimination differs',
      );
      expectSame(
        a.clusters.flatMap((k) => [...moveById.get(k.id)!.turnRad]),
        a.clusters.flatMap((k) => [...k.turnRad]),
        1e-7,
        'as above',
      );
    }
  });

  it(`gives the mirror model mirrored answers, seeds 1 to ${runs}`, () => {
    const flip = ([x, y, z]: Vec3): [number, number, number] => [x, -y, z];
    const flipTurn = ([x, y, z]: Vec3): [number, number, number] => [-x, y, -z];
    for (const seed of seeds) {
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const loadCase = randomCase(truss, seed, [0.5, 1, -2]);
      const other = { ...truss, clusters: truss.clusters.map((k) => ({ ...k, at: flip(k.at) })) };
      const otherCase: LoadCase = {
        ...loadCase,
        gravity: flip(loadCase.gravity),
        loads: loadCase.loads.map((l) => ({
          ...l,
          forceLbf: flip(l.forceLbf!),
          momentInLbf: flipTurn(l.momentInLbf!),
        })),
      };
      const a = stands(truss, modelOf({ loadCases: [loadCase] }), support).cases[0]!;
      const b = stands(other, modelOf({ loadCases: [otherCase] }), support).cases[0]!;
      const because = 'mirrored arithmetic, rounding alone';
      expectSame(axial(b), axial(a), 1e-7, because);
      expectSame(
        b.members.map((m) => m.torqueInLbf),
        a.members.map((m) => -m.torqueInLbf),
        1e-7,
        because,
      );
      expectSame(
        b.clusters.flatMap((k) => [...k.turnRad]),
        a.clusters.flatMap((k) => flipTurn(k.turnRad)),
        1e-7,
        because,
      );
    }
  });

  it('gives equal bytes to equal questions, and leaves its input alone', () => {
    const model = frozen(boxModel(7, { bracing: 'random' }));
    const truss = frozen(expandTruss(model));
    const held = frozen(heldNow(truss, model, []));
    expect(JSON.stringify(stands(truss, model, held))).toBe(JSON.stringify(stands(truss, model, held)));
  });
});

describe('stiffness', () => {
  it(`is symmetric, and no rigid motion meets any, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) {
      const truss = expandTruss(boxModel(seed, { bracing: 'random' }));
      const frame = frameOf(truss, heldAt({ U1L: ALL }));
      const random = seededRandom(seed);
      const [u, w] = [0, 1].map(() => Float64Array.from(frame.held, () => random() - 0.5));
      const inner = (p: Float64Array, q: Float64Array): number => p.reduce((sum, v, k) => sum + v * q[k]!, 0);
      const both = inner(u!, frame.multiply(w!));
      expectNear(inner(w!, frame.multiply(u!)), both, {
        rel: 1e-9,
        because: 'rounding of sums of either sign',
      });
      const [p, q]: Vec3[] = [
        [0.3, -0.2, 0.5],
        [0.01, 0.02, -0.03],
      ];
      const rigid = Float64Array.from(
        truss.clusters.flatMap((c) => [...cross(q!, c.at).map((v, d) => v + p![d]!), ...q!]),
      );
      const size = largest([...frame.multiply(u!)]);
      for (const v of frame.multiply(rigid))
        expectNear(v, 0, { abs: 1e-10 * size, because: 'rounding of the sums' });
    }
  });

  it(`of a member taken out never makes fixed loads move less, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) {
      const truss = expandTruss(boxModel(seed, { bracing: 'crossed' }));
      const model = modelOf({ loadCases: [randomCase(truss, seed)] });
      const support = heldAt({ U1L: ALL, L1R: ALL });
      const work = (t: Truss): number =>
        stands(t, model, support).cases[0]!.clusters.reduce((sum, c, k) => {
          const l = model.loadCases[0]!.loads[k]!;
          return sum + dot(l.forceLbf!, c.moveIn) + dot(l.momentInLbf!, c.turnRad);
        }, 0);
      const before = work(truss);
      const out = Math.floor(seededRandom(seed)() * truss.members.length);
      const after = work({ ...truss, members: truss.members.filter((_, k) => k !== out) });
      expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-9));
    }
  });
});

describe('redundancy', () => {
  // Bahndorf 1991; von Scheven, Ramm & Bischoff 2021: the trace of the redundancy matrix is the indeterminacy.
  it(`adds up to the indeterminacy over all modes, ball ends and braces included, seeds 1 to ${runs}`, () => {
    for (const seed of seeds) {
      const random = seededRandom(seed);
      const whole = expandTruss(
        boxModel(seed, { bracing: 'random', joints: seed % 5 === 0 ? 'pinned' : 'welded' }),
      );
      const end = () => (random() < 0.3 ? 'ball' : 'welded') as 'ball' | 'welded';
      const truss: Truss = { ...whole, members: whole.members.map((m) => ({ ...m, ends: [end(), end()] })) };
      const frame = prepareFrame(truss, heldAt({ U1L: ALL, L1R: ALL, L1L: POINT }));
      if (!isFrame(frame)) continue;
      const trace = frame.members.reduce(
        (sum, _, k) => sum + redundancyBlock(frame, k).reduce((s, row, r) => s + row[r]!, 0),
        0,
      );
      expectNear(trace, indeterminacy(frame), {
        abs: 1e-6,
        because: 'six modes of some sixty members, each to 1e-9',
      });
    }
  });

  // methods section 2: r_N is also the force that a length misfit causes over EA/L; μ = 0 means that cutting leaves a mechanism.
  it('says which single cuts leave a mechanism', () => {
    const truss = boxTruss(3);
    const support = heldAt({ U0L: POINT, U0R: POINT, L0L: POINT, L0R: POINT });
    const pinned = { ...support, joints: 'pinned' as const };
    const model = modelOf({ joints: 'pinned' });
    for (const row of stands(truss, model, pinned).redundancy) {
      const cut = prepareFrame({ ...truss, members: truss.members.filter((m) => m.id !== row.id) }, pinned);
      expect([row.id, isFrame(cut)]).toEqual([row.id, row.mu > 1e-8]);
    }
    for (const row of stands(truss, modelOf({}), support).redundancy) expect(row.mu).toBeGreaterThan(1e-8);
  });

  it('counts a just-rigid pinned box as just rigid, and the bare box as a mechanism that still stands when welded', () => {
    const single = expandTruss(boxModel(3, { bracing: 'single', bays: 4 }));
    const jig = heldBySetup(single, boxModel(3, { bracing: 'single', bays: 4 }), 'jig');
    const answer = stands(single, modelOf({}), jig);
    // Maxwell: 20 clusters × 3 − 6 = 54 bars would be just rigid.
    const excess = single.members.length - 54;
    expect(answer.pinned!.selfStress - answer.pinned!.mechanisms).toBe(excess);
    const bare = expandTruss(boxModel(3, { bracing: 'none', bays: 4 }));
    const loose = stands(
      bare,
      modelOf({}),
      heldBySetup(bare, boxModel(3, { bracing: 'none', bays: 4 }), 'jig'),
    );
    expect(loose.pinned!.mechanisms).toBeGreaterThan(0);
  });
});

describe('a body held by nothing but its own inertia', () => {
  const truss = boxTruss(6);
  const model = modelOf({
    loadCases: [
      { ...randomCase(truss, 5, [0, 0, -3]), setup: 'free', weights: [{ cluster: 'U0L', weightLbf: 200 }] },
    ],
  });

  it('puts nothing on its supports, wherever they are', () => {
    const support = heldBySetup(truss, model, 'free');
    const a = stands(truss, model, support);
    expect(a.issues).toEqual([]);
    const got = a.cases[0]!;
    const load = largest(axial(got));
    for (const r of got.reactions)
      for (const v of [...r.forceLbf, ...r.momentInLbf])
        expectNear(v, 0, { abs: 1e-8 * load * 100, because: '1e-8 of the load at an arm of 100 in' });
    expect(support.ranked).toBe(false);
    expect(support.held.map((h) => h.fixed.length)).toEqual([3, 2, 1]);
    // The same frame with its clusters in another order picks other supports; forces are the same.
    const other = { ...truss, clusters: [...truss.clusters].reverse() };
    const b = stands(other, model, heldBySetup(other, model, 'free')).cases[0]!;
    expectSame(axial(b), axial(got), 1e-7, 'self-balanced loads do not feel the supports');
  });

  it('falls without strain', () => {
    const fall = modelOf({
      loadCases: [{ id: 'fall', name: 'fall', gravity: [0.2, 0, -1], loads: [], setup: 'free' }],
    });
    const got = stands(truss, fall, heldBySetup(truss, fall, 'free')).cases[0]!;
    for (const v of axial(got))
      expectNear(v, 0, { abs: 1e-9, because: 'weight and inertia of every tube cancel' });
  });

  it('is left out with an issue when it has no weight', () => {
    const light = { ...tube(0.75, 0.035), densityLbIn3: 0 };
    const weightless: Truss = { ...truss, members: truss.members.map((m) => ({ ...m, section: light })) };
    const bare = modelOf({ loadCases: [{ ...model.loadCases[0]!, weights: [] }] });
    const answer = stands(weightless, bare, heldBySetup(weightless, bare, 'free'));
    expect(answer.cases).toEqual([]);
    expect(answer.issues.map((i) => i.code)).toEqual(['no-mass-to-balance']);
  });
});

describe('awkward truths', () => {
  it('answers a mechanism with the clusters that move, most first', () => {
    const truss = boxTruss(2);
    const cut = { ...truss, members: truss.members.filter((m) => m.from !== 'U2L' && m.to !== 'U2L') };
    const hanging = {
      ...cut,
      members: [
        ...cut.members,
        {
          ...truss.members[0]!,
          id: 'x',
          from: 'U2R',
          to: 'U2L',
          ends: ['ball', 'ball'] as const,
          lengthIn: 12,
        },
      ],
    };
    const support = heldAt({ U0L: ALL, L0R: ALL });
    const answer = statics(hanging, modelOf({}), support, prepareFrame(hanging, support));
    if (answer.kind !== 'movesFreely') expect.fail('stands');
    expect(answer.clusters.map((c) => c.id)).toEqual(['U2L']);
    const [move] = answer.clusters;
    expectNear(Math.hypot(...move!.moveIn), 1, { rel: 1e-9, because: 'largest is 1' });
    // The arm may swing, not stretch: it lies along the butt line.
    expectNear(move!.moveIn[1], 0, { abs: 1e-6, because: 'inverse iteration with a shift of 1e-9' });
    expect(answer.issues.map((i) => i.code)).toEqual(['moves-freely']);
  });

  it('leaves out a case whose set-up does not hold the truss, and says so', () => {
    const truss = boxTruss(2);
    const model = modelOf({
      setups: [{ id: 'loose', name: 'loose', held: [{ cluster: 'U0L', fixed: ['x'] }] }],
      loadCases: [
        { id: 'a', name: 'a', gravity: [0, 0, -1], loads: [], setup: 'loose' },
        { id: 'b', name: 'b', gravity: [0, 0, -1], loads: [] },
        { id: 'c', name: 'c', gravity: [0, 0, -1], loads: [], setup: 'nowhere' },
      ],
    });
    const answer = stands(truss, model, heldAt({ U0L: ALL }));
    expect(answer.cases.map((c) => c.id)).toEqual(['b', 'c']);
    expect(answer.issues.map((i) => i.code)).toEqual(['case-moves-freely', 'unknown-setup']);
  });

  it('says when a load is put where nothing carries it', () => {
    const truss = trussOf({ a: [0, 0, 0], b: [10, 0, 0], c: [0, 10, 0], d: [0, 0, 10], lone: [50, 0, 0] }, [
      ['a', 'b'],
      ['a', 'c'],
      ['a', 'd'],
    ]);
    const support = heldAt({ b: POINT, c: POINT, d: POINT }, 'pinned');
    const model = modelOf({
      loadCases: [
        {
          id: 'a',
          name: 'a',
          gravity: [0, 0, 0],
          loads: [
            { cluster: 'a', momentInLbf: [0, 5, 0] },
            { cluster: 'lone', forceLbf: [1, 0, 0] },
            { cluster: 'ghost', forceLbf: [1, 0, 0] },
          ],
        },
      ],
    });
    const codes = stands(truss, model, support).issues.map((i) => [
      i.code,
      i.facts.cluster,
      i.facts.about ?? '',
    ]);
    expect(codes).toEqual([
      ['unknown-cluster', 'ghost', ''],
      ['load-not-carried', 'a', 'ry'],
      ['load-not-carried', 'lone', 'x'],
    ]);
  });

  it('takes out a turning about a skew tube that nothing holds, and a load about it is not carried', () => {
    // One skew tube welded at the tip, with a ball at its root: the tip may spin about the tube.
    const truss = trussOf({ a: [0, 0, 0], b: [6, 7, 8], c: [12, 0, 0], d: [0, 12, 0] }, [
      ['a', 'b', undefined, ['ball', 'welded']],
      ['b', 'c', undefined, ['ball', 'ball']],
      ['b', 'd', undefined, ['ball', 'ball']],
    ]);
    const support = heldAt({ a: POINT, c: POINT, d: POINT });
    const frame = frameOf(truss, support);
    expect(frame.loose.length).toBe(1);
    const axis = unit([6, 7, 8]);
    expectNear(Math.abs(dot(frame.loose[0]!.axis, axis)), 1, {
      rel: 1e-9,
      because: 'unit vectors along the tube',
    });
    const about = (v: Vec3): string[] =>
      stands(
        truss,
        modelOf({
          loadCases: [
            { id: 'a', name: 'a', gravity: [0, 0, -1], loads: [{ cluster: 'b', momentInLbf: [...v] }] },
          ],
        }),
        support,
      ).issues.map((i) => i.code);
    expect(about(axis)).toEqual(['load-not-carried']);
    expect(about(unit(cross(axis, [1, 0, 0])))).toEqual([]);
  });

  it('warns of a frame that is nearly a mechanism', () => {
    // An arm a hundred thousand times thinner than the rest.
    const thread = { ...tube(0.75, 0.035), inertiaIn4: 1e-9, torsionIn4: 1e-9 };
    const truss = trussOf({ a: [0, 0, 0], b: [30, 0, 0], c: [60, 0, 0] }, [
      ['a', 'b'],
      ['b', 'c', thread],
    ]);
    const answer = stands(truss, modelOf({}), heldAt({ a: ALL }));
    expect(answer.issues.map((i) => i.code)).toEqual(['nearly-a-mechanism']);
    expect(answer.condition).toBeGreaterThan(1e10);
  });
});
