import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { type Model, modelSchema, roles } from '../../../src/core/job/modelSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { soak } from '../../kit/soak.ts';
import { frozen } from '../../kit/trusses.ts';
import { box } from './box.ts';

const row = { odIn: 0.75, wallIn: 0.035 };
const tubes = (change: Partial<Model['tubes']>): Partial<Model> => ({
  tubes: { ...box([]).tubes, ...change },
});

/** One planted fault each: where it must be listed, and what must still stand (the sound box has 20 members). */
const planted: readonly (readonly ['issues' | 'odd', string, string, Model, number])[] = [
  ['odd', 'loose-cluster', '', box([], { clusters: [{ id: 'X', at: [1, 2, 3] }] }), 20],
  ['odd', 'doubled-member', '', box([], { members: [{ id: 'U1L-U2L#2', from: 'U1L', to: 'U2L' }] }), 21],
  [
    'issues',
    'zero-length',
    'members[0]',
    box([], { clusters: [{ id: 'X', at: [0, -10, 20] }], members: [{ from: 'X', to: 'U1L' }] }),
    20,
  ],
  [
    'issues',
    'duplicate-id',
    'members[1].id',
    box([], {
      members: [
        { id: 'A', from: 'U1L', to: 'L2R' },
        { id: 'A', from: 'U1R', to: 'L2L' },
      ],
    }),
    21,
  ],
  [
    'issues',
    'duplicate-id',
    'clusters[1].id',
    box([], {
      clusters: [
        { id: 'U1L', at: [0, -10, 20] },
        { id: 'U1L', at: [0, -10, 21] },
      ],
    }),
    20,
  ],
  [
    'issues',
    'duplicate-station',
    'stations[3].label',
    box([], { stations: [...box([]).stations, box([]).stations[0]!] }),
    20,
  ],
  ['issues', 'unknown-cluster', 'members[0].to', box([], { members: [{ from: 'U1L', to: 'U9L' }] }), 20],
  [
    'issues',
    'unknown-material',
    'members[0].material',
    box([], { members: [{ from: 'U1L', to: 'U2L', material: 'cheese' }] }),
    19,
  ],
  [
    'issues',
    'wall-too-thick',
    'members[0].tube',
    box([], { members: [{ from: 'U1L', to: 'U2L', tube: { odIn: 1, wallIn: 0.6 } }] }),
    19,
  ],
  [
    'issues',
    'no-tube',
    'tubes.roles.vertical',
    box([], tubes({ roles: { ...box([]).tubes.roles, vertical: undefined } as never })),
    14,
  ],
  [
    'odd',
    'tube-not-in-stock',
    '',
    box([], { members: [{ from: 'U1L', to: 'U2L', tube: { odIn: 0.8, wallIn: 0.035 } }] }),
    20,
  ],
  [
    'odd',
    'drawing-against-stations',
    'distances[0]',
    box([], { distances: [{ from: 'U1L', to: 'U2L', lengthIn: 20.04 }] }),
    20,
  ],
  [
    'odd',
    'unknown-cluster',
    'distances[0].to',
    box([], { distances: [{ from: 'U1L', to: 'X', lengthIn: 20 }] }),
    20,
  ],
  [
    'odd',
    'unknown-cluster',
    'setups[0].held[0]',
    box([], { setups: [{ id: 's', name: 's', held: [{ cluster: 'X', fixed: ['x'] }] }] }),
    20,
  ],
  [
    'odd',
    'unknown-cluster',
    'loadCases[0].weights[0]',
    box([], {
      loadCases: [
        { id: 'c', name: 'c', gravity: [0, 0, -1], loads: [], weights: [{ cluster: 'X', weightLbf: 1 }] },
      ],
    }),
    20,
  ],
  [
    'odd',
    'override-names-nothing',
    'tubes.overrides[0]',
    box([], tubes({ overrides: [{ bay: '9', tube: row }] })),
    20,
  ],
  ['odd', 'omitted-names-nothing', 'omitted[0]', box([], { omitted: ['U2L-U1L'] }), 20],
  ['odd', 'unknown-station', 'bracing[0].at', box([{ at: '9', left: 'rising' }]), 20],
  ['odd', 'bracing-makes-nothing', 'bracing[0].left', box([{ at: '3', left: 'rising' }]), 20],
  ['odd', 'twins-differ', '', box([], { clusters: [{ id: 'U1L', at: [0, -10.1, 20] }] }), 20],
  ['odd', 'no-twin', '', box([{ at: '1', left: 'rising' }]), 21],
];

