import { endMoment, times6 } from '../lockedIn/lockedState.ts';
import type { Member } from '../truss/result.ts';
import { type Coupled, coupleTo, couplingBlock, lengthRelief, letGo, strainAfter } from './release.ts';
import type { Left } from './result.ts';
import { bothWays, type Situation, strainsOfOthers, type TwoWays } from './situation.ts';

/** Misfits of other tubes count when the upper end of their range puts this share of yield into the target. */
const SOURCES_MATTER = 0.05;

/** One target in one situation. */
export interface TargetView {
  readonly target: number;
  readonly coupled: Coupled;
  readonly others: TwoWays<Float64Array>;
  /** Strain energy that other tubes' bends put into the target, in-lbf; null when they do not matter. */
  readonly sourceEnergy: TwoWays<number> | null;
  /** Share of a length error that turns into force. */
  readonly rN: number;
}

/** What one cut does for the target. */
export interface Effect {
  readonly eta: number;
  /** 1 − U_T'/U_T of the other tubes' bends, not clipped; null when they do not matter. */
  readonly source: TwoWays<number> | null;
  readonly left: Left;
  readonly released: TwoWays<number>;
  readonly opens: TwoWays<number>;
}

export const targetEnergy = (s: Situation, target: number, strain: Float64Array): number => {
  const q = times6(s.changed.stiffness(target), strain);
  return 0.5 * q.reduce((sum, f, k) => sum + f * strain[k]!, 0);
};

export const rangeOf = (ways: TwoWays<number>): { readonly low: number; readonly high: number } => ({
  low: Math.min(ways.short, ways.full),
  high: Math.max(ways.short, ways.full),
});

export const strainOf = (strains: Float64Array, member: number): Float64Array =>
  strains.slice(member * 6, member * 6 + 6);

const leftOf = (
  s: Situation,
  target: number,
  strain: TwoWays<Float64Array>,
  energyInLbf: TwoWays<number>,
): Left => {
  const d = s.changed.stiffness(target);
  const m = s.changed.frame.members[target]!;
  const q = bothWays((r) => times6(d, strain[r]));
  return {
    axialLbf: rangeOf(bothWays((r) => q[r][0]!)),
    momentInLbf: rangeOf(bothWays((r) => endMoment(m, q[r]))),
    energyInLbf: rangeOf(energyInLbf),
  };
};

/** How the target stands before a cut. */
export const viewOf = (s: Situation, target: number, member: Member): TargetView => {
  const coupled = coupleTo(s.cuts, target);
  const others = strainsOfOthers(s, target);
  const { areaIn2, inertiaIn4, odIn, yieldPsi } = member.section;
  const d = s.changed.stiffness(target);
  const stress = rangeOf(
    bothWays((r) => {
      const q = times6(d, strainOf(others[r], target));
      const bending = endMoment(s.changed.frame.members[target]!, q);
      return Math.abs(q[0]!) / areaIn2 + (bending * odIn) / (2 * inertiaIn4);
    }),
  );
  return {
    target,
    coupled,
    others,
    sourceEnergy:
      stress.high >= SOURCES_MATTER * yieldPsi
        ? bothWays((r) => targetEnergy(s, target, strainOf(others[r], target)))
        : null,
    rN: coupled.clamped / d[0]!,
  };
};

/** What stands in the target before any cut. */
export const leftNow = (s: Situation, target: number): Left =>
  leftOf(
    s,
    target,
    bothWays((r) => strainOf(s.strains[r], target)),
    s.energyInLbf,
  );

/** What cutting one tube does for the target, all sums through the one factor. */
export const effectOf = (s: Situation, view: TargetView, cut: number): Effect => {
  const a = couplingBlock(s.cuts, view.coupled, cut);
  const gone = bothWays((r) => letGo(s.cuts, cut, s.strains[r]));
  const after = bothWays((r) => strainAfter(view.coupled, cut, a, gone[r].z, s.strains[r]));
  const released = bothWays((r) => gone[r].releasedInLbf);
  const energy = bothWays((r) => Math.max(0, s.energyInLbf[r] - released[r]));
  const before = view.sourceEnergy;
  return {
    eta: lengthRelief(s.cuts, view.coupled, cut, a),
    source:
      before &&
      bothWays((r) => {
        if (!(before[r] > 0)) return 0;
        const z = view.others === s.strains ? gone[r].z : letGo(s.cuts, cut, view.others[r]).z;
        const left = strainAfter(view.coupled, cut, a, z, view.others[r]);
        return 1 - targetEnergy(s, view.target, left) / before[r];
      }),
    left: leftOf(s, view.target, after, energy),
    released,
    opens: bothWays((r) => gone[r].opensIn),
  };
};
