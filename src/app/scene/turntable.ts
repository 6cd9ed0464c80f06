import { cross, dot, type Vec3 } from '../../core/base/vec3.ts';
import type { ViewName } from './sceneProps.ts';

/**
 * Where the sheet is seen from: a turntable with a level horizon, always orthographic, so that one inch is the same
 * number of pixels anywhere in the picture.
 */
export interface Turntable {
  /** The point in the middle of the picture. */
  readonly target: Vec3;
  /** Turn of the viewer around the upright axis, radians; 0 stands aft and looks forward. */
  readonly azimuth: number;
  /** Height of the viewer, radians; +π/2 looks straight down. */
  readonly elevation: number;
  /** CSS pixels per inch. */
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Directions of the picture in the aircraft frame; `back` points at the viewer. */
export interface Basis {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly back: Vec3;
}

export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

const quarter = Math.PI / 2;

/** Named directions. Flat views keep the nose to the left, but for the right side, where it is to the right. */
export const namedViews = {
  leftSide: { azimuth: -quarter, elevation: 0 },
  rightSide: { azimuth: quarter, elevation: 0 },
  plan: { azimuth: -quarter, elevation: quarter },
  fromAhead: { azimuth: Math.PI, elevation: 0 },
  fromBelow: { azimuth: -quarter, elevation: -quarter },
  threeQuarter: { azimuth: -2.18, elevation: 0.42 },
} as const satisfies Record<ViewName, Pick<Turntable, 'azimuth' | 'elevation'>>;

/** Exact at the quarters, where the cosine of a rounded π/2 is not zero. */
const clean = (x: number): number => (Math.abs(x) < 1e-12 ? 0 : x);

/** The picture's directions. There is no pole to fear: they come from the angles and not from a look-at. */
export const basis = ({ azimuth, elevation }: Pick<Turntable, 'azimuth' | 'elevation'>): Basis => {
  const [ca, sa] = [clean(Math.cos(azimuth)), clean(Math.sin(azimuth))];
  const [ce, se] = [clean(Math.cos(elevation)), clean(Math.sin(elevation))];
  const back: Vec3 = [ce * ca, ce * sa, se];
  const right: Vec3 = [-sa, ca, 0];
  return { right, up: cross(back, right), back };
};

/** A point of the aircraft on the screen, CSS pixels from the upper left corner. */
export const project = (b: Basis, v: Turntable, size: Size, p: Vec3): ScreenPoint => {
  const [x, y, z] = [p[0] - v.target[0], p[1] - v.target[1], p[2] - v.target[2]];
  return {
    x: size.width / 2 + (x * b.right[0] + y * b.right[1] + z * b.right[2]) * v.scale,
    y: size.height / 2 - (x * b.up[0] + y * b.up[1] + z * b.up[2]) * v.scale,
  };
};

/** The point of the plane through the target that lies under a screen point. */
export const unproject = (b: Basis, v: Turntable, size: Size, s: ScreenPoint): Vec3 => {
  const across = (s.x - size.width / 2) / v.scale;
  const rise = (size.height / 2 - s.y) / v.scale;
  const along = (i: 0 | 1 | 2) => v.target[i] + b.right[i] * across + b.up[i] * rise;
  return [along(0), along(1), along(2)];
};

/** Turns by pixels dragged; the picture follows the hand and the horizon stays level. */
export const orbit = (v: Turntable, dx: number, dy: number): Turntable => ({
  ...v,
  azimuth: v.azimuth - dx * 0.008,
  elevation: Math.min(quarter, Math.max(-quarter, v.elevation + dy * 0.008)),
});

/** Slides the picture by pixels dragged. */
export const pan = (v: Turntable, dx: number, dy: number): Turntable => {
  const middle = { x: -dx, y: -dy };
  return { ...v, target: unproject(basis(v), v, { width: 0, height: 0 }, middle) };
};

/** Nearer or farther by a factor; what lies under `at` stays under it. */
export const zoomAt = (v: Turntable, size: Size, at: ScreenPoint, factor: number): Turntable => {
  const b = basis(v);
  const scale = Math.min(600, Math.max(0.2, v.scale * factor));
  const held = unproject(b, v, size, at);
  const now = unproject(b, { ...v, scale }, size, at);
  const shift = (i: 0 | 1 | 2) => v.target[i] + held[i] - now[i];
  return { ...v, scale, target: [shift(0), shift(1), shift(2)] };
};

/** Pixels kept free around what is fitted. */
export interface Margin {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

/** The same direction, moved so that every point lies inside the margin. `leastIn` keeps one short tube from filling the sheet. */
export const fitTo = (
  v: Turntable,
  size: Size,
  points: readonly Vec3[],
  margin: Margin,
  leastIn: number,
): Turntable => {
  if (points.length === 0) return v;
  const b = basis(v);
  const reach = (direction: Vec3) => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const p of points) {
      const d = dot(p, direction);
      low = Math.min(low, d);
      high = Math.max(high, d);
    }
    return { middle: (low + high) / 2, span: Math.max(high - low, leastIn) };
  };
  const [across, rise, depth] = [reach(b.right), reach(b.up), reach(b.back)];
  const free = { x: size.width - 2 * margin.x, y: size.height - margin.top - margin.bottom };
  const scale = Math.max(0.2, Math.min(free.x / across.span, free.y / rise.span));
  const lift = rise.middle - (margin.bottom - margin.top) / 2 / scale;
  const along = (i: 0 | 1 | 2) => b.right[i] * across.middle + b.up[i] * lift + b.back[i] * depth.middle;
  return { ...v, scale, target: [along(0), along(1), along(2)] };
};

/** Between two stands, the short way round; `t` runs from 0 to 1. */
export const blend = (from: Turntable, to: Turntable, t: number): Turntable => {
  const round = 2 * Math.PI;
  const turn = ((((to.azimuth - from.azimuth) % round) + 3 * Math.PI) % round) - Math.PI;
  const mix = (a: number, b: number) => a + (b - a) * t;
  return t >= 1
    ? to
    : {
        target: [
          mix(from.target[0], to.target[0]),
          mix(from.target[1], to.target[1]),
          mix(from.target[2], to.target[2]),
        ],
        azimuth: from.azimuth + turn * t,
        elevation: mix(from.elevation, to.elevation),
        scale: from.scale * (to.scale / from.scale) ** t,
      };
};

/** Looks straight along an axis of the aircraft, so that lengths in the picture's plane are true. */
export const isFlat = ({ back }: Basis): boolean =>
  Math.max(Math.abs(back[0]), Math.abs(back[1]), Math.abs(back[2])) > Math.cos(0.002);

/** Where the viewer stands, in words, the pilot's left and right. */
export const standsWhere = ({ back: [x, y, z] }: Basis): string => {
  if (z > 0.999) return 'From above';
  if (z < -0.999) return 'From below';
  const level = [
    x < -0.17 ? 'ahead' : x > 0.17 ? 'aft' : '',
    y < -0.17 ? 'the left' : y > 0.17 ? 'the right' : '',
  ].filter((word) => word !== '');
  const height = z > 0.17 ? ', above' : z < -0.17 ? ', below' : '';
  return `From ${level.join(' on ')}${height}`;
};
