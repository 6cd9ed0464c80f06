import type { Truss } from '../truss/result.ts';
import type { BlockMatrix } from './assemble.ts';
import { backsolve } from './backsolve.ts';
import { factorize } from './factor.ts';
import type { ClusterMove } from './result.ts';
import { findFronts } from './symbolic.ts';

/** Share of the diagonal added so that a mechanism can be factored and its shape found. */
const SHIFT = 1e-9;
/** Clusters that move less than this share of the largest movement are not named. */
const NAMED = 1e-3;

/**
 * The free movement of a mechanism: the shape that K resists least, by inverse iteration on K + 1e−9 diag K.
 * @returns clusters that move, most first; the largest movement is 1 (turns in the same measure, rad per in).
 */
export const freeShape = (truss: Truss, k: BlockMatrix, held: Uint8Array): ClusterMove[] => {
  const factored = factorize(k, findFronts(k), held, SHIFT);
  if (factored.kind === 'singular') throw new Error('a shifted stiffness has no positive pivot');
  let shape = startVector(held);
  for (let pass = 0; pass < 3; pass++) {
    shape = backsolve(factored.factor, shape, 1).map((v, at) => (held[at] ? 0 : v));
    const largest = largestMove(shape);
    shape = shape.map((v) => v / largest);
  }
  return truss.clusters
    .map((c, index): ClusterMove => {
      const at = 6 * index;
      return {
        id: c.id,
        moveIn: [shape[at]!, shape[at + 1]!, shape[at + 2]!],
        turnRad: [shape[at + 3]!, shape[at + 4]!, shape[at + 5]!],
      };
    })
    .map((move, index) => ({ move, index, size: Math.round(1e6 * Math.hypot(...move.moveIn)) }))
    .filter(({ size, move }) => size > NAMED * 1e6 || Math.hypot(...move.turnRad) > NAMED)
    .sort((a, b) => b.size - a.size || a.index - b.index)
    .map(({ move }) => move);
};

const largestMove = (shape: Float64Array): number => {
  let moved = 0;
  let turned = 0;
  for (let at = 0; at < shape.length; at += 6) {
    moved = Math.max(moved, Math.hypot(shape[at]!, shape[at + 1]!, shape[at + 2]!));
    turned = Math.max(turned, Math.hypot(shape[at + 3]!, shape[at + 4]!, shape[at + 5]!));
  }
  return moved > 1e-6 * turned ? moved : turned;
};

/** A fixed, patternless start, so that no free movement is missed and the answer is always the same. */
const startVector = (held: Uint8Array): Float64Array => {
  let state = 1;
  return Float64Array.from(held, (h) => {
    state = (state * 16807) % 2147483647;
    return h ? 0 : state / 2147483647 - 0.5;
  });
};
