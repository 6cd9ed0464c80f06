import type { Seeded } from '../base/seeded.ts';
import { seeded } from '../base/seeded.ts';
import { dot, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Damage, Finding } from '../job/jobSchema.ts';
import type { LoadCase, Model } from '../job/modelSchema.ts';
import { capacityLbf, plasticMoment } from '../statics/capacity.ts';
import type { Frame } from '../statics/frame.ts';
import { heldBySetup } from '../statics/held.ts';
import { balanceByInertia } from '../statics/inertiaRelief.ts';
import { memberForce } from '../statics/memberForce.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import { clockDirection, clockFace } from '../truss/place.ts';
import type { Member, Truss } from '../truss/result.ts';
import { expandTruss } from '../truss/truss.ts';
import type { Blow, Exercise, Level, Task, Truth } from './exercise.ts';
import { farHalf, movedShape } from './movedShape.ts';

/** What an instructor may fix; the rest comes from the seed. */
export interface CrashAsk {
  readonly seed: string;
  readonly level: Level;
  /** Left out: hidden damage. */
  readonly task?: Task;
  readonly hintsLocked?: boolean;
  readonly cluster?: string;
  readonly direction?: Vec3;
  /** Left out: what the level wants hurt. */
  readonly energyInLbf?: number;
}

export type Crash =
  | { readonly kind: 'made'; readonly exercise: Exercise }
  /** Forces cannot be followed through this truss: it can move without straining a tube. */
  | { readonly kind: 'movesFreely'; readonly clusters: readonly string[] };

/** Tubes that the blow overloads, fewest and most; starting values of ours. */
const hurtBy = { 1: [2, 3], 2: [3, 4], 3: [4, 6] } as const satisfies Record<Level, readonly number[]>;
/**
 * Shortening beyond the buckling load per unit of overload, in elastic shortenings, and the deepest bend as a share of the
 * tube; starting values of ours. Where a trammel is to be practised the blow lasts longer: what it moves must be measurable.
 */
const severity = {
  hidden: { ductility: 3, deepest: 1 / 16 },
  trammel: { ductility: 20, deepest: 1 / 10 },
} as const satisfies Record<Task, unknown>;
/** Record stamp of what nobody entered. */
const stamp = { by: 'exercise', at: '2000-01-01T00:00:00Z', device: 'exercise' } as const;

