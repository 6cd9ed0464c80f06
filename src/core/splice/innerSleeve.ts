import { degToRad } from '../base/units.ts';
import { cutAt, lengthsOf, onClock } from './cut.ts';
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
import { rosettes } from './rosette.ts';
import { spliceNumber } from './rules.ts';
import { edgeLength, halfHeight } from './scarf.ts';
import { sleeveFor } from './sleeve.ts';

/** Length that 4-95 asks of one inner sleeve: the cut's run, the gap, and 1.5 D beyond either end of the cut. */
export const innerSleeveLength = (odIn: number): number =>
  2 * halfHeight(odIn / 2, degToRad(spliceNumber('diagonal-cut'))) +
  spliceNumber('inner-gap') +
  2 * spliceNumber('inner-sleeve-reach') * odIn;

/**
 * The damaged part cut out with two 30° cuts on reverse angles and a section of the same tube put in over an inner
 * sleeve at each joint.
 *
 *   sleeve = D cot β + gap + 2 × 1.5 D          section = opening − 2 gap on every line
 *   stub + gap + section + gap + stub = distance between the cluster points
 *
 * The longest line of the section lies on the damage's own clock position, so that it lifts out on that side.
 * Source: AC 43.13-1B, 4-95; the angle and that the gap lies along the tube are common practice.
 */
