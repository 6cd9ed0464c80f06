import { distance, type Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';
import { addEndForces } from '../lockedIn/lockedState.ts';
import { misfits } from '../lockedIn/misfit.ts';
import { solveSymmetric } from '../statics/dense.ts';
import type { Frame } from '../statics/frame.ts';
import type { Truss } from '../truss/result.ts';
import type { Truth } from './exercise.ts';

/** Moves smaller than this are left out of the truth: 1/64 in. */
export const LEAST_MOVE_IN = 1 / 64;

/**
 * Where the clusters go when tubes are bent: each bent tube is shorter by what its bow takes up, and pulls its clusters.
 *
 *   K u = Σ Bᵀ D v⁰,  v⁰ = −shortening along the tube
 *
 * The rigid motion is taken out by least squares over `still`, the clusters that are said to have stayed.
 * Assumes: nothing but the shortening moves a cluster; the rest of the truss stays elastic.
 * Source: methods section 3 (initial strain).
 */
export const movedShape = (
  truss: Truss,
  frame: Frame,
  findings: readonly Finding[],
  still: readonly string[],
): Truth['moves'] => {
  const loads = new Float64Array(frame.held.length);
  for (const { member, shortIn } of misfits(truss, findings).misfits) {
    const m = frame.members[frame.memberIndex.get(member) ?? -1];
    if (m) addEndForces(m, [-shortIn * m.stiffness[0]!, 0, 0, 0, 0, 0], loads);
  }
  const u = frame.solve(loads);
  const moves = truss.clusters.map(({ id, at }) => {
    const k = frame.clusterIndex.get(id)! * 6;
    return { id, at, moveIn: [u[k]!, u[k + 1]!, u[k + 2]!] as Vec3 };
  });
  const rigid = rigidMotion(moves.filter(({ id }) => still.includes(id)));
  return moves.flatMap(({ id, at, moveIn }) => {
    const carried = rigid(at);
    const own = moveIn.map((v, d) => Math.round((v - carried[d]!) * 1e5) / 1e5) as unknown as Vec3;
    return Math.hypot(...own) < LEAST_MOVE_IN ? [] : [{ id, moveIn: own }];
  });
};

/** The half of the clusters that lies farthest from a point: where a blow there is least felt. */
export const farHalf = (truss: Truss, from: Vec3): readonly string[] =>
  truss.clusters
    .toSorted((a, b) => distance(b.at, from) - distance(a.at, from) || (a.id < b.id ? -1 : 1))
    .slice(0, Math.max(3, Math.ceil(truss.clusters.length / 2)))
    .map(({ id }) => id);

/** Small rigid motion t + ω × (x − c) that comes closest to the moves given. */
const rigidMotion = (
  given: readonly { readonly at: Vec3; readonly moveIn: Vec3 }[],
): ((at: Vec3) => Vec3) => {
  const n = given.length;
  if (n === 0) return () => [0, 0, 0];
  const mean = (of: (one: (typeof given)[number]) => Vec3): Vec3 =>
    [0, 1, 2].map((d) => given.reduce((s, one) => s + of(one)[d]!, 0) / n) as unknown as Vec3;
  const centre = mean((one) => one.at);
  const shift = mean((one) => one.moveIn);
  const rows = given.flatMap(({ at, moveIn }) => {
    const [x, y, z] = [at[0] - centre[0], at[1] - centre[1], at[2] - centre[2]];
    return [
      { a: [0, z, -y], b: moveIn[0] - shift[0] },
      { a: [-z, 0, x], b: moveIn[1] - shift[1] },
      { a: [y, -x, 0], b: moveIn[2] - shift[2] },
    ];
  });
  const three = [0, 1, 2];
  const normal = three.map((p) => three.map((q) => rows.reduce((s, r) => s + r.a[p]! * r.a[q]!, 0)));
  const most = Math.max(...normal.map((row, p) => row[p]!));
  // clusters in one line leave a turning about it open: it is kept small
  const held = normal.map((row, p) => row.map((v, q) => v + (p === q ? 1e-9 * most + 1e-12 : 0)));
  const w = solveSymmetric(
    held,
    three.map((p) => rows.reduce((s, r) => s + r.a[p]! * r.b, 0)),
  );
  return (at) => {
    const [x, y, z] = [at[0] - centre[0], at[1] - centre[1], at[2] - centre[2]];
    return [
      shift[0] + w[1]! * z - w[2]! * y,
      shift[1] + w[2]! * x - w[0]! * z,
      shift[2] + w[0]! * y - w[1]! * x,
    ];
  };
};
