import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel, frozen, seededRandom } from '../../kit/trusses.ts';
import { box } from './box.ts';

const ids = (t: Truss): string[] => t.members.map((m) => m.id);
const diagonals = (t: Truss): string[] =>
  t.members.filter((m) => m.role.endsWith('Diagonal')).map((m) => m.id);
const member = (t: Truss, id: string) => t.members.find((m) => m.id === id)!;

describe('expanding a model', () => {
  // Words and corners: shapes.md, "Bracing words".
  const words: readonly (readonly [string, string, readonly string[]])[] = [
    ['left', 'rising', ['L1L-U2L']],
    ['left', 'falling', ['U1L-L2L']],
    ['left', 'crossed', ['L1L-U2L', 'U1L-L2L']],
    ['left', 'none', []],
    ['right', 'rising', ['L1R-U2R']],
    ['right', 'falling', ['U1R-L2R']],
    ['right', 'crossed', ['L1R-U2R', 'U1R-L2R']],
    ['top', 'toRight', ['U1L-U2R']],
    ['top', 'toLeft', ['U1R-U2L']],
    ['top', 'crossed', ['U1L-U2R', 'U1R-U2L']],
    ['bottom', 'toRight', ['L1L-L2R']],
    ['bottom', 'toLeft', ['L1R-L2L']],
    ['bottom', 'crossed', ['L1L-L2R', 'L1R-L2L']],
    ['ring', 'toRight', ['U1L-L1R']],
    ['ring', 'toLeft', ['U1R-L1L']],
    ['ring', 'crossed', ['U1L-L1R', 'U1R-L1L']],
    ['ring', 'none', []],
  ];
  for (const [face, word, want] of words)
    it(`${word} on ${face} makes ${want.join(' and ') || 'no diagonal'}`, () => {
      const t = expandTruss(box([{ at: '1', [face]: word }], {}, 1));
      expect(diagonals(t)).toEqual(want);
      expect(t.issues).toEqual([]);
      const made = t.members.filter((m) => want.includes(m.id));
      for (const m of made) expect(m.faces).toEqual([face]);
      const inFace = t.faces.find((f) => f.id === `1 ${face}`)!;
      expect(inFace.members).toEqual(expect.arrayContaining([...want]));
    });

  it('a plain bay has four longerons, four verticals and four cross members of true length', () => {
    const t = expandTruss(box([], {}, 1));
    expect(ids(t)).toEqual([
      ...['L1L-L1R', 'L1L-L2L', 'L1R-L2R', 'U1L-L1L', 'U1L-U1R', 'U1L-U2L', 'U1R-L1R', 'U1R-U2R'],
      ...['L2L-L2R', 'U2L-L2L', 'U2L-U2R', 'U2R-L2R'],
    ]);
    for (const m of t.members) expectNear(m.lengthIn, 20, { because: 'the box is 20 in each way' });
    expect(member(t, 'U1L-U2L')).toMatchObject({
      role: 'upperLongeron',
      faces: ['left', 'top'],
      bay: '1',
      side: 'L',
    });
    expect(member(t, 'U1R-L1R')).toMatchObject({
      role: 'vertical',
      faces: ['right', 'ring'],
      station: '1',
      side: 'R',
    });
    expect(member(t, 'L2L-L2R')).toMatchObject({ role: 'crossMember', faces: ['bottom', 'ring'], side: 'C' });
    expect(t.bays.map((b) => [b.id, b.aft, b.clusters.length, b.members.length])).toEqual([
      ['1', '2', 8, 12],
    ]);
    expect(t.faces.find((f) => f.id === '1 left')!.corners).toEqual(['U1L', 'U2L', 'L2L', 'L1L']);
  });

  it('half-width 0 merges into one centre cluster that both longerons end in', () => {
    const model = box([{ at: '2', left: 'rising', right: 'rising', top: 'toRight', ring: 'toRight' }]);
    const last = { label: '3', stationIn: 40, upper: { waterLineIn: 15, halfWidthIn: 0 } };
    const tail: Model = {
      ...model,
      stations: [...model.stations.slice(0, 2), { ...last, lower: { waterLineIn: 5, halfWidthIn: 0 } }],
    };
    const t = expandTruss(tail);
    expect(t.clusters.filter((c) => c.station === '3').map((c) => c.id)).toEqual(['L3C', 'U3C']);
    expect(ids(t)).toEqual(
      expect.arrayContaining(['U2L-U3C', 'U2R-U3C', 'L2L-L3C', 'L2L-U3C', 'L2R-U3C', 'U3C-L3C']),
    );
    expect(member(t, 'U3C-L3C')).toMatchObject({ role: 'vertical', side: 'C' });
    // The top of the last bay is a triangle: a diagonal there would lie on a longeron.
    expect(t.odd).toMatchObject([{ code: 'bracing-makes-nothing', at: 'bracing[0].top' }]);
    expect(t.faces.find((f) => f.id === '2 top')!.corners).toEqual(['U2L', 'U2R', 'U3C']);
  });

  it('a station without an upper row has no upper clusters, and the longeron passes it', () => {
    const model = box([]);
    const [a, b, c] = model.stations;
    const { upper: _, ...bare } = b!;
    const t = expandTruss({ ...model, stations: [a!, bare, c!] });
    expect(t.clusters.map((x) => x.id)).not.toContain('U2L');
    expect(ids(t)).toContain('U1L-U3L');
    expect(ids(t)).not.toContain('U2L-L2L');
  });

  it('omitted members are openings; a name that is none is odd', () => {
    const t = expandTruss(box([{ at: '1', left: 'rising' }], { omitted: ['L1L-U2L', 'L9L-U9L'] }));
    expect(ids(t)).not.toContain('L1L-U2L');
    expect(t.odd).toMatchObject([{ code: 'omitted-names-nothing', at: 'omitted[1]' }]);
  });

  it('a cluster row moves a table cluster without renaming it, or adds one', () => {
    const t = expandTruss(
      box([], {
        clusters: [
          { id: 'U2L', at: [20.3, -10, 20.2], fitting: 'wing' },
          { id: 'GEAR', at: [10, 0, -8] },
        ],
        members: [
          { from: 'L2L', to: 'GEAR' },
          { from: 'GEAR', to: 'L2R' },
        ],
      }),
    );
    expect(t.clusters.find((c) => c.id === 'U2L')).toMatchObject({ from: 'moved', fitting: 'wing' });
    expect(t.clusters.find((c) => c.id === 'GEAR')).toMatchObject({ from: 'added' });
    expect(ids(t)).toEqual(expect.arrayContaining(['U2L-L2L', 'GEAR-L2L', 'GEAR-L2R']));
    expect(member(t, 'GEAR-L2L')).toMatchObject({
      from: 'GEAR',
      to: 'L2L',
      role: 'other',
      faces: [],
      bay: '1',
    });
    expectNear(member(t, 'U2L-L2L').lengthIn, Math.hypot(0.3, 20.2), { rel: 1e-12, because: 'Pythagoras' });
  });

  it('a member row overrides the pattern by its id, turned round with its ends, and a second one between the two is #2', () => {
    const t = expandTruss(
      box([{ at: '1', left: 'rising' }], {
        members: [
          {
            from: 'U2L',
            to: 'L1L',
            ends: ['ball', 'welded'],
            bolted: true,
            tube: { odIn: 1, wallIn: 0.049 },
          },
          { from: 'L1L', to: 'U2L' },
        ],
      }),
    );
    const first = member(t, 'L1L-U2L');
    expect(first).toMatchObject({
      bolted: true,
      ends: ['welded', 'ball'],
      from: 'L1L',
      role: 'sideDiagonal',
    });
    expect(first.tube).toEqual({ odIn: 1, wallIn: 0.049 });
    expect(member(t, 'L1L-U2L#2').tube).toEqual({ odIn: 0.75, wallIn: 0.035 });
    expect(t.odd).toMatchObject([{ code: 'doubled-member', facts: { ids: ['L1L-U2L', 'L1L-U2L#2'] } }]);
  });

  it('later tube overrides outrank earlier ones, a member row outranks both, and every condition must hold', () => {
    const size = (odIn: number) => ({ odIn, wallIn: 0.035 });
    const model = box([{ at: '1', left: 'rising', right: 'rising' }], {
      members: [{ from: 'U1R', to: 'U2R', tube: size(0.375) }],
    });
    const t = expandTruss({
      ...model,
      tubes: {
        ...model.tubes,
        overrides: [
          { bay: '1', tube: size(0.5) },
          { bay: '1', face: 'left', tube: size(0.625) },
          { member: 'L1L-U2L', tube: size(0.875) },
          { bay: '2', role: 'vertical', tube: size(1) },
          { station: '2', role: 'vertical', tube: size(1) },
        ],
      },
    });
    expect(member(t, 'U1R-U2R').tube?.odIn).toBe(0.375);
    expect(member(t, 'L1R-L2R').tube?.odIn).toBe(0.5);
    expect(member(t, 'U1L-U2L').tube?.odIn).toBe(0.625);
    expect(member(t, 'L1L-U2L').tube?.odIn).toBe(0.875);
    expect(member(t, 'U2L-L2L').tube?.odIn).toBe(1);
    expect(member(t, 'U1L-L1L').tube?.odIn).toBe(0.75);
    // A vertical lies in a station, never in a bay, so the fourth row names nothing.
    expect(t.odd).toMatchObject([{ code: 'override-names-nothing', at: 'tubes.overrides[3]' }]);
  });

  it('a member may be given by its numbers alone', () => {
    const section = { areaIn2: 0.1, inertiaIn4: 0.01, torsionIn4: 0.015, elasticPsi: 10e6 };
    const t = expandTruss(box([], { members: [{ from: 'U1L', to: 'U2L', section }] }));
    const m = member(t, 'U1L-U2L');
    expect(m.section).toMatchObject(section);
    expect(m.tube).toBeUndefined();
    expect(m.section.shearPsi).toBeGreaterThan(0);
  });

  it('pinned joints make ball ends', () => {
    const t = expandTruss(box([], { joints: 'pinned' }));
    for (const m of t.members) expect(m.ends).toEqual(['ball', 'ball']);
  });

  it('a wholly explicit model stands without a station table', () => {
    const model = box([], {
      stations: [],
      clusters: [
        { id: 'A', at: [0, 0, 0] },
        { id: 'B', at: [10, 0, 0] },
        { id: 'U7L', at: [5, -5, 8] },
      ],
      members: [
        { from: 'B', to: 'A', role: 'lowerLongeron' },
        { from: 'A', to: 'U7L' },
        { id: 'strut 12', from: 'B', to: 'U7L' },
      ],
    });
    const t = expandTruss(model);
    expect(t.issues).toEqual([]);
    expect(ids(t)).toEqual(['A-B', 'A-U7L', 'strut 12']);
    expect(member(t, 'A-B').role).toBe('lowerLongeron');
    expect(t.bays).toEqual([]);
  });

  it('pairs opposite hands, left first, and leaves out what is its own mirror image', () => {
    const t = expandTruss(
      box([{ at: '1', left: 'rising', right: 'rising', top: 'toRight', bottom: 'crossed' }], {}, 1),
    );
    const pairs = t.pairs.map((p) => [p.left, p.right]);
    expect(pairs).toEqual(
      expect.arrayContaining([
        ['U1L', 'U1R'],
        ['L1L-U2L', 'L1R-U2R'],
        ['L1L-L2R', 'L1R-L2L'],
      ]),
    );
    expect(pairs.flat()).not.toContain('U1L-U2R');
    expect(pairs.flat()).not.toContain('U1L-U1R');
    // 4 clusters; 2 longerons, 2 verticals, 1 side diagonal, 1 bottom diagonal a side.
    expect(t.pairs).toHaveLength(4 + 2 + 2 + 1 + 1);
  });

  it('same words on both sides give every left member its right twin (seed 11)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const m = boxModel(seed, { bracing: 'random' });
        const even = {
          ...m,
          bracing: m.bracing.map((b) => ({ ...b, ...(b.left ? { right: b.left } : {}) })),
        };
        const t = expandTruss(frozen(even));
        const twin = new Map(t.pairs.map((p) => [p.left, p.right]));
        const at = new Map(t.clusters.map((c) => [c.id, c.at]));
        for (const x of t.members.filter((x) => x.side === 'L')) {
          const other = member(t, twin.get(x.id)!);
          expectNear(other.lengthIn, x.lengthIn, { rel: 1e-12, because: 'mirror image' });
        }
        for (const p of t.pairs.filter((p) => p.kind === 'cluster')) {
          const [x, y, z] = at.get(p.left)!;
          expect(at.get(p.right)).toEqual([x, -y, z]);
        }
        expect(t.odd.filter((o) => o.code === 'no-twin')).toEqual([]);
      }),
      { seed: 11, numRuns: soak(400) },
    );
  });

  it('rows in any order give the same truss, byte for byte (seed 12)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const m = boxModel(seed, { bracing: 'random' });
        const random = seededRandom(seed);
        const mix = <T>(list: readonly T[]): T[] =>
          list
            .map((v) => [random(), v] as const)
            .sort((a, b) => a[0] - b[0])
            .map(([, v]) => v);
        const mixed = { ...m, stations: mix(m.stations), bracing: mix(m.bracing) };
        const plain = { ...expandTruss(m), odd: [] };
        expect(JSON.stringify({ ...expandTruss(frozen(mixed)), odd: [] })).toBe(JSON.stringify(plain));
      }),
      { seed: 12, numRuns: soak(400) },
    );
  });

  it('stations given other labels give the same truss under other names (seed 13)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const m = boxModel(seed, { bracing: 'random' });
        // Labels that keep their order as text too, so that the sorting by id is the same.
        const say = (label: string): string => `${Number(label) + 100}`;
        const renamed: Model = {
          ...m,
          stations: m.stations.map((s) => ({ ...s, label: say(s.label) })),
          bracing: m.bracing.map((b) => ({ ...b, at: say(b.at) })),
          tubes: {
            ...m.tubes,
            overrides: m.tubes.overrides.map((o) => ({ ...o, ...(o.bay ? { bay: say(o.bay) } : {}) })),
          },
        };
        const back = (t: Truss) =>
          t.members.map((x) => [x.role, x.lengthIn, x.section.areaIn2, x.faces, x.side]);
        expect(back(expandTruss(renamed))).toEqual(back(expandTruss(m)));
      }),
      { seed: 13, numRuns: soak(200) },
    );
  });

  it('a station put in between as 4a sits in order and takes its bay', () => {
    const model = box([], {}, 1);
    const between = { ...model.stations[0]!, label: '1a', stationIn: 8 };
    const t = expandTruss({ ...model, stations: [...model.stations, between] });
    expect(t.bays.map((b) => [b.id, b.aft])).toEqual([
      ['1', '1a'],
      ['1a', '2'],
    ]);
    expect(ids(t)).toEqual(expect.arrayContaining(['U1L-U1aL', 'U1aL-U2L']));
    expect(ids(t)).not.toContain('U1L-U2L');
  });
});
