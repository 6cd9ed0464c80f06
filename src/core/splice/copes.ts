import { dot, sub, unit, type Vec3 } from '../base/vec3.ts';
import { type Role, roles } from '../job/modelSchema.ts';
import { clockFace } from '../truss/place.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { CopeTube } from './result.ts';

/** Nearer in line than this, two tubes run on as one. */
const IN_LINE_COS = Math.cos(Math.PI / 18);

const isLongeron = (role: Role): boolean => role === 'upperLongeron' || role === 'lowerLongeron';

/**
 * Which tube is fitted first at a cluster: longerons, then the larger, then by role, then by id.
 * Source: common practice, no source.
 */
const fittedFirst = (a: Member, b: Member): number =>
  Number(isLongeron(b.role)) - Number(isLongeron(a.role)) ||
  b.section.odIn - a.section.odIn ||
  roles.indexOf(a.role) - roles.indexOf(b.role) ||
  (a.id < b.id ? -1 : 1);

/**
 * The tubes that a member's end is coped against, the main one first: those fitted before it. Tubes in line with it do
 * not count.
 *
 * @returns null when none is fitted before it: it runs through, or the others are coped to it
 * Assumes: all axes meet at the cluster point, as the model has them.
 */
export const copesAt = (truss: Truss, member: Member, cluster: string): readonly CopeTube[] | null => {
  const at = (id: string): Vec3 => truss.clusters.find((c) => c.id === id)!.at;
  const away = (m: Member): Vec3 => unit(sub(at(m.from === cluster ? m.to : m.from), at(cluster)));
  const u = away(member);
  const { twelve, three } = clockFace([at(member.from), at(member.to)], member);
  const here = truss.members.filter((m) => m.from === cluster || m.to === cluster);
  const first = here
    .filter((m) => m.id !== member.id && Math.abs(dot(away(m), u)) < IN_LINE_COS)
    .filter((m) => fittedFirst(m, member) < 0)
    .sort(fittedFirst);
  const halfOf = (m: Member): Member | undefined =>
    here.find((o) => o.id !== m.id && dot(away(o), away(m)) < -IN_LINE_COS);
  const against = first.map((m): CopeTube => {
    const d = away(m);
    const half = halfOf(m);
    const runs = !half ? 'starts' : first.includes(half) ? 'joined' : 'through';
    return {
      member: m.id,
      odIn: m.section.odIn,
      direction: [dot(d, u), dot(d, twelve), dot(d, three)],
      offset: [0, 0, 0],
      runs,
    };
  });
  return against.length === 0 ? null : against;
};
