import { describe, expect, it } from 'vitest';
import type { Held } from '../../../src/core/job/jobSchema.ts';
import { heldNow, isBrace } from '../../../src/core/statics/held.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import { boxTruss, modelOf, trussOf } from './boxTruss.ts';

const truss = boxTruss(3);
const setups = [
  { id: 'jig', name: 'Jig', held: [{ cluster: 'U0L', fixed: ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const }] },
  { id: 'gear', name: 'Gear', held: [{ cluster: 'L1L', fixed: ['z'] as const }] },
].map((s) => ({ ...s, held: s.held.map((h) => ({ ...h, fixed: [...h.fixed] })) }));
const model = modelOf({ setups });
const record = (id: string, at: string, more: Partial<Held>): Held => ({
  id,
  kind: 'held',
  by: 'x',
  at,
  device: 'd',
  ...more,
});

describe('heldNow', () => {
  it('takes the latest record, else the first set-up, else supports of its own that are not ranked', () => {
    const early = record('1', '2026-01-01T10:00:00Z', { setup: 'jig' });
    const late = record('2', '2026-01-01T11:00:00Z', { setup: 'gear' });
    expect(heldNow(truss, model, [late, early]).heldAs).toBe('gear');
    expect(heldNow(truss, model, [])).toMatchObject({ heldAs: 'jig', ranked: true });
    expect(heldNow(truss, modelOf({}), [])).toMatchObject({ heldAs: 'threeTwoOne', ranked: false });
  });

  it('holds the clusters that a record lists, and says which it does not know', () => {
    const listed = record('1', '2026-01-01T10:00:00Z', {
      held: [
        { cluster: 'U0L', fixed: ['x'] },
        { cluster: 'nowhere', fixed: ['x'] },
      ],
    });
    const got = heldNow(truss, model, [listed]);
    expect(got).toMatchObject({ heldAs: 'listed', ranked: true, held: [{ cluster: 'U0L', fixed: ['x'] }] });
    expect(got.issues.map((i) => [i.code, i.facts.cluster])).toEqual([['unknown-cluster', 'nowhere']]);
  });

  it('falls back to its own supports, unranked, when the set-up named is not in the model', () => {
    const got = heldNow(truss, model, [record('1', '2026-01-01T10:00:00Z', { setup: 'trestles' })]);
    expect(got).toMatchObject({ heldAs: 'threeTwoOne', ranked: false });
    expect(got.issues.map((i) => i.code)).toEqual(['unknown-setup']);
  });

  it('adds braces to the first set-up when the record says no more, and refuses impossible ones', () => {
    const braces = [
      { from: 'U0L', to: 'L1R', odIn: 0.5, wallIn: 0.035 },
      { from: 'U0L', to: 'U0L', odIn: 0.5, wallIn: 0.035 },
      { from: 'U0L', to: 'L2R', odIn: 0.5, wallIn: 0.3 },
      { from: 'U0L', to: 'nowhere', odIn: 0.5, wallIn: 0.035 },
    ];
    const got = heldNow(truss, model, [record('1', '2026-01-01T10:00:00Z', { braces })]);
    expect(got.heldAs).toBe('jig');
    expect(got.braces.map((b) => b.id)).toEqual(['brace:U0L-L1R']);
    expect(got.issues.map((i) => i.code)).toEqual(['brace-to-itself', 'impossible-tube', 'unknown-cluster']);
    const answer = statics(truss, model, got, prepareFrame(truss, got));
    if (answer.kind !== 'stands') expect.fail('moves freely');
    // The brace carries force in the cases, and is no tube of the truss in the redundancy.
    expect(answer.cases[0]!.members.filter((m) => isBrace(m.id)).map((m) => m.id)).toEqual(['brace:U0L-L1R']);
    expect(answer.redundancy.map((r) => r.id)).toEqual(truss.members.map((m) => m.id));
  });

  it('makes 3-2-1 supports that hold any truss with three clusters out of line', () => {
    for (const bays of [1, 2, 7]) {
      const own = heldNow(boxTruss(bays), modelOf({}), []);
      expect(own.held.map((h) => h.fixed.length)).toEqual([3, 2, 1]);
      expect(isFrame(prepareFrame(boxTruss(bays), own))).toBe(true);
    }
    const line = trussOf({ a: [0, 0, 0], b: [9, 0, 0] }, [['a', 'b']]);
    expect(isFrame(prepareFrame(line, heldNow(line, modelOf({}), [])))).toBe(false);
    const nothing = trussOf({}, []);
    expect(heldNow(nothing, modelOf({}), []).held).toEqual([]);
  });
});
