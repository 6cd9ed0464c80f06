import type { Finding } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';

/** The stretch of a member that a finding covers, from its `from` cluster. */
export interface Extent {
  readonly fromIn: number;
  readonly toIn: number;
  /** False: the length along the tube was not measured, and the stretch is only the place. */
  readonly lengthKnown: boolean;
}

/** Length along the tube, when it was measured; a crack's is taken along the tube. */
const alongOf = (f: Finding): number | undefined => {
  switch (f.damage) {
    case 'dent':
    case 'hole':
    case 'bow':
    case 'kink':
    case 'oval':
    case 'thinned':
      return f.alongIn;
    case 'crack':
      return f.crackIn;
    case 'break':
      return f.gapIn;
    case 'other':
      return undefined;
    default:
      return f satisfies never;
  }
};

/** Where a finding lies along its member; null when its place was not given. */
export const extentOf = (member: Member, finding: Finding): Extent | null => {
  const { place } = finding;
  if (!place) return null;
  const at = place.from === member.to ? member.lengthIn - place.atIn : place.atIn;
  const along = alongOf(finding);
  const half = (along ?? 0) / 2;
  return { fromIn: at - half, toIn: at + half, lengthKnown: along !== undefined };
};

/** The stretch that covers them all. */
export const joined = (extents: readonly Extent[]): Extent => ({
  fromIn: Math.min(...extents.map((e) => e.fromIn)),
  toIn: Math.max(...extents.map((e) => e.toIn)),
  lengthKnown: extents.every((e) => e.lengthKnown),
});