export const innerSleeve = (ask: Ask): Draft => {
  const { piece, wish, manual } = ask;
  const { extent, missing } = extentOf(ask);
  const D = piece.tube.odIn;
  const angleRad = degToRad(spliceNumber('diagonal-cut'));
  const h = halfHeight(D / 2, angleRad);
  const gap = spliceNumber('inner-gap');
  const reach = spliceNumber('inner-sleeve-reach') * D;
  const ruleLength = innerSleeveLength(D);
  const sleeve = sleeveFor(piece.tube, 'inside', manual, () => ruleLength, wish.sleeve?.tube);
  const sized = allOf(sectionRules(ask), sleeveRules(ask, sleeve, 'inside'));
  const cautions = sleeveCautions(piece, sleeve.chosen);
  if (!extent || !sleeve.chosen) return { ...emptyDraft, ...sized, sleeve, missing, cautions };

  const stuff = sleeve.chosen.tube;
  const length = sleeve.chosen.lengthIn?.value ?? ruleLength;
  const lap = (length - gap - 2 * h) / 2;
  const own = sleeve.chosen.lengthIn !== undefined;
  const [toe0, toe1] = piece.ends.map((e) => e.toeIn.value) as [number, number];
  const room = [toe0 + lap + 2 * h, piece.lengthIn - toe1 - lap - 2 * h] as const;
  const longClock = longClockOf(ask);

  const tried = (leastSection: number): Draft => {
    const [p, q] = placeCuts(extent, leastSection + 2 * gap, room, wish.cutsIn);
    const cut = (atIn: number, way: 1 | -1): EndCut => ({
      kind: 'scarf',
      atIn,
      angleRad,
      pointClock: longClock,
      way,
    });
    const [c0, c1] = [p - h, q + h];
    const stubs = [stubOf(piece, 0, cut(c0, -1)), stubOf(piece, 1, cut(c1, 1))] as const;
    const ends = [cut(c0 + gap, -1), cut(c1 - gap, 1)] as const;
    const { tube, material } = sectionStuff(ask);
    const section = partOf(piece, { id: 'section', kind: 'section', tube, material, ends, slideOn: false }, [
      'gap-along-the-tube',
      'for-ordering-cut-to-the-opening-measured',
    ]);
    const sleeveOf = (id: string, middle: number) =>
      partOf(piece, {
        id,
        kind: 'sleeve',
        tube: stuff,
        material: wish.sleeve?.material ?? piece.material,
        ends: [
          { kind: 'square', atIn: middle - length / 2 },
          { kind: 'square', atIn: middle + length / 2 },
        ],
        slideOn: true,
      });
    const sleeves = [sleeveOf('sleeve-from', c0 + gap / 2), sleeveOf('sleeve-to', c1 - gap / 2)].map((s) => ({
      ...s,
      centreMarkIn: fromCuts(length / 2),
    }));
    const short = section.shortIn.value;
    const back = runBack(
      [
        { part: 'sleeve-from', needIn: length, stubRoomIn: stubs[0].clearIn.value },
        { part: 'sleeve-to', needIn: length, stubRoomIn: stubs[1].clearIn.value },
      ],
      short,
    );
    const held = allOf(
      damageRule(piece.damage, [p, q]),
      ...stubs.map((s) => needs('inner-sleeve-reach', s.cluster, own ? lap : reach, s.clearIn.value)),
      needs('sleeves-apart', 'section', 2 * (own ? lap : reach), short),
      { rules: [rule('run-back', back.failing.length === 0)], failing: back.failing },
      sized,
    );
    const at = (end: EndCut) => (clock: number) => cutAt(end, D / 2, clock);
    const holes = rosettes(
      D,
      [
        { in: 'fromStub', sleeveEndIn: c0 + gap / 2 - length / 2, cutAt: at(stubs[0].cut), way: 1 },
        { in: 'section', sleeveEndIn: c0 + gap / 2 + length / 2, cutAt: at(ends[0]), way: -1 },
        { in: 'section', sleeveEndIn: c1 - gap / 2 - length / 2, cutAt: at(ends[1]), way: 1 },
        { in: 'toStub', sleeveEndIn: c1 - gap / 2 + length / 2, cutAt: at(stubs[1].cut), way: -1 },
      ],
      longClock,
    );
    const near = stubs.some((s) => s.clearIn.value - lap < spliceNumber('near-weld'));
    const parts = [section, ...sleeves];
    return {
      ...held,
      rules: [
        ...held.rules,
        rule('diagonal-cut', true, { angleDeg: spliceNumber('diagonal-cut'), longClock: onClock(longClock) }),
        rule('inner-gap', true, { gapIn: gap }),
        rule('gap-along', null, { alongIn: gap, squareIn: gap / Math.sin(angleRad) }),
        rule('rosette-hole', true),
        rule('rosette-no-credit', null),
        ...(own
          ? [
              rule('inner-sleeve-reach', lap >= reach - 1e-9 ? true : null, {
                at: 'sleeve',
                needIn: ruleLength,
                haveIn: length,
              }),
            ]
          : []),
        rule('opening-measured', null),
      ],
      missing: [],
      sleeve,
      cautions: [...cautions, ...(near ? ['near-weld'] : [])],
      plan: {
        stubs,
        gapIn: byRule(gap, 'inner-gap', ['gap-along-the-tube']),
        gapOtherIn: byRule(gap / Math.sin(angleRad), 'inner-gap', ['gap-square-to-the-cut']),
        openingIn: fromCuts(c1 - c0, ['as-computed-measure-after-spreading']),
        parts,
        rosettes: holes,
        insertion: back.insertion,
        seamClocks: [],
        weldIn: fromCuts(2 * edgeLength(D / 2, angleRad), ['one-bead-at-each-gap', 'rosettes-not-counted']),
        endWeldLbf: null,
        addedLb: addedWeight(piece, parts, [stubs[0].cut, stubs[1].cut]),
        fitUp: fitUpFor('innerSleeve', parts, sleeve, {
          opening: fromCuts(lengthsOf([stubs[0].cut, stubs[1].cut], D / 2).high),
          gap: byRule(gap, 'inner-gap'),
        }),
      },
    };
  };
  // The shortest section that holds both laps; if no sleeve then runs back, one that takes one or both sleeves.
  const drafts = [2 * lap, length, 2 * length].map(tried);
  return drafts.find((d) => d.failing.length === 0) ?? drafts[0]!;
};