const blows: readonly Vec3[] = [
  [0, 0, 1],
  [1, 0, 1],
  [1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [1, 1, 1],
  [1, -1, 1],
];

interface Strained {
  readonly member: Member;
  /** Share of what the tube takes per lbf of the blow: axial and bending together. */
  readonly perLbf: number;
  readonly axial: number;
  readonly bendingShare: number;
  /** The end that bends more: `from` or `to`. */
  readonly worse: 'from' | 'to';
}

/**
 * Axial force and bending of every tube under a unit blow that the truss's own inertia answers.
 *
 *   share = |N|/N_cap + M/M_p
 *
 * Source: the linear interaction is common practice, no source.
 */
const strainedBy = (
  truss: Truss,
  frame: Frame,
  loadCase: LoadCase,
  cluster: string,
  direction: Vec3,
): { readonly tubes: readonly Strained[]; readonly giveInPerLbf: number } | null => {
  const loads = new Float64Array(frame.held.length);
  loads.set(direction, frame.clusterIndex.get(cluster)! * 6);
  const balanced = balanceByInertia(truss, frame, loadCase, loads);
  if (!balanced) return null;
  const u = frame.solve(balanced);
  const none = new Float64Array(12);
  const byId = new Map(truss.members.map((m) => [m.id, m]));
  const tubes = frame.members.flatMap((m): Strained[] => {
    const member = byId.get(m.id);
    if (!member) return [];
    const { axialLbf, momentFromInLbf, momentToInLbf } = memberForce(m, member.section, u, none, [0, 0, 0]);
    const [from, to] = [Math.hypot(...momentFromInLbf), Math.hypot(...momentToInLbf)];
    const axial = Math.abs(axialLbf) / capacityLbf(member, axialLbf > 0 ? 'tension' : 'compression');
    const bending = Math.max(from, to) / plasticMoment(member.section);
    const perLbf = axial + bending;
    return [
      {
        member,
        perLbf,
        axial: axialLbf,
        bendingShare: perLbf > 0 ? bending / perLbf : 0,
        worse: from >= to ? 'from' : 'to',
      },
    ];
  });
  return { tubes, giveInPerLbf: balanced.reduce((s, f, k) => s + f * u[k]!, 0) };
};

const sixteenth = (valueIn: number): number => Math.round(valueIn * 16) / 16;
const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

const found = (damage: Damage, of: string, more: object): Finding =>
  ({ kind: 'finding', id: '', ...stamp, damage, of, origin: 'thisAccident', ...more }) as Finding;

/**
 * The bend of a tube pressed past its load: e from the shortening it takes up.
 *
 *   bow  δ = π²e²/4L     kink at a (b = L − a)  δ = e²L/2ab
 */
const bend = (
  { member, bendingShare, worse }: Strained,
  over: number,
  chance: Seeded,
  task: Task,
): Finding => {
  const { ductility, deepest } = severity[task];
  const { lengthIn: length, section } = member;
  const cap = capacityLbf(member, 'compression') / (section.elasticPsi * section.areaIn2);
  const shortIn = ductility * Math.min(1, over - 1) * cap * length * (0.8 + 0.4 * chance.share());
  const clock = chance.whole(1, 12);
  const nearEnd = bendingShare > 0.5;
  const share = nearEnd ? 0.15 + 0.15 * chance.share() : 0.4 + 0.2 * chance.share();
  const atIn = sixteenth(length * share);
  const place = { from: nearEnd ? member[worse] : member.from, atIn };
  if (nearEnd || (over > 1.5 && chance.share() < 0.5)) {
    const [a, b] = [atIn, length - atIn];
    const depthIn = between(0.125, sixteenth(Math.sqrt((2 * a * b * shortIn) / length)), Math.min(a, b) / 4);
    return found('kink', member.id, { place, clock, depthIn });
  }
  const depthIn = between(0.125, sixteenth((2 / Math.PI) * Math.sqrt(length * shortIn)), length * deepest);
  return found('bow', member.id, { place, clock, depthIn, shape: 'smooth' });
};

const toeCrack = (member: Member, end: 'from' | 'to', chance: Seeded): Finding =>
  found('crack', member.id, {
    place: { from: member[end], atIn: sixteenth(Math.min(member.lengthIn / 4, 0.75 * member.section.odIn)) },
    clock: chance.whole(1, 12),
    crackIn: chance.whole(2, 8) / 16,
    where: 'weldToe',
  });

/** The dent where the truss was struck: on the stoutest tube there, on the side the blow came from. */
const dentAt = (truss: Truss, blow: Pick<Blow, 'cluster' | 'direction'>, chance: Seeded): Finding => {
  const here = truss.members.filter(({ from, to }) => from === blow.cluster || to === blow.cluster);
  const member = here.toSorted((a, b) => b.section.odIn - a.section.odIn || (a.id < b.id ? -1 : 1))[0]!;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const face = clockFace([at.get(member.from)!, at.get(member.to)!], member);
  const towards = (clock: number): number => -dot(clockDirection(face, clock), blow.direction);
  const clock = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].reduce((best, c) =>
    towards(c) > towards(best) + 1e-9 ? c : best,
  );
  const od = member.section.odIn;
  const depthIn = Math.max(2, Math.round(od * (0.08 + 0.12 * chance.share()) * 32)) / 32;
  return found('dent', member.id, {
    place: { from: blow.cluster, atIn: sixteenth(member.lengthIn * (0.2 + 0.2 * chance.share())) },
    clock,
    depthIn,
    alongIn: sixteenth(od * (0.8 + chance.share())),
    widthIn: sixteenth(od * (0.4 + 0.3 * chance.share())),
    widthBy: 'across',
    corner: 'smooth',
  });
};

const rusted = (truss: Truss, taken: ReadonlySet<string>, chance: Seeded): readonly Finding[] => {
  const low = truss.members.filter((m) => m.role === 'lowerLongeron' && !taken.has(m.id));
  if (low.length === 0) return [];
  const member = chance.pick(low);
  const wallLeftIn = Math.round(member.section.wallIn * (0.6 + 0.2 * chance.share()) * 1000) / 1000;
  const place = { from: member.to, atIn: sixteenth(Math.min(3, member.lengthIn / 4)) };
  return [
    found('thinned', member.id, { origin: 'older', wallLeftIn, cause: 'rust', place, clock: 6, alongIn: 2 }),
  ];
};

