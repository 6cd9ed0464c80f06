import { add, distance, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { ReadingEnd } from '../job/jobSchema.ts';
import { clockDirection, clockFace } from '../truss/place.ts';
import type { Member } from '../truss/result.ts';

/** Where one end of a reading stands: at a cluster's axis point, or off it on a tube. */
export interface Foot {
  readonly cluster: string;
  /** The carrying tube's other cluster, when the mark is not the axis point. */
  readonly toward?: string;
  /** Station of a carrying tube that lies in one: it decides which way the clock is read. */
  readonly station?: string;
  readonly mark: ReadingEnd['mark'];
  readonly radiusIn: number;
  readonly alongIn: number;
  readonly clock?: number;
}

/** The place of a foot, and how it follows its cluster and the carrying tube's other cluster. */
export interface Stand {
  readonly point: Vec3;
  /** Share of a small move of the two clusters that the point makes along a direction. */
  readonly follow: (direction: Vec3) => { readonly own: Vec3; readonly other: Vec3 };
}

const NONE: Vec3 = [0, 0, 0];

/**
 * Places a foot for given cluster positions.
 *
 *   p = c + a u + r n,   δp = δc + (a/L)(I − u uᵀ)(δc′ − δc) − (r/L) u nᵀ(δc′ − δc)
 *
 * u along the tube, n outward, a along, r radius. A turn of the tube about itself is left out.
 *
 * @param  toward  axis point at the other end of the reading; only edges ask for it
 */
export const standAt = (
  foot: Foot,
  at: (id: string) => Vec3,
  toward: Vec3,
  memberEnd: Vec3 | undefined,
): Stand => {
  const c = at(foot.cluster);
  if (foot.toward === undefined || memberEnd === undefined)
    return { point: c, follow: (e) => ({ own: e, other: NONE }) };
  const u = unit(sub(memberEnd, c));
  const lengthIn = distance(memberEnd, c);
  const a = foot.alongIn;
  const n = outward(foot, c, memberEnd, add(c, scale(u, a)), toward);
  const r = foot.radiusIn;
  return {
    point: add(add(c, scale(u, a)), scale(n, r)),
    follow: (e) => {
      const across = scale(sub(e, scale(u, dot(e, u))), a / lengthIn);
      const other = sub(across, scale(n, (r / lengthIn) * dot(e, u)));
      return { own: sub(e, other), other };
    },
  };
};

const outward = (foot: Foot, c: Vec3, memberEnd: Vec3, axisPoint: Vec3, toward: Vec3): Vec3 => {
  if (foot.mark === 'surface' || foot.mark === 'hole')
    return clockDirection(
      clockFace([c, memberEnd], foot.station === undefined ? {} : { station: foot.station }),
      foot.clock ?? 0,
    );
  const u = unit(sub(memberEnd, c));
  const sight = sub(toward, axisPoint);
  const square = unit(sub(sight, scale(u, dot(sight, u))));
  return foot.mark === 'nearEdge' ? square : scale(square, -1);
};

/**
 * The foot of a reading's end, or which of its facts is missing.
 *
 * Assumes: an edge is the tube's edge square to its axis, towards the other end (near) or away from it (far), at axis
 * level, as outside-to-outside with a caliper; its clock position does not enter. A hole is a mark at its clock position.
 */
export const footOf = (
  end: ReadingEnd,
  member: (id: string) => Member | undefined,
): Foot | { readonly missing: 'on' | 'clock' | 'notAtCluster' } => {
  const plain = { cluster: end.cluster, mark: end.mark, alongIn: end.alongIn ?? 0 };
  if (end.mark === 'axis' && !end.alongIn) return { ...plain, radiusIn: 0 };
  const tube = end.on === undefined ? undefined : member(end.on);
  if (!tube) return { missing: 'on' };
  if (tube.from !== end.cluster && tube.to !== end.cluster) return { missing: 'notAtCluster' };
  const toward = tube.from === end.cluster ? tube.to : tube.from;
  if (end.mark === 'axis') return { ...plain, toward, radiusIn: 0 };
  if ((end.mark === 'surface' || end.mark === 'hole') && end.clock === undefined) return { missing: 'clock' };
  return {
    ...plain,
    toward,
    ...(tube.station === undefined ? {} : { station: tube.station }),
    radiusIn: tube.section.odIn / 2,
    ...(end.clock === undefined ? {} : { clock: end.clock }),
  };
};

/** Distance between two feet and its gradient by cluster. */
export interface Span {
  readonly lengthIn: number;
  readonly gradient: ReadonlyMap<string, Vec3>;
}

/** The reading s(X) that two feet give for cluster positions `at`, with ∂s/∂X. */
export const spanBetween = (a: Foot, b: Foot, at: (id: string) => Vec3): Span => {
  const end = (f: Foot): Vec3 | undefined => (f.toward === undefined ? undefined : at(f.toward));
  const p = standAt(a, at, at(b.cluster), end(a));
  const q = standAt(b, at, at(a.cluster), end(b));
  const e = unit(sub(q.point, p.point));
  const gradient = new Map<string, Vec3>();
  const put = (id: string | undefined, g: Vec3, sign: number): void => {
    if (id !== undefined) gradient.set(id, add(gradient.get(id) ?? NONE, scale(g, sign)));
  };
  for (const [foot, stand, sign] of [
    [a, p, -1],
    [b, q, 1],
  ] as const) {
    const { own, other } = stand.follow(e);
    put(foot.cluster, own, sign);
    put(foot.toward, other, sign);
  }
  return { lengthIn: distance(p.point, q.point), gradient };
};

/** A point's distance off a string or a level line, o = e·p − line, and its gradient by cluster. */
export const offLine = (foot: Foot, axis: 1 | 2, lineAtIn: number, at: (id: string) => Vec3): Span => {
  const e: Vec3 = axis === 1 ? [0, 1, 0] : [0, 0, 1];
  const c = at(foot.cluster);
  const off = c[axis] - lineAtIn;
  const stand = standAt(
    foot,
    at,
    sub(c, scale(e, off === 0 ? 1 : off)),
    foot.toward === undefined ? undefined : at(foot.toward),
  );
  const { own, other } = stand.follow(e);
  const gradient = new Map<string, Vec3>([[foot.cluster, own]]);
  if (foot.toward !== undefined) gradient.set(foot.toward, other);
  return { lengthIn: stand.point[axis] - lineAtIn, gradient };
};
