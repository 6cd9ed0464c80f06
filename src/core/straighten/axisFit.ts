import { type Basis, figure } from '../base/figure.ts';
import { type Fitted, leastSquares } from './leastSquares.ts';
import type { AxisFit } from './result.ts';

/** Gaps from a straight edge to the tube, the edge lying along its side `clock`; stations from the `from` cluster. */
export interface StraightEdge {
  readonly stationsIn: readonly number[];
  readonly offsetsIn: readonly number[];
  readonly clock: number;
  /** One standard deviation of an offset; 1/64 in assumed when left out. */
  readonly stdIn?: number | undefined;
}

/** Rule against a straight edge. Stated as assumed wherever it is used. */
const ASSUMED_STD = 1 / 64;
/** Causes are told apart only by a lead of 6 in Ω + 2k, as in the trammel network (methods §6). */
const LEAD = 6;
/** Sides of the tube count as two when the read directions are at least this far from one line. */
const TWO_SIDES = Math.sin(Math.PI / 6);
const GRID = 120;

interface Point {
  readonly x: number;
  readonly gap: number;
  readonly std: number;
  readonly reading: number;
  readonly cos: number;
  readonly sin: number;
}

/** A family of bent axes over 0…1 of the chord: columns of shape, and where along it the bend is. */
interface Family {
  readonly columns: readonly ((t: number) => number)[];
  /** Unknowns beyond the columns' own. */
  readonly extra: number;
}
const smooth: Family = { columns: [(t) => 4 * t * (1 - t), (t) => 12 * t * (1 - t) * (2 * t - 1)], extra: 0 };
const kinkAt = (a: number): Family => ({ columns: [(t) => (t < a ? t / a : (1 - t) / (1 - a))], extra: 1 });

interface Tried {
  readonly family: Family;
  readonly fitted: Fitted;
  readonly planes: number;
  /** Ω + 2k. */
  readonly score: number;
}

interface Kink {
  readonly a: number;
  readonly tried: Tried;
}
const sharpestOf = (kinks: readonly Kink[]): Kink | undefined =>
  kinks.toSorted((p, q) => p.tried.score - q.tried.score)[0];

/** One line per reading (how the edge lay), and each column of shape in each plane that was read. */
const tryFamily = (
  points: readonly Point[],
  readings: number,
  planes: number,
  at: (x: number) => number,
  family: Family,
): Tried | null => {
  const rows = points.map((p) => {
    const t = at(p.x);
    const lay = Array.from({ length: readings * 2 }, (_, k) =>
      Math.floor(k / 2) === p.reading ? (k % 2 === 0 ? 1 : t) : 0,
    );
    // The gap grows where the tube bends away from the edge.
    const bend = family.columns.flatMap((f) =>
      planes === 2 ? [-f(t) * p.cos, -f(t) * p.sin] : [-f(t) * p.cos],
    );
    return [...lay, ...bend].map((v) => v / p.std);
  });
  const fitted = leastSquares(
    rows,
    points.map((p) => p.gap / p.std),
  );
  const unknowns = (rows[0]?.length ?? 0) + family.extra;
  return fitted && { family, fitted, planes, score: fitted.leftOver + 2 * unknowns };
};

/** Bend of a tried fit at t, in the plane(s) read. */
const bendAt = (x: readonly number[], tried: Tried, t: number): readonly [number, number] => {
  const first = x.length - tried.family.columns.length * tried.planes;
  let [u, v] = [0, 0];
  tried.family.columns.forEach((f, k) => {
    u += x[first + k * tried.planes]! * f(t);
    if (tried.planes === 2) v += x[first + k * 2 + 1]! * f(t);
  });
  return [u, v];
};

/** Greatest departure, and where. */
const greatest = (x: readonly number[], tried: Tried): { depth: number; t: number; u: number; v: number } => {
  let best = { depth: 0, t: 0.5, u: 0, v: 0 };
  for (let i = 1; i < GRID; i++) {
    const t = i / GRID;
    const [u, v] = bendAt(x, tried, t);
    const depth = Math.hypot(u, v);
    if (depth > best.depth) best = { depth, t, u, v };
  }
  return best;
};

/** Standard deviation of a number that depends on the unknowns, by its slope along each. */
const stdOf = (of: (x: readonly number[]) => number, { x, cofactor }: Fitted, scale: number): number => {
  const n = x.length;
  const slope = x.map((_, k) => {
    const step = 1e-4 * Math.sqrt(cofactor[k * n + k]!) + 1e-9;
    const moved = (by: number): number => of(x.map((v, i) => (i === k ? v + by : v)));
    return (moved(step) - moved(-step)) / (2 * step);
  });
  let variance = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) variance += slope[i]! * cofactor[i * n + j]! * slope[j]!;
  return Math.sqrt(Math.max(0, variance)) * scale;
};

const clockOf = (u: number, v: number): number => {
  const clock = (Math.atan2(v, u) * 6) / Math.PI;
  const turned = clock < 0 ? clock + 12 : clock;
  return turned === 0 ? 12 : turned;
};

/** Read from one line only: the crown is on the edge's side or opposite. */
const oneSide = (clock: number, towards: number): number => (towards > 0 ? clock : (clock + 6) % 12 || 12);

/** Angle between the two ends of the fitted axis. */
const turnOf = (x: readonly number[], tried: Tried, chordIn: number): number => {
  const h = 1e-4;
  const slope = (a: number, b: number): readonly [number, number] => {
    const [p, q] = [bendAt(x, tried, a), bendAt(x, tried, b)];
    return [(q[0] - p[0]) / (h * chordIn), (q[1] - p[1]) / (h * chordIn)];
  };
  const [first, last] = [slope(0, h), slope(1 - h, 1)];
  return Math.hypot(first[0] - last[0], first[1] - last[1]);
};

