import { add, cross, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Truss } from '../truss/result.ts';

/** Ways round the line that a trammel may be laid. */
const WAYS = 8;
/** Touching a tube is not being blocked by it. */
const TOUCH_IN = 1e-6;

const clamp = (t: number): number => Math.min(1, Math.max(0, t));

/**
 * Shortest distance between two segments.
 * Source: Ericson, Real-Time Collision Detection (2005), 5.1.9.
 */
export const segmentGap = (p: Vec3, q: Vec3, a: Vec3, b: Vec3): number => {
  const d = sub(q, p);
  const e = sub(b, a);
  const r = sub(p, a);
  const [dd, ee, de, dr, er] = [dot(d, d), dot(e, e), dot(d, e), dot(d, r), dot(e, r)];
  const across = dd * ee - de * de;
  let s = across > 1e-12 * dd * ee ? clamp((de * er - dr * ee) / across) : 0;
  let t = (de * s + er) / ee;
  if (t < 0 || t > 1) {
    t = clamp(t);
    s = clamp((de * t - dr) / dd);
  }
  const gap = add(r, sub(scale(d, s), scale(e, t)));
  return Math.sqrt(dot(gap, gap));
};

/**
 * Can a trammel be laid between the surfaces at two clusters without another tube in the way?
 * The line is tried along the axis, then lifted off to the tubes' surfaces in eight ways round; a tube blocks a way that
 * runs into it. Tubes that end at either cluster do not block. Floors, skins and fittings are not known here.
 */
export const sightIn = (truss: Truss): ((a: string, b: string) => boolean) => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const radius = new Map<string, number>();
  const tubes = truss.members.map((m) => {
    const r = m.section.odIn / 2;
    for (const id of [m.from, m.to]) radius.set(id, Math.max(radius.get(id) ?? 0, r));
    return { from: m.from, to: m.to, p: at.get(m.from)!, q: at.get(m.to)!, r };
  });
  return (a, b) => {
    const [p, q] = [at.get(a)!, at.get(b)!];
    const [rp, rq] = [radius.get(a) ?? 0, radius.get(b) ?? 0];
    const reach = Math.max(rp, rq);
    const near = tubes.filter(
      (t) =>
        t.from !== a && t.from !== b && t.to !== a && t.to !== b && segmentGap(p, q, t.p, t.q) < t.r + reach,
    );
    if (near.every((t) => segmentGap(p, q, t.p, t.q) >= t.r)) return true;
    const line = unit(sub(q, p));
    const first = unit(cross(line, Math.abs(line[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0]));
    const second = cross(line, first);
    for (let way = 0; way < WAYS; way++) {
      const turn = (2 * Math.PI * way) / WAYS;
      const out = add(scale(first, Math.cos(turn)), scale(second, Math.sin(turn)));
      const [u, v] = [add(p, scale(out, rp)), add(q, scale(out, rq))];
      if (near.every((t) => segmentGap(u, v, t.p, t.q) >= t.r - TOUCH_IN)) return true;
    }
    return false;
  };
};
