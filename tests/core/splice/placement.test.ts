import { describe, expect, it } from 'vitest';
import { runBack } from '../../../src/core/splice/insertion.ts';
import { placeCuts } from '../../../src/core/splice/placement.ts';

describe('places of the cuts', () => {
  it('stand at the edges of the damage when that is long enough', () => {
    expect(placeCuts([10, 14], 3, [4, 20])).toEqual([10, 14]);
  });
  it('share what is wanting alike, and give to the other end what one has no room for', () => {
    expect(placeCuts([10, 12], 6, [4, 20])).toEqual([8, 14]);
    expect(placeCuts([10, 12], 6, [9, 20])).toEqual([9, 15]);
    expect(placeCuts([10, 12], 6, [4, 13])).toEqual([7, 13]);
  });
  it('keep a place that the user has set', () => {
    expect(placeCuts([10, 12], 6, [4, 20], [9.5, undefined])).toEqual([9.5, 15.5]);
    expect(placeCuts([10, 12], 6, [4, 20], [undefined, 13])).toEqual([7, 13]);
  });
  it('stand where they would, when there is no room at all, so that the failing numbers can be given', () => {
    expect(placeCuts([10, 12], 6, [9.5, 12.5])).toEqual([8, 14]);
  });
});

describe('where sleeves wait', () => {
  const two = (a: number, b: number) =>
    [
      { part: 'one', needIn: 5, stubRoomIn: a },
      { part: 'two', needIn: 5, stubRoomIn: b },
    ] as const;
  const into = (a: number, b: number, section: number) =>
    runBack(two(a, b), section).insertion.map((i) => i.into);

  it('is their own stubs, else the section as far as it holds them', () => {
    expect(into(5, 5, 0)).toEqual(['fromStub', 'toStub']);
    expect(into(5, 4, 5)).toEqual(['fromStub', 'section']);
    expect(into(4, 4, 10)).toEqual(['section', 'section']);
  });
  it('is nowhere when neither holds them, with what each needs and has', () => {
    const { insertion, failing } = runBack(two(4, 4.5), 3);
    expect(insertion.map((i) => i.into)).toEqual([null, null]);
    expect(failing.map((f) => [f.at, f.needIn.value, f.haveIn.value])).toEqual([
      ['one', 5, 4],
      ['two', 5, 4.5],
    ]);
  });
  it('fails one sleeve when the section holds one and both need it', () => {
    const { failing } = runBack(two(4, 4), 6);
    expect(failing.length).toBeGreaterThan(0);
  });
});
