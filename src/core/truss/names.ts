/** Where a cluster id says it is: `U4R` = upper, station 4, right. */
export interface ClusterName {
  readonly height: 'U' | 'L';
  readonly station: string;
  readonly side: 'L' | 'R' | 'C';
}

/** Two cluster ids and which of the tubes between them: `U3R-U4R#2` is the second. */
export interface MemberName {
  readonly from: string;
  readonly to: string;
  readonly nth: number;
}

const clusterForm = /^([UL])([0-9]{1,4}[a-z]?)([LRC])$/;
const memberForm = /^([^-#]+)-([^-#]+)(?:#([2-9]|[1-9][0-9]+))?$/;

export const sayCluster = (name: ClusterName): string => `${name.height}${name.station}${name.side}`;

/** The name in a cluster id, or null when the id is not of the form (an added cluster may be called anything). */
export const readCluster = (id: string): ClusterName | null => {
  const [, height, station, side] = clusterForm.exec(id) ?? [];
  if (!height || !station || !side) return null;
  return { height: height as 'U' | 'L', station, side: side as 'L' | 'R' | 'C' };
};

/** The id of the nth tube between two clusters, which the caller gives in order (`comparePlaces`). */
export const sayMember = (from: string, to: string, nth = 1): string =>
  nth === 1 ? `${from}-${to}` : `${from}-${to}#${nth}`;

/** The clusters in a member id, or null when it is a name of its own. */
export const readMember = (id: string): MemberName | null => {
  const [, from, to, nth] = memberForm.exec(id) ?? [];
  if (!from || !to) return null;
  return { from, to, nth: nth ? Number(nth) : 1 };
};

/** The opposite-hand id of a cluster: `U4L` ↔ `U4R`; null for a centre cluster and for a name of another form. */
export const mirrorCluster = (id: string): string | null => {
  const name = readCluster(id);
  if (!name || name.side === 'C') return null;
  return sayCluster({ ...name, side: name.side === 'L' ? 'R' : 'L' });
};

/** Plain order of two ids by code unit: the same on every machine. */
export const compareIds = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A cluster with the station (inches aft) it counts as lying in. */
export interface ClusterPlace {
  readonly id: string;
  readonly alongIn: number;
}

const rank = (id: string): number => {
  const name = readCluster(id);
  return name ? (name.height === 'U' ? 0 : 3) + 'LCR'.indexOf(name.side) : 6;
};

/** Order of a member's two ends: forward station first; at one station U before L, then L, C, R; then by id. */
export const comparePlaces = (a: ClusterPlace, b: ClusterPlace): number =>
  a.alongIn - b.alongIn || rank(a.id) - rank(b.id) || compareIds(a.id, b.id);
