import { goneTube } from '../lockedIn/bowedTube.ts';
import { type ChangedFrame, changedFrame } from '../lockedIn/changedFrame.ts';
import {
  bowChanges,
  type Reading,
  type SourceState,
  sourcesOn,
  strainsOf,
  times6,
} from '../lockedIn/lockedState.ts';
import type { Misfit } from '../lockedIn/misfit.ts';
import type { Frame } from '../statics/frame.ts';
import type { Truss } from '../truss/result.ts';
import { type Cuts, cutsOf } from './release.ts';
import { type Weighed, weigh } from './sag.ts';

export type TwoWays<T> = Readonly<Record<Reading, T>>;

export const bothWays = <T>(of: (reading: Reading) => T): TwoWays<T> => ({
  short: of('short'),
  full: of('full'),
});

/** Everything about the truss as it is that does not depend on which tube is to be relieved. */
export interface Situation {
  readonly changed: ChangedFrame;
  readonly sources: readonly SourceState[];
  readonly cuts: Cuts;
  readonly weighed: Weighed;
  /** Elastic deformations of every frame member under all measured bends. */
  readonly strains: TwoWays<Float64Array>;
  /** Locked-in energy of the whole truss, in-lbf. */
  readonly energyInLbf: TwoWays<number>;
}

const situationOn = (changed: ChangedFrame, misfits: readonly Misfit[]): Situation => {
  const { frame } = changed;
  const sources = sourcesOn(changed, misfits);
  const strains = bothWays((r) => strainsOf(frame, sources, r));
  return {
    changed,
    sources,
    cuts: cutsOf(changed),
    weighed: weigh(changed),
    strains,
    energyInLbf: bothWays((r) => energy(changed, strains[r])),
  };
};

const energy = (changed: ChangedFrame, strains: Float64Array): number => {
  let sum = 0;
  changed.frame.members.forEach((_, index) => {
    const v = strains.subarray(index * 6, index * 6 + 6);
    const q = times6(changed.stiffness(index), v);
    for (let k = 0; k < 6; k++) sum += 0.5 * q[k]! * v[k]!;
  });
  return sum;
};

/** The truss as it stands, its bent tubes as soft as their bows make them; null when that moves freely. */
export const situationOf = (truss: Truss, frame: Frame, misfits: readonly Misfit[]): Situation | null => {
  const changed = changedFrame(frame, bowChanges(truss, frame, misfits));
  return changed && situationOn(changed, misfits);
};

/** The same after one more tube is cut through; null when that moves freely. */
export const afterCutting = (before: Situation, cut: number): Situation | null => {
  const { changed } = before;
  const next = changedFrame(changed.frame, [...changed.changes, goneTube(cut, changed.stiffness(cut))]);
  const left = before.sources.filter((s) => s.member !== cut).map((s) => s.misfit);
  return next && situationOn(next, left);
};

/** Deformations that the other bent tubes alone cause, the target's own bow left out. */
export const strainsOfOthers = (s: Situation, target: number): TwoWays<Float64Array> => {
  const others = s.sources.filter((source) => source.member !== target);
  if (others.length === s.sources.length) return s.strains;
  return bothWays((r) => strainsOf(s.changed.frame, others, r));
};
