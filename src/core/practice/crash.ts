import { seeded } from '../base/seeded.ts';
import { sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';
import type { LoadCase, Model } from '../job/modelSchema.ts';
import type { Frame } from '../statics/frame.ts';
import { heldBySetup } from '../statics/held.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';
import { expandTruss } from '../truss/truss.ts';
import { bend, dentAt, inOrder, rusted, stamp, toeCrack } from './damage.ts';
import type { Blow, Exercise, Level, Task, Truth } from './exercise.ts';
import { farHalf, movedShape } from './movedShape.ts';
import { strainedBy } from './strained.ts';

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

const blows: readonly Vec3[] = [
  [0, 0, 1],
  [1, 0, 1],
  [1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [1, 1, 1],
  [1, -1, 1],
];

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
