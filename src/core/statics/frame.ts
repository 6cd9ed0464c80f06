import type { Vec3 } from '../base/vec3.ts';

/**
 * A member as the frame sees it, in natural modes (methods: Argyris; Przemieniecki 1968 ch. 4–5).
 * Order of the six modes: stretch, twist, symmetric bending about z and y, antisymmetric bending about z and y.
 */
export interface FrameMember {
  readonly id: string;
  /** Index of the clusters in `Frame.clusters`. */
  readonly i: number;
  readonly j: number;
  readonly lengthIn: number;
  /** Unit vector i → j, and two more that make a right-handed set. */
  readonly e: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  /** Stiffness of each mode; 0 for a mode that an end release takes out. */
  readonly stiffness: Float64Array;
  readonly weightLbPerIn: number;
  /**
   * The end that a ball lets turn, when just one does. Modes 5 and 6 are then the bending of the other end
   * alone (v5 ± v3 and v6 ± v4, D = 3EI/4L) and modes 2 to 4 have no stiffness.
   */
  readonly ball?: 'i' | 'j';
}

/** A factored frame on its supports. Freedoms: cluster index × 6 + (x, y, z, rx, ry, rz). */
export interface Frame {
  readonly heldAs: string;
  readonly clusters: readonly string[];
  readonly members: readonly FrameMember[];
  readonly memberIndex: ReadonlyMap<string, number>;
  readonly clusterIndex: ReadonlyMap<string, number>;
  /** 1 where a freedom is held (or taken out because no tube holds it), length 6 n. */
  readonly held: Uint8Array;
  /**
   * Moves under loads: `columns` load vectors of length 6 n one after the other; entries at held freedoms are ignored.
   * Gives moves of the same layout, 0 at held freedoms. One step of refinement where the residual asks for it.
   */
  readonly solve: (loads: Float64Array, columns?: number) => Float64Array;
  /** K⁻¹ between a member's own two ends: 12 × 12 row-major, i's six freedoms then j's; 0 at held ones. */
  readonly endsInverse: (member: number) => Float64Array;
  /** K · moves, length 6 n, for residuals and reactions (held freedoms included). */
  readonly multiply: (moves: Float64Array) => Float64Array;
  /** max |K| · max |K⁻¹| over the free freedoms. */
  readonly condition: number;
  /** Turning about an axis, at a cluster, that no tube holds; taken out, so that it is always 0. */
  readonly loose: readonly { readonly cluster: number; readonly axis: Vec3 }[];
}

/** The six deformations v = B u of a member, from moves of the whole frame (`offset` = column start). */
export const deformations = (m: FrameMember, moves: Float64Array, offset = 0): Float64Array => {
  const a = offset + m.i * 6;
  const b = offset + m.j * 6;
  const at = (base: number, axis: Vec3): number =>
    axis[0] * moves[base]! + axis[1] * moves[base + 1]! + axis[2] * moves[base + 2]!;
  const du = (axis: Vec3): number => at(b, axis) - at(a, axis);
  const ti = (axis: Vec3): number => at(a + 3, axis);
  const tj = (axis: Vec3): number => at(b + 3, axis);
  const k = 2 / m.lengthIn;
  const v3 = ti(m.z) - tj(m.z);
  const v4 = ti(m.y) - tj(m.y);
  const s = ballSign(m);
  return Float64Array.of(
    du(m.e),
    tj(m.e) - ti(m.e),
    v3,
    v4,
    ti(m.z) + tj(m.z) - k * du(m.y) + s * v3,
    ti(m.y) + tj(m.y) + k * du(m.z) + s * v4,
  );
};

/** The 6 × 12 matrix B of a member, row-major: columns are i's six freedoms, then j's. */
export const modeMatrix = (m: FrameMember): Float64Array => {
  const b = new Float64Array(72);
  const put = (row: number, block: number, axis: Vec3, s: number): void => {
    for (let c = 0; c < 3; c++) b[row * 12 + block * 3 + c]! += s * axis[c]!;
  };
  const k = 2 / m.lengthIn;
  put(0, 0, m.e, -1);
  put(0, 2, m.e, 1);
  put(1, 1, m.e, -1);
  put(1, 3, m.e, 1);
  put(2, 1, m.z, 1);
  put(2, 3, m.z, -1);
  put(3, 1, m.y, 1);
  put(3, 3, m.y, -1);
  put(4, 1, m.z, 1);
  put(4, 3, m.z, 1);
  put(4, 0, m.y, k);
  put(4, 2, m.y, -k);
  put(5, 1, m.y, 1);
  put(5, 3, m.y, 1);
  put(5, 0, m.z, -k);
  put(5, 2, m.z, k);
  const s = ballSign(m);
  if (s !== 0) for (let at = 0; at < 24; at++) b[48 + at]! += s * b[24 + at]!;
  return b;
};

const ballSign = (m: FrameMember): number => (m.ball === undefined ? 0 : m.ball === 'j' ? 1 : -1);

/** Forces and moments that the clusters put on the member's ends, Bᵀ q: at i force, moment, then at j. lbf, in-lbf. */
export const endForces = (m: FrameMember, q: ArrayLike<number>): Float64Array => {
  const b = modeMatrix(m);
  const f = new Float64Array(12);
  for (let mode = 0; mode < 6; mode++) for (let c = 0; c < 12; c++) f[c]! += b[mode * 12 + c]! * q[mode]!;
  return f;
};
