import { describe, expect, it } from 'vitest';
import { importKinds } from '../../src/core/truss/importColumns.ts';
import { importRows } from '../../src/core/truss/importRows.ts';
import { blankModel, editModel, type ModelChange } from '../../src/core/truss/modelEdit.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { modelCsv, tableCells } from '../../src/present/importTable.ts';
import { boxModel } from '../kit/trusses.ts';

const read = (kind: (typeof importKinds)[number], text: string, model = boxModel(1, { bays: 3 })) =>
  importRows(kind, tableCells(text), model, expandTruss(model));

describe('a pasted table', () => {
  // Invariant: what goes out comes back; in inches and in millimetres, with uneven numbers.
  it.each([...Array(12).keys()])('that came from the model changes nothing, seed %i', (seed) => {
    const model = { ...boxModel(seed + 1), drawnIn: seed % 2 ? ('mm' as const) : ('in' as const) };
    for (const kind of importKinds) {
      const back = read(kind, modelCsv(kind, model, expandTruss(model)), model);
      expect(back.rows.length, kind).toBeGreaterThan(0);
      expect(back.rows.flatMap((r) => r.faults)).toEqual([]);
      expect(back.rows.every((r) => r.same)).toBe(true);
      expect(back.good).toEqual([]);
    }
  });

  // Invariant: the three tables of a model, read into an empty one, give the same clusters.
  it('of stations builds the same clusters in an empty model', () => {
    const model = boxModel(11);
    const empty = blankModel('in');
    const back = read('stations', modelCsv('stations', model, expandTruss(model)), empty);
    const change: ModelChange = { kind: 'takeStations', rows: back.good as never };
    const made = editModel(empty, change);
    if (!made.ok) return expect.fail('refused');
    const [got, want] = [expandTruss(made.value).clusters, expandTruss(model).clusters];
    expect(got.map((c) => c.id)).toEqual(want.map((c) => c.id));
  });

  it('takes a spreadsheet’s tabs, titles in any order with their own units, and fractions', () => {
    const text =
      'Station (mm)\tLabel\tUpper WL\tUpper HW\tLower WL\tLower HW\n25.4\t21\t23 5/16\t10\t0\t9 1/2\n';
    const back = read('stations', text);
    expect(back.rows[0]?.faults).toEqual([]);
    expect(back.good).toEqual([
      {
        label: '21',
        stationIn: 1,
        upper: { waterLineIn: 23.3125, halfWidthIn: 10 },
        lower: { waterLineIn: 0, halfWidthIn: 9.5 },
      },
    ]);
  });

  it('keeps the good rows and marks every bad one with its row, its column and its mend', () => {
    const text = [
      'Label,Station,Upper water line,Upper half-width,Lower water line,Lower half-width',
      '11,120,20,8,1,8',
      '11,130,20,8,1,8',
      'twelve,140,20,8,1,8',
      '13,?,20,8,1,8',
      '14,160,20,,1,8',
      '',
      '15,170,20,8,1,8',
    ].join('\n');
    const back = read('stations', text);
    expect(back.good.map((s) => ('label' in s ? s.label : ''))).toEqual(['11', '15']);
    expect(
      back.rows
        .filter((r) => r.faults.length > 0)
        .map((r) => [r.row, r.faults[0]!.column, r.faults[0]!.issue.code]),
    ).toEqual([
      [3, 'Label', 'duplicate-station'],
      [4, 'Label', 'wrong-form'],
      [5, 'Station', 'not-a-length'],
      [6, 'Upper half-width', 'pair-needs-both'],
    ]);
    expect(back.rows.every((r) => r.faults.every((f) => f.issue.mend !== ''))).toBe(true);
  });

  it('says which columns it lacks', () => {
    expect(read('clusters', 'Cluster,Station\nGC,12').missing).toEqual(['Butt line', 'Water line']);
  });

  it('of members refuses clusters that are not there and tubes that cannot be', () => {
    const back = read('members', 'From,To,OD,Wall\nU1L,U9L,.75,.035\nU1L,L2R,.5,.4\nU1L,L2R,.5,.035');
    expect(back.rows.map((r) => r.faults.map((f) => f.issue.code))).toEqual([
      ['unknown-cluster'],
      ['impossible-tube'],
      [],
    ]);
    expect(back.good).toEqual([{ from: 'U1L', to: 'L2R', tube: { odIn: 0.5, wallIn: 0.035 } }]);
  });
});
