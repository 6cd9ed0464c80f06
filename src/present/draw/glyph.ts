import type { damageTags, Tag } from '../tags.ts';
import { circle, ellipse, type Ops, path, polygon, polyline, stroke, text } from './pen.ts';

type DamageGlyph = (typeof damageTags)[keyof typeof damageTags]['glyph'];
type StateGlyph = Exclude<Tag['glyph'], 'damage'>;
export type Glyph = StateGlyph | DamageGlyph;

/** A glyph in a square of one by one about (0, 0), as functions of size so that lines keep their weight. */
type Draw = (x: number, y: number, r: number, colour: string) => Ops;

const W = 0.32;

const glyphs = {
  ring: (x, y, r, c) => [circle([x, y], r * 0.8, { stroke: stroke(c, W) })],
  dot: (x, y, r, c) => [circle([x, y], r * 0.45, { fill: c })],
  triangle: (x, y, r, c) => [
    polygon(
      [
        [x, y - r],
        [x + r * 0.95, y + r * 0.75],
        [x - r * 0.95, y + r * 0.75],
      ],
      { stroke: stroke(c, W) },
    ),
  ],
  arc: (x, y, r, c) => [
    path(
      [
        ['move', x - r, y + r * 0.5],
        ['curve', x - r * 0.5, y - r * 0.9, x + r * 0.5, y - r * 0.9, x + r, y + r * 0.5],
      ],
      { stroke: stroke(c, W * 1.3) },
    ),
  ],
  twoRings: (x, y, r, c) => [
    circle([x - r * 0.4, y], r * 0.6, { stroke: stroke(c, W) }),
    circle([x + r * 0.4, y], r * 0.6, { stroke: stroke(c, W) }),
  ],
  slash: (x, y, r, c) => [
    polyline(
      [
        [x - r * 0.7, y + r],
        [x + r * 0.7, y - r],
      ],
      { stroke: stroke(c, W * 2) },
    ),
  ],
  cross: (x, y, r, c) => [
    polyline(
      [
        [x - r * 0.8, y - r * 0.8],
        [x + r * 0.8, y + r * 0.8],
      ],
      { stroke: stroke(c, W * 1.4) },
    ),
    polyline(
      [
        [x - r * 0.8, y + r * 0.8],
        [x + r * 0.8, y - r * 0.8],
      ],
      { stroke: stroke(c, W * 1.4) },
    ),
  ],
  bowArc: (x, y, r, c) => [
    polyline(
      [
        [x - r, y + r * 0.5],
        [x + r, y + r * 0.5],
      ],
      { stroke: stroke(c, W * 0.6, [0.4, 0.35]) },
    ),
    path(
      [
        ['move', x - r, y + r * 0.5],
        ['curve', x - r * 0.4, y - r * 1.0, x + r * 0.4, y - r * 1.0, x + r, y + r * 0.5],
      ],
      { stroke: stroke(c, W * 1.2) },
    ),
  ],
  kinkChevron: (x, y, r, c) => [
    polyline(
      [
        [x - r, y + r * 0.5],
        [x, y - r * 0.6],
        [x + r, y + r * 0.5],
      ],
      { stroke: stroke(c, W * 1.2) },
    ),
  ],
  dentMoon: (x, y, r, c) => [
    path(
      [
        ['move', x - r * 0.9, y - r * 0.35],
        ['curve', x - r * 0.7, y + r * 1.1, x + r * 0.7, y + r * 1.1, x + r * 0.9, y - r * 0.35],
        ['close'],
      ],
      { fill: c },
    ),
  ],
  crackZigzag: (x, y, r, c) => [
    polyline(
      [
        [x - r, y],
        [x - r * 0.6, y - r * 0.7],
        [x - r * 0.1, y + r * 0.6],
        [x + r * 0.35, y - r * 0.6],
        [x + r * 0.7, y + r * 0.5],
        [x + r, y],
      ],
      { stroke: stroke(c, W) },
    ),
  ],
  ovalRing: (x, y, r, c) => [ellipse([x, y], r, r * 0.55, { stroke: stroke(c, W) })],
  thinStipple: (x, y, r, c) =>
    [
      [-0.6, -0.5],
      [0, -0.6],
      [0.6, -0.5],
      [-0.3, 0],
      [0.3, 0],
      [-0.6, 0.5],
      [0, 0.6],
      [0.6, 0.5],
    ].map(([dx, dy]) => circle([x + r * dx!, y + r * dy!], 0.15, { fill: c })),
  holeRing: (x, y, r, c) => [
    circle([x, y], r * 0.85, { stroke: stroke(c, W * 1.4) }),
    circle([x, y], r * 0.4, { fill: c }),
  ],
  breakGap: (x, y, r, c) => [
    polyline(
      [
        [x - r, y],
        [x - r * 0.35, y],
      ],
      { stroke: stroke(c, W * 2) },
    ),
    polyline(
      [
        [x + r * 0.35, y],
        [x + r, y],
      ],
      { stroke: stroke(c, W * 2) },
    ),
    polyline(
      [
        [x - r * 0.45, y + r * 0.7],
        [x - r * 0.2, y - r * 0.7],
      ],
      { stroke: stroke(c, W * 0.8) },
    ),
    polyline(
      [
        [x + r * 0.2, y + r * 0.7],
        [x + r * 0.45, y - r * 0.7],
      ],
      { stroke: stroke(c, W * 0.8) },
    ),
  ],
  otherQuery: (x, y, r, c) => [
    text([x, y + r * 0.8], '?', r * 2.3, { weight: 'bold', align: 'middle', colour: c }),
  ],
} as const satisfies Record<Glyph, Draw>;

/** A glyph about a point, `r` half its size, mm. */
export const glyph = (name: Glyph, x: number, y: number, r: number, colour: string): Ops =>
  glyphs[name](x, y, r, colour);
