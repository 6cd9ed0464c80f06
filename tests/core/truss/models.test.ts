import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { type Model, modelSchema } from '../../../src/core/job/modelSchema.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';

const folder = new URL('../../../models/', import.meta.url);
const load = (file: string): Model => {
  const read = z.safeParse(modelSchema, JSON.parse(readFileSync(new URL(file, folder), 'utf8')));
  expect(read.success, JSON.stringify(read.error?.issues)).toBe(true);
  return read.data!;
};

/** Members, clusters and stations each model is meant to have. */
const ranges = {
  'high-wing-tandem.json': { members: [100, 130], stations: [11, 14] },
  'low-wing-side-by-side.json': { members: [150, 200], stations: [11, 14] },
  'practice-truss.json': { members: [28, 45], stations: [4, 4] },
} as const;

/** Rank of a small matrix by elimination with full pivoting. */
const rank = (rows: number[][]): number => {
  const m = rows.map((r) => [...r]);
  let found = 0;
  for (let c = 0; c < 6; c++) {
    const pivot = m.slice(found).reduce(
      (best, r, k) => {
        const here = Math.abs(r[c]!);
        return here > best.size ? { size: here, k: k + found } : best;
      },
      { size: 1e-6, k: -1 },
    );
    if (pivot.k < 0) continue;
    [m[found], m[pivot.k]] = [m[pivot.k]!, m[found]!];
    for (let r = found + 1; r < m.length; r++) {
      const f = m[r]![c]! / m[found]![c]!;
      m[r] = m[r]!.map((v, k) => v - f * m[found]![k]!);
    }
    found++;
  }
  return found;
};

/** Movement of each held freedom under the six rigid motions of the whole: three shifts, three turns about the datum. */
const rigidRows = (truss: Truss, setup: Model['setups'][number]): number[][] => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  return setup.held.flatMap(({ cluster, fixed }) => {
    const [x, y, z] = at.get(cluster)!;
    const rows = {
      x: [1, 0, 0, 0, z, -y],
      y: [0, 1, 0, -z, 0, x],
      z: [0, 0, 1, y, -x, 0],
      rx: [0, 0, 0, 1, 0, 0],
      ry: [0, 0, 0, 0, 1, 0],
      rz: [0, 0, 0, 0, 0, 1],
    };
    return fixed.map((f) => rows[f]);
  });
};

describe('models', () => {
  it('every model file is known here', () => {
    expect(readdirSync(folder).toSorted()).toEqual(Object.keys(ranges));
  });

  for (const [file, range] of Object.entries(ranges))
    describe(file, () => {
      const model = load(file);
      const truss = expandTruss(model);

      it('expands without issues, and nothing is odd but what one side has alone', () => {
        expect(truss.issues).toEqual([]);
        expect(truss.odd.filter((o) => o.code !== 'no-twin')).toEqual([]);
        expect(truss.odd.length).toBeLessThanOrEqual(1);
      });

      it('has as many stations and members as it is meant to have', () => {
        expect(model.stations.length).toBeGreaterThanOrEqual(range.stations[0]);
        expect(model.stations.length).toBeLessThanOrEqual(range.stations[1]);
        expect(truss.members.length).toBeGreaterThanOrEqual(range.members[0]);
        expect(truss.members.length).toBeLessThanOrEqual(range.members[1]);
      });

      it('says that it is invented', () => {
        expect(model.source).toMatch(/^Invented/);
        for (const c of model.loadCases)
          if (c.loads.length + (c.weights?.length ?? 0) > 0) expect(c.source).toMatch(/Invented/);
      });

      it('is all of one piece', () => {
        const reached = new Set([truss.clusters[0]!.id]);
        for (let before = 0; before < reached.size; ) {
          before = reached.size;
          for (const m of truss.members)
            if (reached.has(m.from) || reached.has(m.to)) reached.add(m.from).add(m.to);
        }
        expect(reached.size).toBe(truss.clusters.length);
      });

      it('is held against all six rigid motions by each of its set-ups', () => {
        expect(model.setups.length).toBeGreaterThanOrEqual(2);
        for (const setup of model.setups) expect(rank(rigidRows(truss, setup)), setup.id).toBe(6);
      });

      it('has slender but sensible tubes', () => {
        // The column lines of trade-facts 2.1 end at L'/ρ = 150 with c = 2, which is L/ρ = 212.
        for (const m of truss.members) {
          const radius = Math.sqrt(m.section.inertiaIn4 / m.section.areaIn2);
          expect(m.lengthIn / radius, m.id).toBeLessThan(212);
          expect(m.lengthIn, m.id).toBeGreaterThan(4);
        }
      });
    });

  it('the tandem has openings, a door on one side, bolted struts and a tail post', () => {
    const truss = expandTruss(load('high-wing-tandem.json'));
    const diagonals = (face: string): number =>
      truss.faces
        .find((f) => f.id === face)!
        .members.filter((id) => truss.members.find((m) => m.id === id)!.role.endsWith('Diagonal')).length;
    expect(diagonals('3 left')).toBe(1);
    expect(diagonals('3 right')).toBe(0);
    expect(diagonals('5 bottom')).toBe(0);
    expect(diagonals('1 left')).toBe(2);
    expect(truss.members.filter((m) => m.bolted).length).toBeGreaterThan(0);
    expect(truss.members.find((m) => m.id === 'U11C-L11C')!.role).toBe('vertical');
    for (const word of ['engine mount', 'landing gear', 'strut'])
      expect(truss.clusters.some((c) => c.fitting?.includes(word))).toBe(true);
  });

  it('the model drawn in millimetres gives its tenths back', () => {
    const model = load('low-wing-side-by-side.json');
    const lengths = [
      ...model.stations.flatMap((s) => [s.stationIn, s.upper!.halfWidthIn, s.lower!.waterLineIn]),
      ...model.clusters.flatMap((c) => c.at),
      ...model.distances.map((d) => d.lengthIn),
    ];
    for (const inches of lengths) {
      const tenths = inches * 254;
      expectNear(tenths, Math.round(tenths), { abs: 2e-7, because: 'stored to 1e-9 in' });
    }
  });
});
