import { degToRad } from '../base/units.ts';
import { onClock } from './cut.ts';
import {
  type Ask,
  allOf,
  type Draft,
  emptyDraft,
  extentOf,
  longClockOf,
  needs,
  rule,
  sleeveCautions,
  sleeveRules,
} from './design.ts';
import type { EndCut } from './endCut.ts';
import { fitUpFor } from './fitUp.ts';
import { addedWeight, byRule, fromCuts, partOf } from './parts.ts';
import { spliceNumber } from './rules.ts';
import { edgeLength, halfHeight } from './scarf.ts';
import { sleeveFor } from './sleeve.ts';
import { endWeldLbf } from './weld.ts';

/**
 * A sleeve slit full length into halves and welded over the damaged length, its ends at 30° on reverse angles.
 *
 *   short line = damage + 2 × 1.5 D          long line = short line + 2 Dₛ cot β
 *
 * The short line still reaches 1.5 D past the damage, so that every line does. With both ends cut alike (parallel) every
 * line would be damage + 3 D + Dₛ cot β: shorter, but not on the damage's own side.
 * Source: AC 43.13-1B, 4-91d, 4-92, figure 4-35; which way the ends lean is our choice.
 */
export const splitSleeve = (ask: Ask): Draft => {
  const { piece, wish, manual } = ask;
  const { extent, missing } = extentOf(ask);
  const D = piece.tube.odIn;
  const angleRad = degToRad(spliceNumber('sleeve-ends'));
  const reach = spliceNumber('split-sleeve-reach') * D;
  const damaged = extent ? extent[1] - extent[0] : 0;
  const sleeve = sleeveFor(piece.tube, 'outside', manual, () => damaged + 2 * reach, wish.sleeve?.tube);
  const sized = sleeveRules(ask, sleeve, 'outside');
  const cautions = sleeveCautions(piece, sleeve.chosen);
  const parted = piece.damage?.parted ? [rule('sleeve-not-through', false)] : [];
  if (!extent || !sleeve.chosen)
    return { ...emptyDraft, ...sized, rules: [...parted, ...sized.rules], sleeve, missing, cautions };

  const { tube } = sleeve.chosen;
  const h = halfHeight(tube.odIn / 2, angleRad);
  const pointClock = longClockOf(ask);
  const end = (edge: number, way: 1 | -1): EndCut => ({
    kind: 'scarf',
    atIn: edge + way * (reach + h),
    angleRad,
    pointClock,
    way,
  });
  const ends = [end(extent[0], -1), end(extent[1], 1)] as const;
  const material = wish.sleeve?.material ?? piece.material;
  const part = partOf(piece, {
    id: 'split-sleeve',
    kind: 'splitSleeve',
    tube,
    material,
    ends,
    slideOn: false,
  });
  const made = { ...part, centreMarkIn: fromCuts(part.axisIn.value / 2) };
  const [toe0, toe1] = piece.ends.map((e) => e.toeIn.value) as [number, number];
  const clears = [extent[0] - toe0, piece.lengthIn - toe1 - extent[1]] as const;
  const held = allOf(
    { rules: parted, failing: [] },
    ...piece.ends.map((e, k) => needs('split-sleeve-reach', e.cluster, reach + 2 * h, clears[k]!)),
    sized,
  );
  const near = clears.some((c) => c - reach - 2 * h < spliceNumber('near-weld'));
  const edge = edgeLength(tube.odIn / 2, angleRad);
  const whole = [ends[0], ends[0]] as const;
  return {
    ...held,
    rules: [
      ...held.rules,
      rule('split-slack', null),
      rule('sleeve-ends', true, { angleDeg: spliceNumber('sleeve-ends'), parallelIn: made.axisIn.value }),
      rule('stop-hole', piece.damage?.cracked ? null : true, { holeIn: spliceNumber('stop-hole') }),
    ],
    missing: [],
    sleeve,
    cautions: [...cautions, ...(near ? ['near-weld'] : [])],
    plan: {
      stubs: null,
      gapIn: byRule(0, 'split-slack', ['tube-not-cut']),
      gapOtherIn: byRule(0, 'split-slack', ['tube-not-cut']),
      openingIn: null,
      parts: [made],
      rosettes: null,
      insertion: [],
      seamClocks: [onClock(pointClock + 3), onClock(pointClock + 9)],
      weldIn: fromCuts(2 * edge + 2 * made.axisIn.value, ['both-seams-then-both-ends']),
      endWeldLbf: endWeldLbf(Math.min(tube.wallIn, piece.tube.wallIn), edge),
      addedLb: addedWeight(piece, [made], whole),
      fitUp: fitUpFor('splitSleeve', [made], sleeve),
    },
  };
};
