import type { Vec3 } from '../base/vec3.ts';
import type { LoadCase } from '../job/modelSchema.ts';
import { capacityLbf, plasticMoment } from '../statics/capacity.ts';
import type { Frame } from '../statics/frame.ts';
import { balanceByInertia } from '../statics/inertiaRelief.ts';
import { memberForce } from '../statics/memberForce.ts';
import type { Member, Truss } from '../truss/result.ts';

/** How one tube takes a blow of one pound. */
export interface Strained {
  readonly member: Member;
  /** Share of what the tube takes per lbf of the blow: axial and bending together. */
  readonly perLbf: number;
  readonly axial: number;
  readonly bendingShare: number;
  /** The end that bends more: `from` or `to`. */
  readonly worse: 'from' | 'to';
}

/**
 * Axial force and bending of every tube under a unit blow that the truss's own inertia answers.
 *
 *   share = |N|/N_cap + M/M_p
 *
 * Source: the linear interaction is common practice, no source.
 */
export const strainedBy = (
  truss: Truss,
  frame: Frame,
  loadCase: LoadCase,
  cluster: string,
  direction: Vec3,
): { readonly tubes: readonly Strained[]; readonly giveInPerLbf: number } | null => {
  const loads = new Float64Array(frame.held.length);
  loads.set(direction, frame.clusterIndex.get(cluster)! * 6);
  const balanced = balanceByInertia(truss, frame, loadCase, loads);
  if (!balanced) return null;
  const u = frame.solve(balanced);
  const none = new Float64Array(12);
  const byId = new Map(truss.members.map((m) => [m.id, m]));
  const tubes = frame.members.flatMap((m): Strained[] => {
    const member = byId.get(m.id);
    if (!member) return [];
    const { axialLbf, momentFromInLbf, momentToInLbf } = memberForce(m, member.section, u, none, [0, 0, 0]);
    const [from, to] = [Math.hypot(...momentFromInLbf), Math.hypot(...momentToInLbf)];
    const axial = Math.abs(axialLbf) / capacityLbf(member, axialLbf > 0 ? 'tension' : 'compression');
    const bending = Math.max(from, to) / plasticMoment(member.section);
    const perLbf = axial + bending;
    return [
      {
        member,
        perLbf,
        axial: axialLbf,
        bendingShare: perLbf > 0 ? bending / perLbf : 0,
        worse: from >= to ? 'from' : 'to',
      },
    ];
  });
  return { tubes, giveInPerLbf: balanced.reduce((s, f, k) => s + f * u[k]!, 0) };
};
