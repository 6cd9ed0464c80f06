import { OrthographicCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { bearings } from '../../../src/app/scene/badges.ts';
import { drawn } from '../../../src/app/scene/drawn.ts';
import { placeCamera } from '../../../src/app/scene/placeCamera.ts';
import {
  basis,
  blend,
  fitTo,
  isFlat,
  namedViews,
  orbit,
  pan,
  project,
  standsWhere,
  type Turntable,
  unproject,
  zoomAt,
} from '../../../src/app/scene/turntable.ts';
import { sub, type Vec3 } from '../../../src/core/base/vec3.ts';
import { expectNear } from '../../kit/near.ts';
import { boxTruss } from './boxTruss.ts';

const size = { width: 900, height: 640 };
const d = drawn(boxTruss(6));
const stand = (azimuth: number, elevation: number): Turntable => ({
  target: [40, 3, 12],
  azimuth,
  elevation,
  scale: 5.5,
});
const everywhere = [...Array(24).keys()].flatMap((i) =>
  [-90, -60, -20, 0, 20, 60, 90].map((e) => stand((i / 24) * 2 * Math.PI, (e / 180) * Math.PI)),
);
/** Where three's own camera puts a point, which is independent of `project`. */
const byThree = (v: Turntable, p: Vec3) => {
  const camera = new OrthographicCamera();
  placeCamera(camera, v, size, d);
  const n = new Vector3(...p).project(camera);
  return { x: ((n.x + 1) / 2) * size.width, y: ((1 - n.y) / 2) * size.height, z: n.z };
};
const px = { abs: 1e-6, because: 'pixels; doubles over a few hundred inches' };

describe('turntable', () => {
  it('projects as three.js projects, from every direction and in every named view', () => {
    for (const v of [...everywhere, ...Object.values(namedViews).map((n) => stand(n.azimuth, n.elevation))])
      for (const p of [
        [0, 0, 0],
        [10, -14, 20],
        [87, 9, -3],
      ] as const) {
        const ours = project(basis(v), v, size, p);
        const theirs = byThree(v, p);
        expectNear(ours.x, theirs.x, px);
        expectNear(ours.y, theirs.y, px);
      }
  });

  it('keeps the whole truss between the near and the far plane', () => {
    for (const v of everywhere)
      for (const at of boxTruss(6).clusters.map((c) => c.at))
        expect(Math.abs(byThree(v, at).z)).toBeLessThan(1);
  });

  it("puts the badges of the pilot's left and right, forward and up where three.js puts those directions", () => {
    for (const v of everywhere) {
      const from = byThree(v, v.target);
      const b = bearings(basis(v));
      for (const [word, p] of [
        ['left', [40, 2, 12]],
        ['right', [40, 4, 12]],
        ['forward', [39, 3, 12]],
        ['up', [40, 3, 13]],
      ] as const) {
        const to = byThree(v, p);
        expectNear(b[word].x * v.scale, to.x - from.x, px);
        expectNear(b[word].y * v.scale, to.y - from.y, px);
        // nearer to the viewer is a smaller depth
        if (Math.abs(b[word].near) > 1e-6) expect(b[word].near > 0).toBe(to.z < from.z);
      }
    }
  });

  // The pilot looks forward: seen from aft the right hand is on the right, seen from ahead it is on the left.
  it('never swaps left and right: named views show the sides a person standing there sees', () => {
    const seen = (name: keyof typeof namedViews) => bearings(basis(namedViews[name]));
    expectNear(seen('fromAhead').right.x, -1, px);
    expectNear(seen('leftSide').left.near, 1, px);
    expectNear(seen('leftSide').forward.x, -1, px);
    expectNear(seen('rightSide').right.near, 1, px);
    expectNear(seen('rightSide').forward.x, 1, px);
    expectNear(seen('plan').forward.x, -1, px);
    expectNear(seen('plan').right.y, -1, px);
    expectNear(seen('fromBelow').right.y, 1, px);
    expect(seen('threeQuarter').left.near).toBeGreaterThan(0);
    expect(standsWhere(basis(namedViews.leftSide))).toBe('From the left');
    expect(standsWhere(basis(namedViews.fromAhead))).toBe('From ahead');
    expect(standsWhere(basis(namedViews.threeQuarter))).toBe('From ahead on the left, above');
  });

  it('keeps the horizon level: up is never tilted to a side and never upside down', () => {
    for (const v of everywhere) {
      const { right, up, back } = basis(v);
      expectNear(right[2], 0, px);
      expect(up[2]).toBeGreaterThanOrEqual(0);
      // right-handed: right × up points at the viewer
      expectNear(right[0] * up[1] - right[1] * up[0], back[2], px);
    }
  });

  it('is flat in five named views and not in the sixth', () => {
    const flat = Object.entries(namedViews).filter(([, v]) => isFlat(basis(v)));
    expect(flat.map(([name]) => name)).toEqual(['leftSide', 'rightSide', 'plan', 'fromAhead', 'fromBelow']);
  });

  it('zooms about the pointer: what lies under it stays under it', () => {
    for (const v of everywhere) {
      const at = { x: 711, y: 95 };
      const p = unproject(basis(v), v, size, at);
      const nearer = zoomAt(v, size, at, 3);
      const after = project(basis(nearer), nearer, size, p);
      expectNear(after.x, at.x, px);
      expectNear(after.y, at.y, px);
    }
  });

  it('pans by the pixels dragged, and stops at the poles when it is turned', () => {
    const v = stand(1, 0.5);
    const p: Vec3 = [12, 5, 7];
    const [before, after] = [v, pan(v, 30, -12)].map((w) => project(basis(w), w, size, p));
    expectNear(after!.x - before!.x, 30, px);
    expectNear(after!.y - before!.y, -12, px);
    expectNear(orbit(v, 0, 1e6).elevation, Math.PI / 2, px);
    expectNear(orbit(v, 0, -1e6).elevation, -Math.PI / 2, px);
  });

  it('fits every cluster inside the margin, touching it in one direction', () => {
    const margin = { x: 50, top: 40, bottom: 70 };
    const points = boxTruss(6).clusters.map((c) => c.at);
    for (const v of everywhere) {
      const w = fitTo(v, size, points, margin, 1);
      const [xs, ys] = [points, points].map((ps, k) =>
        ps.map((p) => project(basis(w), w, size, p)[k === 0 ? 'x' : 'y']),
      ) as [number[], number[]];
      const free = [Math.min(...xs) - 50, 850 - Math.max(...xs), Math.min(...ys) - 40, 570 - Math.max(...ys)];
      expect(Math.min(...free)).toBeGreaterThan(-1e-6);
      expectNear(Math.min(...free), 0, px);
    }
  });

  it('moves the short way round and arrives exactly', () => {
    const [a, b] = [stand(3, 0), stand(-3, 0.4)];
    expect(blend(a, b, 1)).toBe(b);
    // from 3 to -3 the short way passes π, 0.2832 rad in all
    const half = basis(blend(a, b, 0.5)).back;
    expectNear(half[0], -Math.cos(0.2), { abs: 1e-9, because: 'half way is azimuth π, elevation 0.2' });
    expectNear(sub(half, [0, 0, Math.sin(0.2)])[2], 0, px);
  });
});
