import { describe, expect, it } from 'vitest';
import { add, dot, length, scale, sub, type Vec3 } from '../../../src/core/base/vec3.ts';
import { copesAt } from '../../../src/core/splice/copes.ts';
import { benchTube, copeAt } from '../../../src/core/splice/fishmouth.ts';
import type { CopeTube } from '../../../src/core/splice/result.ts';
import { clockDirection, clockFace } from '../../../src/core/truss/place.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { seededRandom } from '../../kit/trusses.ts';
import { emptyJob } from '../../present/made.ts';

const BISECTED = { abs: 1e-9, because: 'bisection to 2⁻⁴⁰ of a few inches' };

/** How far outside a tube a point stands, from the tube's own axis. */
const outside = (p: Vec3, tube: CopeTube): number => {
  const w = sub(p, tube.offset);
  return length(sub(w, scale(tube.direction, dot(w, tube.direction)))) - tube.odIn / 2;
};

/** Ray marching from far out along the branch, then bisection: the first place inside any of the tubes. */
const marched = (tubes: readonly CopeTube[], r: number, clock: number, far = 12): number => {
  const phi = (clock / 6) * Math.PI;
  const at = (z: number): Vec3 => [z, r * Math.cos(phi), r * Math.sin(phi)];
  const d = (z: number): number => Math.min(...tubes.map((t) => outside(at(z), t)));
  let z = far;
  for (let n = 0; n < 100_000 && d(z) > 1e-3 && z > -far; n++) z -= Math.max(5e-4, d(z) * 0.5);
  if (z <= -far) return Number.NaN;
  let [low, high] = [z - 0.02, z + 0.02];
  if (d(low) > 0) return Number.NaN;
  for (let n = 0; n < 45; n++) {
    const mid = (low + high) / 2;
    if (d(mid) > 0) high = mid;
    else low = mid;
  }
  return (low + high) / 2;
};

describe('the cope of a tube', () => {
  it('meets the solid of one main tube at any angle and offset where marching along the line does (seed 3)', () => {
    const random = seededRandom(3);
    for (let n = 0; n < 30; n++) {
      const main = 0.5 + random();
      const branch = main * (0.4 + 0.4 * random());
      const angle = (0.25 + 0.5 * random()) * Math.PI;
      const offset = (random() - 0.5) * (main - branch) * 0.9;
      const tube = benchTube('main', main, angle, offset, 12 * random());
      for (const clock of [0, 1.3, 3, 4.4, 6, 8.1, 9, 11.2])
        expectNear(copeAt([tube], branch / 2, clock), marched([tube], branch / 2, clock), BISECTED);
    }
  });

  it('meets two tubes at once at the outer of the two', () => {
    const tubes = [
      benchTube('main', 1, (50 / 180) * Math.PI, 0, 12),
      benchTube('next', 0.875, (70 / 180) * Math.PI, 0.05, 4),
    ];
    for (let clock = 0; clock < 12; clock += 0.25)
      expectNear(copeAt(tubes, 0.3, clock), marched(tubes, 0.3, clock), BISECTED);
  });

  it('follows the published closed form for axes that meet', () => {
    // methods.md §9: z = [√(R² − (o + r sin φ)²) + r cos φ cos θ]/sin θ
    const [R, r, theta, o] = [0.5, 0.375, (40 / 180) * Math.PI, 0.06];
    const tube = benchTube('main', 2 * R, theta, o, 12);
    for (let clock = 0; clock < 12; clock++) {
      const phi = (clock / 6) * Math.PI;
      const z =
        (Math.sqrt(R * R - (o + r * Math.sin(phi)) ** 2) + r * Math.cos(phi) * Math.cos(theta)) /
        Math.sin(theta);
      expectNear(copeAt([tube], r, clock), z, { abs: 1e-12, because: 'the same sum in vectors' });
    }
  });

  it('of equal tubes that meet square is two planes at 45°', () => {
    // Steinmetz: |x| = |y| on both cylinders, so z = r |cos φ|… with φ from the main tube's axis
    const tube = benchTube('main', 1, Math.PI / 2);
    for (let clock = 0; clock < 12; clock += 0.5)
      expectNear(copeAt([tube], 0.5, clock), 0.5 * Math.abs(Math.cos((clock / 6) * Math.PI)), {
        abs: 1e-7,
        because: 'the root of a difference of 1e-16 at the touching lines',
      });
  });

  it('closes on itself', () => {
    const tubes = [benchTube('a', 1, 0.8, 0, 2), benchTube('b', 0.75, 1.2, 0, 7)];
    expectNear(copeAt(tubes, 0.3, 12), copeAt(tubes, 0.3, 0), { abs: 1e-12, because: 'sine of a full turn' });
  });

  it('says where a branch stands wider than what it meets', () => {
    expect(copeAt([benchTube('small', 0.5, Math.PI / 2)], 0.5, 3)).toBeNaN();
  });
});

describe('copes from the truss', () => {
  const truss = expandTruss(emptyJob().model);
  const at = (id: string): Vec3 => truss.clusters.find((c) => c.id === id)!.at;

  it('stand on the surface of a tube that is really there, in the aircraft’s own frame', () => {
    let checked = 0;
    for (const member of truss.members)
      for (const cluster of [member.from, member.to]) {
        const against = copesAt(truss, member, cluster);
        if (!against) continue;
        const other = cluster === member.from ? member.to : member.from;
        const u = scale(sub(at(other), at(cluster)), 1 / member.lengthIn);
        const face = clockFace([at(member.from), at(member.to)], member);
        const r = member.section.odIn / 2;
        for (const clock of [0, 2.5, 5, 7.5, 10]) {
          const z = copeAt(against, r, clock);
          if (Number.isNaN(z)) continue;
          const p = add(add(at(cluster), scale(u, z)), scale(clockDirection(face, clock), r));
          const gaps = against.map(({ member: id }) => {
            const m = truss.members.find((t) => t.id === id)!;
            const e = scale(sub(at(m.to), at(m.from)), 1 / m.lengthIn);
            const w = sub(p, at(cluster));
            return Math.abs(length(sub(w, scale(e, dot(w, e)))) - m.section.odIn / 2);
          });
          expectNear(Math.min(...gaps), 0, {
            abs: 1e-9,
            because: 'coordinates of 200 in in double precision',
          });
          checked++;
        }
      }
    expect(checked).toBeGreaterThan(500);
  });

  it('give a diagonal the longeron first, and a longeron that runs through none', () => {
    const diagonal = truss.members.find((m) => m.role === 'sideDiagonal')!;
    const [main] = copesAt(truss, diagonal, diagonal.from)!;
    expect(truss.members.find((m) => m.id === main!.member)!.role).toMatch(/Longeron$/);
    const inner = truss.members.find((m) => m.role === 'upperLongeron' && m.bay === '3')!;
    expect(copesAt(truss, inner, inner.to)).toBeNull();
  });
});
