import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/base/vec3.ts';
import type { ReadingEnd } from '../../../src/core/job/jobSchema.ts';
import { footOf, spanBetween } from '../../../src/core/trammel/surface.ts';
import { surfaceTarget } from '../../../src/core/trammel/targets.ts';
import { expectNear } from '../../kit/near.ts';
import { box } from './kit.ts';

const exact = { abs: 1e-9, because: 'arithmetic in doubles' };
describe('readings between marks', () => {
  const { truss, model } = box(2);
  const member = (id: string) => truss.members.find((m) => m.id === id);
  const at = (id: string): Vec3 => truss.clusters.find((c) => c.id === id)!.at;
  const surface = (cluster: string, on: string, clock: number, alongIn = 0): ReadingEnd => ({
    cluster,
    mark: 'surface',
    on,
    clock,
    alongIn,
  });

  it('equals the axis distance between equal tubes marked on the same side', () => {
    // methods.md section 6: parallel normals and equal radii.
    const ends = [surface('U1L', 'U1L-U1R', 12), surface('U2L', 'U2L-U2R', 12)] as const;
    const d = Math.sqrt(24 ** 2 + 0.5 ** 2 + 0.25 ** 2);
    expectNear(surfaceTarget(truss, model, ends)!.value, d, exact);
  });

  it('loses both radii between near edges and gains them between far edges of two parallel tubes', () => {
    // Uprights 16 apart at the foot lean; cross tubes U1 and U2 are parallel, so outside-to-outside less two radii.
    const edge = (mark: 'nearEdge' | 'farEdge', k: number): ReadingEnd => ({
      cluster: `U${k}R`,
      mark,
      on: `U${k}L-U${k}R`,
      clock: 12,
    });
    const square = Math.hypot(24, 0.5);
    for (const [mark, sign] of [
      ['nearEdge', -1],
      ['farEdge', 1],
    ] as const) {
      const got = surfaceTarget(truss, model, [edge(mark, 1), edge(mark, 2)])!.value;
      expectNear(got, Math.hypot(square + sign * 0.75, 0.25), exact);
    }
  });

  it('moves a mark along its tube by the distance given', () => {
    // Along U1L-U2L from U1L: the rest of the longeron.
    const f = footOf({ cluster: 'U1L', mark: 'axis', on: 'U1L-U2L', alongIn: 5 }, member);
    const g = footOf({ cluster: 'U2L', mark: 'axis' }, member);
    if ('missing' in f || 'missing' in g) return expect.fail('a fact is missing');
    expectNear(spanBetween(f, g, at).lengthIn, Math.sqrt(24 ** 2 + 0.5 ** 2 + 0.25 ** 2) - 5, exact);
  });

  it('has the slope that differences show, for marks off the axis and along tubes', () => {
    const p = footOf(surface('U1L', 'U1L-U2L', 12, 3), member);
    const q = footOf(surface('L3R', 'L2R-L3R', 3, 4), member);
    if ('missing' in p || 'missing' in q) return expect.fail('a fact is missing');
    const { gradient } = spanBetween(p, q, at);
    const h = 1e-5;
    for (const [id, g] of gradient)
      for (let k = 0; k < 3; k++) {
        const s = [-h, h].map((step) => {
          const moved = at(id).map((x, axis) => (axis === k ? x + step : x)) as unknown as Vec3;
          return spanBetween(p, q, (other) => (other === id ? moved : at(other))).lengthIn;
        });
        const slope = (s[1]! - s[0]!) / (2 * h);
        expectNear(g[k]!, slope, {
          abs: 0.02,
          because: 'a turn of the tube about itself is left out: r/L = 0.018',
        });
      }
  });
});
