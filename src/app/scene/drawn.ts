import { add, scale, type Vec3 } from '../../core/base/vec3.ts';
import type { Truss } from '../../core/truss/result.ts';
import type { SceneShape } from './sceneProps.ts';

/** The truss as the picture holds it: places and radii in flat arrays, in the order of the truss's own lists. */
export interface Drawn {
  readonly memberIds: readonly string[];
  readonly clusterIds: readonly string[];
  readonly memberIndex: ReadonlyMap<string, number>;
  readonly clusterIndex: ReadonlyMap<string, number>;
  /** Six numbers a member: from x y z, to x y z. Inches. */
  readonly ends: Float64Array;
  /** Outside radius of a member. Inches. */
  readonly radii: Float64Array;
  /** Three numbers a cluster. */
  readonly centres: Float64Array;
  /** Radius of a cluster's ball: a little over its thickest tube. */
  readonly balls: Float64Array;
  readonly low: Vec3;
  readonly high: Vec3;
}

const BALL = 1.18;

/** Lays the truss out for drawing; `shape` moves its clusters by their moves times its factor. */
export const drawn = (truss: Truss, shape?: SceneShape): Drawn => {
  const { clusters, members } = truss;
  const clusterIndex = new Map(clusters.map(({ id }, i) => [id, i]));
  const centres = new Float64Array(clusters.length * 3);
  const balls = new Float64Array(clusters.length);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  clusters.forEach(({ id, at }, i) => {
    const move = shape?.moves.get(id);
    const place = move === undefined || shape === undefined ? at : add(at, scale(move, shape.factor));
    centres.set(place, i * 3);
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], place[k]);
      high[k] = Math.max(high[k], place[k]);
    }
  });
  const ends = new Float64Array(members.length * 6);
  const radii = new Float64Array(members.length);
  members.forEach(({ from, to, section }, i) => {
    const radius = section.odIn / 2;
    radii[i] = radius;
    [from, to].forEach((id, end) => {
      const c = clusterIndex.get(id);
      if (c === undefined)
        throw new Error(`Member ${members[i]?.id} ends at ${id}, which the truss does not have`);
      ends.set(centres.subarray(c * 3, c * 3 + 3), i * 6 + end * 3);
      balls[c] = Math.max(balls[c] ?? 0, radius * BALL);
    });
  });
  for (let c = 0; c < balls.length; c++) if (balls[c] === 0) balls[c] = 0.5;
  return {
    memberIds: members.map(({ id }) => id),
    clusterIds: clusters.map(({ id }) => id),
    memberIndex: new Map(members.map(({ id }, i) => [id, i])),
    clusterIndex,
    ends,
    radii,
    centres,
    balls,
    low: clusters.length === 0 ? [0, 0, 0] : low,
    high: clusters.length === 0 ? [0, 0, 0] : high,
  };
};

/** The centre of cluster `i`. */
export const centreOf = ({ centres }: Drawn, i: number): Vec3 => [
  centres[i * 3]!,
  centres[i * 3 + 1]!,
  centres[i * 3 + 2]!,
];

/** The point of member `i` a share `t` of the way from its `from` end. */
export const pointOn = ({ ends }: Drawn, i: number, t: number): Vec3 => {
  const mix = (k: number) => ends[i * 6 + k]! + (ends[i * 6 + 3 + k]! - ends[i * 6 + k]!) * t;
  return [mix(0), mix(1), mix(2)];
};

/** What an id stands on in the picture: the middle of a member, or a cluster; `null` for an id it does not know. */
export const middleOf = (d: Drawn, id: string): Vec3 | null => {
  const member = d.memberIndex.get(id);
  if (member !== undefined) return pointOn(d, member, 0.5);
  const cluster = d.clusterIndex.get(id);
  return cluster === undefined ? null : centreOf(d, cluster);
};

/** Everything that has to be in the picture when `ids` are fitted; without ids, the whole truss. */
export const pointsOf = (d: Drawn, ids?: Iterable<string>): readonly Vec3[] => {
  if (ids === undefined) return d.clusterIds.map((_, i) => centreOf(d, i));
  const points: Vec3[] = [];
  for (const id of ids) {
    const member = d.memberIndex.get(id);
    const cluster = d.clusterIndex.get(id);
    if (member !== undefined) points.push(pointOn(d, member, 0), pointOn(d, member, 1));
    else if (cluster !== undefined) points.push(centreOf(d, cluster));
  }
  return points;
};
