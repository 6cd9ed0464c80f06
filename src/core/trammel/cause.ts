import { distance } from '../base/vec3.ts';
import { adjust, placeIn, type Setting, type Solution } from './adjust.ts';
import type { Cause } from './adjustment.ts';
import {
  chiSquared999,
  datumTests,
  degreesOf,
  normalisedOf,
  redundancyOf,
  SNOOP,
  UNCHECKED,
} from './reliability.ts';
import type { Target } from './result.ts';

/**
 * A datum cluster named as moved must beat the next explanation by this much in Ω + 2k.
 * Source: Akaike's criterion; Burnham & Anderson, Model Selection (2002), 2.6 (from memory).
 */
const LEAD_OF_CLUSTER = 6;
/**
 * A misread must lead by this much: then it is e¹ = 2.7 times as likely as the next (e^(½ Ω's difference), both of one
 * parameter), and it is the simpler explanation beside a cluster already (2 against 6 in 2k).
 */
const LEAD_OF_READING = 2;
/** Huber's tuning constant: 95 % as good as least squares on clean readings. */
const HUBER = 1.5;

interface Explanation {
  readonly id: string;
  readonly score: number;
  readonly strong: boolean;
  readonly cause: Cause;
  readonly setting: Setting;
}

const setAside = (set: Setting, n: number): Setting => {
  const weights = new Float64Array(set.weights);
  weights[n] = 0;
  return { ...set, weights };
};

const explanations = (s: Solution): readonly Explanation[] => {
  const readings = s.network.observations.flatMap((o, n): Explanation[] => {
    const r = redundancyOf(s, n);
    if (s.setting.weights[n] === 0 || r < UNCHECKED) return [];
    const normalised = normalisedOf(s, n);
    return [
      {
        id: o.id,
        score: s.omega - normalised ** 2 + 2,
        strong: Math.abs(normalised) > SNOOP,
        cause: { kind: 'misread', reading: o.id, shouldBeIn: o.lengthIn + s.residuals[n]! / r, normalised },
        setting: setAside(s.setting, n),
      },
    ];
  });
  const points = datumTests(s).map(({ cluster, test }): Explanation => {
    const datum = new Set(s.setting.datum);
    datum.delete(cluster);
    return {
      id: cluster,
      score: s.omega - test + 6,
      strong: test > chiSquared999(3),
      cause: { kind: 'datumMoved', cluster },
      setting: { ...s.setting, datum },
    };
  });
  return [...readings, ...points].sort((a, b) => a.score - b.score || (a.id < b.id ? -1 : 1));
};

const leadOf = (best: Explanation): number =>
  best.cause.kind === 'misread' ? LEAD_OF_READING : LEAD_OF_CLUSTER;

/** Do all readings belong together: the whole at 0.1 %, each reading and each datum cluster at 0.1 %? */
export const fitsTogether = (s: Solution): boolean =>
  s.omega <= chiSquared999(Math.max(1, degreesOf(s))) && !explanations(s).some((e) => e.strong);

/** Distances that come out most different under two explanations, among the targets between clusters that were read. */
const tellApart = (
  s: Solution,
  two: readonly Explanation[],
  targets: readonly Target[],
): readonly string[] => {
  const shapes = two.map((e) => adjust(s.network, e.setting, s.places));
  const [one, other] = shapes;
  if (!one || !other) return [];
  return targets
    .filter((t) => s.network.index.has(t.from) && s.network.index.has(t.to))
    .map((t) => {
      const d = (in_: Solution): number => distance(placeIn(in_, t.from), placeIn(in_, t.to));
      return { id: t.id, apart: Math.abs(d(one) - d(other)) };
    })
    .sort((a, b) => b.apart - a.apart)
    .slice(0, 3)
    .map((t) => t.id);
};

/** Readings far out when far-out readings are given less weight (Huber 1964): what single drops may hide. */
const farOut = (s: Solution): readonly number[] => {
  let robust = s;
  for (let round = 0; round < 8; round++) {
    const weights = s.setting.weights.map((w, n) => {
      const off = Math.abs(robust.residuals[n]!) * Math.sqrt(w);
      return off > HUBER ? (w * HUBER) / off : w;
    });
    robust = adjust(s.network, { ...s.setting, weights }, robust.places);
  }
  return s.network.observations.flatMap(({ stdIn }, n) =>
    s.setting.weights[n]! > 0 && Math.abs(robust.residuals[n]!) / stdIn > SNOOP ? [n] : [],
  );
};

/** All of several readings misread at once, if without them everything fits. */
const several = (
  s: Solution,
): { readonly solution: Solution; readonly causes: readonly Cause[] } | undefined => {
  const out = farOut(s);
  if (out.length < 2 || out.length > degreesOf(s) / 3) return undefined;
  const solution = adjust(s.network, out.reduce(setAside, s.setting), s.places);
  if (!fitsTogether(solution)) return undefined;
  const causes = out.map((n): Cause => {
    const { id, lengthIn } = s.network.observations[n]!;
    const shouldBeIn = lengthIn + solution.residuals[n]!;
    return { kind: 'misread', reading: id, shouldBeIn, normalised: normalisedOf(solution, n) };
  });
  if (causes.some((c) => c.kind === 'misread' && Math.abs(c.normalised) < SNOOP)) return undefined;
  return { solution, causes };
};

/**
 * Finds what best explains readings that do not fit: one misread at a time, or a datum cluster that has moved, by
 * Ω + 2k with a lead (k = 1 for a reading, 3 for a cluster); else says that it cannot tell, and what to read too.
 * A reading named is set aside, a cluster named is freed, and the search goes on until the rest fits.
 *
 * @returns the solution that the shape is taken from, and the causes in the order found
 * Source: data snooping, Baarda 1968; Ω + 2k, Akaike 1974; robust pass, Huber 1964.
 */
export const explain = (
  whole: Solution,
  targets: readonly Target[],
): { readonly solution: Solution; readonly causes: readonly Cause[] } => {
  let solution = whole;
  const causes: Cause[] = [];
  const most = Math.max(1, Math.floor(degreesOf(whole) / 2));
  while (causes.length < most && !fitsTogether(solution)) {
    const ranked = explanations(solution);
    const [best, next] = ranked;
    if (best?.strong && (!next || next.score - best.score >= leadOf(best))) {
      causes.push(best.cause);
      solution = adjust(solution.network, best.setting, solution.places);
      continue;
    }
    const together = several(solution);
    if (together) return { solution: together.solution, causes: [...causes, ...together.causes] };
    const two = ranked.slice(0, 2);
    const readAlso = tellApart(solution, two, targets);
    causes.push({ kind: 'cannotTell', readAlso, between: two.map((e) => e.id) });
    break;
  }
  return { solution, causes };
};
