import { seeded } from '../base/seeded.ts';
import { add, distance, scale, type Vec3 } from '../base/vec3.ts';
import type { JobRecord, Reading, RecordOf } from '../job/jobSchema.ts';
import { byStamp } from '../job/stampOrder.ts';
import type { Frame } from '../statics/frame.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import { lengthens, openFrame, pushApart } from '../trammel/flexibility.ts';
import { firstYield } from '../trammel/pushes.ts';
import type { Target } from '../trammel/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Exercise } from './exercise.ts';

/** Scatter of the virtual trammel, one standard deviation. Starting value of ours. */
export const TRAMMEL_STD_IN = 1 / 64;
/** What a spread pair is to come back to; the exercise's own aim, no limit of a truss. */
export const AIM_IN = 1 / 16;

type Push = NonNullable<RecordOf<'progress'>['spread']>;
export type Places = ReadonlyMap<string, Vec3>;

/** What a push or pull on the hidden truss gave. */
export interface Pushed {
  readonly beforeIn: number;
  readonly pushedIn: number;
  readonly leftIn: number;
  readonly forceLbf: number;
  /** Distance it springs back, as the frame's stiffness has it up to first yield, ± 10 % by the seed. */
  readonly springIn: number;
}

const moved = (truss: Truss, exercise: Exercise): Places => {
  const moves = new Map(exercise.truth.moves.map((m) => [m.id, m.moveIn]));
  return new Map(truss.clusters.map((c) => [c.id, add(c.at, moves.get(c.id) ?? [0, 0, 0])]));
};

const unitPush = (truss: Truss, frame: Frame | MovesFreely, from: string, to: string) => {
  const now = isFrame(frame) ? openFrame(frame, []) : undefined;
  const drawn = new Map(truss.clusters.map((c) => [c.id, c.at]));
  if (!now || from === to || !drawn.has(from) || !drawn.has(to)) return null;
  const at = (id: string): Vec3 => drawn.get(id)!;
  const perLbf = pushApart(now, at, from, to);
  const opens = lengthens(now.frame, perLbf, at, from, to);
  return opens > 0 ? { now, perLbf, opens } : null;
};

const isSpread = (r: JobRecord): r is RecordOf<'progress'> & { spread: Push } =>
  r.kind === 'progress' && r.spread !== undefined;

/** Where the clusters truly are: the hidden moves, and what every push so far has left. */
export const truePlaces = (
  exercise: Exercise,
  truss: Truss,
  frame: Frame | MovesFreely,
  records: readonly JobRecord[],
): Places => {
  let places = moved(truss, exercise);
  for (const { spread } of records.filter(isSpread).toSorted(byStamp)) {
    const push = unitPush(truss, frame, spread.from, spread.to);
    if (!push) continue;
    const by = (spread.leftIn - spread.beforeIn) / push.opens;
    places = new Map(
      [...places].map(([id, at]) => {
        const k = push.now.frame.clusterIndex.get(id)! * 6;
        const u: Vec3 = [push.perLbf[k]!, push.perLbf[k + 1]!, push.perLbf[k + 2]!];
        return [id, add(at, scale(u, by))];
      }),
    );
  }
  return places;
};

/** Distance between two clusters in places. */
export const span = (places: Places, from: string, to: string): number =>
  distance(places.get(from)!, places.get(to)!);

/** Standard normal, from two shares. Source: Box & Muller 1958. */
const normal = (a: number, b: number): number => Math.sqrt(-2 * Math.log(1 - a)) * Math.cos(2 * Math.PI * b);

/**
 * The gap at the far point of a trammel set to `setIn`: + it stands beyond the mark. Read to 1/64, with scatter.
 *
 * @param turn  readings taken before: the same turn gives the same scatter
 */
export const readGap = (
  exercise: Exercise,
  places: Places,
  from: string,
  to: string,
  setIn: number,
  turn: number,
): { readonly setIn: number; readonly missIn: number } => {
  const chance = seeded(`${exercise.seed} ${from} ${to} ${turn}`);
  const scatter = TRAMMEL_STD_IN * normal(chance.share(), chance.share());
  return { setIn, missIn: Math.round((setIn - span(places, from, to) + scatter) * 64) / 64 };
};

/**
 * A pair pushed (or drawn) until it measures `pushedIn`, and let go. Up to first yield all of it springs back.
 *
 *   spring = F_y1 × give,   left = before + max(0, |push| − spring)
 *
 * @returns null where the truss cannot be pushed so
 * Assumes: the push alone; what stays follows the elastic shape of the push. Source: methods sections 1 and 6.
 */
export const pushTo = (
  exercise: Exercise,
  truss: Truss,
  frame: Frame | MovesFreely,
  places: Places,
  pair: { readonly from: string; readonly to: string },
  pushedIn: number,
): Pushed | null => {
  const push = unitPush(truss, frame, pair.from, pair.to);
  if (!push) return null;
  const yields = firstYield(truss, push.now, push.perLbf);
  if (!yields) return null;
  const chance = seeded(`${exercise.seed} ${pair.from} ${pair.to} spring`);
  const springIn = yields.lbf * push.opens * (0.9 + 0.2 * chance.share());
  const beforeIn = span(places, pair.from, pair.to);
  const by = pushedIn - beforeIn;
  const stays = Math.max(0, Math.abs(by) - springIn) * Math.sign(by);
  const forceLbf = Math.min(Math.abs(by), springIn) / push.opens;
  return { beforeIn, pushedIn, leftIn: beforeIn + stays, forceLbf, springIn };
};