const inOrder = (truss: Truss, findings: readonly Finding[]): readonly Finding[] => {
  const place = new Map([...truss.members, ...truss.clusters].map(({ id }, k) => [id, k]));
  return findings
    .toSorted((a, b) => place.get(a.of)! - place.get(b.of)! || (a.damage < b.damage ? -1 : 1))
    .map((f, k) => ({ ...f, id: `truth-${String(k + 1).padStart(2, '0')}` }));
};

/**
 * A crash on any model: a blow at a cluster, followed through the truss by the same statics as every load case and
 * answered by its own inertia; the tubes it overloads bow, kink or crack, the struck one is dented, clusters go where
 * the shortened tubes pull them. Chance, from the seed: where and which way the blow, each tube's resistance ± 15 %,
 * places and clock positions.
 *
 *   F where the n-th most used tube reaches its load,  E = ½ F² c,  c = give of the truss at the blow per lbf
 *
 * Assumes: elastic up to the overload, no second path followed after the first tube gives; the energy is what the truss
 * has stored by then. A picture to learn from, not a forecast of a crash.
 * Source: methods sections 1 (inertia relief) and 3; the damage rules are starting values of ours.
 */
export const crash = (model: Model, ask: CrashAsk): Crash => {
  const truss = expandTruss(model);
  const first = crashOnce(model, truss, ask, ask.seed);
  if (ask.task !== 'trammel') return first;
  let best = first;
  for (let k = 1; k < TRIES && largestMove(best) < WORTH_MEASURING_IN; k++) {
    const next = crashOnce(model, truss, ask, `${ask.seed} ${k}`);
    if (largestMove(next) > largestMove(best)) best = next;
  }
  return best;
};

/** A trammel is practised on what it can show: of some blows the first that moves a cluster this far, else the farthest. */
const WORTH_MEASURING_IN = 1 / 8;
const TRIES = 12;

const largestMove = (made: Crash): number =>
  made.kind === 'made' ? Math.max(0, ...made.exercise.truth.moves.map((m) => Math.hypot(...m.moveIn))) : 0;

const crashOnce = (model: Model, truss: Truss, ask: CrashAsk, seed: string): Crash => {
  const frame = prepareFrame(truss, heldBySetup(truss, model, 'free'));
  if (!isFrame(frame)) return { kind: 'movesFreely', clusters: frame.clusters.slice(0, 6).map((c) => c.id) };
  const chance = seeded(`${seed} ${ask.level}`);
  const meets = (id: string): number =>
    truss.members.filter(({ from, to }) => from === id || to === id).length;
  const struck = truss.clusters.filter(({ id }) => meets(id) >= 3);
  const drawn = chance.pick(struck.length > 0 ? struck : truss.clusters.filter(({ id }) => meets(id) > 0));
  const cluster = truss.clusters.find(({ id }) => id === ask.cluster && meets(id) > 0) ?? drawn;
  const way = chance.pick(blows);
  const direction = unit(ask.direction && Math.hypot(...ask.direction) > 0 ? ask.direction : way);
  const weights = model.loadCases.find((one) => (one.weights?.length ?? 0) > 0)?.weights ?? [];
  const loadCase: LoadCase = { id: 'blow', name: 'blow', gravity: [0, 0, 0], loads: [], weights };
  const strained = strainedBy(truss, frame, loadCase, cluster.id, direction);
  if (!strained) return { kind: 'movesFreely', clusters: [] };

  const ranked = strained.tubes
    .map((tube) => ({ tube, perLbf: tube.perLbf / (0.85 + 0.3 * chance.share()) }))
    .sort((a, b) => b.perLbf - a.perLbf || (a.tube.member.id < b.tube.member.id ? -1 : 1));
  const [fewest, most] = hurtBy[ask.level];
  const wanted = Math.min(ranked.length, chance.whole(fewest, most));
  const give = strained.giveInPerLbf;
  const least = ranked[wanted - 1]!.perLbf;
  const forceLbf =
    ask.energyInLbf === undefined ? 1.02 / least : Math.sqrt((2 * Math.max(0, ask.energyInLbf)) / give);
  const blow: Blow = {
    cluster: cluster.id,
    direction,
    forceLbf: Math.round(forceLbf),
    energyInLbf: Math.round((forceLbf ** 2 * give) / 2),
  };
  // a heavy blow named by hand overloads half the truss: no more are drawn than can be learnt from
  const over = ranked.slice(0, 2 * most).filter(({ perLbf }) => perLbf * forceLbf >= 1);
  const broken = over.map(({ tube, perLbf }) =>
    tube.axial > 0 && tube.bendingShare <= 0.5
      ? toeCrack(tube.member, tube.worse, chance)
      : bend(tube, perLbf * forceLbf, chance, ask.task ?? 'hidden'),
  );
  const dent = dentAt(truss, blow, chance);
  const next = ranked[over.length]?.tube;
  const more = ask.level >= 2 && next ? [toeCrack(next.member, next.worse, chance)] : [];
  const taken = new Set([...broken, dent, ...more].map((f) => f.of));
  const old = ask.level === 3 ? rusted(truss, taken, chance) : [];
  const findings = inOrder(truss, [...broken, dent, ...more, ...old]);
  const covered = (f: Finding): boolean => f.damage === 'crack' && (ask.level > 1 || chance.share() < 0.5);
  return {
    kind: 'made',
    exercise: {
      version: 1,
      task: ask.task ?? 'hidden',
      seed: ask.seed,
      level: ask.level,
      hintsLocked: ask.hintsLocked ?? false,
      truth: truthOf(
        truss,
        frame,
        findings,
        blow,
        findings.filter(covered).map((f) => f.id),
      ),
    },
  };
};

