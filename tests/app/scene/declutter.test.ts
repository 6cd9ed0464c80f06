import { describe, expect, it } from 'vitest';
import { type Box, declutter, type Wish } from '../../../src/app/scene/declutter.ts';
import { seeded } from '../../../src/core/base/seeded.ts';
import { soak } from '../../kit/soak.ts';

const bounds: Box = { left: 0, top: 0, right: 800, bottom: 500 };
const wish = (x: number, y: number, more: Partial<Wish> = {}): Wish => ({
  x,
  y,
  width: 60,
  height: 18,
  clear: 6,
  far: true,
  ...more,
});
const boxesOf = (wishes: readonly Wish[], kept: readonly Box[] = []): readonly Box[] =>
  declutter(wishes, bounds, kept).flatMap((place, i) =>
    place
      ? [
          {
            left: place.left,
            top: place.top,
            right: place.left + wishes[i]!.width,
            bottom: place.top + wishes[i]!.height,
          },
        ]
      : [],
  );
const overlap = (a: Box, b: Box) =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

describe('declutter', () => {
  const runs = soak(400);
  it(`never lets two labels overlap, nor a label and what is kept, nor the edge (seed 5, ${runs} sheets)`, () => {
    const { share: random } = seeded('5');
    for (let run = 0; run < runs; run++) {
      const wishes = Array.from({ length: 20 + Math.floor(random() * 150) }, () =>
        wish(random() * 900 - 50, random() * 600 - 50, {
          width: 20 + random() * 120,
          far: random() < 0.5,
          clear: random() < 0.3 ? 0 : 6,
        }),
      );
      const kept = [{ left: 0, top: 380, right: 150, bottom: 500 }];
      const boxes = boxesOf(wishes, kept);
      const outside = boxes.filter((b) => b.left < 0 || b.top < 0 || b.right > 800 || b.bottom > 500);
      const hit = boxes.filter((a, i) => [...kept, ...boxes.slice(0, i)].some((b) => overlap(a, b)));
      expect([...outside, ...hit]).toEqual([]);
    }
  });

  it('places every one of a dozen labels on one spot when they may go far, with leaders for those that went', () => {
    const places = declutter(
      Array.from({ length: 12 }, () => wish(400, 250)),
      bounds,
    );
    expect(places.every((p) => p !== null)).toBe(true);
    expect(places[0]!.leader).toBe(false);
    expect(places.some((p) => p!.leader)).toBe(true);
  });

  it('gives the place to the more important label and drops the other when it may not go far', () => {
    const crowd = Array.from({ length: 40 }, () => wish(400, 250, { far: false }));
    const places = declutter(crowd, bounds);
    expect(places[0]).not.toBeNull();
    expect(places.filter((p) => p === null).length).toBeGreaterThan(20);
  });

  it('lies on its anchor when it may, and square to its tube first', () => {
    expect(declutter([wish(400, 250, { clear: 0 })], bounds)[0]).toEqual({
      left: 370,
      top: 241,
      leader: false,
    });
    const above = declutter([wish(400, 250, { toward: [0, -1] })], bounds)[0]!;
    expect(above.top + 18).toBe(244);
  });

  it('is the same for the same wishes, and silent about what is off the sheet', () => {
    const wishes = [wish(10, 10), wish(12, 12), wish(-5, 10), wish(10, 501)];
    expect(declutter(wishes, bounds)).toEqual(declutter(wishes, bounds));
    expect(declutter(wishes, bounds).slice(2)).toEqual([null, null]);
  });
});
