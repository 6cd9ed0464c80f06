import { dot, unit } from '../base/vec3.ts';
import { deformations, endForces, type Frame, type FrameMember } from '../statics/frame.ts';
import type { Truss } from '../truss/result.ts';
import { bowedTube, type Change, freeModes } from './bowedTube.ts';
import type { ChangedFrame } from './changedFrame.ts';
import type { Misfit } from './misfit.ts';

/** The two readings of a bow: its shortening only, or the full end slopes as well. */
export const readings = ['short', 'full'] as const;
export type Reading = (typeof readings)[number];

/** What one bent tube alone locks in, for one reading: elastic deformations v − v⁰ of every frame member, 6 each. */
export interface SourceState {
  readonly member: number;
  readonly misfit: Misfit;
  /** The tube's own free deformations v⁰. */
  readonly free: Record<Reading, Float64Array>;
  readonly moves: Record<Reading, Float64Array>;
}

/** All bent tubes together, on a frame in which they are as soft as their bows make them. */
export interface LockedState {
  readonly changed: ChangedFrame;
  readonly sources: readonly SourceState[];
}

/** Adds Bᵀ q of a member to a load vector. */
export const addEndForces = (m: FrameMember, q: ArrayLike<number>, loads: Float64Array, at = 0): void => {
  const f = endForces(m, q);
  for (let k = 0; k < 6; k++) {
    loads[at + m.i * 6 + k]! += f[k]!;
    loads[at + m.j * 6 + k]! += f[k + 6]!;
  }
};

/** D v for a 6 × 6 block. */
export const times6 = (d: Float64Array, v: ArrayLike<number>): Float64Array => {
  const q = new Float64Array(6);
  for (let i = 0; i < 6; i++) for (let j = 0; j < 6; j++) q[i]! += d[i * 6 + j]! * v[j]!;
  return q;
};

/** How soft the bent tubes are that the frame has. */
export const bowChanges = (truss: Truss, frame: Frame, misfits: readonly Misfit[]): readonly Change[] => {
  const sectionOf = new Map(truss.members.map((m) => [m.id, m.section]));
  return misfits.flatMap((misfit) => {
    const index = frame.memberIndex.get(misfit.member);
    const section = sectionOf.get(misfit.member);
    if (index === undefined || !section) return [];
    return [bowedTube(index, frame.members[index]!, misfit, section.elasticPsi * section.inertiaIn4)];
  });
};

/**
 * Moves that each bent tube causes on a frame that already has their softness in it, both readings, in one solve of two
 * columns a tube.
 *
 *   K' u = Bᵀ D' v⁰,   q = D'(B u − v⁰)
 *
 * Source: methods section 3 (initial strain); Przemieniecki 1968, ch. 5 (thermal and initial strains).
 */
export const sourcesOn = (changed: ChangedFrame, misfits: readonly Misfit[]): readonly SourceState[] => {
  const { frame } = changed;
  const size = frame.held.length;
  const known = misfits.filter((m) => frame.memberIndex.has(m.member));
  const loads = new Float64Array(size * 2 * known.length);
  const started = known.map((misfit, s) => {
    const member = frame.memberIndex.get(misfit.member)!;
    const m = frame.members[member]!;
    const d = changed.stiffness(member);
    const free = { short: freeModes(m, misfit, 'short'), full: freeModes(m, misfit, 'full') };
    readings.forEach((r, c) => {
      addEndForces(m, times6(d, free[r]), loads, (2 * s + c) * size);
    });
    return { member, misfit, free };
  });
  const moves = changed.solve(loads, 2 * known.length);
  const column = (c: number): Float64Array => moves.slice(c * size, (c + 1) * size);
  return started.map((source, s) => ({
    ...source,
    moves: { short: column(2 * s), full: column(2 * s + 1) },
  }));
};

/** Elastic deformations v − v⁰ of every member of the frame under some of the sources, 6 each. */
export const strainsOf = (frame: Frame, sources: readonly SourceState[], reading: Reading): Float64Array => {
  const out = new Float64Array(frame.members.length * 6);
  if (sources.length === 0) return out;
  const moves = new Float64Array(frame.held.length);
  for (const s of sources) for (let k = 0; k < moves.length; k++) moves[k]! += s.moves[reading][k]!;
  frame.members.forEach((m, index) => {
    out.set(deformations(m, moves), index * 6);
  });
  for (const s of sources) for (let k = 0; k < 6; k++) out[s.member * 6 + k]! -= s.free[reading][k]!;
  return out;
};

/** Largest of the two end moments that a member's forces stand for, in-lbf. */
export const endMoment = (m: FrameMember, q: ArrayLike<number>): number => {
  const f = endForces(m, q);
  const bending = (at: number): number => {
    const along = f[at]! * m.e[0] + f[at + 1]! * m.e[1] + f[at + 2]! * m.e[2];
    return Math.sqrt(Math.max(0, f[at]! ** 2 + f[at + 1]! ** 2 + f[at + 2]! ** 2 - along ** 2));
  };
  return Math.max(bending(3), bending(9));
};

/**
 * Bending moment at the deepest place of a bowed tube, in-lbf.
 *
 *   M(x) = y N − q₃ − q₅(1 − 2x/L), both planes
 *
 * Source: equilibrium of the piece between an end and the bow.
 */
export const bowMoment = (m: FrameMember, q: ArrayLike<number>, misfit: Misfit): number => {
  const t = unit(misfit.y0);
  const s = m.ball === undefined ? 0 : m.ball === 'j' ? 1 : -1;
  const lever = 1 - (2 * misfit.atIn) / m.lengthIn + s;
  const pull = misfit.depthIn * q[0]!;
  return Math.hypot(pull * dot(t, m.z) - q[2]! - q[4]! * lever, pull * dot(t, m.y) - q[3]! - q[5]! * lever);
};
