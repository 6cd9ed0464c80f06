import { type Figure, figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { Extent } from './extent.ts';
import type { Room } from './result.ts';
import { numberOf } from './rules.ts';
import { weldToe } from './weldToe.ts';

/** Length along the tube of a 30° cut across one diameter, in diameters. */
const SCARF = 1 / Math.tan((numberOf('sleeve-ends') * Math.PI) / 180);
/** A symmetrical fishmouth cuts the tube from both sides at once. */
const FISHMOUTH = SCARF / 2;

/** Sound tube left between the damage and the welds at both ends. */
export const roomAround = (
  truss: Truss,
  member: Member,
  damage: Extent,
  manual: readonly RecordOf<'manual'>[],
): Room => {
  const toes = [member.from, member.to].map((c) => weldToe(truss, member, c, manual)) as [Figure, Figure];
  const assumed = [
    ...new Set([
      ...toes.flatMap((t) => t.assumed),
      ...(damage.lengthKnown ? [] : ['damage-length-not-measured']),
    ]),
  ];
  const basis = { kind: 'computed', ref: 'place of the damage less the weld toe' } as const;
  const clear = (value: number): Figure => figure(value, 'in', basis, assumed);
  return {
    fromIn: damage.fromIn,
    toIn: damage.toIn,
    sides: [
      { cluster: member.from, clearIn: clear(damage.fromIn - toes[0].value) },
      { cluster: member.to, clearIn: clear(member.lengthIn - damage.toIn - toes[1].value) },
    ],
    clearLengthIn: clear(member.lengthIn - toes[0].value - toes[1].value),
  };
};

/** What a repair needs beyond the edge of the damage on the tighter and on the roomier side, inches. */
export interface Need {
  readonly method: 'splitSleeve' | 'innerSleeve' | 'outerSleeve' | 'largerTube';
  readonly tightIn: number;
  readonly roomyIn: number;
}

/**
 * Sound tube a repair needs on each side of the damage, measured to the cluster weld.
 *
 *   split sleeve  1.5 D + 1.732 Dₛ        inner sleeve  1.5 D + 1.732 D
 *   outer sleeve  1.5 D + 0.866 Dₛ        larger tube   2.5 D and 4.5 D          Dₛ ≥ D + 2t
 *
 * Assumes: 30° ends on the split sleeve and on the cut for an inner one, a fishmouth on the outer; the sleeve at its
 * thinnest (Dₛ = D + 2t); cuts at the edge of the damage; stubs counted from the weld.
 * Source: AC 43.13-1B, 4-92, 4-95, 4-96, 4-97; geometry of the 30° cut.
 */
export const needs = (odIn: number, wallIn: number): Readonly<Record<Need['method'], Need>> => {
  const sleeveOdIn = odIn + 2 * wallIn;
  const even = (method: Need['method'], size: number): Need => ({ method, tightIn: size, roomyIn: size });
  return {
    splitSleeve: even('splitSleeve', numberOf('split-sleeve-reach') * odIn + SCARF * sleeveOdIn),
    innerSleeve: even('innerSleeve', numberOf('inner-sleeve-reach') * odIn + SCARF * odIn),
    outerSleeve: even('outerSleeve', numberOf('outer-sleeve-reach') * odIn + FISHMOUTH * sleeveOdIn),
    largerTube: {
      method: 'largerTube',
      tightIn: numberOf('larger-short-stub') * odIn,
      roomyIn: numberOf('larger-long-stub') * odIn,
    },
  };
};

/** A binary fraction of an inch: below this a difference is arithmetic, not length. */
const SAME = 1e-9;

/** Does the repair find its room on both sides? */
export const fits = (need: Need, room: Room): boolean => {
  const [a, b] = room.sides.map((s) => s.clearIn.value) as [number, number];
  return Math.min(a, b) >= need.tightIn - SAME && Math.max(a, b) >= need.roomyIn - SAME;
};
