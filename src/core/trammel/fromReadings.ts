import { type Issue, issue, ok, type Result, refused } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Model, Station } from '../job/modelSchema.ts';
import { symmetricEigen } from '../statics/dense.ts';
import { mirrorCluster, readCluster } from '../truss/names.ts';
import type { Cluster } from '../truss/result.ts';
import { expandTruss } from '../truss/truss.ts';
import { adjust, fullWeights, networkOf } from './adjust.ts';
import { ASSUMED_STD_IN, type Observation } from './observations.ts';

/** A distance between the axis points of two clusters, as measured; on the sound side, or from it across to the other. */
export interface SideReading {
  readonly from: string;
  readonly to: string;
  readonly lengthIn: number;
  readonly stdIn?: number;
}

/** A model built of distances, and how well they fit. */
export interface BuiltModel {
  readonly model: Model;
  /** Clusters the distances fix, and those they leave where they were assumed. */
  readonly fixed: readonly string[];
  readonly loose: readonly string[];
  /** Adjusted − read for each reading used, inches. */
  readonly residualsIn: readonly number[];
}

const twinOf = (id: string): string => mirrorCluster(id) ?? id;

const observation = (r: SideReading, a: Cluster, b: Cluster, id: string): Observation => ({
  id,
  hold: 'beforeCutting',
  clusters: [a, b],
  feet: [
    { cluster: a.id, mark: 'axis', radiusIn: 0, alongIn: 0 },
    { cluster: b.id, mark: 'axis', radiusIn: 0, alongIn: 0 },
  ],
  lengthIn: r.lengthIn,
  stdIn: r.stdIn ?? ASSUMED_STD_IN,
  stdAssumed: r.stdIn === undefined,
  axisIn: r.lengthIn,
});

/** Turned in the centre plane and shifted along it so that the squares of the moves from the places assumed are least. */
const settled = (
  places: ReadonlyMap<string, Vec3>,
  assumed: ReadonlyMap<string, Vec3>,
): ReadonlyMap<string, Vec3> => {
  const ids = [...places.keys()];
  const mean = (of: ReadonlyMap<string, Vec3>, axis: 0 | 2): number =>
    ids.reduce((sum, id) => sum + of.get(id)![axis], 0) / ids.length;
  const [px, pz, qx, qz] = [mean(places, 0), mean(places, 2), mean(assumed, 0), mean(assumed, 2)];
  let [along, across] = [0, 0];
  for (const id of ids) {
    const [x, , z] = places.get(id)!;
    const [u, , w] = assumed.get(id)!;
    along += (x - px) * (u - qx) + (z - pz) * (w - qz);
    across += (x - px) * (w - qz) - (z - pz) * (u - qx);
  }
  const turn = Math.atan2(across, along);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return new Map(
    ids.map((id): [string, Vec3] => {
      const [x, y, z] = places.get(id)!;
      return [id, [qx + c * (x - px) - s * (z - pz), y, qz + s * (x - px) + c * (z - pz)]];
    }),
  );
};

/**
 * Clusters that can still move when every reading keeps its length, the truss staying symmetric and moves of the whole
 * left aside: null vectors of JᵀJ over the places of one side, two clusters of one ring held.
 */
const looseClusters = (
  side: readonly string[],
  places: ReadonlyMap<string, Vec3>,
  readings: readonly SideReading[],
): ReadonlySet<string> => {
  const centre = (id: string): boolean => places.get(id)![1] === 0 || twinOf(id) === id;
  const column = new Map<string, number>();
  for (const id of side)
    for (const axis of centre(id) ? [0, 2] : [0, 1, 2]) column.set(`${id} ${axis}`, column.size);
  const n = column.size;
  const square: number[][] = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (const r of readings) {
    const [p, q] = [places.get(r.from)!, places.get(r.to)!];
    const far = Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
    const row = new Map<number, number>();
    for (const [id, sign] of [
      [r.from, -1],
      [r.to, 1],
    ] as const) {
      const own = column.has(`${id} 0`) ? id : twinOf(id);
      for (const axis of [0, 1, 2] as const) {
        const at = column.get(`${own} ${axis}`);
        // The other hand moves the other way across.
        const hand = axis === 1 && own !== id ? -1 : 1;
        if (at !== undefined) row.set(at, (row.get(at) ?? 0) + (sign * hand * (q[axis] - p[axis])) / far);
      }
    }
    for (const [i, a] of row) for (const [j, b] of row) square[i]![j]! += a * b;
  }
  const standing = readings.filter((r) => side.includes(r.from) && side.includes(r.to));
  const rings = standing.filter((r) => readCluster(r.from)?.station === readCluster(r.to)?.station);
  const looseFrom = ({ from, to }: SideReading): string[] => {
    const [p, q] = [places.get(from)!, places.get(to)!];
    const held = square.map((row) => [...row]);
    const hold = (terms: readonly (readonly [string, number])[]): void => {
      for (const [i, a] of terms) for (const [j, b] of terms) held[column.get(i)!]![column.get(j)!]! += a * b;
    };
    hold([[`${from} 0`, 1]]);
    hold([[`${from} 2`, 1]]);
    const far = Math.hypot(q[0] - p[0], q[2] - p[2]);
    if (far < 1) return [...side];
    hold([
      [`${to} 0`, -(q[2] - p[2]) / far],
      [`${to} 2`, (q[0] - p[0]) / far],
    ]);
    const { values, vectors } = symmetricEigen(held);
    const free = vectors.filter((_, k) => values[k]! < 1e-9 * (values.at(-1) ?? 1));
    const moves = (id: string): boolean =>
      free.some((v) => [0, 1, 2].some((axis) => Math.abs(v[column.get(`${id} ${axis}`) ?? -1] ?? 0) > 1e-4));
    return side.filter(moves);
  };
  // Seen from a tube that hangs loose itself all else moves: the view with the fewest loose is the truss's own.
  const seen = (rings.length > 0 ? rings : standing).map(looseFrom);
  return new Set(seen.reduce((least, now) => (now.length < least.length ? now : least), [...side]));
};

