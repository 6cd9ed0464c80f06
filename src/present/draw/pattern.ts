import type { Tag } from '../tags.ts';
import { type Ops, type Point, path, polygon, polyline, type Step, stroke } from './pen.ts';

/** A strip on the page: middle, unit direction along it, half length and half width, mm. */
export interface Strip {
  readonly at: Point;
  readonly along: Point;
  readonly halfLength: number;
  readonly halfWidth: number;
}

type Place = (s: number, t: number) => Point;

const placeIn =
  ({ at, along }: Strip): Place =>
  (s, t) => [at[0] + along[0] * s - along[1] * t, at[1] + along[1] * s + along[0] * t];

const every = (from: number, to: number, step: number): readonly number[] => {
  const count = Math.floor((to - from) / step + 1e-9);
  const slack = (to - from - count * step) / 2;
  return Array.from({ length: count + 1 }, (_, k) => from + slack + k * step);
};

const LINE_MM = 0.32;

type Filling = (strip: Strip, place: Place, colour: string) => Ops;

/** Inside of the band of each pattern. Patterns that are a way of drawing the tube itself have none. */
const fillings = {
  dotted: () => [],
  solid: () => [],
  dashes: ({ halfLength: h, halfWidth: w }, place, colour) => {
    const gap = 0.14 * h;
    const bar = (a: number, b: number) =>
      polygon([place(a, -w * 0.36), place(b, -w * 0.36), place(b, w * 0.36), place(a, w * 0.36)], {
        fill: colour,
      });
    return [bar(-h + gap, -gap), bar(gap, h - gap)];
  },
  chevrons: ({ halfLength: h, halfWidth: w }, place, colour) =>
    every(-h + 0.5, h - w - 0.5, 1.5).map((s) =>
      polyline([place(s, -w * 0.8), place(s + w * 0.9, 0), place(s, w * 0.8)], {
        stroke: stroke(colour, 0.42),
      }),
    ),
  rings: ({ halfLength: h, halfWidth: w }, place, colour) =>
    [-0.56, -0.34, 0.34, 0.56].map((share) =>
      polyline([place(share * h, -w), place(share * h, w)], { stroke: stroke(colour, 0.55) }),
    ),
  band: ({ halfLength: h, halfWidth: w }, place, colour) => [
    polygon(
      [place(-0.5 * h - w, w), place(0.1 * h - w, w), place(0.5 * h + w, -w), place(-0.1 * h + w, -w)],
      {
        fill: colour,
      },
    ),
  ],
  hatch: ({ halfLength: h, halfWidth: w }, place, colour) =>
    every(-h + w, h - w, 1.1).flatMap((s) => [
      polyline([place(s - w, -w), place(s + w, w)], { stroke: stroke(colour, LINE_MM) }),
      polyline([place(s - w, w), place(s + w, -w)], { stroke: stroke(colour, LINE_MM) }),
    ]),
  wave: ({ halfLength: h, halfWidth: w }, place, colour) => {
    const quarter = h / 4;
    const steps: Step[] = [['move', ...place(-h, 0)]];
    for (let k = 0; k < 4; k++) {
      const [a, b] = [-h + 2 * k * quarter, -h + 2 * (k + 1) * quarter];
      const t = (k % 2 === 0 ? -1 : 1) * w * 1.15;
      steps.push(['curve', ...place(a + quarter * 0.7, t), ...place(b - quarter * 0.7, t), ...place(b, 0)]);
    }
    return [path(steps, { stroke: stroke(colour, 0.5) })];
  },
} as const satisfies Record<Tag['pattern'], Filling>;

/** A tag's band, wrapped around the tube: white ground, its pattern, its outline. Nothing for the two plain states. */
export const band = (strip: Strip, pattern: Tag['pattern'], colour: string): Ops => {
  const place = placeIn(strip);
  const inside = fillings[pattern](strip, place, colour);
  if (inside.length === 0) return [];
  const { halfLength: h, halfWidth: w } = strip;
  const outline = [place(-h, -w), place(h, -w), place(h, w), place(-h, w)];
  return [
    polygon(outline, { fill: '#FFFFFF' }),
    ...inside,
    polygon(outline, { stroke: stroke(colour, LINE_MM) }),
  ];
};

/** A tube drawn from end to end: hollow with a dotted outline until somebody has looked at it. */
export const tube = (a: Point, b: Point, widthMm: number, pattern: Tag['pattern'], colour: string): Ops => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length < 1e-6) return [];
  const [nx, ny] = [(-dy / length) * (widthMm / 2), (dx / length) * (widthMm / 2)];
  const side = (sign: number): readonly [Point, Point] => [
    [a[0] + sign * nx, a[1] + sign * ny],
    [b[0] + sign * nx, b[1] + sign * ny],
  ];
  const [[p, q], [r, s]] = [side(1), side(-1)];
  const body = polygon([p, q, s, r], { fill: '#FFFFFF' });
  const edge = pattern === 'dotted' ? stroke(colour, 0.26, [0, 0.75], 'round') : stroke(colour, 0.26);
  return [body, polyline([p, q], { stroke: edge }), polyline([r, s], { stroke: edge })];
};
