import { add, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import { symmetricEigen } from '../statics/dense.ts';
import { deformations, type Frame, modeMatrix } from '../statics/frame.ts';

/** A frame with some tubes open: their ends let go of each other. */
export interface OpenFrame {
  readonly frame: Frame;
  readonly open: ReadonlySet<string>;
  /** Moves under one load vector, as `Frame.solve`. */
  readonly solve: (loads: Float64Array) => Float64Array;
}

/** Below this the frame without the open tubes moves freely: share of their stiffness that the rest still gives. */
const LEAST_LEFT = 1e-7;

/**
 * The frame without the open tubes, from its one factor.
 *
 *   K′ = K − Bᵀ D B,   u′ = u + X (D⁻¹ − B X)⁻¹ B u,   X = K⁻¹ Bᵀ
 *
 * @returns undefined when it moves freely without them
 * Source: Sherman & Morrison 1950, Woodbury 1950.
 */
export const openFrame = (frame: Frame, open: Iterable<string>): OpenFrame | undefined => {
  const ids = new Set([...open].filter((id) => frame.memberIndex.has(id)));
  const size = frame.held.length;
  const modes = [...ids].flatMap((id) => {
    const m = frame.members[frame.memberIndex.get(id)!]!;
    return [0, 1, 2, 3, 4, 5].flatMap((mode) => (m.stiffness[mode]! > 0 ? [{ m, mode }] : []));
  });
  if (modes.length === 0) return { frame, open: ids, solve: (loads) => frame.solve(loads) };
  const columns = modes.map(({ m, mode }) => {
    const b = modeMatrix(m);
    const load = new Float64Array(size);
    for (let k = 0; k < 12; k++) load[k < 6 ? m.i * 6 + k : m.j * 6 + k - 6]! += b[mode * 12 + k]!;
    return frame.solve(load);
  });
  // scaled by √D, so that every mode counts alike: I − √D B X √D
  const root = modes.map(({ m, mode }) => Math.sqrt(m.stiffness[mode]!));
  const left = modes.map(({ m, mode }, i) =>
    columns.map((x, j) => (i === j ? 1 : 0) - root[i]! * deformations(m, x)[mode]! * root[j]!),
  );
  const { values, vectors } = symmetricEigen(left.map((row, i) => row.map((v, j) => (v + left[j]![i]!) / 2)));
  if (values[0]! < LEAST_LEFT) return undefined;
  const solve = (loads: Float64Array): Float64Array => {
    const moves = Float64Array.from(frame.solve(loads));
    const opens = modes.map(({ m, mode }, i) => root[i]! * deformations(m, moves)[mode]!);
    const push = modes.map(() => 0);
    vectors.forEach((v, k) => {
      const along = v.reduce((sum, e, i) => sum + e * opens[i]!, 0) / values[k]!;
      v.forEach((e, i) => {
        push[i] = push[i]! + e * along;
      });
    });
    columns.forEach((x, j) => {
      const by = root[j]! * push[j]!;
      for (let i = 0; i < size; i++) moves[i] = moves[i]! + by * x[i]!;
    });
    return moves;
  };
  return { frame, open: ids, solve };
};

/** Moves of the whole frame per lbf that pushes two clusters apart along the line between them. */
export const pushApart = (
  { frame, solve }: OpenFrame,
  at: (id: string) => Vec3,
  from: string,
  to: string,
): Float64Array => {
  const loads = new Float64Array(frame.held.length);
  const line = unit(sub(at(to), at(from)));
  for (let k = 0; k < 3; k++) {
    loads[frame.clusterIndex.get(from)! * 6 + k]! -= line[k]!;
    loads[frame.clusterIndex.get(to)! * 6 + k]! += line[k]!;
  }
  return solve(loads);
};

/** How much longer a distance gets under moves of the whole frame: small moves, along the line as drawn. */
export const lengthens = (
  frame: Frame,
  moves: Float64Array,
  at: (id: string) => Vec3,
  from: string,
  to: string,
): number => {
  const move = (id: string): Vec3 => {
    const k = frame.clusterIndex.get(id);
    return k === undefined ? [0, 0, 0] : [moves[k * 6]!, moves[k * 6 + 1]!, moves[k * 6 + 2]!];
  };
  return dot(unit(sub(at(to), at(from))), add(move(to), scale(move(from), -1)));
};
