import { capacityLbf, plasticMoment } from '../statics/capacity.ts';
import type { FrameMember } from '../statics/frame.ts';
import { deformations } from '../statics/frame.ts';
import type { Member } from '../truss/result.ts';
import { goneTube } from './bowedTube.ts';
import { changedFrame } from './changedFrame.ts';
import { addEndForces, type LockedState, type Reading, strainsOf, times6 } from './lockedState.ts';
import type { Misfit } from './misfit.ts';

/** Passes of capping; each takes out the tubes that the last one pushed over. */
const PASSES = 5;

/**
 * Largest axial force that a bowed tube carries before a plastic hinge forms at its bow:
 *
 *   N e = M_p cos(πN/2N_p)
 *
 * Assumes: thin round tube, ends that do not turn back the bow.
 * Source: methods section 3 (full plastic interaction of a thin tube).
 */
export const bowedCap = (member: Member, depthIn: number): number => {
  const np = member.section.yieldPsi * member.section.areaIn2;
  const mp = plasticMoment(member.section);
  let low = 0;
  let high = np;
  for (let k = 0; k < 60; k++) {
    const n = (low + high) / 2;
    if (n * depthIn < mp * Math.cos((Math.PI * n) / (2 * np))) low = n;
    else high = n;
  }
  return low;
};

/** Forces q in the six modes of every frame member, and the tubes that ran into their cap. */
export interface Settled {
  readonly forces: Float64Array;
  readonly capped: ReadonlySet<number>;
}

const axialOf = (forces: Float64Array, index: number): number => forces[index * 6]!;

/**
 * Locked-in forces of one reading, no tube above what it can carry: one that is goes out and its cap is put at its ends,
 * at most five times over.
 *
 * Source: methods section 3, caps.
 */
export const settle = (
  state: LockedState,
  reading: Reading,
  members: ReadonlyMap<string, Member>,
): Settled => {
  const { frame } = state.changed;
  const misfitOf = new Map<number, Misfit>(state.sources.map((s) => [s.member, s.misfit]));
  const limit = (m: FrameMember, index: number, axial: number): number => {
    const member = members.get(m.id);
    if (!member) return Number.POSITIVE_INFINITY;
    const misfit = misfitOf.get(index);
    if (misfit) return bowedCap(member, misfit.depthIn);
    return capacityLbf(member, axial > 0 ? 'tension' : 'compression');
  };
  let forces = forcesOf(state, strainsOf(frame, state.sources, reading));
  let capped = new Map<number, number>();
  for (let pass = 0; pass < PASSES; pass++) {
    const over = frame.members.flatMap((m, index) => {
      const n = axialOf(forces, index);
      const cap = limit(m, index, n);
      return !capped.has(index) && Math.abs(n) > cap ? [[index, Math.sign(n) * cap] as const] : [];
    });
    if (over.length === 0) break;
    const more = new Map([...capped, ...over]);
    const next = resolve(state, reading, more);
    capped = more;
    if (!next) break;
    forces = next;
  }
  return { forces, capped: new Set(capped.keys()) };
};

const forcesOf = (state: LockedState, strains: Float64Array): Float64Array => {
  const out = new Float64Array(strains.length);
  for (let index = 0; index * 6 < strains.length; index++)
    out.set(times6(state.changed.stiffness(index), strains.subarray(index * 6, index * 6 + 6)), index * 6);
  return out;
};

const resolve = (
  state: LockedState,
  reading: Reading,
  capped: ReadonlyMap<number, number>,
): Float64Array | null => {
  const { frame } = state.changed;
  const soft = state.sources.filter((s) => !capped.has(s.member));
  const changed = changedFrame(frame, [
    ...state.changed.changes,
    ...[...capped.keys()].map((index) => goneTube(index, state.changed.stiffness(index))),
  ]);
  if (!changed) return null;
  const loads = new Float64Array(frame.held.length);
  for (const s of soft)
    addEndForces(frame.members[s.member]!, times6(changed.stiffness(s.member), s.free[reading]), loads);
  for (const [index, force] of capped) addEndForces(frame.members[index]!, [-force, 0, 0, 0, 0, 0], loads);
  const moves = changed.solve(loads);
  const strains = new Float64Array(frame.members.length * 6);
  frame.members.forEach((m, index) => {
    strains.set(deformations(m, moves), index * 6);
  });
  for (const s of soft) for (let k = 0; k < 6; k++) strains[s.member * 6 + k]! -= s.free[reading][k]!;
  const forces = forcesOf({ ...state, changed }, strains);
  for (const [index, force] of capped) {
    forces.fill(0, index * 6, index * 6 + 6);
    forces[index * 6] = force;
  }
  return forces;
};
