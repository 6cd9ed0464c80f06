import type { Vec3 } from '../../core/base/vec3.ts';
import type { Box } from './declutter.ts';
import { CAP, textWidth } from './helvetica.ts';
import { circle, ink, type Ops, type Point, polygon, segment, stroke, text } from './pen.ts';
import type { MapView, Projection } from './project.ts';

/** The arrow that says which way is forward; toward the eye it is a ring with a dot. */
export const forwardArrow = (at: Point, projection: Projection): Ops => {
  const [x, y] = projection.turn([-1, 0, 0]);
  const size = Math.hypot(x, y);
  if (size < 0.2)
    return [
      circle(at, 2, { stroke: stroke(ink.line, 0.35) }),
      circle(at, 0.6, { fill: ink.line }),
      text([at[0] + 3.2, at[1] + 0.8], 'Forward is toward you', 2.4),
    ];
  const [ux, uy] = [x / size, y / size];
  const tip: Point = [at[0] + ux * 7, at[1] + uy * 7];
  const tail: Point = [at[0] - ux * 7, at[1] - uy * 7];
  const back = (along: number, across: number): Point => [
    tip[0] - ux * along - uy * across,
    tip[1] - uy * along + ux * across,
  ];
  return [
    segment(tail, back(3, 0), stroke(ink.line, 0.5)),
    polygon([tip, back(3.6, 1.3), back(2.8, 0), back(3.6, -1.3)], { fill: ink.line }),
    text([at[0], at[1] + 4.4], 'Forward', 2.4, { align: 'middle' }),
  ];
};

/** Pilot's L or R, with where it stands on the page. */
export interface Badge {
  readonly letter: 'L' | 'R';
  readonly at: Point;
}

const BADGE_MM = 2.6;

/**
 * Badges beside the truss, each on the side of the page where that side of the aircraft lies;
 * looking square at a side, one badge for the side that faces the eye.
 */
export const sideBadges = (
  view: MapView,
  projection: Projection,
  points: readonly Vec3[],
  place: (p: Vec3) => Point,
): readonly Badge[] => {
  const [x, y] = projection.turn([0, 1, 0]);
  const size = Math.hypot(x, y);
  const page = points.map(place);
  const most = (ux: number, uy: number): Point =>
    page.reduce((best, p) => (p[0] * ux + p[1] * uy > best[0] * ux + best[1] * uy + 1e-9 ? p : best));
  if (page.length === 0) return [];
  if (size < 0.2) {
    const [left, top] = [Math.min(...page.map((p) => p[0])), Math.min(...page.map((p) => p[1]))];
    return [{ letter: view.sight[1] > 0 ? 'L' : 'R', at: [left - 7, top] }];
  }
  const beside = (sign: number): Point => {
    const [ux, uy] = [(sign * x) / size, (sign * y) / size];
    const p = most(ux, uy);
    return [p[0] + ux * 8, p[1] + uy * 8];
  };
  return [
    { letter: 'L', at: beside(-1) },
    { letter: 'R', at: beside(1) },
  ];
};

/** Badges of a small picture: in its lower corners, each on the side of the page where that side of the aircraft lies. */
export const cornerBadges = (projection: Projection, widthMm: number, heightMm: number): readonly Badge[] => {
  const rightward = projection.turn([0, 1, 0])[0] > 0;
  const [near, far]: readonly [Point, Point] = [
    [5, heightMm - 4],
    [widthMm - 5, heightMm - 4],
  ];
  return [
    { letter: 'L', at: rightward ? near : far },
    { letter: 'R', at: rightward ? far : near },
  ];
};

export const badgeBox = ({ at }: Badge): Box => ({
  x: at[0] - BADGE_MM - 0.6,
  y: at[1] - BADGE_MM - 0.6,
  w: 2 * BADGE_MM + 1.2,
  h: 2 * BADGE_MM + 1.2,
});

export const badgeOps = ({ letter, at }: Badge): Ops => [
  circle(at, BADGE_MM, { fill: ink.line }),
  text([at[0], at[1] + (3.4 * CAP) / 2], letter, 3.4, { weight: 'bold', align: 'middle', colour: ink.paper }),
];

const BARS_IN = [1, 2, 5, 10, 20, 50, 100, 200];

/** A bar of known length with both units: the longest round one that fits `room`. */
export const scaleBar = ([x, y]: Point, mmPerIn: number, room: number): Ops => {
  const inches = [...BARS_IN].reverse().find((length) => length * mmPerIn <= room) ?? 1;
  const w = inches * mmPerIn;
  const half = w / 2;
  const words = `${inches} in · ${Math.round(inches * 25.4)} mm`;
  return [
    polygon(
      [
        [x, y],
        [x + half, y],
        [x + half, y + 1.1],
        [x, y + 1.1],
      ],
      { fill: ink.line },
    ),
    polygon(
      [
        [x, y],
        [x + w, y],
        [x + w, y + 1.1],
        [x, y + 1.1],
      ],
      { stroke: stroke(ink.line, 0.2) },
    ),
    text([x, y + 4], '0', 2.2),
    text([x + w, y + 4], words, 2.2, { align: textWidth(words, 2.2) < w ? 'right' : 'left' }),
  ];
};

/** Round ratios a drawing may be printed at, one to so many. */
const RATIOS = [
  1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 48, 50, 60, 75, 80, 100, 120, 150,
  200,
];

/** The largest round scale at which a width and height in inches fit a space in mm: mm per inch, and its words. */
export const roundScale = (
  sizeIn: readonly [number, number],
  spaceMm: readonly [number, number],
): { readonly mmPerIn: number; readonly words: string } => {
  const fit = Math.min(spaceMm[0] / Math.max(sizeIn[0], 1e-6), spaceMm[1] / Math.max(sizeIn[1], 1e-6));
  const ratio = RATIOS.find((r) => 25.4 / r <= fit);
  return ratio === undefined
    ? { mmPerIn: fit, words: `1 : ${Math.ceil(25.4 / fit)}` }
    : { mmPerIn: 25.4 / ratio, words: `1 : ${ratio}` };
};
