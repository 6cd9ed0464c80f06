import type { Role, Station } from '../job/modelSchema.ts';
import { readCluster } from './names.ts';
import type { Cluster, FaceName, Member } from './result.ts';

/** Where in the truss a member lies, and what it is by its place. */
export type Position = Pick<Member, 'role' | 'faces' | 'side' | 'bay' | 'station'>;

const sideFaces = { L: ['left'], R: ['right'], C: ['left', 'right'] } as const;
const flatFace = { U: 'top', L: 'bottom' } as const;

/** Which side a tube is on by its ends' butt lines; one that crosses the centre plane, or lies in it, is `C`. */
const sideOf = (from: Cluster, to: Cluster): 'L' | 'R' | 'C' => {
  const low = Math.min(from.at[1], to.at[1]);
  const high = Math.max(from.at[1], to.at[1]);
  if (low < 0 && high <= 0) return 'L';
  return high > 0 && low >= 0 ? 'R' : 'C';
};

/** The bay a tube sets out in: that of its forward cluster's station, else the one its forward end lies in. */
const bayOf = (from: Cluster, stations: readonly Station[]): { bay?: string } => {
  const named = stations.findIndex((row) => row.label === from.station);
  const k = named >= 0 ? named : stations.findLastIndex((row) => row.stationIn <= from.at[0]);
  return k >= 0 && k < stations.length - 1 ? { bay: stations[k]!.label } : {};
};

/**
 * Role, faces, bay and station of a tube between two clusters, read off their names; a tube between clusters
 * whose names say nothing is `other` and lies in no face.
 *
 * @param from  the forward (or upper, or left) end
 */
export const positionOf = (from: Cluster, to: Cluster, stations: readonly Station[]): Position => {
  const side = sideOf(from, to);
  const a = readCluster(from.id);
  const b = readCluster(to.id);
  const place = (role: Role, faces: readonly FaceName[]): Position =>
    a && a.station === b?.station
      ? { role, faces: [...faces, 'ring'], side, station: a.station }
      : { role, faces, side, ...bayOf(from, stations) };
  if (!a || !b) return { role: 'other', faces: [], side, ...bayOf(from, stations) };
  const corner = a.side === 'C' ? b.side : a.side;
  const sameSide = b.side === 'C' || b.side === corner;
  if (a.station === b.station) {
    if (a.height === b.height) return place('crossMember', [flatFace[a.height]]);
    return sameSide ? place('vertical', sideFaces[corner]) : place('ringDiagonal', []);
  }
  if (a.height === b.height) {
    if (!sameSide) return place(a.height === 'U' ? 'topDiagonal' : 'bottomDiagonal', [flatFace[a.height]]);
    const faces: readonly FaceName[] =
      corner === 'C' ? sideFaces.C : [...sideFaces[corner], flatFace[a.height]];
    return place(a.height === 'U' ? 'upperLongeron' : 'lowerLongeron', faces);
  }
  return sameSide ? place('sideDiagonal', sideFaces[corner]) : place('other', []);
};
