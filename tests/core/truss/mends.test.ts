import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { mendsOf } from '../../../src/core/truss/mends.ts';
import { editModel } from '../../../src/core/truss/modelEdit.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { modelOf } from '../practice/kit.ts';

const base = modelOf('practice-truss');

/** Something odd, as a person leaves it, and how many ways out are offered. */
const oddModels: readonly (readonly [code: string, ways: number, model: Model])[] = [
  ['bracing-makes-nothing', 1, { ...base, bracing: [...base.bracing, { at: '4', left: 'rising' }] }],
  ['omitted-names-nothing', 1, { ...base, omitted: ['U1L-U9L'] }],
  [
    'override-names-nothing',
    1,
    {
      ...base,
      tubes: { ...base.tubes, overrides: [{ bay: '9', tube: { odIn: 0.5, wallIn: 0.035 } }] },
    },
  ],
  ['loose-cluster', 1, { ...base, clusters: [{ id: 'GC', at: [10, 0, -10] }] }],
  ['doubled-member', 1, { ...base, members: [{ id: 'spare', from: 'U1L', to: 'U2L' }] }],
  ['unknown-cluster', 1, { ...base, members: [{ from: 'U1L', to: 'X9' }] }],
  [
    'unknown-cluster',
    1,
    { ...base, setups: [...base.setups, { id: 's', name: 's', held: [{ cluster: 'X9', fixed: ['x'] }] }] },
  ],
  [
    'unknown-cluster',
    1,
    {
      ...base,
      loadCases: [
        {
          ...{ id: 'c', name: 'c', gravity: [0, 0, -1], loads: [] },
          weights: [{ cluster: 'X9', weightLbf: 5 }],
        },
      ],
    },
  ],
  ['unknown-cluster', 1, { ...base, distances: [{ from: 'U1L', to: 'X9', lengthIn: 10 }] }],
  ['drawing-against-stations', 1, { ...base, distances: [{ from: 'U1L', to: 'U2L', lengthIn: 30 }] }],
  [
    'tube-not-in-stock',
    1,
    {
      ...base,
      tubes: {
        ...base.tubes,
        roles: { ...base.tubes.roles, upperLongeron: { odIn: 0.77, wallIn: 0.036 } },
        overrides: [{ bay: '1', tube: { odIn: 0.77, wallIn: 0.036 } }],
      },
      members: [{ from: 'U3L', to: 'U4L', tube: { odIn: 0.77, wallIn: 0.036 } }],
    },
  ],
  ['unknown-material', 1, { ...base, tubes: { ...base.tubes, material: 'cheese' } }],
  ['unknown-material', 1, { ...base, members: [{ from: 'U1L', to: 'U2L', material: 'cheese' }] }],
  ['twins-differ', 2, { ...base, clusters: [{ id: 'U2R', at: [24, 10.5, 20] }] }],
  ['twins-differ', 2, { ...base, members: [{ from: 'U1L', to: 'U2L', tube: { odIn: 1, wallIn: 0.049 } }] }],
  ['no-twin', 2, { ...base, omitted: ['U1R-U2R'] }],
];

describe('ways out of what is odd', () => {
  it.each(oddModels)('%s: each of %i way(s), made with one press, puts it right', (code, ways, model) => {
    const truss = expandTruss(model);
    const found = [...truss.issues, ...truss.odd].filter((one) => one.code === code);
    // the practice truss has one crossed bay without a twin; what was left odd here comes beside it
    const odd = found.filter((one) => !(code === 'no-twin' && one.facts.id === 'U2L-L3L'));
    const mends = odd.flatMap((one) => mendsOf(one, model, truss).map((mend) => ({ one, mend })));
    expect(mends.length).toBeGreaterThanOrEqual(ways);
    for (const { one, mend } of mends) {
      let after: Model = model;
      for (const change of mend.changes) {
        const made = editModel(after, change);
        after = made.ok ? made.value : expect.fail(`${mend.name} was refused`);
      }
      const now = expandTruss(after);
      const left = [...now.issues, ...now.odd].filter((other) => other.code === code);
      expect(left, mend.name).not.toContainEqual(one);
      expect(left.length, mend.name).toBeLessThan(found.length);
    }
  });

  it('offers none where a person has to look: a kind of tube without a size', () => {
    const { vertical: _, ...roles } = base.tubes.roles;
    const model = { ...base, tubes: { ...base.tubes, roles } };
    const truss = expandTruss(model);
    const lack = truss.issues.find((one) => one.code === 'no-tube')!;
    expect(mendsOf(lack, model, truss)).toEqual([]);
  });
});
