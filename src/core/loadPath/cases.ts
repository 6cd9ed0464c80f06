import { unit } from '../base/vec3.ts';
import type { Mishap } from '../job/jobSchema.ts';
import type { Frame } from '../statics/frame.ts';
import type { Statics } from '../statics/result.ts';
import { axialForces } from './samePath.ts';

/** A case in which a member is used less than this share of the most used one says nothing about it. */
const IDLE = 0.05;

/** One load case as the use it makes of each member: |N| over capacity. */
export interface CaseUse {
  /** Load case id, or `blow`. */
  readonly id: string;
  readonly use: ReadonlyMap<string, number>;
  readonly most: number;
}

const caseUse = (
  id: string,
  axial: ReadonlyMap<string, number>,
  capacity: ReadonlyMap<string, number>,
): CaseUse => {
  const use = new Map<string, number>();
  for (const [member, cap] of capacity) use.set(member, Math.abs(axial.get(member) ?? 0) / cap);
  return { id, use, most: Math.max(0, ...use.values()) };
};

/** The truss in free flight: a frame on supports that do not strain it, and what balances loads on it. */
export interface FreeFlight {
  readonly frame: Frame;
  readonly balance: (loads: Float64Array, columns: number) => void;
}

/** The blow, balanced by the truss's inertia, and the load cases that were chosen to fit the mishap. */
export const casesOf = (
  mishap: Mishap | undefined,
  free: FreeFlight | null,
  statics: Statics,
  capacity: ReadonlyMap<string, number>,
): readonly CaseUse[] => {
  const cases: CaseUse[] = [];
  const blow = mishap?.blow;
  const at = blow && free ? free.frame.clusterIndex.get(blow.cluster) : undefined;
  if (blow && free && at !== undefined) {
    const loads = new Float64Array(free.frame.held.length);
    loads.set(unit(blow.direction), at * 6);
    free.balance(loads, 1);
    const axial = axialForces(free.frame, free.frame.solve(loads));
    cases.push(caseUse('blow', new Map(free.frame.members.map((m, k) => [m.id, axial[k]!])), capacity));
  }
  if (statics.kind === 'stands')
    for (const solved of statics.cases)
      if (mishap?.cases.includes(solved.id))
        cases.push(caseUse(solved.id, new Map(solved.members.map((m) => [m.id, m.axialLbf])), capacity));
  return cases;
};

/** Does the case say anything about a member? */
export const speaksFor = (c: CaseUse, id: string): boolean => (c.use.get(id) ?? 0) > IDLE * c.most;

/**
 * How strongly a case joins j to the hurt members: the share of capacity that j reaches when the most used tube of the
 * truss is at capacity, times the share that the most used of the hurt members reaches then.
 *
 *   b_j = u_j u_i / u_max²,   u = |N| / capacity, i the hurt member with the largest u
 *
 * Scaled to the most used tube, no tube is put beyond capacity, so that the rows keep apart; the second factor believes
 * a case only as far as it loads what was found hurt. One share for a case, not one for each hurt member: they are all
 * hurt by the same event. Common practice, no source.
 *
 * @param hurt  members i; those the case does not speak for are left out
 * @returns null when the case speaks for none of them
 */
export const shareInCase = (
  c: CaseUse,
  hurt: readonly string[],
  id: string,
): { readonly share: number; readonly with: string } | null => {
  let most: { readonly use: number; readonly with: string } | null = null;
  for (const i of hurt) {
    const use = c.use.get(i) ?? 0;
    if (speaksFor(c, i) && use > (most?.use ?? 0)) most = { use, with: i };
  }
  return most && { share: ((c.use.get(id) ?? 0) * most.use) / c.most ** 2, with: most.with };
};
