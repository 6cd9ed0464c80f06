import { type Figure, figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Design } from '../splice/result.ts';
import type { Truss } from '../truss/result.ts';
import { LIGHT_UNDER_LB, weightLimits } from './limits.ts';
import type { Ledger, LedgerRow, ThresholdHeld } from './result.ts';

type Manual = readonly RecordOf<'manual'>[];
/** A row whose figures are plain. */
export interface Added {
  readonly lb: number;
  readonly armIn: number;
}

const computed = (
  value: number,
  unit: Figure['unit'],
  ref: string,
  assumed: readonly string[] = [],
): Figure => figure(value, unit, { kind: 'computed', ref }, assumed);

/** Station of the middle of what is added: the parts' middles on the member's axis, weighted by their weights. */
const armOf = (truss: Truss, member: string, design: Design): number => {
  const m = truss.members.find((one) => one.id === member)!;
  const [from, to] = [m.from, m.to].map((id) => truss.clusters.find((c) => c.id === id)!.at[0]);
  const parts = design.plan?.parts ?? [];
  const lb = parts.reduce((sum, p) => sum + p.weightLb.value, 0);
  const middle = (p: (typeof parts)[number]): number => (p.ends[0].atIn + p.ends[1].atIn) / 2;
  const at = lb > 0 ? parts.reduce((sum, p) => sum + p.weightLb.value * middle(p), 0) / lb : m.lengthIn / 2;
  return from! + ((to! - from!) * at) / m.lengthIn;
};

/**
 * Weight and moment of what was added.
 *
 *   ΔW = Σ w,  ΔM = Σ w · arm
 *
 * Source: FAA AC 43.13-1B with CHG 1 (1998/2001), 10-2h.
 */
export const sumOf = (rows: readonly Added[]): { readonly lb: number; readonly momentLbIn: number } => ({
  lb: rows.reduce((sum, r) => sum + r.lb, 0),
  momentLbIn: rows.reduce((sum, r) => sum + r.lb * r.armIn, 0),
});

/**
 * Where the centre of gravity goes when weight is added.
 *
 *   shift = (W·cg + ΔM)/(W + ΔW) − cg
 *
 * @param empty  W, lb, and cg, station in inches
 * Source: FAA AC 43.13-1B with CHG 1 (1998/2001), figures 10-10 and 10-11: total moment over total weight.
 */
export const shiftOf = (
  rows: readonly Added[],
  empty: { readonly lb: number; readonly cgIn: number },
): number => {
  const { lb, momentLbIn } = sumOf(rows);
  return (empty.lb * empty.cgIn + momentLbIn) / (empty.lb + lb) - empty.cgIn;
};

/** The ledger's sums against the published thresholds. Topics: `empty-weight-lb` (value), `empty-cg` and `chord` (valueIn). */
export const ledgerOf = (
  truss: Truss,
  repairs: readonly { readonly member: string; readonly design: Design | null }[],
  manual: Manual,
): Ledger => {
  const rows = repairs.flatMap(({ member, design }): LedgerRow[] => {
    if (!design?.plan) return [];
    const { addedLb } = design.plan;
    const arm = armOf(truss, member, design);
    return [
      {
        member,
        addedLb,
        armIn: computed(arm, 'in', 'middle-of-the-parts'),
        momentLbIn: computed(addedLb.value * arm, 'lb-in', 'weight-times-arm', addedLb.assumed),
      },
    ];
  });
  const own = (topic: string): RecordOf<'manual'> | undefined => manual.findLast((m) => m.topic === topic);
  const number = (topic: string): number | undefined => own(topic)?.valueIn ?? own(topic)?.value;
  const [weight, cg, chord] = [number('empty-weight-lb'), number('empty-cg'), number('chord')];
  const added = rows.map((r) => ({ lb: r.addedLb.value, armIn: r.armIn.value }));
  const { lb: addedLb, momentLbIn } = sumOf(added);
  const paint = ['paint-and-fabric-not-counted'];
  const shift =
    weight !== undefined && weight > 0 && cg !== undefined ? shiftOf(added, { lb: weight, cgIn: cg }) : null;
  const lacking = (topics: Readonly<Record<string, number | undefined>>): readonly string[] =>
    Object.entries(topics).flatMap(([topic, value]) =>
      value !== undefined && (topic === 'empty-cg' || value > 0) ? [] : [topic],
    );
  const notKnown = repairs.filter((r) => !r.design?.plan).map((r) => r.member);
  const held = (
    rule: string,
    value: Figure | null,
    missing: readonly string[],
    applies: boolean,
  ): ThresholdHeld => {
    const row = weightLimits.find((l) => l.id === rule)!;
    const limit = figure(row.value!, (row as { readonly unit: Figure['unit'] }).unit, {
      kind: 'rule',
      ref: `${row.source}, ${row.place}`,
    });
    const can = value !== null && missing.length === 0 && applies;
    const outside = can && Math.abs(value.value) > limit.value;
    // What is not known yet can only be told when it is over already.
    const says = outside ? 'outside' : can && notKnown.length === 0 ? 'inside' : 'cannotSay';
    return { rule, says, value, limit, missing };
  };
  const needs = lacking({ 'empty-weight-lb': weight, 'empty-cg': cg, chord });
  return {
    rows,
    addedLb: computed(addedLb, 'lb', 'sum-of-rows', paint),
    momentLbIn: computed(momentLbIn, 'lb-in', 'sum-of-rows', paint),
    shiftIn: shift === null ? null : computed(shift, 'in', 'moment-over-weight', paint),
    thresholds: [
      held(
        'negligible-weight',
        computed(addedLb, 'lb', 'sum-of-rows', paint),
        lacking({ 'empty-weight-lb': weight }),
        weight !== undefined && weight < LIGHT_UNDER_LB,
      ),
      held(
        'negligible-shift',
        shift === null || !chord ? null : computed((100 * shift) / chord, '%', 'shift-over-chord', paint),
        needs,
        true,
      ),
    ],
    notKnown,
  };
};
