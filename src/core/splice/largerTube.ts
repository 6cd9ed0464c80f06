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
  sleeveCautions,
  sleeveRules,
} from './design.ts';
import type { EndCut } from './endCut.ts';
import { fitUpFor } from './fitUp.ts';
import { addedWeight, byRule, fromCuts, partOf, stubOf } from './parts.ts';
import { placeCuts } from './placement.ts';
import type { Failing, RuleHeld } from './result.ts';
import { spliceNumber } from './rules.ts';
import { edgeLength, halfHeight } from './scarf.ts';
import { sleeveFor } from './sleeve.ts';
import { endWeldLbf } from './weld.ts';

/**
 * The two stubs that 4-97 asks for: the shorter at least 2.5 D, the longer at least 4.5 D.
 *
 * Assumes: counted from the cluster's weld to the square cut.
 * Source: AC 43.13-1B, 4-97; that the weld is the zero is our reading.
 */
export const largerStubs = (
  odIn: number,
  stubs: readonly { readonly at: string; readonly clearIn: number }[],
): { readonly rules: readonly RuleHeld[]; readonly failing: readonly Failing[] } => {
  const [short, long] = [...stubs].sort((a, b) => a.clearIn - b.clearIn);
  return short && long
    ? allOf(
        needs('larger-short-stub', short.at, spliceNumber('larger-short-stub') * odIn, short.clearIn),
        needs('larger-long-stub', long.at, spliceNumber('larger-long-stub') * odIn, long.clearIn),
      )
    : { rules: [], failing: [] };
};

/**
 * The damaged part cut out square and replaced by a larger tube that slides over both stubs.
 *
 *   tube, tip to tip = opening + 2 (1.5 D + Dₛ/2 cot β)          run back on the long stub: 2 (1.5 D + Dₛ/2 cot β)
 *
 * Assumes: 30° fishmouth ends; each crotch 1.5 D from the end of its stub; run back clear of the short stub before the
 * long one is sprung aside.
 * Source: AC 43.13-1B, 4-97, figure 4-40; the run back is geometry.
 */
export const largerTube = (ask: Ask): Draft => {
  const { piece, wish, manual } = ask;
  const { extent, missing } = extentOf(ask);
  const D = piece.tube.odIn;
  const angleRad = degToRad(spliceNumber('sleeve-ends'));
  const reach = spliceNumber('larger-reach') * D;
  const tipOf = (odIn: number): number => halfHeight(odIn / 2, angleRad);
  const sleeve = sleeveFor(
    piece.tube,
    'outside',
    manual,
    (s) => 2 * (reach + tipOf(s.odIn)),
    wish.sleeve?.tube,
  );
  const sized = sleeveRules(ask, sleeve, 'outside');
  const cautions = sleeveCautions(piece, sleeve.chosen);
  if (!extent || !sleeve.chosen) return { ...emptyDraft, ...sized, sleeve, missing, cautions };

  const { tube } = sleeve.chosen;
  const tip = tipOf(tube.odIn);
  const [p, q] = placeCuts(extent, 0, extent, wish.cutsIn);
  const stubs = [
    stubOf(piece, 0, { kind: 'square', atIn: p }),
    stubOf(piece, 1, { kind: 'square', atIn: q }),
  ] as const;
  const pointClock = longClockOf(ask);
  const end = (atIn: number, way: 1 | -1): EndCut => ({ kind: 'fishmouth', atIn, angleRad, pointClock, way });
  const material = wish.sleeve?.material ?? piece.material;
  const larger = {
    ...partOf(
      piece,
      {
        id: 'larger-tube',
        kind: 'largerTube',
        tube,
        material,
        ends: [end(p - reach, -1), end(q + reach, 1)],
        slideOn: true,
      },
      ['for-ordering-cut-to-the-opening-measured'],
    ),
    centreMarkIn: fromCuts((q - p) / 2 + reach),
  };
  const clears = stubs.map((s) => ({ at: s.cluster, clearIn: s.clearIn.value }));
  const longer = clears[0]!.clearIn >= clears[1]!.clearIn ? 0 : 1;
  const back = 2 * (reach + tip);
  const run = needs('run-back', clears[longer]!.at, back, clears[longer]!.clearIn);
  const held = allOf(
    damageRule(piece.damage, [p, q]),
    largerStubs(D, clears),
    ...clears.map((c) => needs('larger-reach', c.at, reach + tip, c.clearIn)),
    run,
    sized,
  );
  const near = clears.some((c) => c.clearIn - reach - tip < spliceNumber('near-weld'));
  const edge = edgeLength(tube.odIn / 2, angleRad);
  return {
    ...held,
    rules: [
      ...held.rules,
      rule('fishmouth', true, { angleDeg: spliceNumber('sleeve-ends') }),
      rule('one-end-at-a-time', null),
      rule('opening-measured', null),
    ],
    missing: [],
    sleeve,
    cautions: [...cautions, ...(near ? ['near-weld'] : [])],
    plan: {
      stubs,
      gapIn: byRule(0, 'larger-reach', ['no-gap-tube-laps-both-stubs']),
      gapOtherIn: byRule(0, 'larger-reach', ['no-gap-tube-laps-both-stubs']),
      openingIn: fromCuts(q - p, ['as-computed-measure-after-spreading']),
      parts: [larger],
      rosettes: null,
      insertion: [
        {
          part: larger.id,
          into: run.failing.length > 0 ? null : longer === 0 ? 'fromStub' : 'toStub',
          needIn: fromCuts(back),
          stubRoomIn: fromCuts(clears[longer]!.clearIn),
          sectionRoomIn: fromCuts(0),
        },
      ],
      seamClocks: [],
      weldIn: fromCuts(2 * edge, ['both-ends']),
      endWeldLbf: endWeldLbf(Math.min(tube.wallIn, piece.tube.wallIn), edge),
      addedLb: addedWeight(piece, [larger], [stubs[0].cut, stubs[1].cut]),
      fitUp: fitUpFor('largerTube', [larger], sleeve, { opening: fromCuts(q - p) }),
    },
  };
};
