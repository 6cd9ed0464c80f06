import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, distance, dot, length, sub, unit, type Vec3 } from '../../../src/core/base/vec3.ts';
import {
  type Axis,
  clockDirection,
  clockFace,
  pointAlong,
  surfacePoint,
} from '../../../src/core/truss/place.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { box } from './box.ts';

const because = 'rounding of unit vectors';
const expectVec = (got: Vec3, want: Vec3): void => {
  for (const axis of [0, 1, 2] as const) expectNear(got[axis], want[axis], { abs: 1e-12, because });
};

describe('the clock on a tube', () => {
  // shapes.md: 12 = projection of up; within 30° of vertical 12 = forward; look forward; on cross tubes from right
  // to left, so 3 = forward; on near-vertical tubes down, so 3 = right. Forward is −x, right +y, up +z.
  const cases: readonly (readonly [string, Axis, string | undefined, Vec3, Vec3])[] = [
    [
      'a longeron: 12 up, 3 right',
      [
        [0, -10, 0],
        [20, -10, 0],
      ],
      undefined,
      [0, 0, 1],
      [0, 1, 0],
    ],
    [
      'a cross member: 12 up, 3 forward',
      [
        [20, -10, 0],
        [20, 10, 0],
      ],
      '2',
      [0, 0, 1],
      [-1, 0, 0],
    ],
    [
      'a vertical: 12 forward, 3 right',
      [
        [20, -10, 20],
        [20, -10, 0],
      ],
      '2',
      [-1, 0, 0],
      [0, 1, 0],
    ],
    [
      'a ring diagonal: 12 up and outboard, 3 forward',
      [
        [20, -10, 20],
        [20, 10, 0],
      ],
      '2',
      [0, Math.SQRT1_2, Math.SQRT1_2],
      [-1, 0, 0],
    ],
    [
      'a rising side diagonal: 12 up and forward, 3 right',
      [
        [0, 10, 0],
        [20, 10, 20],
      ],
      undefined,
      [-Math.SQRT1_2, 0, Math.SQRT1_2],
      [0, 1, 0],
    ],
    [
      'a top diagonal: 12 up, 3 right and aft of square',
      [
        [0, -10, 20],
        [20, 10, 20],
      ],
      undefined,
      [0, 0, 1],
      [-Math.SQRT1_2, Math.SQRT1_2, 0],
    ],
  ];
  for (const [title, axis, station, twelve, three] of cases)
    it(title, () => {
      const got = clockFace(axis, station === undefined ? {} : { station });
      expectVec(got.twelve, twelve);
      expectVec(got.three, three);
    });

  it('a tube 29° from vertical is read looking down, one at 31° looking forward', () => {
    const lean = (deg: number): Axis => [
      [0, 0, 0],
      [Math.sin((deg * Math.PI) / 180), 0, Math.cos((deg * Math.PI) / 180)],
    ];
    expect(clockFace(lean(29), {}).twelve[0]).toBeLessThan(-0.5);
    expect(clockFace(lean(31), {}).twelve[2]).toBeGreaterThan(0.5);
  });

  it('is square to the tube and the same whichever end is named first (seed 31)', () => {
    const coordinate = fc.integer({ min: -5000, max: 5000 }).map((n) => n / 100);
    const point = fc.tuple(coordinate, coordinate, coordinate);
    fc.assert(
      fc.property(point, point, fc.boolean(), (a, b, inStation) => {
        fc.pre(distance(a, b) > 1);
        const where = inStation ? { station: '1' } : {};
        const there = clockFace([a, b], where);
        const e = unit(sub(b, a));
        for (const v of [there.twelve, there.three]) {
          expectNear(length(v), 1, { abs: 1e-9, because });
          expectNear(dot(v, e), 0, { abs: 1e-9, because });
        }
        expectNear(dot(there.twelve, there.three), 0, { abs: 1e-9, because });
        // Seen along the look, three is clockwise of twelve: look × twelve = three, so the look is the tube itself.
        expectNear(Math.abs(dot(cross(there.twelve, there.three), e)), 1, { abs: 1e-9, because });
        // A look square to the tube has no first end; nearer than that the side it is seen from is a toss-up.
        fc.pre(Math.abs(e[0]) > 1e-6 && Math.abs(e[1]) > 1e-6 && Math.abs(e[2]) > 1e-6);
        const back = clockFace([b, a], where);
        for (const axis of [0, 1, 2] as const) {
          expectNear(back.twelve[axis], there.twelve[axis], { abs: 1e-9, because });
          expectNear(back.three[axis], there.three[axis], { abs: 1e-9, because });
        }
      }),
      { seed: 31, numRuns: soak(2000) },
    );
  });

  it('6 is opposite 12 and 9 opposite 3', () => {
    const face = clockFace(
      [
        [0, 0, 0],
        [20, 3, 4],
      ],
      {},
    );
    for (const [a, b] of [
      [12, 6],
      [0, 6],
      [3, 9],
      [1.5, 7.5],
    ] as const)
      expectNear(dot(clockDirection(face, a), clockDirection(face, b)), -1, { abs: 1e-12, because });
    expectVec(clockDirection(face, 3), face.three);
  });
});

describe('places along a member', () => {
  const truss = expandTruss(box([]));
  const longeron = truss.members.find((m) => m.id === 'U1L-U2L')!;
  const axis: Axis = [
    [0, -10, 20],
    [20, -10, 20],
  ];

  it('a point is measured from the first end', () => {
    expectVec(pointAlong(axis, 7.5), [7.5, -10, 20]);
  });

  it('a surface point is half a diameter from the axis at its clock position', () => {
    expectVec(surfacePoint(axis, longeron, 7.5, 12), [7.5, -10, 20.375]);
    expectVec(surfacePoint(axis, longeron, 7.5, 3), [7.5, -9.625, 20]);
    expectVec(surfacePoint(axis, longeron, 7.5, 6), [7.5, -10, 19.625]);
  });
});
