import { describe, expect, it } from 'vitest';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { type Mark, type State, states } from '../../../src/core/walkRound/result.ts';
import { type MapViewName, mapViews, projection } from '../../../src/present/draw/project.ts';
import { damageMap } from '../../../src/present/draw/view.ts';
import { expectNear } from '../../kit/near.ts';
import { emptyJob } from '../made.ts';

const truss = expandTruss(emptyJob().model);
const names = Object.keys(mapViews) as MapViewName[];
const size = { widthMm: 260, heightMm: 150 };

/** Every third member and every fifth cluster tagged, in turn with each state: as crowded as a bad accident. */
const crowded: ReadonlyMap<string, Mark> = new Map(
  [
    ...truss.members.map(
      ({ id }, k) => [id, 'member', k % 3 === 0 ? states[(k / 3) % 6]! : 'lookedAt'] as const,
    ),
    ...truss.clusters.map(
      ({ id }, k) => [id, 'cluster', k % 5 === 0 ? states[(k / 5) % 6]! : 'notLookedAt'] as const,
    ),
  ].map(([id, kind, state]) => [
    id,
    {
      id,
      kind,
      state: state as State,
      findings: [],
      damage: state === 'undecided' ? ['bow'] : [],
      finishRemoved: false,
    },
  ]),
);

const middle = (ids: readonly string[], view: MapViewName): readonly [number, number] => {
  const { at } = projection(mapViews[view], 1);
  const points = truss.clusters.filter(({ id }) => ids.includes(id)).map((c) => at(c.at));
  const mean = (axis: 0 | 1): number => points.reduce((sum, p) => sum + p[axis], 0) / points.length;
  return [mean(0), mean(1)];
};
const side = (letter: 'L' | 'R'): readonly string[] =>
  truss.clusters.filter(({ side: one }) => one === letter).map(({ id }) => id);

describe('the damage map', () => {
  // Where a thing lies from the pilot's seat, by turning one's head: nose left from the left, right from the right,
  // nose left and right side up from above; from ahead the pilot's left is on the right
  it('shows forward, up and the pilot’s sides where a person standing there sees them', () => {
    const seen = (view: MapViewName, d: readonly [number, number, number]) =>
      projection(mapViews[view], 1).turn(d);
    expect(seen('leftSide', [-1, 0, 0])).toEqual([-1, 0]);
    expect(seen('rightSide', [-1, 0, 0])).toEqual([1, 0]);
    expect(seen('plan', [0, 1, 0])).toEqual([0, -1]);
    expect(seen('fromBelow', [0, 1, 0])).toEqual([0, 1]);
    expect(seen('fromAhead', [0, -1, 0])).toEqual([1, 0]);
    for (const view of ['leftSide', 'rightSide', 'fromAhead'] as const)
      expect(seen(view, [0, 0, 1])).toEqual([0, -1]);
  });

  it.each(names)('puts L and R on the side of the page where that side of the truss lies: %s', (view) => {
    const { badges } = damageMap(truss, crowded, mapViews[view], size);
    const [left, right] = [middle(side('L'), view), middle(side('R'), view)];
    const apart = Math.hypot(left[0] - right[0], left[1] - right[1]);
    if (badges.length === 1) {
      expect(apart).toBeLessThan(1e-9);
      expect(badges[0]!.letter).toBe(view === 'leftSide' ? 'L' : 'R');
      return;
    }
    const [l, r] = [badges.find((b) => b.letter === 'L')!, badges.find((b) => b.letter === 'R')!];
    const along = (l.at[0] - r.at[0]) * (left[0] - right[0]) + (l.at[1] - r.at[1]) * (left[1] - right[1]);
    expect(along).toBeGreaterThan(0);
  });

  it.each(names)('lets no two labels overlap, badges included, and says which found no room: %s', (view) => {
    const map = damageMap(truss, crowded, mapViews[view], size);
    const boxes = map.labels.map(({ box }) => box);
    expect(boxes.length + map.leftOut.length).toBeGreaterThan(15);
    for (const [k, a] of boxes.entries()) {
      expect(a.x >= 0 && a.y >= 0 && a.x + a.w <= size.widthMm && a.y + a.h <= size.heightMm).toBe(true);
      for (const b of boxes.slice(k + 1))
        expect(a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h).toBe(false);
    }
    for (const id of map.leftOut)
      expect(map.ops.some((op) => op.kind === 'text' && op.text.includes(id))).toBe(true);
  });

  it('names every tagged member of the near face with its chalk letters', () => {
    const map = damageMap(truss, crowded, mapViews.leftSide, size);
    const labels = new Set(map.labels.map(({ id }) => id));
    const tagged = truss.members.filter(
      ({ id, faces }) =>
        faces.includes('left') && !['lookedAt', 'notLookedAt'].includes(crowded.get(id)!.state),
    );
    expect(tagged.length).toBeGreaterThan(8);
    expect(tagged.filter(({ id }) => !labels.has(id) && !map.leftOut.includes(id))).toEqual([]);
  });

  it('draws a flat view at the scale it says', () => {
    const map = damageMap(truss, new Map(), mapViews.leftSide, size);
    const ratio = Number(/^1 : ([\d.]+)$/.exec(map.scaleWords)![1]);
    const at = new Map(map.labels.map(({ id, box }) => [id, box]));
    expect(at.size).toBeGreaterThan(10);
    // the scale bar is the only filled box whose length is a round number of inches at that scale
    const bar = map.ops.find((op) => op.kind === 'text' && / in · \d+ mm$/.test(op.text));
    const inches = Number(/^(\d+) in/.exec((bar as { text: string }).text)![1]);
    const widths = map.ops.flatMap((op) => {
      const [a, b] = op.kind === 'path' ? op.steps : [];
      return a?.[0] === 'move' && b?.[0] === 'line' ? [b[1] - a[1]] : [];
    });
    const nearest = widths.reduce((best, w) =>
      Math.abs(w - (inches * 25.4) / ratio) < Math.abs(best - (inches * 25.4) / ratio) ? w : best,
    );
    expectNear(nearest, (inches * 25.4) / ratio, {
      abs: 1e-9,
      because: 'the bar is that length by definition',
    });
  });

  it('stands up to a truss of one cluster and to none', () => {
    const bare = { ...truss, members: [], faces: [], bays: [], pairs: [] };
    for (const clusters of [[], truss.clusters.slice(0, 1)])
      for (const name of names)
        expect(() => damageMap({ ...bare, clusters }, new Map(), mapViews[name], size)).not.toThrow();
  });
});