const truthOf = (
  truss: Truss,
  frame: Frame,
  findings: readonly Finding[],
  blow: Blow | undefined,
  underFinish: readonly string[],
): Truth => {
  const middle = truss.clusters.find((c) => c.id === (blow?.cluster ?? endOf(truss, findings[0])));
  const still = farHalf(truss, middle?.at ?? [0, 0, 0]);
  const moves = movedShape(truss, frame, findings, still);
  return { ...(blow ? { blow } : {}), findings, moves, underFinish };
};

const endOf = (truss: Truss, finding: Finding | undefined): string | undefined =>
  truss.members.find((m) => m.id === finding?.of)?.from ?? finding?.of;

/**
 * The findings of a job as an exercise: what a person found becomes what is hidden. Notes, photos and names stay behind;
 * a bend without a size and what names no part of the truss are left out.
 *
 * @param blow  where the mishap record says that it was struck
 */
export const exerciseFrom = (
  model: Model,
  found: readonly Finding[],
  ask: Pick<CrashAsk, 'seed' | 'level' | 'hintsLocked' | 'task'>,
  blow?: { readonly cluster: string; readonly direction: Vec3 },
): Crash | { readonly kind: 'nothingFound' } => {
  const truss = expandTruss(model);
  const frame = prepareFrame(truss, heldBySetup(truss, model, 'free'));
  if (!isFrame(frame)) return { kind: 'movesFreely', clusters: frame.clusters.slice(0, 6).map((c) => c.id) };
  const known = new Set([...truss.members, ...truss.clusters].map(({ id }) => id));
  const usable = found.filter(
    (f) => known.has(f.of) && !((f.damage === 'bow' || f.damage === 'kink') && f.depthIn === undefined),
  );
  if (usable.length === 0) return { kind: 'nothingFound' };
  const cleaned = usable.map((f): Finding => {
    const { note: _, typed: __, replaces: ___, withdraws: ____, ...rest } = f;
    return { ...rest, ...stamp } as Finding;
  });
  const findings = inOrder(truss, cleaned);
  const struck =
    blow && known.has(blow.cluster)
      ? {
          cluster: blow.cluster,
          direction: unit(sub(blow.direction, [0, 0, 0])),
          forceLbf: 0,
          energyInLbf: 0,
        }
      : undefined;
  const cracks = findings.filter((f) => f.damage === 'crack' && ask.level > 1).map((f) => f.id);
  const { seed, level, hintsLocked = false, task = 'hidden' } = ask;
  const truth = truthOf(truss, frame, findings, struck, cracks);
  return { kind: 'made', exercise: { version: 1, task, seed, level, hintsLocked, truth } };
};
