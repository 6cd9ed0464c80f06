import { figure } from '../base/figure.ts';
import { type Ask, allOf, type Draft, emptyDraft, rule } from './design.ts';
import { fitUpFor } from './fitUp.ts';
import { byRule, fromCuts } from './parts.ts';
import type { Part } from './result.ts';
import { spliceNumber } from './rules.ts';

/** Walls of airframe tube, inches: the series in which "one gauge thicker" is read. From memory. */
const GAUGES = [0.028, 0.035, 0.049, 0.058, 0.065, 0.083, 0.095, 0.12] as const;

/**
 * The next thicker wall of the tube series; null above the last.
 * Source: AC 43.13-1B, 4-94 "one gauge thicker"; the series from memory; that the tube series is meant is our reading.
 */
export const nextGauge = (wallIn: number): number | null => GAUGES.find((g) => g > wallIn + 0.0005) ?? null;

const found = (value: number) => figure(value, 'in', { kind: 'measured', ref: 'size of the dent or hole' });

/** The user's own overlap for a patch: `manual`, topic `patch-overlap`. */
const overlapOf = ({ manual, piece }: Ask) =>
  manual.findLast(
    (m) =>
      (m.topic === `patch-overlap:${piece.id}` || m.topic === 'patch-overlap') && m.valueIn !== undefined,
  );

/**
 * A welded patch over a small dent or hole.
 *
 *   depth ≤ D/10, around ≤ π D/4, along ≤ D          plate = dent + overlap on all four sides
 *
 * The overlap stands only in figure 4-36: without the user's own figure no plate is drawn.
 * Source: AC 43.13-1B, 4-94, figure 4-36.
 */
export const patchPlate = (ask: Ask): Draft => {
  const { piece } = ask;
  const { damage, tube } = piece;
  if (!damage) return { ...emptyDraft, missing: ['damage'] };
  const { dent } = damage;
  if (!dent) return { ...emptyDraft, rules: [rule('patch-of-dents-and-holes', false)] };
  const most = {
    depthIn: ['patch-dent-depth', spliceNumber('patch-dent-depth') * tube.odIn],
    aroundIn: ['patch-dent-around', spliceNumber('patch-dent-around') * Math.PI * tube.odIn],
    alongIn: ['patch-dent-length', spliceNumber('patch-dent-length') * tube.odIn],
  } as const;
  const sizes = Object.entries(most) as [keyof typeof most, readonly [string, number]][];
  const held = allOf(
    ...sizes.map(([field, [id, mostIn]]) => {
      const got = dent[field];
      if (got === undefined) return { rules: [rule(id, null, { mostIn })], failing: [] };
      const within = got <= mostIn + 1e-9;
      return {
        rules: [rule(id, within, { haveIn: got, mostIn })],
        failing: within ? [] : [{ rule: id, at: 'dent', needIn: byRule(mostIn, id), haveIn: found(got) }],
      };
    }),
  );
  const cracked = rule('patch-no-crack', !damage.cracked);
  const overlap = overlapOf(ask);
  const thick = nextGauge(tube.wallIn);
  const missing = [
    ...sizes.filter(([field]) => dent[field] === undefined).map(([field]) => field),
    ...(overlap ? [] : ['patch-overlap']),
    ...(thick === null ? ['patch-gauge'] : []),
  ];
  const rules = [cracked, ...held.rules, rule('patch-gauge', null, { wallIn: tube.wallIn, plateIn: thick })];
  if (missing.length > 0 || !overlap || thick === null)
    return { ...emptyDraft, ...held, rules: [...rules, rule('patch-overlap', null)], missing };
  const along = (dent.alongIn ?? 0) + 2 * overlap.valueIn!;
  const around = (dent.aroundIn ?? 0) + 2 * overlap.valueIn!;
  const by = { kind: 'manual', ref: overlap.id } as const;
  const volume = along * around * thick;
  const plate: Part = {
    id: 'patch',
    kind: 'patch',
    tube: { odIn: tube.odIn + 2 * thick, wallIn: thick },
    material: piece.material,
    ends: [
      { kind: 'square', atIn: (damage.fromIn + damage.toIn - along) / 2 },
      { kind: 'square', atIn: (damage.fromIn + damage.toIn + along) / 2 },
    ],
    longIn: figure(along, 'in', by),
    shortIn: figure(around, 'in', by, ['around-the-tube']),
    axisIn: figure(along, 'in', by),
    weightLb: figure(volume * piece.densityLbIn3, 'lb', { kind: 'computed', ref: 'flat plate' }),
    slideOn: false,
  };
  return {
    ...held,
    rules: [...rules, rule('patch-overlap', true, { overlapIn: overlap.valueIn!, record: overlap.id })],
    missing: [],
    sleeve: null,
    cautions: [],
    plan: {
      stubs: null,
      gapIn: byRule(0, 'patch-gauge', ['tube-not-cut']),
      gapOtherIn: byRule(0, 'patch-gauge', ['tube-not-cut']),
      openingIn: null,
      parts: [plate],
      rosettes: null,
      insertion: [],
      seamClocks: [],
      weldIn: fromCuts(2 * (along + around), ['outline-taken-as-a-rectangle']),
      endWeldLbf: null,
      addedLb: plate.weightLb,
      fitUp: fitUpFor('patch', [plate], null),
    },
  };
};
