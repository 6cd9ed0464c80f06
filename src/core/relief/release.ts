import type { ChangedFrame } from '../lockedIn/changedFrame.ts';
import { addEndForces } from '../lockedIn/lockedState.ts';
import { leastEigenvalue, root, solveLower, solveUpper } from '../lockedIn/smallDense.ts';
import { modeMatrix } from '../statics/frame.ts';

/** Below this a cut leaves a mechanism. */
export const MECHANISM = 1e-8;

/**
 * What every possible cut C does, worked out once for all targets from the one factor.
 * Flat lists by frame member: D = L Lᵀ, BᵀL (12 × 6), the root of M = I − LᵀG_CC L, and μ, M's smallest eigenvalue.
 */
export interface Cuts {
  readonly changed: ChangedFrame;
  readonly l: readonly Float64Array[];
  readonly bl: readonly Float64Array[];
  readonly rootM: readonly Float64Array[];
  readonly mu: Float64Array;
}

/**
 * Every cut at once; K⁻¹ is needed only between each tube's own two ends.
 *
 *   G_CC = B K⁻¹Bᵀ,   μ_C = λ_min(I − D^½ G_CC D^½);  μ = 0: the cut makes a mechanism
 *
 * Source: Sherman–Morrison–Woodbury in natural modes, methods section 4.
 */
export const cutsOf = (changed: ChangedFrame): Cuts => {
  const { members } = changed.frame;
  const mu = new Float64Array(members.length);
  const l: Float64Array[] = [];
  const bl: Float64Array[] = [];
  const rootM: Float64Array[] = [];
  const half = new Float64Array(72);
  const scratch = new Float64Array(36);
  members.forEach((member, index) => {
    const lc = root(changed.stiffness(index), 6);
    const b = modeMatrix(member);
    const blc = new Float64Array(72);
    for (let k = 0; k < 6; k++)
      for (let c = 0; c <= k; c++) {
        const f = lc[k * 6 + c]!;
        if (f !== 0) for (let p = 0; p < 12; p++) blc[p * 6 + c]! += b[k * 12 + p]! * f;
      }
    const e = changed.endsInverse(index);
    half.fill(0);
    for (let p = 0; p < 12; p++)
      for (let q = 0; q < 12; q++) {
        const f = e[p * 12 + q]!;
        if (f !== 0) for (let c = 0; c < 6; c++) half[p * 6 + c]! += f * blc[q * 6 + c]!;
      }
    const m = new Float64Array(36);
    for (let r = 0; r < 6; r++)
      for (let c = 0; c <= r; c++) {
        let sum = r === c ? 1 : 0;
        for (let p = 0; p < 12; p++) sum -= blc[p * 6 + r]! * half[p * 6 + c]!;
        m[r * 6 + c] = sum;
        m[c * 6 + r] = sum;
      }
    scratch.set(m);
    mu[index] = leastEigenvalue(scratch, 6);
    l.push(lc);
    bl.push(blc);
    rootM.push(mu[index]! < MECHANISM ? new Float64Array(36) : root(m, 6));
  });
  return { changed, l, bl, rootM, mu };
};

/** One target's coupling to every cut: six solves. */
export interface Coupled {
  readonly target: number;
  /** K⁻¹ B_Tᵀ, six columns. */
  readonly moves: Float64Array;
  /** D e₁, and how much of a unit length error turns into force: D₁₁ − e₁ᵀ D G D e₁. */
  readonly d1: Float64Array;
  readonly clamped: number;
}

export const coupleTo = (cuts: Cuts, target: number): Coupled => {
  const { changed } = cuts;
  const size = changed.frame.held.length;
  const member = changed.frame.members[target]!;
  const loads = new Float64Array(size * 6);
  for (let k = 0; k < 6; k++) {
    const one = new Float64Array(6);
    one[k] = 1;
    addEndForces(member, one, loads, k * size);
  }
  const moves = changed.solve(loads, 6);
  const d = changed.stiffness(target);
  const d1 = Float64Array.from({ length: 6 }, (_, k) => d[k * 6]!);
  const g = couplingBlock(cuts, { moves }, target);
  // g is Lᵀ G; D₁₁ − |…| written as (Lᵀe₁)ᵀ(I − LᵀGL)(Lᵀe₁) would lose nothing, but this is exact enough: r_N ≥ 1e-9.
  let clamped = d[0]!;
  const l = cuts.l[target]!;
  for (let r = 0; r < 6; r++) {
    let gd = 0;
    for (let c = 0; c < 6; c++) gd += g[r * 6 + c]! * d1[c]!;
    clamped -= l[r]! * gd;
  }
  return { target, moves, d1, clamped };
};

