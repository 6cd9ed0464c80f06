import { describe, expect, it } from 'vitest';
import type { JobRecord } from '../../../src/core/job/jobSchema.ts';
import { modelChanges } from '../../../src/core/truss/modelChanges.ts';
import { editModel, type ModelChange } from '../../../src/core/truss/modelEdit.ts';
import { boxModel } from '../../kit/trusses.ts';

const stamp = { by: 'A', at: '2026-01-01T00:00:00Z', device: 'd' };
const records: readonly JobRecord[] = [
  { kind: 'note', id: 'n1', ...stamp, of: 'U2L-U3L', text: 'x' } as unknown as JobRecord,
  { kind: 'decision', id: 'd1', ...stamp, of: 'U1L-U2L', choice: 'replace' },
];
const start = boxModel(6, { bays: 3, bracing: 'crossed', tapered: false });
const changed = (change: ModelChange) => {
  const made = editModel(start, change);
  if (!made.ok) return expect.fail('refused');
  return modelChanges(start, made.value, records);
};

describe('what an amendment does', () => {
  it('is nothing when nothing was changed', () => {
    const { lost, ...lists } = modelChanges(start, { ...start }, records);
    expect(Object.values(lists).every((list) => list.length === 0)).toBe(true);
    expect(lost).toEqual([]);
  });

  it('names tubes taken out, and the records that then name nothing', () => {
    const told = changed({ kind: 'omit', id: 'U2L-U3L' });
    expect(told.membersRemoved).toEqual(['U2L-U3L']);
    expect(told.lost).toEqual([{ record: 'n1', kind: 'note', names: 'U2L-U3L' }]);
  });

  // By hand: the corner goes 3 in out, so all tubes at it get longer but those along the station axis stay.
  it('names clusters moved with how far, and tubes that change length', () => {
    const at = start.stations[1]!;
    const upper = at.upper!;
    const told = changed({
      kind: 'setCluster',
      row: { id: 'U2L', at: [at.stationIn, -upper.halfWidthIn - 3, upper.waterLineIn] },
    });
    expect(told.clustersMoved).toEqual([{ id: 'U2L', byIn: 3 }]);
    const cross = told.membersLengthened.find((m) => m.id === 'U2L-U2R');
    expect(cross?.byIn).toBe(3);
  });

  it('names tubes of another size', () => {
    const told = changed({
      kind: 'addOverride',
      override: { member: 'U1L-U2L', tube: { odIn: 1.25, wallIn: 0.049 } },
    });
    expect(told.membersResized).toEqual(['U1L-U2L']);
  });
});
