import type { PhotoMark } from '../../core/job/jobSchema.ts';
import { wrap } from '../draw/helvetica.ts';
import { box, ellipse, ink, type Op, type Ops, polyline, stroke, text } from '../draw/pen.ts';
import type { Shot } from '../record/sections.ts';

/** Two rows of pictures on a turned sheet, three on an upright one. */
const TALLEST_MM = { turned: 56, upright: 66 } as const;
const CAPTION_MM = 2.6;
const LEAD_MM = 3.5;

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Drawn twice, wide and white below, so that it is seen on any picture. */
const twice = (draw: (colour: string, widthMm: number) => Ops): Ops => [
  ...draw(ink.paper, 1.3),
  ...draw(ink.line, 0.6),
];

const arrow = (from: readonly [number, number], to: readonly [number, number]): Ops => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [(dx / long) * 3.2, (dy / long) * 3.2];
  const barb = (side: number): readonly [number, number] => [
    to[0] - ux + side * uy * 0.5,
    to[1] - uy - side * ux * 0.5,
  ];
  return twice((colour, widthMm) => [
    polyline([from, to], { stroke: stroke(colour, widthMm, undefined, 'round') }),
    polyline([barb(1), to, barb(-1)], { stroke: stroke(colour, widthMm, undefined, 'round') }),
  ]);
};

/** A mark where it was put on the picture. */
const markOps = ({ mark, at, to, words }: PhotoMark, { x, y, w, h }: Frame): Ops => {
  const on = ([u, v]: readonly [number, number]): readonly [number, number] => [x + u * w, y + v * h];
  const [a, b] = [on(at), on(to ?? at)];
  switch (mark) {
    case 'arrow':
      return arrow(a, b);
    case 'ring': {
      const radius = Math.max(1.5, Math.hypot(b[0] - a[0], b[1] - a[1]));
      return twice((colour, widthMm) => [ellipse(a, radius, radius, { stroke: stroke(colour, widthMm) })]);
    }
    case 'text': {
      const said = words ?? '';
      const wide = 1.6 + said.length * 1.6;
      return [
        box(a[0], a[1] - 4, wide, 4.6, { fill: ink.paper, stroke: stroke(ink.line, 0.2) }),
        text([a[0] + 0.8, a[1] - 0.7], said, 3, { weight: 'bold' }),
      ];
    }
    default:
      return mark satisfies never;
  }
};

interface Laid {
  readonly height: number;
  readonly ops: (x: number, y: number) => Ops;
}

/** One photo with its marks and its words, as wide as its column. */
const shotOps = (shot: Shot, width: number, tallest: number): Laid => {
  const { width: wPx, height: hPx } = shot.size ?? { width: 4, height: 1 };
  const scale = Math.min(width / wPx, tallest / hPx);
  const [w, h] = [wPx * scale, hPx * scale];
  const lines = shot.words.flatMap((words) => wrap(words, width, CAPTION_MM));
  return {
    height: h + 1.5 + lines.length * LEAD_MM + 3,
    ops: (x, y) => [
      ...(shot.size
        ? [{ kind: 'image', hash: shot.hash, x, y, w, h } satisfies Op]
        : [
            box(x, y, w, h, { fill: ink.wash, stroke: stroke(ink.rule, 0.2) }),
            text([x + 3, y + h / 2], shot.instead ?? 'This photo is not with this copy of the job.', 2.8),
          ]),
      ...shot.marks.flatMap((mark) => markOps(mark, { x, y, w, h })),
      ...lines.map((line, n) => text([x, y + h + 1.5 + CAPTION_MM + n * LEAD_MM], line, CAPTION_MM)),
    ],
  };
};

const BETWEEN_MM = 6;

/** Photos two abreast, row by row. */
export const photoRows = (shots: readonly Shot[], room: number, turned: boolean): readonly Laid[] => {
  const width = (room - BETWEEN_MM) / 2;
  const laid = shots.map((shot) => shotOps(shot, width, turned ? TALLEST_MM.turned : TALLEST_MM.upright));
  return laid.flatMap((left, k): Laid[] => {
    if (k % 2 === 1) return [];
    const right = laid[k + 1];
    return [
      {
        height: Math.max(left.height, right?.height ?? 0),
        ops: (x, y) => [...left.ops(x, y), ...(right?.ops(x + width + BETWEEN_MM, y) ?? [])],
      },
    ];
  });
};
