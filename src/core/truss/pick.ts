import type { Vec3 } from '../base/vec3.ts';
import type { Truss } from './result.ts';

/** A line of sight; `direction` has length one. */
export interface Ray {
  readonly origin: Vec3;
  readonly direction: Vec3;
}

/** How far beside a part a touch still counts, inches at its place: a fixed part and one that grows with distance. */
export interface Slack {
  readonly fixedIn: number;
  /** Inches per inch of distance: the angle of one pixel times the pixels allowed. */
  readonly perIn: number;
}

/** Flat numbers for picking, made once a truss: seven a part (start, end, radius). */
export interface Pickables {
  readonly ids: readonly string[];
  readonly numbers: Float64Array;
}

export interface Picked {
  readonly id: string;
  /** Distance from the first end (0 for a cluster) of the point nearest the line of sight. */
  readonly alongIn: number;
  /** Distance from the eye to that point, measured along the line of sight. */
  readonly distanceIn: number;
}

const STRIDE = 7;

const pack = (parts: readonly { id: string; a: Vec3; b: Vec3; r: number }[]): Pickables => {
  const numbers = new Float64Array(parts.length * STRIDE);
  for (const [k, { a, b, r }] of parts.entries()) numbers.set([...a, ...b, r], k * STRIDE);
  return { ids: parts.map((p) => p.id), numbers };
};

/** The members of a truss as capsules; with `moves`, of the truss as it is shown. */
export const memberPickables = (truss: Truss, moves?: ReadonlyMap<string, Vec3>): Pickables => {
  const at = new Map(truss.clusters.map((c) => [c.id, moves?.get(c.id) ?? c.at]));
  return pack(
    truss.members.map((m) => ({ id: m.id, a: at.get(m.from)!, b: at.get(m.to)!, r: m.section.odIn / 2 })),
  );
};

/** The clusters of a truss as spheres of a radius. */
export const clusterPickables = (
  truss: Truss,
  radiusIn: number,
  moves?: ReadonlyMap<string, Vec3>,
): Pickables =>
  pack(
    truss.clusters.map((c) => {
      const at = moves?.get(c.id) ?? c.at;
      return { id: c.id, a: at, b: at, r: radiusIn };
    }),
  );

/** Where a ray enters a ball, along the ray; the nearest approach when it only grazes it. */
const entersBall = (ox: number, oy: number, oz: number, d: Vec3, radius: number): number => {
  const t = -(d[0] * ox + d[1] * oy + d[2] * oz);
  const gap2 = ox * ox + oy * oy + oz * oz - t * t;
  return t - Math.sqrt(Math.max(0, radius * radius - gap2));
};

const clamp = (v: number, low: number, high: number): number => Math.min(Math.max(v, low), high);

/**
 * The part a line of sight touches: of those it really hits, the nearest to the eye; else, within the slack,
 * the one it misses by the least share of the slack. Null when there is none.
 *
 * Nearest points of a ray and a segment; entry depth of a capsule by its cylinder, and by its round end past the ends.
 * Source: C. Ericson, Real-Time Collision Detection, 2005, section 5.1.9 (closest points), from memory.
 *
 * @param skip  ids that are drawn faint and cannot be touched
 */
export const pick = (
  { origin: o, direction: d }: Ray,
  { ids, numbers: n }: Pickables,
  slack: Slack,
  skip?: ReadonlySet<string>,
): Picked | null => {
  let best: Picked | null = null;
  let bestHit = false;
  let bestRank = Number.POSITIVE_INFINITY;
  for (let k = 0; k < ids.length; k++) {
    const p = k * STRIDE;
    const [sx, sy, sz] = [n[p + 3]! - n[p]!, n[p + 4]! - n[p + 1]!, n[p + 5]! - n[p + 2]!];
    const [wx, wy, wz] = [o[0] - n[p]!, o[1] - n[p + 1]!, o[2] - n[p + 2]!];
    const ss = sx * sx + sy * sy + sz * sz;
    const ds = d[0] * sx + d[1] * sy + d[2] * sz;
    const dw = d[0] * wx + d[1] * wy + d[2] * wz;
    const sw = sx * wx + sy * wy + sz * wz;
    const across = ss - ds * ds;
    // A tube seen end on has no one nearest point: take its near end.
    const alongAxis = across > 1e-12 * ss ? (sw - ds * dw) / across : ds > 0 ? 0 : 1;
    let s = ss > 0 ? clamp(alongAxis, 0, 1) : 0;
    let t = s * ds - dw;
    if (t < 0) {
      t = 0;
      s = ss > 0 ? clamp(sw / ss, 0, 1) : 0;
    }
    const gap = Math.hypot(wx + d[0] * t - sx * s, wy + d[1] * t - sy * s, wz + d[2] * t - sz * s);
    const radius = n[p + 6]!;
    const allowed = slack.fixedIn + slack.perIn * t;
    if (gap > radius + allowed) continue;
    const hit = gap <= radius;
    if (bestHit && !hit) continue;
    const half = Math.sqrt(Math.max(0, radius * radius - gap * gap));
    // Backing out of the tube from the nearest point; past an end the way in is through that end's ball.
    const back = across > 1e-12 * ss ? half / Math.sqrt(across / ss) : Number.POSITIVE_INFINITY;
    const entry = s - (back * ds) / ss;
    const intoBody = s > 0 && s < 1 && entry >= 0 && entry <= 1;
    const end = ss > 0 && (s === 0 || s === 1 ? s === 1 : entry > 1) ? 1 : 0;
    const into = intoBody ? t - back : entersBall(wx - sx * end, wy - sy * end, wz - sz * end, d, radius);
    const rank = hit ? into : (gap - radius) / allowed;
    if (hit === bestHit && rank >= bestRank) continue;
    if (skip?.has(ids[k]!)) continue;
    best = { id: ids[k]!, alongIn: s * Math.sqrt(ss), distanceIn: t };
    bestHit = hit;
    bestRank = rank;
  }
  return best;
};

/** The member a line of sight touches; `alongIn` is from its `from` cluster. See `pick`. */
export const pickMember = (ray: Ray, truss: Truss, slackIn: number): Picked | null =>
  pick(ray, memberPickables(truss), { fixedIn: slackIn, perIn: 0 });