/**
 * The lines of the measuring plan that touch an end of a bent tube: what this exercise asks to be read. The whole plan
 * stands on the trammel panel.
 */
export const askedLines = <Line extends { readonly from: string; readonly to: string }>(
  exercise: Exercise,
  truss: Truss,
  plan: readonly Line[],
): readonly Line[] => {
  const bent = new Set(
    exercise.truth.findings.filter((f) => f.damage === 'bow' || f.damage === 'kink').map((f) => f.of),
  );
  const ends = new Set(truss.members.filter((m) => bent.has(m.id)).flatMap((m) => [m.from, m.to]));
  const touching = plan.filter((line) => ends.has(line.from) || ends.has(line.to));
  return touching.length > 0 ? touching : plan;
};

export const trammelSkills = ['readings', 'baseline', 'spreads', 'final'] as const;
export type TrammelSkill = (typeof trammelSkills)[number];

export interface TrammelScore {
  readonly shares: Readonly<Record<TrammelSkill, { readonly got: number; readonly of: number }>>;
  readonly readings: number;
  readonly planned: number;
  /** Pairs pushed or drawn: how far off they were and are. */
  readonly pairs: readonly {
    readonly from: string;
    readonly to: string;
    readonly wasIn: number;
    readonly isIn: number;
    /** Did all the distances come nearer to their targets by it, taken together? */
    readonly helped: boolean;
    /** Read again before the next push, or at the end. */
    readonly readAgain: boolean;
  }[];
  /** Target that is furthest off now. */
  readonly worst: { readonly target: string; readonly offIn: number } | null;
}

const samePair = (r: Reading, s: Pick<Push, 'from' | 'to'>): boolean => {
  const [a, b] = [r.ends[0].cluster, r.ends[1].cluster];
  return (a === s.from && b === s.to) || (a === s.to && b === s.from);
};

/**
 * A trammel round marked: readings against the plan that `assess` made, baseline before the first push, each push by
 * whether it brought the truth nearer and was read again, and where the pairs worked on ended.
 *
 * @param targets  of `assess`, with what each distance is to be
 * @param planned  lines of the plan of `assess`
 */
export const scoreTrammel = (
  exercise: Exercise,
  truss: Truss,
  frame: Frame | MovesFreely,
  records: readonly JobRecord[],
  targets: readonly Target[],
  planned: readonly { readonly from: string; readonly to: string }[],
): TrammelScore => {
  const order = records.toSorted(byStamp);
  const readings = order.filter((r) => r.kind === 'reading');
  const pushes = order.filter(isSpread);
  const off = (places: Places, t: Target): number => span(places, t.from, t.to) - t.targetIn.value;
  const badness = (places: Places): number => targets.reduce((s, t) => s + off(places, t) ** 2, 0);
  const targetOf = (s: Pick<Push, 'from' | 'to'>): number =>
    targets.find((t) => (t.from === s.from && t.to === s.to) || (t.from === s.to && t.to === s.from))
      ?.targetIn.value ?? span(new Map(truss.clusters.map((c) => [c.id, c.at])), s.from, s.to);
  const placesAfter = (n: number): Places => truePlaces(exercise, truss, frame, pushes.slice(0, n));
  const now = placesAfter(pushes.length);
  const first = pushes[0];
  const before = first ? readings.filter((r) => byStamp(r, first) < 0) : readings;
  const baseline = planned.filter((line) => before.some((r) => samePair(r, line)));
  const told = pushes.map(({ spread }, k) => {
    const next = pushes[k + 1];
    const self = pushes[k]!;
    return {
      from: spread.from,
      to: spread.to,
      wasIn: span(placesAfter(k), spread.from, spread.to) - targetOf(spread),
      isIn: span(now, spread.from, spread.to) - targetOf(spread),
      helped: badness(placesAfter(k + 1)) < badness(placesAfter(k)) - 1e-12,
      readAgain: readings.some(
        (r) => samePair(r, spread) && byStamp(r, self) > 0 && (!next || byStamp(r, next) < 0),
      ),
    };
  });
  const worst = targets
    .map((t) => ({ target: t.id, offIn: off(now, t) }))
    .sort((a, b) => Math.abs(b.offIn) - Math.abs(a.offIn) || (a.target < b.target ? -1 : 1))[0];
  const fair = planned.length + pushes.length;
  const pairs = [...new Map(told.map((p) => [`${p.from} ${p.to}`, p])).values()];
  return {
    shares: {
      readings: { got: Math.min(fair, readings.length), of: Math.max(fair, readings.length) },
      baseline: { got: baseline.length, of: planned.length },
      spreads: { got: told.filter((p) => p.helped && p.readAgain).length, of: Math.max(1, told.length) },
      final: {
        got: pairs.filter((p) => Math.abs(p.isIn) <= AIM_IN).length,
        of: Math.max(1, pairs.length),
      },
    },
    readings: readings.length,
    planned: planned.length,
    pairs: told,
    worst: worst ?? null,
  };
};
