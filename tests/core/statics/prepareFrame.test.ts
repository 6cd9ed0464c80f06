import { solve as denseSolve, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { memberStiffness } from '../../../src/core/statics/assemble.ts';
import type { Frame } from '../../../src/core/statics/frame.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { expectNear } from '../../kit/near.ts';
import { ALL, boxTruss, heldAt, POINT } from './boxTruss.ts';

const standing = (answer: ReturnType<typeof prepareFrame>): Frame => {
  if (!isFrame(answer)) expect.fail(`moves freely: ${answer.clusters.map((c) => c.id)}`);
  return answer;
};

/** The same stiffness put together without blocks, held freedoms crossed out, inverted by ml-matrix. */
const denseInverse = (frame: Frame): Matrix => {
  const size = frame.held.length;
  const k = Matrix.zeros(size, size);
  for (const m of frame.members) {
    const ke = memberStiffness(m);
    const at = (d: number): number => (d < 6 ? 6 * m.i + d : 6 * m.j + d - 6);
    for (let r = 0; r < 12; r++)
      for (let c = 0; c < 12; c++) k.set(at(r), at(c), k.get(at(r), at(c)) + ke[12 * r + c]!);
  }
  frame.held.forEach((h, d) => {
    if (!h) return;
    for (let c = 0; c < size; c++) {
      k.set(d, c, 0);
      k.set(c, d, 0);
    }
    k.set(d, d, 1);
  });
  const inverse = denseSolve(k, Matrix.eye(size));
  frame.held.forEach((h, d) => {
    if (h) inverse.set(d, d, 0);
  });
  return inverse;
};

describe('prepareFrame', () => {
  // Independent library: ml-matrix, dense LU.
  it('solves as a dense solver does, for one load and for several at once', () => {
    const frame = standing(
      prepareFrame(boxTruss(5), heldAt({ U0L: ALL, U0R: POINT, L0L: POINT, L0R: ['x', 'z'] })),
    );
    const inverse = denseInverse(frame);
    const size = frame.held.length;
    for (const columns of [1, 3, 7]) {
      const loads = Float64Array.from({ length: size * columns }, (_, at) => ((at * 37) % 101) - 50);
      const moves = frame.solve(loads, columns);
      for (let c = 0; c < columns; c++) {
        const f = loads.subarray(c * size, (c + 1) * size);
        const want = inverse.mmul(Matrix.columnVector(Array.from(f, (v, d) => (frame.held[d] ? 0 : v))));
        const largest = want.max() - want.min();
        for (let d = 0; d < size; d++)
          expectNear(moves[c * size + d]!, want.get(d, 0), {
            abs: 1e-9 * largest,
            because: 'condition about 1e6 times rounding 1e-16, of the largest move',
          });
        const back = frame.multiply(moves.subarray(c * size, (c + 1) * size));
        for (let d = 0; d < size; d++)
          if (!frame.held[d])
            expectNear(back[d]!, f[d]!, { abs: 1e-9, because: 'loads of 50, solved to 1e-12' });
      }
    }
  });

  it("gives the inverse between each member's ends as the full dense inverse has it", () => {
    const frame = standing(prepareFrame(boxTruss(6), heldAt({ U0L: ALL, L0R: POINT, L2L: ['z'] })));
    const inverse = denseInverse(frame);
    const largest = inverse.max();
    frame.members.forEach((m, index) => {
      const got = frame.endsInverse(index);
      const at = (d: number): number => (d < 6 ? 6 * m.i + d : 6 * m.j + d - 6);
      for (let r = 0; r < 12; r++)
        for (let c = 0; c < 12; c++)
          expectNear(got[12 * r + c]!, inverse.get(at(r), at(c)), {
            abs: 1e-10 * largest,
            because: 'condition times rounding, of the largest entry',
          });
    });
  });

  it('names the clusters of a mechanism, most first', () => {
    const answer = prepareFrame(boxTruss(3), heldAt({ U0L: POINT }));
    expect(isFrame(answer)).toBe(false);
    if (isFrame(answer)) return;
    expect(answer.clusters.length).toBeGreaterThan(10);
    expect(answer.clusters.some((c) => c.id === 'U0L')).toBe(true);
  });
});
