import { describe, expect, it } from 'vitest';
import { drawn, middleOf, pointOn } from '../../../src/app/scene/drawn.ts';
import {
  asHit,
  candidates,
  type LastTap,
  sightAt,
  slackPx,
  tapped,
  touchable,
} from '../../../src/app/scene/pick.ts';
import { basis, fitTo, namedViews, project, type Turntable } from '../../../src/app/scene/turntable.ts';
import { seeded } from '../../../src/core/base/seeded.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxTruss } from './boxTruss.ts';

const size = { width: 1000, height: 700 };
const truss = boxTruss(6);
const d = drawn(truss);
const things = touchable(d);
const none: ReadonlySet<string> = new Set();
const at = (azimuth: number, elevation: number): Turntable =>
  fitTo(
    { target: [0, 0, 0], azimuth, elevation, scale: 1 },
    size,
    truss.clusters.map((c) => c.at),
    { x: 40, top: 40, bottom: 40 },
    1,
  );
const under = (v: Turntable, x: number, y: number, slack: number, ghosted = none, most?: number) =>
  candidates(things, ghosted, sightAt(v, size, { x, y }, d), 1 / v.scale, slack, most);

/** Screen distance from a point to each tube's axis, by walking along it: shares nothing with the pick. */
const walked = (v: Turntable, x: number, y: number): Map<string, number> => {
  const b = basis(v);
  return new Map(
    d.memberIds.map((id, i) => {
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k <= 400; k++) {
        const p = project(b, v, size, pointOn(d, i, k / 400));
        least = Math.min(least, Math.hypot(p.x - x, p.y - y));
      }
      return [id, least - d.radii[i]! * v.scale] as const;
    }),
  );
};

describe('pick', () => {
  const runs = soak(400);
  it(`finds exactly the tubes that pass within the slack, by sampling (seed 11, ${runs} places)`, () => {
    const { share: random } = seeded('11');
    for (let run = 0; run < runs; run++) {
      const v = at(random() * 6.28, (random() - 0.5) * 3);
      const [x, y] = [random() * size.width, random() * size.height];
      const found = new Set(under(v, x, y, slackPx.touch, none, 1000).map(({ id }) => id));
      for (const [id, px] of walked(v, x, y)) {
        // the walk steps by at most a quarter of a percent of a tube, less than one pixel
        const sure = Math.abs(px - slackPx.touch) > 1;
        if (sure && found.has(id) !== px < slackPx.touch) expect.fail(`${id} at ${px} px`);
      }
    }
  });

  it('gives a tube tapped at its middle, among the tubes that cross there, and where along it', () => {
    for (const view of Object.values(namedViews)) {
      const v = at(view.azimuth, view.elevation);
      for (const member of truss.members) {
        const p = project(basis(v), v, size, middleOf(d, member.id)!);
        const ends = [member.from, member.to].map((id) => project(basis(v), v, size, middleOf(d, id)!));
        const hit = under(v, p.x, p.y, slackPx.mouse, none, 50).find(({ id }) => id === member.id);
        expect(hit?.kind).toBe('member');
        const seen = Math.hypot(ends[0]!.x - ends[1]!.x, ends[0]!.y - ends[1]!.y);
        if (seen > 40)
          expectNear(hit!.alongIn!, member.lengthIn / 2, {
            abs: 1e-6,
            because: 'inches; tapped at the middle',
          });
      }
    }
  });

  it('prefers a cluster within its ball to the tubes that meet there', () => {
    const v = at(namedViews.threeQuarter.azimuth, namedViews.threeQuarter.elevation);
    for (const { id } of truss.clusters) {
      const p = project(basis(v), v, size, middleOf(d, id)!);
      expect(under(v, p.x, p.y, slackPx.mouse)[0]).toEqual({ kind: 'cluster', id });
    }
  });

  it('gives the nearer of two tubes that lie behind each other, the farther one next', () => {
    const v = at(namedViews.leftSide.azimuth, 0);
    const p = project(basis(v), v, size, pointOn(d, d.memberIndex.get('U2L-L3L')!, 0.4));
    const ids = under(v, p.x, p.y, slackPx.mouse).map(({ id }) => id);
    expect(ids).toEqual(['U2L-L3L', 'U2R-L3R']);
  });

  it('passes through what is ghosted', () => {
    const v = at(namedViews.leftSide.azimuth, 0);
    const p = project(basis(v), v, size, pointOn(d, d.memberIndex.get('U2L-L3L')!, 0.4));
    const ghosted = new Set(truss.members.filter((m) => m.id.includes('L-')).map((m) => m.id));
    expect(under(v, p.x, p.y, slackPx.mouse, ghosted).map(({ id }) => id)).toEqual(['U2R-L3R']);
  });

  it('walks round what lies under a repeated tap, and starts again elsewhere', () => {
    const found = ['a', 'b', 'c'].map((id) => ({ kind: 'member' as const, id }));
    let last: LastTap | null = null;
    const tap = (x: number) => {
      const { chosen, tap: next } = tapped(found, { x, y: 5 }, last);
      last = next;
      return chosen?.id;
    };
    expect([tap(10), tap(12), tap(9), tap(10), tap(60), tap(60)]).toEqual(['a', 'b', 'c', 'a', 'a', 'b']);
    expect(tapped([], { x: 0, y: 0 }, last).chosen).toBeNull();
  });

  it('says whether a hit adds to the selection', () => {
    expect(asHit({ kind: 'member', id: 'x', alongIn: 3 }, true)).toEqual({
      kind: 'member',
      id: 'x',
      alongIn: 3,
      additive: true,
    });
  });
});
