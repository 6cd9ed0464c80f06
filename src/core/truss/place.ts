import { add, cross, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Member } from './result.ts';

/** A member's axis: its `from` cluster, then its `to` cluster. */
export type Axis = readonly [Vec3, Vec3];

/** The point on a member's axis `alongIn` from the end it is measured from; beyond the ends it runs on straight. */
export const pointAlong = ([start, end]: Axis, alongIn: number): Vec3 =>
  add(start, scale(unit(sub(end, start)), alongIn));

/** Where 12 and 3 o'clock are on a tube, as directions square to it. */
export interface ClockFace {
  readonly twelve: Vec3;
  readonly three: Vec3;
}

const AFT: Vec3 = [1, 0, 0];
const FORWARD: Vec3 = [-1, 0, 0];
const RIGHT: Vec3 = [0, 1, 0];
const UP: Vec3 = [0, 0, 1];
const NEAR_VERTICAL = Math.cos(Math.PI / 6);
/** A tube that leans no more than this share of its length out of its station plane is a cross tube. */
const CROSS_SHARE = 0.1;

/** `v` without its part along `axis`, length one. */
const square = (v: Vec3, axis: Vec3): Vec3 => unit(sub(v, scale(axis, dot(v, axis))));

/**
 * The clock on a tube.
 *
 * 12 = projection of up; tubes within 30° of vertical: 12 = forward. Look forward along the tube; along a cross tube
 * from right to left (3 = forward); down along a near-vertical one (3 = right). Seen so, 3 is 90° clockwise of 12.
 *
 * A tube between two clusters of one station counts as a cross tube when it goes more across than aft, as does any tube
 * within 6° of the station plane.
 * Source: `shapes.md` (own rule; no fixed standard was found).
 */
export const clockFace = ([start, end]: Axis, member: Pick<Member, 'station'>): ClockFace => {
  const e = unit(sub(end, start));
  const against = (way: Vec3): Vec3 => (dot(e, way) > 0 ? scale(e, -1) : e);
  if (Math.abs(e[2]) >= NEAR_VERTICAL) {
    const twelve = square(FORWARD, e);
    return { twelve, three: cross(against(UP), twelve) };
  }
  const twelve = square(UP, e);
  const inStation = member.station !== undefined && Math.abs(e[0]) < Math.abs(e[1]);
  const isCross = inStation || Math.abs(e[0]) <= CROSS_SHARE;
  return { twelve, three: cross(against(isCross ? RIGHT : AFT), twelve) };
};

/** The direction from a tube's axis to its surface at a clock position, 0…12. */
export const clockDirection = (face: ClockFace, clock: number): Vec3 => {
  const angle = (clock / 6) * Math.PI;
  return add(scale(face.twelve, Math.cos(angle)), scale(face.three, Math.sin(angle)));
};

/** The point on a tube's surface at a clock position, `alongIn` from the axis' first end. */
export const surfacePoint = (
  axis: Axis,
  member: Pick<Member, 'station' | 'section'>,
  alongIn: number,
  clock: number,
): Vec3 =>
  add(
    pointAlong(axis, alongIn),
    scale(clockDirection(clockFace(axis, member), clock), member.section.odIn / 2),
  );
