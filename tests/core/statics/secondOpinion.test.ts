import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import type { Held } from '../../../src/core/job/jobSchema.ts';
import type { LoadCase, Model } from '../../../src/core/job/modelSchema.ts';
import { type HeldNow, heldBySetup, heldNow } from '../../../src/core/statics/held.ts';
import { OWN_WEIGHT } from '../../../src/core/statics/loads.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import type { SolvedCase } from '../../../src/core/statics/result.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel, seededRandom } from '../../kit/trusses.ts';
import { solveInLocalAxes } from './localAxes.ts';

// A soak takes minutes on a busy machine.
vi.setConfig({ testTimeout: 600_000 });

const because = 'two formulations of one elastic frame; rounding times a condition of 1e6 to 1e9';

const expectAll = (got: readonly number[], want: readonly number[], what: string): void => {
  expect(got.length).toBe(want.length);
  const largest = want.reduce((s, v) => Math.max(s, Math.abs(v)), 1e-9);
  got.forEach((v, k) => {
    expectNear(v, want[k]!, { abs: 1e-7 * largest, because: `${what} ${k}: ${because}` });
  });
};

const compare = (truss: Truss, support: HeldNow, loadCase: LoadCase, got: SolvedCase): void => {
  const want = solveInLocalAxes(truss, support, loadCase);
  const moves = got.clusters.flatMap((c) => [...c.moveIn, ...c.turnRad]);
  expectAll(moves, want.moves, 'move');
  // Local axes: the far end's first number is tension, its fourth the torque; the weight's share differs at either end.
  expectAll(
    got.members.map((m) => m.axialLbf),
    want.local.map((f) => (f[6]! - f[0]!) / 2),
    'axial force',
  );
  expectAll(
    got.members.map((m) => m.torqueInLbf),
    want.local.map((f) => f[9]!),
    'torque',
  );
  expectAll(
    got.members.flatMap((m) => [...m.momentFromInLbf]),
    want.global.flatMap((f) => f.slice(3, 6)),
    'moment',
  );
  expectAll(
    got.members.flatMap((m) => [...m.momentToInLbf]),
    want.global.flatMap((f) => f.slice(9, 12)),
    'moment',
  );
  for (const r of got.reactions) {
    const c = truss.clusters.findIndex((x) => x.id === r.cluster);
    expectAll([...r.forceLbf, ...r.momentInLbf], want.unbalanced.slice(6 * c, 6 * c + 6), 'reaction');
  }
  expect(got.residual).toBeLessThan(1e-10);
};

const compareModel = (model: Model): void => {
  const truss = expandTruss(model);
  const support = heldNow(truss, model, []);
  const answer = statics(truss, model, support, prepareFrame(truss, support));
  if (answer.kind !== 'stands') expect.fail(`moves freely: ${answer.clusters.map((c) => c.id)}`);
  const cases = model.loadCases.length > 0 ? model.loadCases : [OWN_WEIGHT];
  expect(answer.cases.map((c) => c.id)).toEqual(cases.map((c) => c.id));
  cases.forEach((loadCase, k) => {
    const setup = loadCase.setup ?? support.heldAs;
    compare(
      truss,
      setup === support.heldAs ? support : heldBySetup(truss, model, setup),
      loadCase,
      answer.cases[k]!,
    );
  });
};

describe('a second formulation, in local axes and dense, agrees', () => {
  for (const file of readdirSync('models').filter((f) => f.endsWith('.json')))
    it(`on every load case of models/${file}`, () => {
      compareModel(JSON.parse(readFileSync(`models/${file}`, 'utf8')) as Model);
    });

  it('and would not, were one tube a ten-thousandth stiffer', () => {
    const model = boxModel(2);
    const truss = expandTruss(model);
    const support = heldNow(truss, model, []);
    const answer = statics(truss, model, support, prepareFrame(truss, support));
    if (answer.kind !== 'stands') expect.fail('moves freely');
    const [first, ...rest] = truss.members;
    for (const number of ['areaIn2', 'inertiaIn4', 'torsionIn4'] as const) {
      const section = { ...first!.section, [number]: first!.section[number] * 1.0001 };
      const other = { ...truss, members: [{ ...first!, section }, ...rest] };
      expect(() => compare(other, support, model.loadCases[0]!, answer.cases[0]!)).toThrow();
    }
  });

  const runs = soak(200);
  it(`on ${runs} random welded boxes, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++)
      compareModel(boxModel(seed, { bracing: seed % 2 ? 'random' : 'single', tailPost: seed % 3 === 0 }));
  });

  it(`on ${runs} random boxes with ball ends, braces and weights, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++) {
      const random = seededRandom(seed);
      const model = boxModel(seed, { bracing: 'random' });
      const whole = expandTruss(model);
      // Diagonals may have balls; longerons, verticals and cross tubes keep every cluster from turning freely.
      const truss: Truss = {
        ...whole,
        members: whole.members.map((m) =>
          m.role.endsWith('Diagonal')
            ? { ...m, ends: [random() < 0.5 ? 'ball' : 'welded', random() < 0.5 ? 'ball' : 'welded'] }
            : m,
        ),
      };
      const record: Held = {
        id: 'h',
        kind: 'held',
        by: 'x',
        at: '2026-01-01T00:00:00Z',
        device: 'd',
        setup: 'jig',
        braces: [{ from: 'U1L', to: 'L2R', odIn: 0.5, wallIn: 0.035 }],
      };
      const support = heldNow(truss, model, [record]);
      expect(support.braces.length).toBe(1);
      const loadCase: LoadCase = {
        id: 'mixed',
        name: 'mixed',
        gravity: [0.3, -0.2, -4],
        loads: [
          { cluster: 'U2R', momentInLbf: [100 * random(), -50, 20] },
          { cluster: 'L2L', forceLbf: [10, 20, -30] },
        ],
        weights: [{ cluster: 'L2R', weightLbf: 40 }],
      };
      const answer = statics(
        truss,
        { ...model, loadCases: [loadCase] },
        support,
        prepareFrame(truss, support),
      );
      if (answer.kind !== 'stands') expect.fail(`seed ${seed} moves freely`);
      compare(truss, support, loadCase, answer.cases[0]!);
    }
  });

  it(`on ${runs} random pinned boxes, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++) {
      const model = boxModel(seed, { bracing: 'crossed', joints: 'pinned' });
      // Own weight is lumped in a pinned truss; the dense answer condenses the beam's end moments to the same.
      compareModel(model);
    }
  });
});
