import type { Station } from '../job/modelSchema.ts';
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

/** Bays and faces in order aft, each with its clusters and tubes; a face has three corners at least. */
export const zones = (
  stations: readonly Station[],
  clusters: ReadonlyMap<string, Cluster>,
  members: readonly Member[],
): { bays: readonly Bay[]; faces: readonly Face[] } => {
  const bays: Bay[] = [];
  const faces: Face[] = [];
  for (const [k, row] of stations.entries()) {
    const aft = stations[k + 1];
    const face = (name: FaceName, aftLabel: string, at: readonly string[]): void => {
      const corners = cornersOf(name, row.label, aftLabel, clusters);
      if (corners.length < 3) return;
      const inFace = members.filter(
        (m) =>
          m.faces.includes(name) && (m.bay === row.label ? name !== 'ring' : at.includes(m.station ?? '')),
      );
      const id = `${row.label} ${name}`;
      faces.push({ id, bay: row.label, face: name, corners, members: inFace.map((m) => m.id) });
    };
    face('ring', row.label, [row.label]);
    if (!aft) continue;
    const both = [row.label, aft.label];
    for (const name of ['left', 'right', 'top', 'bottom'] as const) face(name, aft.label, both);
    bays.push({
      id: row.label,
      aft: aft.label,
      clusters: [...clusters.values()]
        .filter((c) => {
          const label = readCluster(c.id)?.station;
          if (label !== undefined) return both.includes(label);
          return c.at[0] >= row.stationIn && c.at[0] < aft.stationIn;
        })
        .map((c) => c.id),
      members: members
        .filter((m) => m.bay === row.label || (m.station !== undefined && both.includes(m.station)))
        .map((m) => m.id),
    });
  }
  return { bays, faces };
};
