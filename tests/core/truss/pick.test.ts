import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, dot, length, scale, sub, unit, type Vec3 } from '../../../src/core/base/vec3.ts';
import {
  clusterPickables,
  memberPickables,
  pick,
  pickMember,
  type Ray,
} from '../../../src/core/truss/pick.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { boxModel } from '../../kit/trusses.ts';
import { box } from './box.ts';

const none = { fixedIn: 0, perIn: 0 };
const toward = (origin: Vec3, target: Vec3): Ray => ({ origin, direction: unit(sub(target, origin)) });

/** Distance from a point to a member's surface. */
const outside = (p: Vec3, a: Vec3, b: Vec3, r: number): number => {
  const ab = sub(b, a);
  const s = Math.min(1, Math.max(0, dot(sub(p, a), ab) / dot(ab, ab)));
  return length(sub(p, add(a, scale(ab, s)))) - r;
};

/** What a ray meets first, found by walking along it as far as nothing can be nearer (sphere tracing, J. Hart 1996). */
const walk = (truss: Truss, ray: Ray): { id: string; t: number } | null => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  for (let t = 0, n = 0; t < 1000 && n < 4000; n++) {
    const p = add(ray.origin, scale(ray.direction, t));
    const near = truss.members
      .map((m) => ({ id: m.id, gap: outside(p, at.get(m.from)!, at.get(m.to)!, m.section.odIn / 2) }))
      .reduce((a, b) => (b.gap < a.gap ? b : a));
    if (near.gap < 1e-7) return { id: near.id, t };
    t += near.gap;
  }
  return null;
};

describe('picking', () => {
  const truss = expandTruss(box([{ at: '1', left: 'rising' }], {}, 1));

  it('a ray straight at a longeron says which and how far along', () => {
    const got = pickMember({ origin: [5, -100, 20], direction: [0, 1, 0] }, truss, 0)!;
    expect(got.id).toBe('U1L-U2L');
    expectNear(got.alongIn, 5, { abs: 1e-9, because: 'rounding' });
    expectNear(got.distanceIn, 90, { abs: 1e-9, because: 'rounding' });
  });

  it('the near one of two in line is taken, and the far one once the near one is faint', () => {
    const parts = memberPickables(truss);
    const ray: Ray = { origin: [5, -100, 20], direction: [0, 1, 0] };
    expect(pick(ray, parts, none)!.id).toBe('U1L-U2L');
    expect(pick(ray, parts, none, new Set(['U1L-U2L']))!.id).toBe('U1R-U2R');
  });

  it('a near miss counts within the slack, not beyond it, and never before a true hit', () => {
    // 3/4 tube: surface 0.375 from the axis at z 20; the ray passes 0.125 above it.
    const ray: Ray = { origin: [5, -100, 20.5], direction: [0, 1, 0] };
    expect(pickMember(ray, truss, 0.12)).toBeNull();
    expect(pickMember(ray, truss, 0.13)!.id).toBe('U1L-U2L');
    const parts = memberPickables(truss);
    // A slack that grows with distance is an angle: the far longeron is missed by the smaller one.
    const angle = { fixedIn: 0, perIn: 0.13 / 90 };
    expect(pick(ray, parts, angle)!.id).toBe('U1R-U2R');
    expect(pick(ray, parts, angle, new Set(['U1R-U2R']))!.id).toBe('U1L-U2L');
    // Passes the near longeron by 0.1 and meets the far one on its axis.
    const both = toward([5, -20, 20 + 0.475 * 1.5], [5, 10, 20]);
    expect(pick(both, parts, { fixedIn: 1, perIn: 0 })!.id).toBe('U1R-U2R');
  });

  it('nothing behind the eye is touched', () => {
    expect(pickMember({ origin: [5, -100, 20], direction: [0, -1, 0] }, truss, 1)).toBeNull();
  });

  it('clusters are picked as balls', () => {
    const balls = clusterPickables(truss, 0.6);
    expect(pick({ origin: [0.5, -100, 20], direction: [0, 1, 0] }, balls, none)!.id).toBe('U1L');
    expect(pick({ origin: [0.7, -100, 20], direction: [0, 1, 0] }, balls, none)).toBeNull();
  });

  it('a moved shape is picked where it is shown', () => {
    const moved = new Map<string, Vec3>([['U1L', [0, -10, 30]]]);
    const parts = memberPickables(truss, moved);
    expect(pick({ origin: [10, -100, 25], direction: [0, 1, 0] }, parts, none)!.id).toBe('U1L-U2L');
  });

  it('takes what walking along the ray meets first (seed 51)', { timeout: 60_000 }, () => {
    const place = fc.double({ min: -1, max: 1, noNaN: true });
    const point = fc.tuple(place, place, place);
    let hits = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), point, point, (seed, from, to) => {
        fc.pre(length(from) > 0.1);
        const t = expandTruss(boxModel(seed, { bracing: 'crossed' }));
        const ray = toward(scale(unit(from), 150), [40 + 40 * to[0], 12 * to[1], 14 * to[2]]);
        const want = walk(t, ray);
        const got = pick(ray, memberPickables(t), none);
        // A ray that grazes by less than the walk's own 1e-7 may go either way: none of these seeds does.
        expect(got === null).toBe(want === null);
        if (!want || !got) return;
        hits++;
        if (got.id !== want.id) {
          // Where tubes meet in a cluster two surfaces can be entered at the same depth.
          const at = new Map(t.clusters.map((c) => [c.id, c.at]));
          const m = t.members.find((x) => x.id === got.id)!;
          const p = add(ray.origin, scale(ray.direction, want.t));
          const gap = outside(p, at.get(m.from)!, at.get(m.to)!, m.section.odIn / 2);
          expectNear(gap, 0, { abs: 1e-5, because: 'both surfaces pass through the point' });
        }
      }),
      { seed: 51, numRuns: soak(2000) },
    );
    expect(hits).toBeGreaterThan(10);
  });
});
