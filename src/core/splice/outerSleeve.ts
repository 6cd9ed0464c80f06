import { degToRad } from '../base/units.ts';
import {
  type Ask,
  allOf,
  type Draft,
  damageRule,
  emptyDraft,
  extentOf,
  longClockOf,
  needs,
  rule,
  sectionRules,
  sectionStuff,
  sleeveCautions,
  sleeveRules,
} from './design.ts';
import type { EndCut } from './endCut.ts';
import { fitUpFor } from './fitUp.ts';
import { runBack } from './insertion.ts';
import { addedWeight, byRule, fromCuts, partOf, stubOf } from './parts.ts';
import { placeCuts } from './placement.ts';
import { spliceNumber } from './rules.ts';
import { edgeLength, halfHeight } from './scarf.ts';
import { sleeveFor } from './sleeve.ts';
import { endWeldLbf } from './weld.ts';

/**
 * The damaged part cut out square and a section of the same tube butted in, with a sleeve over each joint.
 *
 *   sleeve, tip to tip = 2 (1.5 D + Dₛ/2 cot β)          section = opening, bearing within 1/32 in
 *
 * Assumes: 30° fishmouth ends, their crotches 1.5 D from the joint.
 * Source: AC 43.13-1B, 4-96, figures 4-38 and 4-39.
 */
export const outerSleeve = (ask: Ask): Draft => {
  const { piece, wish, manual } = ask;
  const { extent, missing } = extentOf(ask);
  const D = piece.tube.odIn;
  const angleRad = degToRad(spliceNumber('sleeve-ends'));
  const reach = spliceNumber('outer-sleeve-reach') * D;
  const tipOf = (odIn: number): number => halfHeight(odIn / 2, angleRad);
  const ruleLength = (s: { odIn: number }): number => 2 * (reach + tipOf(s.odIn));
  const sleeve = sleeveFor(piece.tube, 'outside', manual, ruleLength, wish.sleeve?.tube);
  const sized = allOf(sectionRules(ask), sleeveRules(ask, sleeve, 'outside'));
  const cautions = sleeveCautions(piece, sleeve.chosen);
  if (!extent || !sleeve.chosen) return { ...emptyDraft, ...sized, sleeve, missing, cautions };

  const stuff = sleeve.chosen.tube;
  const own = sleeve.chosen.lengthIn !== undefined;
  const length = sleeve.chosen.lengthIn?.value ?? ruleLength(stuff);
  const tip = tipOf(stuff.odIn);
  const lap = length / 2 - tip;
  const [toe0, toe1] = piece.ends.map((e) => e.toeIn.value) as [number, number];
  const room = [toe0 + length / 2, piece.lengthIn - toe1 - length / 2] as const;
  const tipClock = longClockOf(ask);
  // two tips need room for their beads
  const apart = spliceNumber('near-weld');

  const tried = (leastSection: number): Draft => {
    const [p, q] = placeCuts(extent, leastSection, room, wish.cutsIn);
    const stubs = [
      stubOf(piece, 0, { kind: 'square', atIn: p }),
      stubOf(piece, 1, { kind: 'square', atIn: q }),
    ] as const;
    const { tube, material } = sectionStuff(ask);
    const section = partOf(
      piece,
      { id: 'section', kind: 'section', tube, material, ends: [stubs[0].cut, stubs[1].cut], slideOn: false },
      ['for-ordering-cut-to-the-opening-measured'],
    );
    const sleeveOf = (id: string, middle: number) => {
      const end = (way: 1 | -1): EndCut => ({
        kind: 'fishmouth',
        atIn: middle + way * lap,
        angleRad,
        pointClock: tipClock,
        way,
      });
      const material = wish.sleeve?.material ?? piece.material;
      const made = partOf(piece, {
        id,
        kind: 'sleeve',
        tube: stuff,
        material,
        ends: [end(-1), end(1)],
        slideOn: true,
      });
      return { ...made, centreMarkIn: fromCuts(lap) };
    };
    const sleeves = [sleeveOf('sleeve-from', p), sleeveOf('sleeve-to', q)];
    const back = runBack(
      [
        { part: 'sleeve-from', needIn: length, stubRoomIn: stubs[0].clearIn.value },
        { part: 'sleeve-to', needIn: length, stubRoomIn: stubs[1].clearIn.value },
      ],
      q - p,
    );
    const held = allOf(
      damageRule(piece.damage, [p, q]),
      ...stubs.map((s) => needs('outer-sleeve-reach', s.cluster, length / 2, s.clearIn.value)),
      needs('sleeves-apart', 'section', length + apart, q - p),
      { rules: [rule('run-back', back.failing.length === 0)], failing: back.failing },
      sized,
    );
    const near = stubs.some((s) => s.clearIn.value - length / 2 < spliceNumber('near-weld'));
    const parts = [section, ...sleeves];
    const edge = edgeLength(stuff.odIn / 2, angleRad);
    return {
      ...held,
      rules: [
        ...held.rules,
        rule('outer-bearing', null, { mostIn: spliceNumber('outer-bearing') }),
        rule('fishmouth', true, { angleDeg: spliceNumber('sleeve-ends') }),
        ...(own
          ? [
              rule('outer-sleeve-reach', lap >= reach - 1e-9 ? true : null, {
                at: 'sleeve',
                needIn: ruleLength(stuff),
                haveIn: length,
              }),
            ]
          : []),
        rule('one-end-at-a-time', null),
        rule('opening-measured', null),
      ],
      missing: [],
      sleeve,
      cautions: [...cautions, ...(near ? ['near-weld'] : [])],
      plan: {
        stubs,
        gapIn: byRule(0, 'outer-bearing', ['section-bears-on-both-stubs']),
        gapOtherIn: byRule(spliceNumber('outer-bearing'), 'outer-bearing', ['most-gap-both-ends-together']),
        openingIn: fromCuts(q - p, ['as-computed-measure-after-spreading']),
        parts,
        rosettes: null,
        insertion: back.insertion,
        seamClocks: [],
        weldIn: fromCuts(4 * edge, ['both-ends-of-both-sleeves']),
        endWeldLbf: endWeldLbf(Math.min(stuff.wallIn, piece.tube.wallIn), edge),
        addedLb: addedWeight(piece, parts, [stubs[0].cut, stubs[1].cut]),
        fitUp: fitUpFor('outerSleeve', parts, sleeve, {
          opening: fromCuts(q - p),
          gap: byRule(spliceNumber('outer-bearing'), 'outer-bearing', ['most-gap-both-ends-together']),
        }),
      },
    };
  };
  // The shortest section that keeps the sleeves apart; if they cannot run back, one that takes both.
  const drafts = [length + apart, 2 * length].map(tried);
  return drafts.find((d) => d.failing.length === 0) ?? drafts[0]!;
};