describe('oddities', () => {
  it('a sound box has none', () => {
    const t = expandTruss(box([]));
    expect([...t.issues, ...t.odd]).toEqual([]);
    expect(t.members).toHaveLength(20);
  });

  for (const [list, code, at, model, left] of planted)
    it(`${code} ${at} is listed with what to do, and the rest stands`, () => {
      const t = expandTruss(frozen(model));
      const found = t[list].filter((i) => i.code === code && (at === '' || i.at === at));
      expect(found.length, JSON.stringify([t.issues, t.odd])).toBeGreaterThan(0);
      for (const i of found) expect(i.mend).toMatch(/^[a-z-]+$/);
      expect(t.members).toHaveLength(left);
    });

  it('a size that is missing or cannot be is listed once, with every member that lacks it', () => {
    const noVertical = { ...box([]).tubes.roles };
    delete noVertical.vertical;
    expect(expandTruss(box([], tubes({ roles: noVertical }))).issues).toMatchObject([
      { code: 'no-tube', facts: { ids: ['U1L-L1L', 'U1R-L1R', 'U2L-L2L', 'U2R-L2R', 'U3L-L3L', 'U3R-L3R'] } },
    ]);
    const thick = expandTruss(box([], tubes({ overrides: [{ bay: '2', tube: { odIn: 1, wallIn: 0.6 } }] })));
    expect(thick.issues).toMatchObject([{ code: 'wall-too-thick', at: 'tubes.overrides[0].tube' }]);
    const cheese = expandTruss(box([], tubes({ material: 'cheese' })));
    expect(cheese.issues).toMatchObject([{ code: 'unknown-material', at: 'tubes.material' }]);
    expect(cheese.members).toEqual([]);
  });

  it('a drawing distance within its own tolerance is not odd', () => {
    const t = expandTruss(
      box([], { distances: [{ from: 'U1L', to: 'U2L', lengthIn: 20.06, toleranceIn: 0.0625 }] }),
    );
    expect(t.odd).toEqual([]);
  });

  it('unlike sides are not remarked on in a truss that is lopsided throughout', () => {
    const model = box([{ at: '1', left: 'crossed' }], {
      clusters: [
        { id: 'U1L', at: [0, -11, 20] },
        { id: 'U2L', at: [20, -12, 20] },
        { id: 'U3L', at: [40, -9, 21] },
        { id: 'L2L', at: [40, -9, 1] },
      ],
    });
    expect(expandTruss(model).odd).toEqual([]);
  });

  it('any model the schema takes expands without a throw, into a truss whose parts all exist (seed 21)', () => {
    const label = fc.constantFrom('1', '2', '3', '3a', '10');
    const id = fc.constantFrom('U1L', 'U1R', 'L1L', 'U2C', 'L3aR', 'X', 'X-Y', '__proto__', 'constructor');
    const number = fc.oneof(fc.constantFrom(0, 1, 20), fc.double({ min: -1200, max: 1200, noNaN: true }));
    const tube = fc.record({
      odIn: fc.double({ min: 1e-3, max: 12, noNaN: true }),
      wallIn: fc.double({ min: 1e-3, max: 6, noNaN: true }),
    });
    const pair = fc.record({
      waterLineIn: number,
      halfWidthIn: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 600, noNaN: true })),
    });
    const some = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined });
    const sideWord = some(fc.constantFrom('rising', 'falling', 'crossed', 'none'));
    const flatWord = some(fc.constantFrom('toRight', 'toLeft', 'crossed', 'none'));
    const triple = fc.tuple(number, number, number);
    const up = { maxLength: 6 };
    const role = fc.constantFrom(...roles);
    const memberId = fc.constantFrom('U1L-U1R', 'L1L-U2C', 'X', 'U1L-U1R#2');
    const garbage = fc.record({
      format: fc.constant('tubewright-model'),
      version: fc.constant(1),
      name: fc.constant('garbage'),
      source: fc.constant(''),
      datum: fc.constant(''),
      drawnIn: fc.constant('in'),
      joints: fc.constantFrom('welded', 'pinned'),
      stations: fc.array(fc.record({ label, stationIn: number, upper: some(pair), lower: some(pair) }), up),
      bracing: fc.array(
        fc.record({
          at: label,
          left: sideWord,
          right: sideWord,
          top: flatWord,
          bottom: flatWord,
          ring: flatWord,
        }),
        up,
      ),
      tubes: fc.record({
        material: fc.constantFrom('4130N', 'cheese', '__proto__'),
        roles: fc.dictionary(role, tube),
        overrides: fc.array(
          fc.record({
            bay: some(label),
            station: some(label),
            role: some(role),
            member: some(memberId),
            tube,
          }),
          up,
        ),
      }),
      omitted: some(fc.array(memberId, up)),
      clusters: fc.array(fc.record({ id, at: triple }), up),
      members: fc.array(
        fc.record({
          id: some(memberId),
          from: id,
          to: id,
          role: some(role),
          tube: some(tube),
          material: some(id),
        }),
        up,
      ),
      setups: fc.constant([]),
      loadCases: fc.constant([]),
      distances: fc.array(fc.record({ from: id, to: id, lengthIn: fc.constant(20) }), up),
    });
    let read = 0;
    fc.assert(
      fc.property(garbage, (raw) => {
        const parsed = z.safeParse(modelSchema, JSON.parse(JSON.stringify(raw)));
        if (!parsed.success) return;
        read++;
        const t = expandTruss(frozen(parsed.data));
        const clusters = new Set(t.clusters.map((c) => c.id));
        const members = new Set(t.members.map((m) => m.id));
        expect(clusters.size).toBe(t.clusters.length);
        expect(members.size).toBe(t.members.length);
        for (const m of t.members) {
          expect(clusters.has(m.from) && clusters.has(m.to)).toBe(true);
          expect(m.lengthIn).toBeGreaterThan(0);
          expect(m.section.areaIn2).toBeGreaterThan(0);
          expect(m.section.odIn).toBeGreaterThan(0);
        }
        for (const f of [...t.bays, ...t.faces]) for (const x of f.members) expect(members.has(x)).toBe(true);
        for (const p of t.pairs)
          for (const x of [p.left, p.right])
            expect((p.kind === 'member' ? members : clusters).has(x)).toBe(true);
      }),
      { seed: 21, numRuns: soak(4000) },
    );
    expect(read).toBeGreaterThan(10);
  });
});