/** A = Lᵀ G_CT, 6 × 6 row-major: rows are the cut's scaled modes, columns the target's modes. */
export const couplingBlock = (cuts: Cuts, coupled: Pick<Coupled, 'moves'>, cut: number): Float64Array => {
  const { frame } = cuts.changed;
  const size = frame.held.length;
  const m = frame.members[cut]!;
  const bl = cuts.bl[cut]!;
  const a = new Float64Array(36);
  for (let p = 0; p < 12; p++) {
    const at = p < 6 ? m.i * 6 + p : m.j * 6 + p - 6;
    for (let t = 0; t < 6; t++) {
      const x = coupled.moves[t * size + at]!;
      if (x !== 0) for (let r = 0; r < 6; r++) a[r * 6 + t]! += bl[p * 6 + r]! * x;
    }
  }
  return a;
};

/**
 * Relief of the target's own length error, 0…1.
 *
 *   η_C = 1 − r_N'/r_N = |M^−½ A D e₁|² / (D₁₁ − e₁ᵀD G D e₁)
 *
 * Equals the relief of the axial force and of the whole locked-in energy when only the target has the wrong length.
 * Source: methods section 4.
 */
export const lengthRelief = (cuts: Cuts, coupled: Coupled, cut: number, a: Float64Array): number => {
  if (cut === coupled.target) return 1;
  if (!(coupled.clamped > 0)) return 0;
  const y = new Float64Array(6);
  for (let r = 0; r < 6; r++) for (let t = 0; t < 6; t++) y[r]! += a[r * 6 + t]! * coupled.d1[t]!;
  solveLower(cuts.rootM[cut]!, 6, y);
  const gone = y.reduce((s, v) => s + v * v, 0);
  return Math.min(1, gone / coupled.clamped);
};

/** What a cut lets go of one state of locked-in strain. */
export interface LetGo {
  /** M⁻¹ Lᵀ (v − v⁰) of the cut tube. */
  readonly z: Float64Array;
  /** ½ q (D R)⁻¹ q, in-lbf. */
  readonly releasedInLbf: number;
  /** Kerf opens (+) or closes (−) along the tube, inches. */
  readonly opensIn: number;
}

/**
 * @param strains  elastic deformations v − v⁰ of every frame member, 6 each
 * Source: methods section 4: Δ_C = (D_C R_CC)⁻¹ q_C, released ½ q_Cᵀ(D_C R_CC)⁻¹q_C.
 */
export const letGo = (cuts: Cuts, cut: number, strains: Float64Array): LetGo => {
  const l = cuts.l[cut]!;
  const s = new Float64Array(6);
  for (let r = 0; r < 6; r++) for (let c = 0; c <= r; c++) s[c]! += l[r * 6 + c]! * strains[cut * 6 + r]!;
  const z = s.slice();
  solveLower(cuts.rootM[cut]!, 6, z);
  solveUpper(cuts.rootM[cut]!, 6, z);
  const opens = z.slice();
  solveUpper(l, 6, opens);
  return { z, releasedInLbf: 0.5 * s.reduce((sum, v, k) => sum + v * z[k]!, 0), opensIn: opens[0]! };
};

/** Elastic deformations of the target after the cut: v' − v⁰ = v − v⁰ + Aᵀ z. */
export const strainAfter = (
  coupled: Coupled,
  cut: number,
  a: Float64Array,
  z: Float64Array,
  strains: Float64Array,
): Float64Array => {
  const v = strains.slice(coupled.target * 6, coupled.target * 6 + 6);
  if (cut === coupled.target) return v.fill(0);
  for (let t = 0; t < 6; t++) for (let r = 0; r < 6; r++) v[t]! += a[r * 6 + t]! * z[r]!;
  return v;
};

/** Loads that stand for the cut: Bᵀ L z. Their moves add to those before it. */
export const cutLoads = (cuts: Cuts, cut: number, z: Float64Array, loads: Float64Array, at = 0): void => {
  const m = cuts.changed.frame.members[cut]!;
  const bl = cuts.bl[cut]!;
  for (let p = 0; p < 12; p++) {
    let sum = 0;
    for (let r = 0; r < 6; r++) sum += bl[p * 6 + r]! * z[r]!;
    loads[at + (p < 6 ? m.i * 6 + p : m.j * 6 + p - 6)]! += sum;
  }
};
