import { type Figure, figure } from '../base/figure.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import { deformations } from '../statics/frame.ts';
import { memberForce } from '../statics/memberForce.ts';
import type { Truss } from '../truss/result.ts';
import { lengthens, type OpenFrame, pushApart } from './flexibility.ts';
import type { Spread } from './result.ts';

/** The frame as it stands (tubes open) and as it will be (all whole). */
export interface Stiffness {
  readonly now: OpenFrame;
  readonly whole: OpenFrame;
}

const REF = { kind: 'computed', ref: 'frame stiffness as held' } as const;
const NOTHING = new Float64Array(12);
const WEIGHTLESS: Vec3 = [0, 0, 0];

/** Force at which the first tube reaches yield under a push alone: its yield stress over its stress per lbf. */
export const firstYield = (
  truss: Truss,
  { frame, open }: OpenFrame,
  perLbf: Float64Array,
): { readonly member: string; readonly lbf: number } | undefined => {
  let first: { member: string; lbf: number } | undefined;
  for (const { id, section } of truss.members) {
    const k = frame.memberIndex.get(id);
    if (k === undefined || open.has(id)) continue;
    const { stressPsi } = memberForce(frame.members[k]!, section, perLbf, NOTHING, WEIGHTLESS);
    const lbf = section.yieldPsi / stressPsi;
    if (lbf > 0 && lbf < (first?.lbf ?? Number.POSITIVE_INFINITY)) first = { member: id, lbf };
  }
  return first;
};

/** What goes back when the spreader comes out, and the force in the tubes that were open: the push undone on the whole frame. */
const holdOf = (
  { whole, now }: Stiffness,
  at: (id: string) => Vec3,
  one: Spread,
  forceLbf: number,
): NonNullable<Spread['hold']> => {
  const moves = pushApart(whole, at, one.from, one.to);
  const back = Math.abs(forceLbf * lengthens(whole.frame, moves, at, one.from, one.to));
  const tacks = [...now.open].sort().map((member) => {
    const m = whole.frame.members[whole.frame.memberIndex.get(member)!]!;
    const axial = -forceLbf * m.stiffness[0]! * deformations(m, moves)[0]!;
    return { member, axialLbf: figure(axial, 'lbf', REF, ['elastic', 'all-tacks-rigid']) };
  });
  return { comesBackIn: figure(back, 'in', REF, ['elastic', 'all-tacks-rigid']), tacks };
};

const setOf = (
  truss: Truss,
  now: OpenFrame,
  perLbf: Float64Array,
  opensPerLbf: number,
  one: Spread,
  pushes: readonly RecordOf<'progress'>[],
): Pick<Spread, 'set'> => {
  const sign = Math.sign(one.amountIn.value);
  const target = one.foundIn.value + one.amountIn.value;
  const yields = firstYield(truss, now, perLbf);
  const seen = pushes.findLast(
    ({ spread }) =>
      spread !== undefined &&
      [`${spread.from} ${spread.to}`, `${spread.to} ${spread.from}`].includes(`${one.from} ${one.to}`),
  );
  const spring: Figure | undefined = seen?.spread
    ? figure(Math.abs(seen.spread.pushedIn - seen.spread.leftIn), 'in', { kind: 'measured', ref: seen.id })
    : yields &&
      figure(yields.lbf * opensPerLbf, 'in', REF, ['elastic', 'nothing-locked-in', 'push-alone-yields']);
  if (!spring) return {};
  return {
    set: {
      springIn: spring,
      pushToIn: figure(target + sign * spring.value, 'in', spring.basis, [
        ...spring.assumed,
        'springs-back-as-before',
      ]),
      ...(yields
        ? {
            yields: {
              member: yields.member,
              forceLbf: figure(yields.lbf, 'lbf', REF, ['elastic', 'nothing-locked-in']),
            },
          }
        : {}),
    },
  };
};

/**
 * The order of several: each time the one that, set to its target, leaves the least of all (weighted squares); the
 * others change with it by the flexibility. One that an earlier one brings within two standard deviations is named so.
 * Common practice, no source (one correction at a time, the neighbours read again); the rule of least remainder is ours.
 */
const inOrder = (list: readonly Spread[], coupled: (i: number, j: number) => number): readonly Spread[] => {
  const left = list.map((s) => s.amountIn.value);
  const std = list.map((s) => s.amountIn.std || 1 / 32);
  const remaining = new Set(list.keys());
  const settled = new Map<number, number>();
  const path: number[] = [];
  const after = (i: number, j: number): number => left[j]! - left[i]! * coupled(i, j);
  while (remaining.size > 0) {
    let best = { i: -1, rest: Number.POSITIVE_INFINITY };
    for (const i of remaining) {
      let rest = 0;
      for (const j of remaining) rest += (after(i, j) / std[j]!) ** 2;
      if (rest < best.rest - 1e-9) best = { i, rest };
    }
    const { i } = best;
    path.push(i);
    remaining.delete(i);
    const now = [...remaining].map((j) => [j, after(i, j)] as const);
    for (const [j, v] of now) {
      left[j] = v;
      if (Math.abs(v) > 2 * std[j]!) continue;
      remaining.delete(j);
      settled.set(j, i);
    }
  }
  const order = [...path, ...[...settled.keys()].sort((a, b) => a - b)];
  return order.map((i, k) => ({
    ...list[i]!,
    order: k + 1,
    ...(settled.has(i) ? { settledBy: list[settled.get(i)!]!.target } : {}),
  }));
};

/** Most distances that an order is worked for. */
const MOST_ORDERED = 60;

/**
 * Each distance to spread or draw with both jobs: *hold* (left in until tacked) and *set* (pushed and let go), and its
 * place in the order. Forces are elastic estimates of the push alone on the frame as it is held now.
 */
export const withJobs = (
  truss: Truss,
  stiffness: Stiffness,
  list: readonly Spread[],
  pushes: readonly RecordOf<'progress'>[],
): readonly Spread[] => {
  const places = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const at = (id: string): Vec3 => places.get(id)!;
  const { now } = stiffness;
  const worked = list.slice(0, MOST_ORDERED);
  const perLbf = worked.map((s) => pushApart(now, at, s.from, s.to));
  const opens = worked.map((s, k) => lengthens(now.frame, perLbf[k]!, at, s.from, s.to));
  const told = worked.map((s, k): Spread => {
    if (!(opens[k]! > 0)) return s;
    return {
      ...s,
      forceLbf: figure(s.amountIn.value / opens[k]!, 'lbf', REF, ['elastic', 'no-friction']),
      hold: holdOf(stiffness, at, s, s.amountIn.value / opens[k]!),
      ...setOf(truss, now, perLbf[k]!, opens[k]!, s, pushes),
    };
  });
  const coupled = (i: number, j: number): number =>
    opens[i]! > 0
      ? lengthens(now.frame, perLbf[i]!, at, worked[j]!.from, worked[j]!.to) / opens[i]!
      : i === j
        ? 1
        : 0;
  return [...inOrder(told, coupled), ...list.slice(MOST_ORDERED)];
};
