import type { Station } from '../job/modelSchema.ts';
import { groupBy } from './groupBy.ts';
import { readCluster } from './names.ts';
import type { Bay, Cluster, Face, FaceName, Member } from './result.ts';

/** Corners of each face in order around it: height, side, and whether at the aft station. */
const around = {
  left: ['UL0', 'UL1', 'LL1', 'LL0'],
  right: ['UR0', 'UR1', 'LR1', 'LR0'],
  top: ['UL0', 'UR0', 'UR1', 'UL1'],
  bottom: ['LL0', 'LR0', 'LR1', 'LL1'],
  ring: ['UL0', 'UR0', 'LR0', 'LL0'],
} as const satisfies Record<FaceName, readonly string[]>;

const cornersOf = (face: FaceName, fwd: string, aft: string, clusters: ReadonlyMap<string, Cluster>) => [
  ...new Set(
    around[face].flatMap((c) => {
      const start = `${c[0]}${c[2] === '1' ? aft : fwd}`;
      const id = [`${start}${c[1]}`, `${start}C`].find((x) => clusters.has(x));
      return id === undefined ? [] : [id];
    }),
  ),
];

/** Things by a label, in the order they came; what has none is left out. */
const byLabel = <T>(
  things: readonly T[],
  label: (thing: T) => string | undefined,
): ReadonlyMap<string, readonly T[]> =>
  groupBy(
    things.filter((thing) => label(thing) !== undefined),
    (thing) => label(thing)!,
  );

/** Bays and faces in order aft, each with its clusters and tubes; a face has three corners at least. */
export const zones = (
  stations: readonly Station[],
  clusters: ReadonlyMap<string, Cluster>,
  members: readonly Member[],
): { bays: readonly Bay[]; faces: readonly Face[] } => {
  const rank = new Map([...clusters.keys(), ...members.map((m) => m.id)].map((id, k) => [id, k]));
  const inOrder = <T extends { readonly id: string }>(things: readonly T[]): readonly T[] =>
    things.toSorted((a, b) => rank.get(a.id)! - rank.get(b.id)!);
  const ofBay = byLabel(members, (m) => m.bay);
  const ofStation = byLabel(members, (m) => m.station);
  const named = byLabel([...clusters.values()], (c) => readCluster(c.id)?.station);
  const unnamed = [...clusters.values()].filter((c) => readCluster(c.id)?.station === undefined);
  const standing = (labels: readonly string[]): readonly Member[] =>
    labels.flatMap((label) => ofStation.get(label) ?? []);

  const bays: Bay[] = [];
  const faces: Face[] = [];
  for (const [k, row] of stations.entries()) {
    const aft = stations[k + 1];
    const along = ofBay.get(row.label) ?? [];
    const face = (name: FaceName, aftLabel: string, at: readonly string[]): void => {
      const corners = cornersOf(name, row.label, aftLabel, clusters);
      if (corners.length < 3) return;
      const near = name === 'ring' ? standing(at) : [...along, ...standing(at)];
      const inFace = inOrder(near.filter((m) => m.faces.includes(name)));
      const id = `${row.label} ${name}`;
      faces.push({ id, bay: row.label, face: name, corners, members: inFace.map((m) => m.id) });
    };
    face('ring', row.label, [row.label]);
    if (!aft) continue;
    const both = [row.label, aft.label];
    for (const name of ['left', 'right', 'top', 'bottom'] as const) face(name, aft.label, both);
    const between = unnamed.filter((c) => c.at[0] >= row.stationIn && c.at[0] < aft.stationIn);
    bays.push({
      id: row.label,
      aft: aft.label,
      clusters: inOrder([...both.flatMap((label) => named.get(label) ?? []), ...between]).map((c) => c.id),
      members: inOrder([...along, ...standing(both)]).map((m) => m.id),
    });
  }
  return { bays, faces };
};
