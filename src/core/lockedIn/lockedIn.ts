import { type Figure, figure } from '../base/figure.ts';
import type { Finding } from '../job/jobSchema.ts';
import { plasticMoment } from '../statics/capacity.ts';
import type { Frame } from '../statics/frame.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Statics } from '../statics/result.ts';
import type { Trammel } from '../trammel/result.ts';
import type { Member, Truss } from '../truss/result.ts';
import { type Settled, settle } from './caps.ts';
import { changedFrame } from './changedFrame.ts';
import { leftOver } from './leftOver.ts';
import {
  bowChanges,
  bowMoment,
  endMoment,
  type LockedState,
  type Reading,
  sourcesOn,
} from './lockedState.ts';
import { misfits } from './misfit.ts';
import { withMovedClusters } from './movedClusters.ts';
import type { LockedIn, LockedMember } from './result.ts';
import { shareOf, suspects } from './suspects.ts';

const basis = { kind: 'computed', ref: 'initial strain of the measured bows' } as const;

/**
 * What the measured bows and kinks lock into every member: axial force, end moment, stress, each from "shortening only"
 * to "full end slopes", capped at yield, and the members near yield or column buckling that nobody has seen bent.
 *
 * @param solved  load cases on the truss as drawn, for the shares of left-over strength
 * Assumes: bows measured as found; the truss as the frame holds it; nothing was locked in before the mishap.
 * Fails: a truss that moves freely locks nothing in; bows without a size are listed, not guessed.
 * Source: methods section 3.
 */
export const lockedIn = (
  truss: Truss,
  frame: Frame | MovesFreely,
  findings: readonly Finding[],
  trammel: Trammel,
  solved?: Statics,
): LockedIn => {
  const found = misfits(truss, findings);
  const changed = isFrame(frame) ? changedFrame(frame, bowChanges(truss, frame, found.misfits)) : null;
  const shape = changed && withMovedClusters(truss, changed, found.misfits, trammel);
  const read = {
    ...found,
    misfits: shape?.misfits ?? found.misfits,
    issues: [...found.issues, ...(shape?.issues ?? [])],
  };
  const byId = new Map(truss.members.map((m) => [m.id, m]));
  const common = {
    sources: read.misfits.map((m) => m.member),
    unmeasured: read.unmeasured,
    misfits: read.misfits,
    leftOver: leftOver(byId, read.misfits, solved),
    issues: read.issues,
  };
  if (!isFrame(frame)) return { kind: 'movesFreely', members: [], suspects: [], ...common };
  if (!changed || read.misfits.length === 0)
    return { kind: 'nothingMeasured', members: [], suspects: [], ...common };
  const state: LockedState = { changed, sources: sourcesOn(changed, read.misfits) };
  const short = settle(state, 'short', byId);
  const full = settle(state, 'full', byId);
  const basisOfShape = shape?.kind === 'taken' ? 'bows-and-moved-clusters' : 'bows-alone';
  const assumed = [basisOfShape, ...new Set(read.misfits.flatMap((m) => m.assumed))].sort();
  const members = truss.members.flatMap((member) => {
    const index = frame.memberIndex.get(member.id);
    return index === undefined ? [] : [lockedMember(member, index, state, short, full, assumed)];
  });
  const bent = new Set([...common.sources, ...common.unmeasured]);
  return {
    kind: 'worked',
    members,
    suspects: suspects(
      byId,
      members.filter((m) => !bent.has(m.id)),
    ),
    ...common,
  };
};

/** Axial force, largest end moment and largest stress of a member, one reading. */
interface Readout {
  readonly axial: number;
  readonly moment: number;
  readonly stress: number;
}

const readout = (member: Member, index: number, state: LockedState, settled: Settled): Readout => {
  const m = state.changed.frame.members[index]!;
  const q = settled.forces.subarray(index * 6, index * 6 + 6);
  const source = state.sources.find((s) => s.member === index);
  const moment = Math.min(endMoment(m, q), plasticMoment(member.section));
  const worst = source ? Math.max(moment, bowMoment(m, q, source.misfit)) : moment;
  const { areaIn2, inertiaIn4, odIn, yieldPsi } = member.section;
  const stress = Math.abs(q[0]!) / areaIn2 + (worst * odIn) / (2 * inertiaIn4);
  return { axial: q[0]!, moment, stress: Math.min(stress, yieldPsi) };
};

const lockedMember = (
  member: Member,
  index: number,
  state: LockedState,
  short: Settled,
  full: Settled,
  assumed: readonly string[],
): LockedMember => {
  const best = readout(member, index, state, short);
  const other = readout(member, index, state, full);
  const capped = short.capped.has(index) || full.capped.has(index);
  const range = (of: keyof Readout, unit: Figure['unit']): Figure =>
    figure(best[of], unit, basis, capped ? [...assumed, 'capped-elastic-estimate'] : assumed, {
      low: Math.min(best[of], other[of]),
      high: Math.max(best[of], other[of]),
    });
  return {
    id: member.id,
    axialLbf: range('axial', 'lbf'),
    endMomentInLbf: range('moment', 'in-lbf'),
    stressPsi: range('stress', 'psi'),
    capped,
    because: because(member, index, state),
  };
};

/** Bent members that strain this one, largest share of its axial force and end moment first; those below 5 % are left out. */
const because = (member: Member, index: number, state: LockedState): string[] => {
  const m = state.changed.frame.members[index]!;
  const parts = state.sources.map((s) => ({
    id: s.misfit.member,
    share: Math.max(...(['short', 'full'] as const).map((r: Reading) => shareOf(member, m, state, s, r))),
  }));
  const most = Math.max(...parts.map((p) => p.share));
  return parts
    .filter((p) => p.share > 0 && p.share >= 0.05 * most)
    .sort((a, b) => b.share - a.share || (a.id < b.id ? -1 : 1))
    .map((p) => p.id);
};
