import { type Figure, figure } from '../base/figure.ts';
import type { Here } from './findingsHere.ts';
import { type Judgement, no, unsure, yes } from './judgement.ts';
import type { Missing, Reason } from './result.ts';
import { numberOf, ruleOf } from './rules.ts';

/** A finger plate for the tubes damaged at a cluster: thickness, and a finger along each tube in the order given. */
export interface FingerPlate {
  readonly thicknessIn: Figure;
  readonly fingersIn: readonly Figure[];
}

/**
 * Finger plate for the tubes damaged at a cluster.
 *
 *   thickness = heaviest wall of the tubes damaged      finger ≥ 1.5 D of its tube
 *
 * Assumes: where the finger is counted from (edge of the dent or the joint) is only in figure 4-34, not seen.
 * Source: AC 43.13-1B, 4-91c.
 */
export const fingerPlateFor = (
  tubes: readonly { readonly odIn: number; readonly wallIn: number }[],
): FingerPlate => {
  const { source, place } = ruleOf('finger-length');
  const basis = { kind: 'rule', ref: `${source}, ${place}` } as const;
  return {
    thicknessIn: figure(Math.max(...tubes.map((t) => t.wallIn)), 'in', basis),
    fingersIn: tubes.map((t) =>
      figure(numberOf('finger-length') * t.odIn, 'in', basis, ['figure-4-34-not-seen']),
    ),
  };
};

const notKnown = (here: Here): readonly Missing[] =>
  here.placed.flatMap((p) => (p.at === 'notKnown' ? [{ name: 'place', finding: p.finding.id }] : []));

/** Findings in the bay that a repair at the cluster leaves as they are. */
const leftInBay = (here: Here): readonly Reason[] =>
  !here.placed.some((p) => p.at === 'cluster')
    ? []
    : here.placed.flatMap((p) =>
        p.at === 'bay' && !here.within.has(p.finding.id)
          ? [no('judged-together', { leaves: p.finding.damage, finding: p.finding.id })]
          : [],
      );

const atFitting = (here: Here): readonly string[] => (here.fitting ? ['fitting-there'] : []);

/**
 * Welded finger plate over dents at a cluster.
 * Source: AC 43.13-1B, 4-91c; that a cracked or crushed cluster is rebuilt is common practice beside 4-103.
 */
export const fingerPlate = (here: Here): Judgement => {
  const at = here.placed.filter((p) => p.at === 'cluster');
  const dented = at.filter((p) => p.finding.damage === 'dent');
  const tubes = [
    ...new Map(dented.flatMap((p) => (p.member ? [[p.member.id, p.member] as const] : []))).values(),
  ];
  const over = tubes.length > 0 ? tubes : here.tubes;
  const plate = over.length > 0 ? fingerPlateFor(over.map((m) => m.section)) : null;
  const facts = plate && {
    thicknessIn: plate.thicknessIn.value,
    tubes: over.map((m) => m.id),
    fingersIn: plate.fingersIn.map((f) => f.value),
  };
  return {
    reasons: [
      ...at.flatMap(({ finding: f }): readonly Reason[] => {
        if (f.damage === 'dent') return [];
        if (f.damage === 'other') return [unsure('damage-in-words', { finding: f.id })];
        if (f.damage === 'thinned') return [unsure('wall-no-rule', { findings: [f.id] })];
        return [no('joint-crushed', { damage: f.damage, finding: f.id })];
      }),
      ...leftInBay(here),
      ...(dented.length > 0 ? [yes('finger-plate', facts ?? {})] : []),
      ...(at.length === 0 && notKnown(here).length === 0 ? [no('not-at-a-cluster')] : []),
    ],
    missing: notKnown(here),
    conditions: ['finger-length', 'same-material', ...atFitting(here), 'no-filling'],
  };
};

/**
 * The joint cut out and replaced by a gusseted one, or its weld chipped out and made new.
 * Source: AC 43.13-1B, 4-103, 4-81.
 */
export const rebuild = (here: Here): Judgement => {
  const at = here.placed.filter((p) => p.at === 'cluster');
  return {
    reasons: [
      ...leftInBay(here),
      ...(at.length > 0 ? [yes('joint-rebuild', { findings: at.map((p) => p.finding.id) })] : []),
      ...(at.length === 0 && notKnown(here).length === 0 ? [no('not-at-a-cluster')] : []),
    ],
    missing: notKnown(here),
    conditions: ['no-weld-over-weld', 'same-material', ...atFitting(here)],
  };
};
