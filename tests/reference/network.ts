import type { Vec3 } from '../../src/core/base/vec3.ts';
import { adjust, networkOf, type Solution } from '../../src/core/trammel/adjust.ts';
import type { Observation } from '../../src/core/trammel/observations.ts';

export type Places = ReadonlyMap<string, Vec3>;
export type Line = readonly [from: string, to: string, length: number, std: number];

/**
 * Published distances as observations between axis points. Points of `control` are known exactly, as in the books: they
 * are kept out of the unknowns, not held to 1/16 as the datum of a truss is.
 */
export const observationsOf = (
  at: Places,
  lines: readonly Line[],
  control: ReadonlySet<string> = new Set(),
): Observation[] =>
  lines.map(([a, b, lengthIn, stdIn], k) => {
    const cluster = (id: string) => ({ id, at: at.get(id)!, from: 'added' as const });
    const foot = (id: string) => ({ cluster: id, mark: 'axis' as const, radiusIn: 0, alongIn: 0 });
    return {
      id: `${k + 1}: ${a}–${b}`,
      hold: 'beforeCutting',
      clusters: [cluster(control.has(a) ? b : a), cluster(control.has(b) ? a : b)],
      feet: [foot(a), foot(b)],
      lengthIn,
      stdIn,
      stdAssumed: false,
      axisIn: lengthIn,
    };
  });

export const solve = (at: Places, lines: readonly Line[], control: readonly string[] = []): Solution => {
  const observations = observationsOf(at, lines, new Set(control));
  const weights = Float64Array.from(lines, (l) => l[3] ** -2);
  return adjust(networkOf(at, observations), { weights, datum: new Set() });
};

/** A published net of distances: places in the plane or in space, distances, and points known exactly. */
export interface Published {
  /** The solver's small weights are for errors about one unit: the source's metres are taken in these. */
  readonly unit: number;
  readonly at: Readonly<Record<string, readonly number[]>>;
  readonly lines: readonly (readonly [from: string, to: string, length: number, std: number])[];
  readonly control: readonly string[];
}

/** The net solved in its own unit, and how to read places in the source's. */
export const solvePublished = ({ unit, at, lines, control }: Published) => {
  const origin = Object.values(at)[0]!;
  const axes = origin.map((_, k) => k);
  const places = new Map(
    Object.entries(at).map(([id, p]): [string, Vec3] => [
      id,
      [0, 1, 2].map((k) => ((p[k] ?? 0) - (origin[k] ?? 0)) / unit) as unknown as Vec3,
    ]),
  );
  const scaled = lines.map(([a, b, d, std]): Line => [a, b, d / unit, std / unit]);
  const solution = solve(places, scaled, control);
  const free = lines.length - axes.length * solution.network.clusters.length;
  return {
    solution,
    /** Readings less unknowns: counts nothing for a net left free. */
    degrees: free,
    place: (id: string, s: Solution = solution): number[] => {
      const k = 3 * s.network.index.get(id)!;
      return axes.map((c) => s.places[k + c]! * unit + origin[c]!);
    },
    /** √(Ω/f √q): the a posteriori standard deviation that books print. */
    std: (id: string): number[] => {
      const k = 3 * solution.network.index.get(id)!;
      return axes.map((c) => Math.sqrt((solution.omega / free) * solution.cofactor(k + c, k + c)) * unit);
    },
  };
};
