import type { Cluster, Truss } from '../truss/result.ts';
import type { DistanceKind } from './result.ts';

/** What two station points are to each other. */
export interface Pair {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly kind: DistanceKind;
  readonly faces: readonly string[];
  readonly bay: string;
}

const heights = { U: 0, L: 1 } as const;
const sides = { L: 0, C: 1, R: 2 } as const;

/** Forward first, then upper before lower, then left, centre, right, then id: the order of a member's id. */
export const compareClusters = (a: Cluster, b: Cluster): number =>
  (a.station !== undefined && a.station === b.station ? 0 : a.at[0] - b.at[0]) ||
  (a.height ? heights[a.height] : 2) - (b.height ? heights[b.height] : 2) ||
  (a.side ? sides[a.side] : 3) - (b.side ? sides[b.side] : 3) ||
  (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Id of the distance between two clusters, whichever is named first: `U3L–L4L`. */
export const pairId = (a: Cluster, b: Cluster): string =>
  compareClusters(a, b) <= 0 ? `${a.id}–${b.id}` : `${b.id}–${a.id}`;

const roleKinds: Readonly<Record<string, DistanceKind>> = {
  upperLongeron: 'longeron',
  lowerLongeron: 'longeron',
  vertical: 'vertical',
  crossMember: 'crossMember',
  sideDiagonal: 'diagonal',
  topDiagonal: 'diagonal',
  bottomDiagonal: 'diagonal',
  ringDiagonal: 'ringDiagonal',
};

const sameSide = (a: Cluster, b: Cluster): boolean =>
  a.side !== undefined && b.side !== undefined && (a.side === b.side || a.side === 'C' || b.side === 'C');

const kindOf = (a: Cluster, b: Cluster, faces: number, role: string | undefined): DistanceKind => {
  if (role && roleKinds[role]) return roleKinds[role];
  if (faces === 0 || !a.station || !b.station) return 'long';
  if (a.station === b.station) {
    if (a.height === b.height) return 'crossMember';
    return sameSide(a, b) ? 'vertical' : 'ringDiagonal';
  }
  return a.height === b.height && sameSide(a, b) ? 'longeron' : 'diagonal';
};

/** Looks pairs of clusters up in a truss: order, kind, faces, bay. */
export const pairsOf = (truss: Truss): ((a: Cluster, b: Cluster) => Pair) => {
  const facesOf = new Map<string, Set<string>>();
  for (const f of truss.faces)
    for (const c of f.corners) facesOf.set(c, (facesOf.get(c) ?? new Set()).add(f.id));
  const roles = new Map<string, string>();
  for (const m of truss.members) {
    const key = m.from < m.to ? `${m.from} ${m.to}` : `${m.to} ${m.from}`;
    if (!roles.has(key)) roles.set(key, m.role);
  }
  return (a, b) => {
    const [from, to] = compareClusters(a, b) <= 0 ? [a, b] : [b, a];
    const shared = facesOf.get(to.id) ?? new Set<string>();
    const faces = truss.faces.filter((f) => shared.has(f.id) && f.corners.includes(from.id)).map((f) => f.id);
    const key = a.id < b.id ? `${a.id} ${b.id}` : `${b.id} ${a.id}`;
    return {
      id: `${from.id}–${to.id}`,
      from: from.id,
      to: to.id,
      kind: kindOf(from, to, faces.length, roles.get(key)),
      faces,
      bay: from.station ?? '',
    };
  };
};
