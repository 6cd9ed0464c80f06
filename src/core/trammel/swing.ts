import { type Figure, figure } from '../base/figure.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';
import type { Bay, Cluster, Truss } from '../truss/result.ts';
import { type Solution, sumOfMoves } from './adjust.ts';
import type { AdjustedCluster } from './adjustment.ts';
import { SNOOP } from './reliability.ts';
import type { BaySwing } from './result.ts';

type Terms = ReadonlyMap<string, Vec3>;

/** Aft ring's mean less forward ring's mean of a move along one direction. */
const meanShift = (fwd: readonly Cluster[], aft: readonly Cluster[], along: Vec3): Terms => {
  const share = (ring: readonly Cluster[], sign: number): [string, Vec3][] =>
    ring.map((c) => [c.id, along.map((v) => (sign * v) / ring.length) as unknown as Vec3]);
  return new Map([...share(fwd, -1), ...share(aft, 1)]);
};

/**
 * Turn of a ring about the fore-and-aft axis through its middle, by least squares of its moves.
 *
 *   θ = Σ (y Δz − z Δy) / Σ (y² + z²),   y, z from the middle of the ring
 */
const turn = (ring: readonly Cluster[], sign: number): [string, Vec3][] => {
  const middle = (k: 1 | 2): number => ring.reduce((sum, c) => sum + c.at[k], 0) / ring.length;
  const [y0, z0] = [middle(1), middle(2)];
  const size = ring.reduce((sum, c) => sum + (c.at[1] - y0) ** 2 + (c.at[2] - z0) ** 2, 0);
  return ring.map((c) => [c.id, [0, (-sign * (c.at[2] - z0)) / size, (sign * (c.at[1] - y0)) / size]]);
};

/** Mean widening of the bay's left-right pairs, taken negative. */
const narrowing = (rings: readonly Cluster[]): Terms | undefined => {
  const pairs = rings.flatMap((l) =>
    rings
      .filter((r) => l.side === 'L' && r.side === 'R' && l.station === r.station && l.height === r.height)
      .map((r) => [l, r] as const),
  );
  if (pairs.length === 0) return undefined;
  const w = 1 / pairs.length;
  return new Map(
    pairs.flatMap(([l, r]): [string, Vec3][] => [
      [l.id, [0, w, 0]],
      [r.id, [0, -w, 0]],
    ]),
  );
};

const swingOf = (
  truss: Truss,
  bay: Bay,
  s: Solution,
  hold: Hold,
  fixed: ReadonlySet<string>,
): BaySwing | undefined => {
  const ring = (station: string): Cluster[] => truss.clusters.filter((c) => c.station === station);
  const [fwd, aft] = [ring(bay.id), ring(bay.aft)];
  const all = [...fwd, ...aft];
  if (fwd.length < 2 || aft.length < 2 || !all.some((c) => s.network.index.has(c.id))) return undefined;
  const unknown = all.map((c) => c.id).filter((id) => !fixed.has(id));
  if (unknown.length > 0) return { bay: bay.id, unknown, shown: [] };
  const tell = (terms: Terms, unit: 'in' | 'rad'): Figure => {
    const { value, std } = sumOfMoves(s, terms);
    const basis = { kind: 'computed', ref: `adjusted shape ${hold}` } as const;
    return figure(value, unit, basis, ['small-moves'], { std });
  };
  const pairs = narrowing(all);
  const sag = tell(meanShift(fwd, aft, [0, 0, -1]), 'in');
  const sweep = tell(meanShift(fwd, aft, [0, 1, 0]), 'in');
  const twist = tell(new Map([...turn(fwd, -1), ...turn(aft, 1)]), 'rad');
  const shortened = tell(meanShift(fwd, aft, [-1, 0, 0]), 'in');
  const narrowed = pairs && tell(pairs, 'in');
  const named = [
    ['sag', sag],
    ['sweep', sweep],
    ['twist', twist],
    ['narrowed', narrowed],
    ['shortened', shortened],
  ] as const;
  return {
    bay: bay.id,
    unknown: [],
    figures: {
      sagIn: sag,
      sweepIn: sweep,
      twistRad: twist,
      ...(narrowed ? { narrowedIn: narrowed } : {}),
      shortenedIn: shortened,
    },
    shown: named.flatMap(([name, f]) => (f && Math.abs(f.value) > SNOOP * f.std! ? [name] : [])),
  };
};

/**
 * Sag, sweep, twist, narrowing and shortening of every bay that was read, from the adjusted moves of its two rings; a bay
 * with a corner that the readings do not fix tells which, and nothing else.
 */
export const swings = (
  truss: Truss,
  s: Solution,
  hold: Hold,
  clusters: readonly AdjustedCluster[],
): readonly BaySwing[] => {
  const fixed = new Set(clusters.filter((c) => c.fixedBy === 'all').map((c) => c.id));
  return truss.bays.flatMap((bay) => swingOf(truss, bay, s, hold, fixed) ?? []);
};
