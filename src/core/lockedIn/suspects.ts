import { type Figure, figure } from '../base/figure.ts';
import { capacityLbf } from '../statics/capacity.ts';
import { deformations, type FrameMember } from '../statics/frame.ts';
import type { Member } from '../truss/result.ts';
import { endMoment, type LockedState, type Reading, type SourceState, times6 } from './lockedState.ts';
import type { LockedMember, Suspect } from './result.ts';

/** Starting values, ours and yours to change: a member is "near" at half of yield or column load by the best estimate. */
export const NEAR_SHARE = 0.5;
/** …or at nine tenths by the worse reading. */
export const NEAR_SHARE_HIGH = 0.9;

/** Stress over yield that one bent tube alone puts into a member, one reading. */
export const shareOf = (
  member: Member,
  m: FrameMember,
  state: LockedState,
  source: SourceState,
  reading: Reading,
): number => {
  const index = state.changed.frame.memberIndex.get(member.id)!;
  const v = deformations(m, source.moves[reading]);
  if (source.member === index) for (let k = 0; k < 6; k++) v[k]! -= source.free[reading][k]!;
  const q = times6(state.changed.stiffness(index), v);
  const { areaIn2, inertiaIn4, odIn, yieldPsi } = member.section;
  return (Math.abs(q[0]!) / areaIn2 + (endMoment(m, q) * odIn) / (2 * inertiaIn4)) / yieldPsi;
};

const shareFigure = (of: Figure, share: (value: number) => number): Figure => {
  const ends = [share(of.low ?? of.value), share(of.high ?? of.value)];
  return figure(share(of.value), '1', of.basis, [...of.assumed, 'starting-value-of-near'], {
    low: Math.min(...ends),
    high: Math.max(...ends),
  });
};

/**
 * Members near yield or near column buckling, worst first.
 *
 *   |σ|/F_y,  −N/N_column
 *
 * Assumes: starting values 0.5 (best estimate) and 0.9 (worse reading) of what "near" is.
 * Source: common practice, no source.
 */
export const suspects = (
  members: ReadonlyMap<string, Member>,
  locked: readonly LockedMember[],
): readonly Suspect[] =>
  locked
    .flatMap((m): Suspect[] => {
      const member = members.get(m.id)!;
      const yielding = shareFigure(m.stressPsi, (s) => s / member.section.yieldPsi);
      const columnLbf = capacityLbf(member, 'compression');
      const buckling = shareFigure(m.axialLbf, (n) => Math.max(0, -n) / columnLbf);
      const [near, share] =
        buckling.value > yielding.value ? (['buckling', buckling] as const) : (['yield', yielding] as const);
      if (share.value < NEAR_SHARE && share.high! < NEAR_SHARE_HIGH) return [];
      return [{ id: m.id, near, share, because: m.because }];
    })
    .sort((a, b) => b.share.value - a.share.value || b.share.high! - a.share.high! || (a.id < b.id ? -1 : 1));
