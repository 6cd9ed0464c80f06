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
   * Gives moves of the same layout, 0 at held freedoms. One step of refinement included.
   */
  readonly solve: (loads: Float64Array, columns?: number) => Float64Array;
  /** K⁻¹ between a member's own two ends: 12 × 12 row-major, i's six freedoms then j's; 0 at held ones. */
  readonly endsInverse: (member: number) => Float64Array;
  /** K · moves, length 6 n, for residuals and reactions (held freedoms included). */
  readonly multiply: (moves: Float64Array) => Float64Array;
  /** Estimate of the condition number. */
  readonly condition: number;
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
  return Float64Array.of(
    du(m.e),
    tj(m.e) - ti(m.e),
    ti(m.z) - tj(m.z),
    ti(m.y) - tj(m.y),
    ti(m.z) + tj(m.z) - k * du(m.y),
    ti(m.y) + tj(m.y) + k * du(m.z),
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
  return b;
};