/**
 * The axis of a bent tube from straight-edge readings along it, on one side or round it: where the greatest bend is,
 * which way, how deep, and whether it is a smooth bow or one kink.
 *
 *   gap(x) = lay + tilt · x − bend(x) · (cos φ, sin φ),  φ = clock · 30°
 *   smooth: a cubic arc, zero at both ends of the readings;  kinked: two straight legs that meet at a
 *
 * Both are fitted by weighted least squares, the place of the kink by search; the shape is said only with a lead of 6
 * in Ω + 2k. Readings that scatter more than their standard deviation widen every uncertainty.
 *
 * @returns null when no side has the four stations that a line and a bend need
 * Assumes: the tube's outside is round, so that offsets of its surface are offsets of its axis.
 * Source: weighted least squares; the shapes and the lead: common practice, no source.
 */
export const axisFit = (
  readings: readonly StraightEdge[],
  basis: Basis,
  records: readonly string[] = [],
): AxisFit | null => {
  const usable = readings.filter(
    (r) => r.stationsIn.length === r.offsetsIn.length && new Set(r.stationsIn).size >= 4,
  );
  if (usable.length === 0) return null;
  const stations = usable.flatMap((r) => r.stationsIn);
  const [start, end] = [Math.min(...stations), Math.max(...stations)];
  const chordIn = end - start;
  const at = (x: number): number => (x - start) / chordIn;
  const angle = (r: StraightEdge): number => (r.clock * Math.PI) / 6;
  const first = angle(usable[0]!);
  const twoSides = usable.some((r) => Math.abs(Math.sin(angle(r) - first)) >= TWO_SIDES);
  // Read from one line only: the bend is what lies in that line, and its first reading is its 12 o'clock.
  const zero = twoSides ? 0 : first;
  const points = usable.flatMap((r, reading) =>
    r.stationsIn.map(
      (x, i): Point => ({
        x,
        gap: r.offsetsIn[i]!,
        std: r.stdIn ?? ASSUMED_STD,
        reading,
        cos: Math.cos(angle(r) - zero),
        sin: Math.sin(angle(r) - zero),
      }),
    ),
  );
  const planes = twoSides ? 2 : 1;
  const tryIt = (family: Family): Tried | null => tryFamily(points, usable.length, planes, at, family);
  const arc = tryIt(smooth);
  const kinkTried = (a: number): readonly Kink[] => {
    const tried = tryIt(kinkAt(a));
    return tried ? [{ a, tried }] : [];
  };
  // First every fourth step of the grid, then every step about the best.
  const coarse = Array.from({ length: GRID / 4 - 3 }, (_, i) => (4 * (i + 2)) / GRID).flatMap(kinkTried);
  const about = sharpestOf(coarse)?.a;
  const fine = [-3, -2, -1, 1, 2, 3].map((k) => (about ?? 0.5) + k / GRID).flatMap(kinkTried);
  const kinks = [...coarse, ...fine];
  const sharpest = sharpestOf(kinks);
  const best = !arc || (sharpest && sharpest.tried.score < arc.score) ? sharpest?.tried : arc;
  if (!best) return null;
  const lead = arc && sharpest ? Math.abs(arc.score - sharpest.tried.score) : LEAD;
  const kinked = best === sharpest?.tried;
  const { x, leftOver } = best.fitted;
  const spare = points.length - x.length - best.family.extra;
  const scale = Math.max(1, Math.sqrt(leftOver / Math.max(1, spare)));
  const top = greatest(x, best);
  const flat = top.depth === 0;
  const place = kinked ? sharpest!.a : top.t;
  const near = kinks.filter((k) => k.tried.score <= sharpest!.tried.score + scale * scale).map((k) => k.a);
  const placeStd = kinked
    ? Math.max(1 / GRID, (Math.max(...near) - Math.min(...near)) / 2)
    : Math.min(
        0.5,
        Math.max(
          1 / GRID,
          stdOf((p) => greatest(p, best).t, best.fitted, scale),
        ),
      );
  const assumed = [
    ...(usable.some((r) => r.stdIn === undefined) ? ['std-1/64'] : []),
    ...(twoSides ? [] : ['one-side-read']),
  ];
  const [uSign] = bendAt(x, best, place);
  const rms = Math.sqrt(
    (points.reduce((sum, p) => sum + p.std * p.std, 0) / points.length / points.length) * leftOver,
  );
  return {
    bowIn: figure(top.depth, 'in', basis, assumed, {
      std: stdOf((p) => greatest(p, best).depth, best.fitted, scale),
    }),
    chordIn,
    atIn: figure(start + place * chordIn, 'in', basis, assumed, { std: placeStd * chordIn }),
    clock: flat ? null : twoSides ? clockOf(top.u, top.v) : oneSide(usable[0]!.clock, uSign),
    shape: flat || lead < LEAD ? 'cannotTell' : kinked ? 'kinked' : 'smooth',
    turnRad: figure(turnOf(x, best, chordIn), 'rad', basis, assumed),
    leftOverIn: rms,
    allRound: twoSides,
    line: Array.from({ length: 25 }, (_, i) => {
      const [u, v] = bendAt(x, best, i / 24);
      return { atIn: start + (i / 24) * chordIn, bowIn: flat ? 0 : (u * top.u + v * top.v) / top.depth };
    }),
    records,
  };
};
