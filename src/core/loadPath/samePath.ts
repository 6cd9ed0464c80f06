import type { Frame } from '../statics/frame.ts';

/** How strongly members carry load together, for some members i against every frame member j. */
export interface SamePath {
  /** Σ_jj for every frame member: mean square of its axial force under unit forces everywhere. */
  readonly own: Float64Array;
  /** Σ_ij, one row for each member asked for. */
  readonly rows: readonly Float64Array[];
}

const CHUNK = 48;

/** N = D₁ v₁ of every frame member for one column of moves. */
export const axialForces = (frame: Frame, moves: Float64Array, offset = 0): Float64Array => {
  const out = new Float64Array(frame.members.length);
  frame.members.forEach((m, index) => {
    const a = offset + m.i * 6;
    const b = offset + m.j * 6;
    out[index] =
      m.stiffness[0]! *
      (m.e[0] * (moves[b]! - moves[a]!) +
        m.e[1] * (moves[b + 1]! - moves[a + 1]!) +
        m.e[2] * (moves[b + 2]! - moves[a + 2]!));
  });
  return out;
};

/**
 * Load-case-free coupling: unit forces on every cluster in x, y, z, each balanced by inertia.
 *
 *   Σ = Σ N Nᵀ,   N = axial rows of D B K⁻¹ f
 *
 * @param frame  on supports that do not strain it (3-2-1), so that balanced loads cause no reactions
 * @param balance  makes each column self-balanced, in place
 * @param asked  frame member indices i
 * Source: methods section 5 (correlation of member forces under independent unit loads).
 */
export const samePath = (
  frame: Frame,
  balance: (loads: Float64Array, columns: number) => void,
  asked: readonly number[],
): SamePath => {
  const n = frame.clusters.length;
  const size = 6 * n;
  const own = new Float64Array(frame.members.length);
  const rows = asked.map(() => new Float64Array(frame.members.length));
  for (let start = 0; start < 3 * n; start += CHUNK) {
    const columns = Math.min(CHUNK, 3 * n - start);
    const loads = new Float64Array(size * columns);
    for (let c = 0; c < columns; c++) {
      const freedom = start + c;
      loads[c * size + 6 * Math.floor(freedom / 3) + (freedom % 3)] = 1;
    }
    balance(loads, columns);
    const moves = frame.solve(loads, columns);
    for (let c = 0; c < columns; c++) {
      const axial = axialForces(frame, moves, c * size);
      for (let j = 0; j < axial.length; j++) own[j]! += axial[j]! ** 2;
      asked.forEach((i, row) => {
        const ni = axial[i]!;
        const to = rows[row]!;
        for (let j = 0; j < axial.length; j++) to[j]! += ni * axial[j]!;
      });
    }
  }
  return { own, rows };
};

/**
 * Share of j's force that comes and goes with i's, discounted when j is lightly used at the time.
 *
 *   b_ij = ρ_ij² min(1, use_j/use_i),  ρ_ij = Σ_ij/√(Σ_ii Σ_jj),  use = √Σ/cap
 */
export const sharedLoad = (
  path: SamePath,
  row: number,
  i: number,
  j: number,
  capacity: Float64Array,
): number => {
  const ii = path.own[i]!;
  const jj = path.own[j]!;
  if (!(ii > 0) || !(jj > 0)) return 0;
  const rho2 = Math.min(1, path.rows[row]![j]! ** 2 / (ii * jj));
  const use = Math.sqrt(jj / ii) * (capacity[i]! / capacity[j]!);
  return rho2 * Math.min(1, use);
};
