import type { JobRecord } from '../job/jobSchema.ts';
import { byStamp } from '../job/stampOrder.ts';
import type { LoadPath } from '../loadPath/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Exercise, Truth } from './exercise.ts';
import { type LookWay, reveal, type Seen } from './look.ts';
import { type Assessed, type Marked, mark } from './mark.ts';

/** Looks a trainee has: three for each finding and eight more. A starting value of ours. */
export const looksAllowed = (truth: Truth): number => 3 * truth.findings.length + 8;

/** One look of a trainee and what it showed. */
export interface LookTaken extends LookWay {
  readonly record: string;
  /** How often this was looked at in this way before. */
  readonly turn: number;
  readonly seen: readonly Seen[];
  /** Beyond the number allowed: nothing is shown any more. */
  readonly spent: boolean;
}

/** Every look ever entered, earliest first, withdrawn ones too: a look taken is taken. */
export const looksTaken = (
  exercise: Exercise,
  truss: Truss,
  records: readonly JobRecord[],
): readonly LookTaken[] => {
  const allowed = looksAllowed(exercise.truth);
  const before = new Map<string, number>();
  return records
    .filter((r) => r.kind === 'look')
    .toSorted(byStamp)
    .map(({ id, of, method, finishRemoved }, k): LookTaken => {
      const way = { of, method, finishRemoved };
      const key = JSON.stringify(way);
      const turn = before.get(key) ?? 0;
      before.set(key, turn + 1);
      const spent = k >= allowed;
      return { ...way, record: id, turn, spent, seen: spent ? [] : reveal(exercise, truss, way, turn) };
    });
};

/** Why a look was wasted: again in the same way, a bare-metal method over the finish, or where nothing led to. */
export type Waste = 'again' | 'finishOn' | 'offPath' | 'spent';

/** Skills a round is marked by, each by itself: there is no single grade. */
export const roundSkills = ['found', 'calls', 'looks', 'order', 'sizes'] as const;
export type RoundSkill = (typeof roundSkills)[number];

export interface Share {
  readonly got: number;
  readonly of: number;
}

export interface Round {
  readonly marked: Marked;
  readonly looks: readonly LookTaken[];
  readonly wasted: readonly { readonly look: LookTaken; readonly why: Waste }[];
  /** Finish taken off something that had not been looked at with the finish on. */
  readonly strippedFirst: readonly string[];
  readonly shares: Readonly<Record<RoundSkill, Share>>;
}

/** How many rows of the look-next list after a hurt tube count as led to. */
const LED_TO = 8;

/**
 * What the load path leads to: all that meets at the blow, and beside each hurt tube the first of its look-next list,
 * as `assess` of the truth gives it.
 */
const ledTo = (truss: Truss, truth: Truth, path: LoadPath): ReadonlySet<string> => {
  const { blow, findings } = truth;
  const atBlow = truss.members.filter(({ from, to }) => from === blow?.cluster || to === blow?.cluster);
  const hurt = findings.map((f) => f.of);
  const next = hurt.flatMap((id) => (path.byMember[id] ?? []).slice(0, LED_TO).map((row) => row.id));
  const members = new Set([...atBlow.map((m) => m.id), ...hurt, ...next]);
  const ends = truss.members.filter((m) => members.has(m.id)).flatMap((m) => [m.from, m.to]);
  return new Set([...members, ...ends]);
};

const wasteOf = (look: LookTaken, led: ReadonlySet<string>): Waste | null => {
  if (look.spent) return 'spent';
  if (look.turn > 0) return 'again';
  const bareOnly = look.method === 'penetrant' || look.method === 'magneticParticle';
  if (bareOnly && !look.finishRemoved) return 'finishOn';
  return led.has(look.of) ? null : 'offPath';
};

/**
 * A round of hidden damage marked: found and missed by `mark`, looks wasted by what the load path leads to, order by
 * "look first, then take the finish off" (AC 43.13-1B, 5-18g).
 *
 * @param trainee  `assess` of the trainee's job
 * @param truth    `assess` of the job that has every finding
 */
export const scoreRound = (
  exercise: Exercise,
  truss: Truss,
  records: readonly JobRecord[],
  trainee: Assessed,
  truth: Assessed & { readonly loadPath: LoadPath },
): Round => {
  const marked = mark(trainee, truth);
  const looks = looksTaken(exercise, truss, records);
  const led = ledTo(truss, exercise.truth, truth.loadPath);
  const wasted = looks.flatMap((look) => {
    const why = wasteOf(look, led);
    return why === null ? [] : [{ look, why }];
  });
  const stripped = looks.filter((look, k) => {
    const first = looks.findIndex((other) => other.of === look.of && other.finishRemoved) === k;
    return look.finishRemoved && first;
  });
  const strippedFirst = stripped
    .filter((look) => !looks.slice(0, looks.indexOf(look)).some((other) => other.of === look.of))
    .map((look) => look.of);
  const there = marked.hits.length + marked.otherKind.length + marked.misses.length;
  const calls = marked.hits.length + marked.otherKind.length + marked.falseCalls.length;
  const share = (got: number, of: number): Share => ({ got, of });
  return {
    marked,
    looks,
    wasted,
    strippedFirst,
    shares: {
      found: share(marked.hits.length + marked.otherKind.length, there),
      calls: share(marked.hits.length, calls),
      looks: share(looks.length - wasted.length, looks.length),
      order: share(stripped.length - strippedFirst.length, stripped.length),
      sizes: share(marked.sizes.filter((s) => s.right).length, marked.sizes.length),
    },
  };
};

/** Nothing left out: every share that was asked is whole, and something was found. */
export const fullMarks = (round: Round): boolean =>
  round.shares.found.of > 0 && Object.values(round.shares).every(({ got, of }) => got === of);
