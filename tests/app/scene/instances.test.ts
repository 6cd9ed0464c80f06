import { Matrix4, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { drawn } from '../../../src/app/scene/drawn.ts';
import { writeBall, writeTube } from '../../../src/app/scene/instances.ts';
import type { Vec3 } from '../../../src/core/base/vec3.ts';
import { expectNear } from '../../kit/near.ts';
import { boxTruss } from './boxTruss.ts';

const single = { abs: 2e-5, because: 'inches; the matrices are single precision over some 120 in' };
const expectPoint = (got: Vector3, want: Vec3) => {
  for (const k of [0, 1, 2] as const) expectNear(got.getComponent(k), want[k], single);
};
const truss = boxTruss(6);
const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
const matrix = (write: (out: Float32Array) => void): Matrix4 => {
  const out = new Float32Array(32);
  write(out);
  return new Matrix4().fromArray(out, 16);
};

describe('instances', () => {
  it('puts the ends of every tube on its clusters', () => {
    const d = drawn(truss);
    truss.members.forEach(({ from, to, section }, i) => {
      const m = matrix((out) => writeTube(out, 1, d.ends, i, d.radii[i]!));
      expectPoint(new Vector3(0, -0.5, 0).applyMatrix4(m), at.get(from)!);
      expectPoint(new Vector3(0, 0.5, 0).applyMatrix4(m), at.get(to)!);
      // a point of the wall is one outside radius from the axis, and the set is right-handed
      const [wall, axis] = [new Vector3(0.6, 0.2, 0.8), new Vector3(0, 0.2, 0)].map((p) => p.applyMatrix4(m));
      expectNear(wall!.distanceTo(axis!), section.odIn / 2, single);
      expect(m.determinant()).toBeGreaterThan(0);
    });
  });

  it('puts a band on the middle third of its tube', () => {
    const d = drawn(truss);
    const m = matrix((out) => writeTube(out, 1, d.ends, 4, 1, 1 / 3, 2 / 3));
    const [a, b] = [at.get(truss.members[4]!.from)!, at.get(truss.members[4]!.to)!];
    const third = (t: number): Vec3 =>
      [0, 1, 2].map((k) => a[k]! + ((b[k]! - a[k]!) * t) / 3) as unknown as Vec3;
    expectPoint(new Vector3(0, -0.5, 0).applyMatrix4(m), third(1));
    expectPoint(new Vector3(0, 0.5, 0).applyMatrix4(m), third(2));
  });

  it('moves clusters by their move times the factor, and balls and tubes with them', () => {
    const moves = new Map<string, Vec3>([['U2L', [0.1, -0.2, 0.05]]]);
    const d = drawn(truss, { name: 'As found', moves, factor: 10 });
    const [x, y, z] = at.get('U2L')!;
    const want: Vec3 = [x + 1, y - 2, z + 0.5];
    const m = matrix((out) => writeBall(out, 1, d.centres, d.clusterIndex.get('U2L')!, 0.5));
    expectPoint(new Vector3(0, 0, 0).applyMatrix4(m), want);
    const tube = truss.members.findIndex((t) => t.to === 'U2L');
    const t = matrix((out) => writeTube(out, 1, d.ends, tube, 0.5));
    expectPoint(new Vector3(0, 0.5, 0).applyMatrix4(t), want);
  });

  it('makes a ball a little larger than the thickest tube that meets in it', () => {
    const d = drawn(truss);
    truss.clusters.forEach(({ id }, i) => {
      const thickest = Math.max(
        ...truss.members.filter((m) => m.from === id || m.to === id).map((m) => m.section.odIn / 2),
      );
      expect(d.balls[i]!).toBeGreaterThan(thickest);
      expect(d.balls[i]!).toBeLessThan(1.5 * thickest);
    });
  });
});
