import { add, distance, scale } from '../../core/base/vec3.ts';
import { type Pickables, pick, type Ray } from '../../core/truss/pick.ts';
import type { Drawn } from './drawn.ts';
import type { Hit } from './sceneProps.ts';
import { basis, type ScreenPoint, type Size, type Turntable, unproject } from './turntable.ts';

/** How near a pointer has to come, CSS pixels: 12 mm of finger, a little slack for a mouse. */
export const slackPx = { touch: 22, pen: 12, mouse: 8 } as const;

/** The line of sight under a screen point, from well before the truss. */
export const sightAt = (v: Turntable, size: Size, at: ScreenPoint, d: Drawn): Ray => {
  const { back } = basis(v);
  const start = unproject(basis(v), v, size, at);
  const reach = distance(d.low, d.high) + distance(d.low, v.target);
  return { origin: add(start, scale(back, reach)), direction: scale(back, -1) };
};

/** What can be touched, as the core's pick wants it. */
export interface Touchable {
  readonly members: Pickables;
  readonly clusters: Pickables;
}

/** Tubes and balls as they are drawn: seven numbers a part (start, end, radius), inches. */
export const touchable = (d: Drawn): Touchable => {
  const members = new Float64Array(d.memberIds.length * 7);
  d.memberIds.forEach((_, i) => {
    members.set(d.ends.subarray(i * 6, i * 6 + 6), i * 7);
    members[i * 7 + 6] = d.radii[i]!;
  });
  const clusters = new Float64Array(d.clusterIds.length * 7);
  d.clusterIds.forEach((_, i) => {
    const centre = d.centres.subarray(i * 3, i * 3 + 3);
    clusters.set(centre, i * 7);
    clusters.set(centre, i * 7 + 3);
    clusters[i * 7 + 6] = d.balls[i]!;
  });
  return {
    members: { ids: d.memberIds, numbers: members },
    clusters: { ids: d.clusterIds, numbers: clusters },
  };
};

/** The parts whose capsule comes within `slackIn` of a line of sight, so that ranking looks at few. */
const beside = ({ origin, direction }: Ray, { ids, numbers }: Pickables, slackIn: number): Pickables => {
  // two directions square to the line: seen along it, a capsule is a segment with a radius
  const [dx, dy, dz] = direction;
  const flat = Math.hypot(dx, dy);
  const [ux, uy] = flat > 1e-9 ? [-dy / flat, dx / flat] : [1, 0];
  const [vx, vy, vz] = [-dz * uy, dz * ux, dx * uy - dy * ux];
  const near: number[] = [];
  for (let i = 0; i < ids.length; i++) {
    const o = i * 7;
    const [ax, ay, az] = [numbers[o]! - origin[0], numbers[o + 1]! - origin[1], numbers[o + 2]! - origin[2]];
    const [bx, by, bz] = [
      numbers[o + 3]! - origin[0],
      numbers[o + 4]! - origin[1],
      numbers[o + 5]! - origin[2],
    ];
    const [au, av] = [ax * ux + ay * uy, ax * vx + ay * vy + az * vz];
    const [eu, ev] = [bx * ux + by * uy - au, bx * vx + by * vy + bz * vz - av];
    const long = eu * eu + ev * ev;
    const t = long > 0 ? Math.min(1, Math.max(0, -(au * eu + av * ev) / long)) : 0;
    const reach = numbers[o + 6]! + slackIn;
    if ((au + t * eu) ** 2 + (av + t * ev) ** 2 <= reach * reach + 1e-9) near.push(i);
  }
  const few = new Float64Array(near.length * 7);
  near.forEach((i, k) => {
    few.set(numbers.subarray(i * 7, i * 7 + 7), k * 7);
  });
  return { ids: near.map((i) => ids[i]!), numbers: few };
};

export interface Candidate {
  readonly kind: 'member' | 'cluster';
  readonly id: string;
  readonly alongIn?: number;
}

/** How many things one place can offer to repeated taps. */
const MOST = 8;

/**
 * What lies under a line of sight, the likeliest first: clusters within their ball and a little, then tubes as the
 * core's pick ranks them.
 *
 * @param pxIn  inches in a pixel
 * @param slack  how far beside a tube still counts, pixels
 * @param most  how many are wanted
 */
export const candidates = (
  things: Touchable,
  ghosted: ReadonlySet<string>,
  sight: Ray,
  pxIn: number,
  slack: number,
  most = MOST,
): readonly Candidate[] => {
  const found: Candidate[] = [];
  const passed = new Set(ghosted);
  const gather = (kind: Candidate['kind'], all: Pickables, fixedIn: number) => {
    const parts = beside(sight, all, fixedIn);
    while (found.length < most) {
      const next = pick(sight, parts, { fixedIn, perIn: 0 }, passed);
      if (next === null) return;
      passed.add(next.id);
      found.push({ kind, id: next.id, ...(kind === 'member' ? { alongIn: next.alongIn } : {}) });
    }
  };
  gather('cluster', things.clusters, pxIn * Math.max(3, slack * 0.3));
  gather('member', things.members, pxIn * slack);
  return found;
};

/** Where the last tap was and what it gave, so that a tap on the same place can give the next. */
export interface LastTap {
  readonly at: ScreenPoint;
  readonly ids: readonly string[];
  readonly turn: number;
}

/** The next of the candidates under a repeated tap, else the first. Taps count as repeated within 6 pixels. */
export const tapped = (
  found: readonly Candidate[],
  at: ScreenPoint,
  last: LastTap | null,
): { readonly chosen: Candidate | null; readonly tap: LastTap } => {
  const ids = found.map(({ id }) => id);
  const again =
    last !== null &&
    Math.hypot(at.x - last.at.x, at.y - last.at.y) <= 6 &&
    ids.length === last.ids.length &&
    ids.every((id) => last.ids.includes(id));
  const list = again ? last.ids : ids;
  const turn = again && list.length > 0 ? (last.turn + 1) % list.length : 0;
  const chosen = found.find(({ id }) => id === list[turn]) ?? null;
  return { chosen, tap: { at: again ? last.at : at, ids: list, turn } };
};

/** A candidate as the app hears of it. */
export const asHit = ({ kind, id, alongIn }: Candidate, additive: boolean): Hit => ({
  kind,
  id,
  additive,
  ...(alongIn === undefined ? {} : { alongIn }),
});