/** The rows of the table at the places found, so that a later change of the table starts from them. */
const rowAt = (row: Station, at: (id: string) => Vec3 | undefined, side: 'L' | 'R'): Station => {
  const pair = (height: 'U' | 'L') => at(`${height}${row.label}${side}`) ?? at(`${height}${row.label}C`);
  const [u, l] = [pair('U'), pair('L')];
  const xs = [u, l].flatMap((p) => (p ? [p[0]] : []));
  if (xs.length === 0) return row;
  const as = (old: Station['upper'], p: Vec3 | undefined) =>
    old && p ? { ...old, waterLineIn: p[2], halfWidthIn: old.halfWidthIn === 0 ? 0 : Math.abs(p[1]) } : old;
  const [upper, lower] = [as(row.upper, u), as(row.lower, l)];
  return {
    ...row,
    stationIn: xs.reduce((sum, x) => sum + x, 0) / xs.length,
    ...(upper ? { upper } : {}),
    ...(lower ? { lower } : {}),
  };
};

/**
 * A model from distances of the sound side: its clusters by least squares from the rough places of `topology`, the other
 * side its mirror image. Every reading stands for its opposite-hand one too, so that the answer is symmetric; distances
 * across (`U3L`–`U3R`, `U3L`–`U4R`) say how far out the side lies. Turned and shifted in the centre plane to lie
 * nearest the rough places: distances say nothing of where the datum is.
 *
 * Places on the side read are marked measured, their twins mirrored (which counts as not measured), and what the
 * distances leave free stays assumed.
 * Source: least squares as in `adjust.ts`; that a sound truss is symmetric is the user's statement.
 */
export const modelFromReadings = (
  topology: Model,
  readings: readonly SideReading[],
  side: 'L' | 'R' = 'L',
): Result<BuiltModel> => {
  const truss = expandTruss(topology);
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const issues: Issue[] = [];
  const used: SideReading[] = [];
  for (const [k, r] of readings.entries()) {
    const unknown = [r.from, r.to].filter((id) => !clusters.has(id) || !clusters.has(twinOf(id)));
    if (unknown.length > 0)
      issues.push(
        issue('unknown-cluster', `readings[${k}]`, { ids: unknown }, 'name-a-cluster-of-the-model'),
      );
    else if (r.from === r.to)
      issues.push(
        issue('reading-between-same-point', `readings[${k}]`, { cluster: r.from }, 'name-two-clusters'),
      );
    else if (!(r.lengthIn > 0))
      issues.push(issue('reading-without-length', `readings[${k}]`, { reading: `${k + 1}` }, 'enter-length'));
    else used.push(r);
  }
  if (used.length === 0) return refused([...issues, issue('no-readings', '', {}, 'enter-length')]);
  const symmetric = new Map(
    truss.clusters.map((c): [string, Vec3] => {
      const [x, y, z] = clusters.get(twinOf(c.id))?.at ?? c.at;
      return [c.id, c.side === side || c.side === 'C' ? c.at : [x, -y, z]];
    }),
  );
  const both = used.flatMap((r, k) => {
    const row = (from: string, to: string, hand: string): Observation =>
      observation(r, clusters.get(from)!, clusters.get(to)!, `${k}${hand}`);
    return [row(r.from, r.to, ''), row(twinOf(r.from), twinOf(r.to), ' mirrored')];
  });
  const network = networkOf(symmetric, both);
  const weights = fullWeights(both);
  const solved = adjust(network, { weights, datum: new Set() });
  const raw = new Map(
    network.clusters.map((id, k): [string, Vec3] => [
      id,
      [solved.places[3 * k]!, solved.places[3 * k + 1]!, solved.places[3 * k + 2]!],
    ]),
  );
  const mine = (id: string): boolean => {
    const c = clusters.get(id)!;
    return (
      c.side === side || c.side === 'C' || (c.side === undefined && c.at[1] * (side === 'L' ? -1 : 1) >= 0)
    );
  };
  const own = network.clusters.filter(mine);
  const free = looseClusters(own, raw, used);
  const firm = network.clusters.filter((id) => !free.has(id) && !free.has(twinOf(id)));
  const placed =
    firm.length === 0
      ? new Map<string, Vec3>()
      : settled(new Map(firm.map((id) => [id, raw.get(id)!])), symmetric);
  const rows = firm.map((id): Model['clusters'][number] => {
    const old = topology.clusters.find((c) => c.id === id);
    const { assumed: _, ...kept } = old ?? { id };
    const [x, y, z] = placed.get(id)!;
    // The last bit of a length typed in millimetres is no reason to leave the centre plane.
    const at: [number, number, number] = [x, clusters.get(id)!.side === 'C' ? 0 : y, z];
    return { ...kept, id, at, origin: mine(id) ? 'measured' : 'mirrored' };
  });
  const fixed = new Set(firm);
  const model: Model = {
    ...topology,
    stations: topology.stations
      .map((row) => rowAt(row, (id) => placed.get(id), side))
      .map((row) => ({ ...row, origin: 'assumed' as const })),
    clusters: [...topology.clusters.filter((c) => !fixed.has(c.id)), ...rows],
  };
  return ok(
    {
      model,
      fixed: own.filter((id) => fixed.has(id)),
      loose: truss.clusters.filter((c) => mine(c.id) && !fixed.has(c.id)).map((c) => c.id),
      residualsIn: used.map((_, k) => solved.residuals[2 * k]!),
    },
    issues,
  );
};
