import type { Model, Tube } from '../../src/core/job/modelSchema.ts';

/** A repeatable source of numbers 0…1. Source: mulberry32, public domain (T. Ettinger, 2017), from memory. */
export const seededRandom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** The value with everything in it frozen, so that a stage that writes to its input throws. */
export const frozen = <T>(value: T): T => {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  // Typed arrays cannot be frozen; no stage's input holds one that it may write to.
  if (ArrayBuffer.isView(value)) return value;
  for (const inner of value instanceof Map ? value.values() : Object.values(value)) frozen(inner);
  return Object.freeze(value);
};

const tubes: readonly Tube[] = [
  { odIn: 0.5, wallIn: 0.035 },
  { odIn: 0.625, wallIn: 0.035 },
  { odIn: 0.75, wallIn: 0.035 },
  { odIn: 0.75, wallIn: 0.049 },
  { odIn: 0.875, wallIn: 0.035 },
  { odIn: 1, wallIn: 0.049 },
];

export interface BoxWish {
  /** Bays, 1 or more; by the seed 2…6. */
  readonly bays?: number;
  /** `single` = every face has one diagonal (both end rings too: just rigid when pinned);
   * `random` = any word, `crossed` = every face doubly braced, `none` = only longerons, verticals and cross members. */
  readonly bracing?: 'single' | 'random' | 'crossed' | 'none';
  readonly joints?: 'welded' | 'pinned';
  /** The last station merges to a tail post. */
  readonly tailPost?: boolean;
  /** Half-width and height shrink aft, and station points are uneven; a plain box otherwise. */
  readonly tapered?: boolean;
}

/**
 * A random box truss in stock tubes: tapered, with random bay lengths, tubes and bracing, held on 3-2-1 supports
 * (setup `jig`, six freedoms), one load case `tip`. The same seed and wish give the same model.
 */
export const boxModel = (seed: number, wish: BoxWish = {}): Model => {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const bays = wish.bays ?? 2 + Math.floor(random() * 5);
  const tapered = wish.tapered ?? true;
  const how = wish.bracing ?? 'single';
  const side = {
    single: ['rising', 'falling'],
    random: ['rising', 'falling', 'crossed', 'none'],
    crossed: ['crossed'],
    none: ['none'],
  } as const;
  const flat = {
    single: ['toRight', 'toLeft'],
    random: ['toRight', 'toLeft', 'crossed', 'none'],
    crossed: ['crossed'],
    none: ['none'],
  } as const;
  let x = tapered ? between(-20, 20) : 0;
  const stations = Array.from({ length: bays + 1 }, (_, k) => {
    if (k > 0) x += tapered ? between(12, 28) : 20;
    const merged = wish.tailPost && k === bays;
    const shrink = tapered ? 1 - (0.5 * k) / (bays + 1) : 1;
    const off = (size: number): number => (tapered ? between(-size, size) : 0);
    return {
      label: `${k + 1}`,
      stationIn: x,
      upper: { waterLineIn: 12 * shrink + off(1), halfWidthIn: merged ? 0 : 10 * shrink + off(0.5) },
      lower: { waterLineIn: -12 * shrink + off(1), halfWidthIn: merged ? 0 : 9 * shrink + off(0.5) },
    };
  });
  const last = `${bays + 1}`;
  const bracing = stations.map((row, k) => ({
    at: row.label,
    ...(k < bays
      ? {
          left: one(side[how]),
          right: one(side[how]),
          top: one(flat[how]),
          bottom: one(flat[how]),
        }
      : {}),
    ring: k === 0 || k === bays || how === 'crossed' ? one(flat[how]) : ('none' as const),
  }));
  const tip = wish.tailPost ? [`L${last}C`] : [`U${last}L`, `L${last}R`];
  return {
    format: 'tubewright-model',
    version: 1,
    name: `Box of seed ${seed}`,
    source: 'Invented by tests/kit/trusses.ts.',
    datum: 'Invented.',
    drawnIn: 'in',
    joints: wish.joints ?? 'welded',
    stations,
    bracing,
    tubes: {
      material: '4130N',
      roles: {
        upperLongeron: one(tubes),
        lowerLongeron: one(tubes),
        vertical: one(tubes),
        crossMember: one(tubes),
        sideDiagonal: one(tubes),
        topDiagonal: one(tubes),
        bottomDiagonal: one(tubes),
        ringDiagonal: one(tubes),
      },
      overrides: [{ bay: one(stations).label, tube: one(tubes) }].filter((o) => o.bay !== last),
    },
    clusters: [],
    members: [],
    setups: [
      {
        id: 'jig',
        name: 'Forward ring, six freedoms',
        held: [
          { cluster: 'L1L', fixed: ['x', 'y', 'z'] },
          { cluster: 'L1R', fixed: ['x', 'z'] },
          { cluster: 'U1L', fixed: ['x'] },
        ],
      },
    ],
    loadCases: [
      {
        id: 'tip',
        name: 'Random loads at the aft ring',
        setup: 'jig',
        gravity: [0, 0, -1],
        loads: tip.map((cluster) => ({
          cluster,
          forceLbf: [between(-100, 100), between(-100, 100), between(-100, 100)] as [number, number, number],
        })),
      },
    ],
    distances: [],
  };
};
