import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { readModel } from '../../../src/core/job/read.ts';
import { writeModel } from '../../../src/core/job/write.ts';
import { blankModel, editModel, type ModelChange } from '../../../src/core/truss/modelEdit.ts';
import { asymmetries } from '../../../src/core/truss/symmetry.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel, frozen } from '../../kit/trusses.ts';
import { box } from './box.ts';

const edited = (model: Model, ...changes: ModelChange[]): Model =>
  changes.reduce((now, change) => {
    const made = editModel(frozen(now), change);
    if (!made.ok) expect.fail(`${change.kind}: ${made.issues.map((i) => i.code).join(', ')}`);
    return made.value;
  }, model);

const ring = (label: string, stationIn: number): ModelChange => ({
  kind: 'addStation',
  row: {
    label,
    stationIn,
    upper: { waterLineIn: 20, halfWidthIn: 10 },
    lower: { waterLineIn: 0, halfWidthIn: 10 },
  },
});

describe('changes of a model', () => {
  // Counted by hand: 3 rings of 4 tubes, 2 bays of 4 longerons, one side diagonal.
  it('build a truss from nothing, row by row, whatever the order of the rows', () => {
    const sizes = ['upperLongeron', 'lowerLongeron', 'vertical', 'crossMember', 'sideDiagonal'] as const;
    const model = edited(
      blankModel('in'),
      ring('3', 48),
      ring('1', 0),
      ring('2', 24),
      ...sizes.map((role): ModelChange => ({ kind: 'setTube', role, tube: { odIn: 0.75, wallIn: 0.035 } })),
      { kind: 'setBracing', cells: [{ at: '1', face: 'left' }], word: 'rising' },
    );
    expect(model.stations.map((s) => s.label)).toEqual(['1', '2', '3']);
    const truss = expandTruss(model);
    expect(truss.members).toHaveLength(3 * 4 + 2 * 4 + 1);
    expect(truss.members.map((m) => m.id)).toContain('L1L-U2L');
    expect(truss.issues).toEqual([]);
  });

  it('insert a station half-way, called 4a, that keeps both halves braced and counts as assumed', () => {
    const model = edited(boxModel(3, { bays: 4, bracing: 'crossed' }), { kind: 'insertStation', after: '2' });
    const rows = model.stations;
    expect(rows.map((s) => s.label)).toEqual(['1', '2', '2a', '3', '4', '5']);
    const [fwd, mid, aft] = [rows[1]!, rows[2]!, rows[3]!];
    expect(mid.stationIn).toBe((fwd.stationIn + aft.stationIn) / 2);
    const ids = expandTruss(model).members.map((m) => m.id);
    expect(ids).toEqual(expect.arrayContaining(['L2L-U2aL', 'U2L-L2aL', 'L2aL-U3L', 'U2aL-L3L']));
    expect(expandTruss(model).clusters.find((c) => c.id === 'U2aL')?.assumed).toBe(true);
  });

  it('take out a station with everything that names it, and leave nothing pointing at it', () => {
    const model = edited(
      boxModel(5, { bays: 3 }),
      { kind: 'omit', id: 'U3L-U4L' },
      { kind: 'addOverride', override: { member: 'U3L-L3L', tube: { odIn: 1, wallIn: 0.035 } } },
      { kind: 'setDistance', row: { from: 'U3L', to: 'U2R', lengthIn: 30 } },
      { kind: 'setMember', row: { from: 'U3L', to: 'L1R', tube: { odIn: 0.5, wallIn: 0.035 } } },
      { kind: 'removeStation', label: '3' },
    );
    expect(writeModel(model)).not.toMatch(/[UL]3[LRC]|"3"/);
    expect(expandTruss(model).issues).toEqual([]);
  });

  it('copy a bay: bracing words and tube sizes, and nothing of what the other bay had', () => {
    const start = edited(boxModel(8, { bays: 4, bracing: 'random' }), {
      kind: 'addOverride',
      override: { bay: '1', role: 'sideDiagonal', tube: { odIn: 1, wallIn: 0.058 } },
    });
    const model = edited(start, { kind: 'copyBay', from: '1', to: ['2', '3'] });
    const words = (at: string) => {
      const { at: _, ring: __, ...row } = model.bracing.find((b) => b.at === at) ?? { at };
      return row;
    };
    expect(words('2')).toEqual(words('1'));
    expect(words('3')).toEqual(words('1'));
    const sizesIn = (bay: string) =>
      expandTruss(model)
        .members.filter((m) => m.bay === bay && m.role !== 'sideDiagonal')
        .map((m) => `${m.role} ${m.section.odIn}`)
        .sort();
    expect(new Set(sizesIn('2'))).toEqual(new Set(sizesIn('1')));
  });

  it.each<[string, ModelChange, string]>([
    ['a station that is not there', { kind: 'removeStation', label: '77' }, 'unknown-station'],
    ['a label that is taken', { kind: 'addStation', row: { label: '1', stationIn: 3 } }, 'duplicate-station'],
    [
      'a word that a face cannot have',
      { kind: 'setBracing', cells: [{ at: '1', face: 'top' }], word: 'rising' },
      'not-one-of',
    ],
    [
      'a tube of no size',
      { kind: 'setTube', role: 'vertical', tube: { odIn: 0, wallIn: 0.035 } },
      'out-of-range',
    ],
    ['a station a mile away', { kind: 'addStation', row: { label: '9', stationIn: 63360 } }, 'out-of-range'],
    ['a name of nothing', { kind: 'describe', set: { name: '' } }, 'text-empty'],
  ])('are refused with a reason: %s', (_, change, code) => {
    const made = editModel(boxModel(1, { bays: 2 }), change);
    expect(made.ok).toBe(false);
    expect(made.issues[0]?.code).toBe(code);
  });

  // Invariant: a word set back to what it was leaves the truss as it was; openings likewise.
  it(`put back, leave the truss as it was (seed 81, ${soak(200)} models)`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const model = boxModel(seed, { bracing: 'random' });
        const ids = expandTruss(model).members.map((m) => m.id);
        const id = ids[seed % ids.length]!;
        const there = edited(model, { kind: 'omit', id });
        expect(expandTruss(there).members.map((m) => m.id)).toEqual(ids.filter((one) => one !== id));
        expect(expandTruss(edited(there, { kind: 'restore', id })).members).toEqual(
          expandTruss(model).members,
        );
      }),
      { seed: 81, numRuns: soak(200) },
    );
  });
});

