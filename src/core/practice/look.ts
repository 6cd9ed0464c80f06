import { seeded } from '../base/seeded.ts';
import type { Finding, Look } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import type { Exercise, Truth } from './exercise.ts';
import type { MethodRuleId } from './rules.ts';

export type Method = Look['method'];

/** How a trainee looks. `other` is straight edge and caliper. */
export type LookWay = Pick<Look, 'of' | 'method' | 'finishRemoved'>;

/** One thing a look shows. Sizes carry the reading error of the method. */
export type Seen =
  | {
      readonly kind: 'damage';
      /** As a trainee would write it down: sizes as read; record fields still the truth's. */
      readonly finding: Finding;
      readonly stdIn: number | null;
      readonly by: MethodRuleId;
    }
  /** A band at a sharp corner of a weld that is no crack. */
  | { readonly kind: 'band'; readonly by: MethodRuleId };

interface Shows {
  readonly by: MethodRuleId;
  /** One standard deviation of a size; null: seen, not measured. */
  readonly stdIn: number | null;
}

/** A bend that sighting along the tube shows: share of its length. Common practice, no source. */
const SIGHTED = 1 / 150;

type Facts = { readonly lengthIn: number; readonly covered: boolean; readonly bare: boolean };

const outside = new Set<Finding['damage']>(['kink', 'dent', 'hole', 'break', 'other']);

const showing: { readonly [M in Method]: (f: Finding, facts: Facts) => Shows | null } = {
  eye: (f, { lengthIn }) =>
    outside.has(f.damage) || (f.damage === 'bow' && (f.depthIn ?? 0) >= SIGHTED * lengthIn)
      ? { by: 'eye-sights-bends', stdIn: 1 / 16 }
      : null,
  other: (f) =>
    outside.has(f.damage) || f.damage === 'bow' || f.damage === 'oval'
      ? { by: 'straight-edge-measures', stdIn: 1 / 64 }
      : null,
  magnifier: (f, { covered, bare }) =>
    (f.damage === 'crack' && (bare || !covered)) || outside.has(f.damage)
      ? { by: 'magnifier-shows-open-cracks', stdIn: 1 / 32 }
      : null,
  penetrant: (f, { bare }) =>
    f.damage === 'crack' && bare ? { by: 'penetrant-needs-bare-metal', stdIn: 1 / 64 } : null,
  magneticParticle: (f, { bare }) =>
    f.damage === 'crack' && bare ? { by: 'magnetic-needs-bare-metal', stdIn: 1 / 64 } : null,
  ultrasonic: (f) => (f.damage === 'thinned' ? { by: 'ultrasonic-reads-wall', stdIn: 0.001 } : null),
  borescope: (f) => (f.damage === 'thinned' ? { by: 'borescope-shows-rust', stdIn: null } : null),
};

/** Does this way of looking show this finding at all? */
export const showsIt = (
  truth: Truth,
  truss: Truss,
  finding: Finding,
  way: Omit<LookWay, 'of'>,
): Shows | null => {
  const lengthIn = truss.members.find((m) => m.id === finding.of)?.lengthIn ?? 0;
  return showing[way.method](finding, {
    lengthIn,
    covered: truth.underFinish.includes(finding.id),
    bare: way.finishRemoved,
  });
};

/** Sizes that are read with the method's error; the others are read off as they are. */
const readSizes = new Set(['depthIn', 'crackIn', 'wallLeftIn', 'largestIn', 'smallestIn']);

/** A normal deviate from two shares. Source: G. E. P. Box & M. E. Muller, Ann. Math. Stat. 29 (1958) 610. */
const normal = (a: number, b: number): number => Math.sqrt(-2 * Math.log(1 - a)) * Math.cos(2 * Math.PI * b);

const asRead = (finding: Finding, stdIn: number | null, seed: string): Finding => {
  const chance = seeded(seed);
  const step = finding.damage === 'thinned' ? 1000 : 64;
  const read = Object.entries(finding).flatMap(([field, size]): [string, unknown][] => {
    if (!readSizes.has(field) || typeof size !== 'number') return [[field, size]];
    if (stdIn === null) return [];
    // two deviations at most: what a trainee reads can be held against the method
    const off = Math.max(-2, Math.min(2, normal(chance.share(), chance.share()))) * stdIn;
    return [[field, Math.max(1, Math.round((size + off) * step)) / step]];
  });
  return Object.fromEntries(read) as unknown as Finding;
};

/**
 * What one look shows. The same exercise, thing, method and turn give the same reading; looking again gives another.
 *
 * @param turn  how often this was looked at in this way before: 0 the first time
 */
export const reveal = (exercise: Exercise, truss: Truss, way: LookWay, turn: number): readonly Seen[] => {
  const { truth, seed } = exercise;
  const seen = truth.findings
    .filter((f) => f.of === way.of)
    .flatMap((f): Seen[] => {
      const shows = showsIt(truth, truss, f, way);
      if (!shows) return [];
      const finding = asRead(f, shows.stdIn, `${seed} ${f.id} ${way.method} ${turn}`);
      return [{ kind: 'damage', finding, stdIn: shows.stdIn, by: shows.by }];
    });
  const isCluster = truss.clusters.some((c) => c.id === way.of);
  const band =
    way.method === 'magneticParticle' && way.finishRemoved && isCluster
      ? seeded(`${seed} ${way.of} band`).share() < 0.4
      : false;
  return band ? [...seen, { kind: 'band', by: 'corners-show-bands' }] : seen;
};

/** The ways of looking that show a finding, plainest first: every finding of an exercise has one. */
export const waysThatShow = (truth: Truth, truss: Truss, finding: Finding): readonly Omit<LookWay, 'of'>[] =>
  (['eye', 'other', 'magnifier', 'penetrant', 'magneticParticle', 'ultrasonic', 'borescope'] as const)
    .flatMap((method) => [false, true].map((finishRemoved) => ({ method, finishRemoved })))
    .filter((way) => showsIt(truth, truss, finding, way) !== null);
