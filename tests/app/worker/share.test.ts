import { describe, expect, it } from 'vitest';
import { share } from '../../../src/app/worker/share.ts';
import { edit } from '../../../src/core/job/edit.ts';
import { emptyJob } from '../kit.ts';

const copyOf = <T>(value: T): T => structuredClone(value);

describe('share', () => {
  it('gives the earlier object when the new one is deep-equal', () => {
    const before = emptyJob();
    expect(share(before, copyOf(before))).toBe(before);
  });

  it('keeps everything but what changed, and holds what was received', () => {
    const before = emptyJob();
    const stamp = { by: 'T', at: '2031-05-04T10:00:00Z', device: 'd', newId: () => 'r1' };
    const edited = edit(before, { kind: 'tag', of: ['U1L-U2L'], tag: 'bent' }, stamp);
    if (!edited.ok) throw new Error('the edit was refused');
    const received = copyOf(edited.value.job);
    const shared = share(before, received);
    expect(shared).toEqual(received);
    expect(shared.model).toBe(before.model);
    expect(shared.records).not.toBe(before.records);
  });

  it('keeps earlier records when one is added or one is taken out of the end', () => {
    const before = { records: [{ id: 'a' }, { id: 'b' }] };
    const more = share(before, { records: [{ id: 'a' }, { id: 'b' }, { id: 'c' }] });
    expect(more.records[0]).toBe(before.records[0]);
    expect(more.records[1]).toBe(before.records[1]);
    const fewer = share(before, { records: [{ id: 'a' }] });
    expect(fewer.records).toEqual([{ id: 'a' }]);
    expect(fewer.records[0]).toBe(before.records[0]);
  });

  it('tells apart what only looks alike', () => {
    for (const [a, b] of [
      [{ x: undefined }, {}],
      [[1, 2], { 0: 1, 1: 2 }],
      [{ x: 0 }, { x: -0 }],
      [{ x: null }, { x: {} }],
      [{ a: 1 }, { b: 1 }],
    ] as const) {
      const shared = share(a, b as unknown);
      expect(Object.is(shared, a)).toBe(false);
      expect(shared).toStrictEqual(b);
    }
  });

  it('counts maps, typed arrays and dates as new', () => {
    const before = { numbers: Float64Array.of(1, 2), names: new Map([['a', 1]]) };
    const after = copyOf(before);
    const shared = share(before, after);
    expect(shared.numbers).toBe(after.numbers);
    expect(shared.names).toBe(after.names);
  });
});