describe('mirroring a side', () => {
  // Invariant: what was copied across is symmetric, and copying it again changes nothing.
  it(`makes any truss alike on both hands, once and for all (seed 82, ${soak(200)} models)`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom('L', 'R'), (seed, side) => {
        const start = boxModel(seed, { bracing: 'random' });
        const free = expandTruss(start).members.filter((m) => m.side === side);
        const one = free[seed % free.length]!;
        const y = side === 'L' ? -30 : 30;
        const model = edited(
          start,
          { kind: 'omit', id: one.id },
          { kind: 'setCluster', row: { id: `U2${side}`, at: [10, y, 12], fitting: 'strut' } },
          { kind: 'setCluster', row: { id: 'X', at: [12, y - 1, 3] } },
          { kind: 'setMember', row: { from: 'X', to: `L1${side}`, tube: { odIn: 0.5, wallIn: 0.035 } } },
          {
            kind: 'addOverride',
            override: { face: side === 'L' ? 'left' : 'right', tube: { odIn: 0.875, wallIn: 0.035 } },
          },
        );
        const once = edited(model, { kind: 'mirrorSide', from: side });
        expect(asymmetries(expandTruss(once))).toEqual([]);
        expect(expandTruss(once).issues).toEqual([]);
        const twice = edited(once, { kind: 'mirrorSide', from: side });
        expect(expandTruss(twice)).toEqual(expandTruss(once));
        const origins = new Map(expandTruss(once).clusters.map((c) => [c.id, c.origin]));
        expect(origins.get(`U2${side === 'L' ? 'R' : 'L'}`)).toBe('mirrored');
      }),
      { seed: 82, numRuns: soak(200) },
    );
  });

  it('leaves a symmetric truss from a file as it is', () => {
    const read = readModel(writeModel(boxModel(2, { bays: 3, bracing: 'crossed' })));
    if (!read.ok) return expect.fail('not read');
    const made = edited(read.value, { kind: 'mirrorSide', from: 'L' });
    expect(expandTruss(made).members).toEqual(expandTruss(read.value).members);
  });

  it('names what differs, however much it is', () => {
    const model = edited(boxModel(4, { bays: 2, bracing: 'crossed' }), {
      kind: 'setBracing',
      cells: [{ at: '1', face: 'right' }],
      word: 'none',
    });
    expect(asymmetries(expandTruss(model)).map((i) => i.facts.id)).toEqual(['L1L-U2L', 'U1L-L2L']);
  });

  // "Later rows outrank earlier ones" (model schema)
  it('give a size here and there another place, and with it another rank', () => {
    const size = (odIn: number) => ({ bay: '1', tube: { odIn, wallIn: 0.035 } });
    const start = edited(
      box([]),
      { kind: 'addOverride', override: size(0.5) },
      { kind: 'addOverride', override: size(0.625) },
    );
    const odOf = (model: Model) => expandTruss(model).members.find((m) => m.id === 'U1L-U2L')!.tube!.odIn;
    expect(odOf(start)).toBe(0.625);
    expect(odOf(edited(start, { kind: 'moveOverride', at: 0, by: 1 }))).toBe(0.5);
    expect(odOf(edited(start, { kind: 'setOverride', at: 1, override: size(0.875) }))).toBe(0.875);
    // past the end nothing moves
    expect(edited(start, { kind: 'moveOverride', at: 1, by: 1 })).toEqual(start);
  });
});
