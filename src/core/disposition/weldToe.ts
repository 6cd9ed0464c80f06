import { type Figure, figure } from '../base/figure.ts';
import { dot, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Member, Truss } from '../truss/result.ts';

/** Nearer in line than this the two tubes run on as one, and no toe is between them. */
const IN_LINE_SIN = Math.sin(Math.PI / 18);

/** Where a tube of radius r leaves one of radius R that stands at an angle to it, along its own axis, inches. */
const leaves = (r: number, other: number, cos: number): number => {
  const sin = Math.sqrt(Math.max(0, 1 - cos * cos));
  return sin < IN_LINE_SIN ? 0 : (other + r * cos) / sin;
};

/**
 * Where a member's weld ends at one of its clusters: distance from the cluster's centre along the tube's axis. A figure
 * measured there by the user (`manual`, topic `toe:MEMBER:CLUSTER`) outranks the computed one.
 *
 *   x = max over the other tubes there of (R + r cos θ)/sin θ,  θ the angle between the two tubes
 *
 * Assumes: axes meet at the cluster's centre; no gusset and no fitting; at most half the tube.
 * Source: geometry of two cylinders in the plane of their axes (methods §9, fishmouth).
 */
export const weldToe = (
  truss: Truss,
  member: Member,
  cluster: string,
  manual: readonly RecordOf<'manual'>[] = [],
): Figure => {
  const own = manual.findLast((m) => m.topic === `toe:${member.id}:${cluster}` && m.valueIn !== undefined);
  if (own) return figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id });
  const at = (id: string): Vec3 => truss.clusters.find((c) => c.id === id)!.at;
  const away = (m: Member): Vec3 => unit(sub(at(m.from === cluster ? m.to : m.from), at(cluster)));
  const e = away(member);
  const r = member.section.odIn / 2;
  const others = truss.members.filter((m) => m.id !== member.id && (m.from === cluster || m.to === cluster));
  const toes = others.map((m) => leaves(r, m.section.odIn / 2, dot(e, away(m))));
  const value = Math.min(Math.max(0, ...toes), member.lengthIn / 2);
  return figure(value, 'in', { kind: 'computed', ref: 'weld toe from the tubes that meet' }, [
    'axes-meet-at-cluster',
    'no-gusset',
  ]);
};
