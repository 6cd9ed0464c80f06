import type { Finding } from '../../../src/core/job/jobSchema.ts';
import type { Freedom, Model } from '../../../src/core/job/modelSchema.ts';
import type { HeldNow } from '../../../src/core/statics/held.ts';
import type { Cluster, Member, Truss } from '../../../src/core/truss/result.ts';
import { roundSection } from '../../../src/core/truss/stock.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';

/** A repeatable source of numbers 0…1 (mulberry32; public domain). */
export const seeded = (seed: number): (() => number) => {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

export const tubeMember = (
  id: string,
  from: Cluster,
  to: Cluster,
  odIn: number,
  wallIn: number,
  more: Partial<Member> = {},
): Member => ({
  id,
  from: from.id,
  to: to.id,
  role: 'other',
  faces: [],
  side: 'C',
  lengthIn: Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1], to.at[2] - from.at[2]),
  tube: { odIn, wallIn },
  material: '4130N',
  section: {
    odIn,
    wallIn,
    ...roundSection({ odIn, wallIn })!,
    elasticPsi: 29e6,
    shearPsi: 11e6,
    yieldPsi: 75_000,
    densityLbIn3: 0.283,
  },
  ends: ['welded', 'welded'],
  fixity: 1,
  bolted: false,
  near: [],
  ...more,
});

export const bareTruss = (clusters: readonly Cluster[], members: readonly Member[]): Truss => ({
  clusters,
  members,
  bays: [],
  faces: [],
  pairs: [],
  odd: [],
  issues: [],
});

export const cluster = (id: string, x: number, y: number, z: number): Cluster => ({
  id,
  at: [x, y, z],
  from: 'added',
});

const sizes = [
  [0.5, 0.035],
  [0.625, 0.035],
  [0.75, 0.035],
  [0.875, 0.049],
  [1, 0.049],
] as const;

/**
 * A welded frame of random points: a random tree, then extra tubes; stands on one cluster held all round. Stubby, so that
 * the comparison with a second factoring is not drowned in rounding.
 */
export const randomFrame = (seed: number): Truss => {
  const next = seeded(seed);
  const n = 5 + Math.floor(next() * 6);
  const clusters = Array.from({ length: n }, (_, k) =>
    cluster(`P${k}`, 12 * next() + 8 * k, 20 * next(), 20 * next()),
  );
  const pairs = new Map<string, readonly [number, number]>();
  for (let k = 1; k < n; k++) pairs.set(`${k}`, [Math.floor(next() * k), k]);
  const extra = 2 * n + Math.floor(next() * n);
  for (let k = 0; k < extra; k++) {
    const i = Math.floor(next() * n);
    const j = Math.floor(next() * n);
    const [a, b] = [Math.min(i, j), Math.max(i, j)];
    if (a !== b && ![...pairs.values()].some(([p, q]) => p === a && q === b)) pairs.set(`x${k}`, [a, b]);
  }
  const members = [...pairs.values()].map(([a, b]) => {
    const [od, wall] = sizes[Math.floor(next() * sizes.length)]!;
    return tubeMember(`P${a}-P${b}`, clusters[a]!, clusters[b]!, od, wall);
  });
  return bareTruss(clusters, members);
};

export const heldAt = (fixed: ReadonlyMap<string, readonly Freedom[]>, ranked = true): HeldNow => ({
  heldAs: ranked ? 'jig' : 'threeTwoOne',
  ranked,
  joints: 'welded',
  held: [...fixed].map(([id, freedoms]) => ({ cluster: id, fixed: freedoms })),
  braces: [],
  issues: [],
});

export const freedomIndex = { x: 0, y: 1, z: 2, rx: 3, ry: 4, rz: 5 } as const;

export const fixedOf = (support: HeldNow): ReadonlyMap<string, readonly number[]> =>
  new Map(support.held.map((h) => [h.cluster, h.fixed.map((f) => freedomIndex[f])]));

const stamp = { by: 'test', at: '2026-01-01T00:00:00Z', device: 'test', origin: 'thisAccident' } as const;

export const bow = (
  of: string,
  depthIn: number,
  more: Partial<Extract<Finding, { damage: 'bow' }>> = {},
): Finding => ({ id: `f-${of}`, kind: 'finding', damage: 'bow', of, depthIn, clock: 12, ...stamp, ...more });

export interface BoxOptions {
  readonly bays: number;
  readonly bayIn?: number;
  readonly widthIn?: number;
  readonly depthIn?: number;
  /** How much the aft end is narrower: 1 not at all. */
  readonly taper?: number;
  readonly sides?: readonly ('rising' | 'falling' | 'crossed' | 'none')[];
  readonly rings?: boolean;
}

/** A fuselage-like box of four longerons; invented. */
export const boxModel = ({
  bays,
  bayIn = 24,
  widthIn = 26,
  depthIn = 30,
  taper = 1,
  sides = ['rising', 'falling'],
  rings = true,
}: BoxOptions): Model => {
  const labels = Array.from({ length: bays + 1 }, (_, k) => `${k + 1}`);
  const share = (k: number): number => 1 + ((taper - 1) * k) / bays;
  return {
    format: 'tubewright-model',
    version: 1,
    name: 'box',
    source: 'invented for tests',
    datum: 'forward end',
    drawnIn: 'in',
    joints: 'welded',
    stations: labels.map((label, k) => ({
      label,
      stationIn: k * bayIn,
      upper: { waterLineIn: (depthIn / 2) * share(k), halfWidthIn: (widthIn / 2) * share(k) },
      lower: { waterLineIn: (-depthIn / 2) * share(k), halfWidthIn: (widthIn / 2) * share(k) },
    })),
    bracing: labels.map((at, k) => ({
      at,
      left: sides[k % sides.length]!,
      right: sides[k % sides.length]!,
      top: k % 2 ? 'toLeft' : 'toRight',
      bottom: k % 2 ? 'toRight' : 'toLeft',
      ring: rings ? 'toRight' : 'none',
    })),
    tubes: {
      material: '4130N',
      roles: {
        upperLongeron: { odIn: 0.75, wallIn: 0.035 },
        lowerLongeron: { odIn: 0.875, wallIn: 0.035 },
        vertical: { odIn: 0.625, wallIn: 0.035 },
        crossMember: { odIn: 0.625, wallIn: 0.035 },
        sideDiagonal: { odIn: 0.625, wallIn: 0.035 },
        topDiagonal: { odIn: 0.5, wallIn: 0.035 },
        bottomDiagonal: { odIn: 0.5, wallIn: 0.035 },
        ringDiagonal: { odIn: 0.5, wallIn: 0.035 },
        other: { odIn: 0.625, wallIn: 0.035 },
      },
      overrides: [],
    },
    clusters: [],
    members: [],
    setups: [],
    loadCases: [],
    distances: [],
  };
};

export const boxTruss = (options: BoxOptions): Truss => expandTruss(boxModel(options));
