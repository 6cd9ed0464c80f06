import { type Basis, type Figure, figure } from '../base/figure.ts';
import {
  bowedColumnStress,
  capacityLbf,
  memberCapacity,
  plasticMoment,
  slenderness,
} from '../statics/capacity.ts';
import type { Statics } from '../statics/result.ts';
import type { Member } from '../truss/result.ts';
import type { Misfit } from './misfit.ts';

/** What one load case asks of a bent tube, against the straight tube and against the tube as it stands. */
export interface LeftOverCase {
  readonly id: string;
  readonly axialLbf: Figure;
  /** Force over what the straight tube takes in that sense, and over first yield of the bent one. */
  readonly ofStraight: Figure;
  readonly ofBent: Figure;
}

/** Arithmetic on one bent tube as it stands, against the same tube straight. Information, never a verdict. */
export interface LeftOver {
  readonly id: string;
  /** Depth of the bow over the whole tube. */
  readonly depthIn: Figure;
  /** Compression: straight column, first yield on the hollow side of the bow, collapse. */
  readonly straightLbf: Figure;
  readonly firstYieldLbf: Figure;
  readonly collapseLbf: Figure;
  /** First yield over the straight column. */
  readonly ratio: Figure;
  readonly cases: readonly LeftOverCase[];
}

/**
 * Compression that first yields a bowed column (Perry–Robertson), lbf, never above the straight column.
 *
 *   (F − σ)(σ_E − σ) = η σ_E σ,  P = σ A
 *
 * Source: Ayrton & Perry 1886; Robertson 1925; `bowedColumnStress`.
 */
export const bentColumnLbf = (member: Member, depthIn: number): number =>
  Math.min(
    capacityLbf(member, 'compression'),
    bowedColumnStress(member.section, member.lengthIn, member.fixity, depthIn) * member.section.areaIn2,
  );

/**
 * Compression at which a bowed column has formed a plastic hinge, lbf, never above the straight column.
 *
 *   P e/(1 − P/P_E) = M_p cos(πP/2N_p)
 *
 * Assumes: thin round tube; the bow grows as an elastic column's until the hinge forms.
 * Source: methods section 8, collapse estimate.
 */
export const collapseLbf = (member: Member, depthIn: number): number => {
  const { section } = member;
  const np = section.yieldPsi * section.areaIn2;
  const s = slenderness(section, member.lengthIn, member.fixity);
  const euler = ((Math.PI ** 2 * section.elasticPsi) / (s * s)) * section.areaIn2;
  const mp = plasticMoment(section);
  let low = 0;
  let high = Math.min(np, euler);
  for (let k = 0; k < 60; k++) {
    const p = (low + high) / 2;
    if ((p * depthIn) / (1 - p / euler) < mp * Math.cos((Math.PI * p) / (2 * np))) low = p;
    else high = p;
  }
  return Math.min(low, capacityLbf(member, 'compression'));
};

/**
 * Tension that first yields a bowed tube, lbf: the pull and the bow's bending together.
 *
 *   P (1/A + e c/I) = F
 *
 * Assumes: the bow as measured; that a pull straightens it is left out, so the figure is low.
 * Source: methods section 3, caps.
 */
export const bentTieLbf = ({ section }: Member, depthIn: number): number =>
  section.yieldPsi / (1 / section.areaIn2 + (depthIn * section.odIn) / (2 * section.inertiaIn4));

const perry: Basis = {
  kind: 'rule',
  ref: 'Ayrton & Perry 1886, Robertson 1925: first yield of a bowed column',
};
const hinge: Basis = { kind: 'computed', ref: 'plastic hinge of a thin tube in a bowed column' };
const compared: Basis = { kind: 'computed', ref: 'bent tube over straight tube' };
const force: Basis = { kind: 'computed', ref: 'load case on the truss as drawn' };
const drawn = 'load case of the model, truss as drawn and undamaged; what is locked in is not added';

/** A figure of the depth, with its range when the depth was entered with an uncertainty. */
const ofDepth = (
  misfit: Misfit,
  unit: Figure['unit'],
  basis: Basis,
  assumed: readonly string[],
  work: (depthIn: number) => number,
): Figure => {
  const value = work(misfit.depthIn);
  if (misfit.stdIn === undefined) return figure(value, unit, basis, assumed);
  const ends = [work(misfit.depthIn + misfit.stdIn), work(Math.max(0, misfit.depthIn - misfit.stdIn))];
  const range = { low: Math.min(...ends), high: Math.max(...ends) };
  return figure(value, unit, basis, [...assumed, 'range: depth of the bow ± one standard deviation'], range);
};

const casesOf = (
  member: Member,
  misfit: Misfit,
  statics: Statics,
  assumed: readonly string[],
): LeftOverCase[] =>
  statics.kind !== 'stands'
    ? []
    : statics.cases.flatMap((solved) => {
        const found = solved.members.find((m) => m.id === member.id);
        if (!found) return [];
        const pulled = found.axialLbf > 0;
        const size = Math.abs(found.axialLbf);
        const straight = capacityLbf(member, pulled ? 'tension' : 'compression');
        const bent = (e: number): number => (pulled ? bentTieLbf(member, e) : bentColumnLbf(member, e));
        return [
          {
            id: solved.id,
            axialLbf: figure(found.axialLbf, 'lbf', force, [drawn]),
            ofStraight: figure(size / straight, '1', compared, [drawn, ...assumed]),
            ofBent: ofDepth(misfit, '1', compared, [drawn, ...assumed], (e) => size / bent(e)),
          },
        ];
      });

/**
 * Left-over strength of every tube with a measured bow or kink, in the order of the misfits. Arithmetic with its
 * assumptions; what it means for the aircraft is for others to say.
 *
 * @param solved  load cases on the truss as drawn; without them no shares are given
 */
export const leftOver = (
  members: ReadonlyMap<string, Member>,
  misfits: readonly Misfit[],
  solved: Statics | undefined,
): readonly LeftOver[] =>
  misfits.map((misfit) => {
    const member = members.get(misfit.member)!;
    const straight = memberCapacity(member, 'compression');
    const assumed = [
      'half-sine bow of the measured depth, in the middle; a kink is taken as one',
      `end fixity c = ${member.fixity}`,
      'wall and welds otherwise sound',
      'not counted above the straight tube',
    ];
    const of = (basis: Basis, work: (e: number) => number, unit: Figure['unit'] = 'lbf'): Figure =>
      ofDepth(misfit, unit, basis, assumed, work);
    return {
      id: misfit.member,
      depthIn: figure(
        misfit.depthIn,
        'in',
        { kind: 'measured', ref: misfit.findings.join(', ') },
        misfit.assumed,
        misfit.stdIn === undefined ? {} : { std: misfit.stdIn },
      ),
      straightLbf: straight,
      firstYieldLbf: of(perry, (e) => bentColumnLbf(member, e)),
      collapseLbf: of(hinge, (e) => collapseLbf(member, e)),
      ratio: of(compared, (e) => bentColumnLbf(member, e) / straight.value, '1'),
      cases: solved ? casesOf(member, misfit, solved, assumed) : [],
    };
  });
