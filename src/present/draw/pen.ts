import type { Weight } from './helvetica.ts';

/**
 * A neutral list of what is drawn: millimetres, x to the right, y down. SVG and PDF are written from the same list,
 * so that screen and paper show the same thing.
 */
export type Step =
  | readonly ['move', number, number]
  | readonly ['line', number, number]
  | readonly ['curve', number, number, number, number, number, number]
  | readonly ['close'];

export interface Stroke {
  readonly colour: string;
  readonly widthMm: number;
  readonly dashMm?: readonly number[];
  readonly cap?: 'butt' | 'round';
}

export interface PathOp {
  readonly kind: 'path';
  readonly steps: readonly Step[];
  readonly stroke?: Stroke;
  readonly fill?: string;
}

export interface TextOp {
  readonly kind: 'text';
  /** Start of the base line, or its middle or end when aligned so. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly sizeMm: number;
  readonly weight: Weight;
  readonly align: 'left' | 'middle' | 'right';
  readonly colour: string;
}

/** A photo, known by its hash; its bytes are handed to whoever writes the file. */
export interface ImageOp {
  readonly kind: 'image';
  readonly hash: string;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export type Op = PathOp | TextOp | ImageOp;
export type Ops = readonly Op[];
export type Point = readonly [x: number, y: number];

/** A drawing of stated size. */
export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ops: Ops;
}

/** Ink on paper. Lines that mean something are at least 3:1 on white, text at least 4.5:1. */
export const ink = {
  line: '#14181C',
  text: '#14181C',
  quiet: '#5A636B',
  rule: '#8C949B',
  faint: '#C3C9CE',
  paper: '#FFFFFF',
  wash: '#F1F3F4',
} as const;

interface Style {
  readonly stroke?: Stroke;
  readonly fill?: string;
}

export const stroke = (
  colour: string,
  widthMm: number,
  dashMm?: readonly number[],
  cap?: 'butt' | 'round',
): Stroke => ({
  colour,
  widthMm,
  ...(dashMm ? { dashMm } : {}),
  ...(cap ? { cap } : {}),
});

export const path = (steps: readonly Step[], style: Style): PathOp => ({ kind: 'path', steps, ...style });

export const polyline = (points: readonly Point[], style: Style): PathOp =>
  path(
    points.map(([x, y], k) => [k === 0 ? 'move' : 'line', x, y] as const),
    style,
  );

export const polygon = (points: readonly Point[], style: Style): PathOp => {
  const open = polyline(points, style);
  return { ...open, steps: [...open.steps, ['close']] };
};

export const segment = (a: Point, b: Point, by: Stroke): PathOp => polyline([a, b], { stroke: by });

export const box = (x: number, y: number, w: number, h: number, style: Style): PathOp =>
  polygon(
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    style,
  );

/** Four cubic arcs; handle length 4/3 (√2 − 1) of the radius, off by 0.03 % of it at most. */
const HANDLE = (4 / 3) * (Math.SQRT2 - 1);

export const ellipse = ([x, y]: Point, rx: number, ry: number, style: Style): PathOp => {
  const [hx, hy] = [rx * HANDLE, ry * HANDLE];
  return path(
    [
      ['move', x + rx, y],
      ['curve', x + rx, y + hy, x + hx, y + ry, x, y + ry],
      ['curve', x - hx, y + ry, x - rx, y + hy, x - rx, y],
      ['curve', x - rx, y - hy, x - hx, y - ry, x, y - ry],
      ['curve', x + hx, y - ry, x + rx, y - hy, x + rx, y],
      ['close'],
    ],
    style,
  );
};

export const circle = (centre: Point, r: number, style: Style): PathOp => ellipse(centre, r, r, style);

export const text = (
  [x, y]: Point,
  words: string,
  sizeMm: number,
  more: { weight?: Weight; align?: TextOp['align']; colour?: string } = {},
): TextOp => ({
  kind: 'text',
  x,
  y,
  text: words,
  sizeMm,
  weight: more.weight ?? 'regular',
  align: more.align ?? 'left',
  colour: more.colour ?? ink.text,
});

const shiftStep = (step: Step, dx: number, dy: number): Step => {
  switch (step[0]) {
    case 'close':
      return step;
    case 'curve':
      return ['curve', step[1] + dx, step[2] + dy, step[3] + dx, step[4] + dy, step[5] + dx, step[6] + dy];
    default:
      return [step[0], step[1] + dx, step[2] + dy];
  }
};

/** The same drawing elsewhere on the sheet. */
export const shift = (ops: Ops, dx: number, dy: number): Ops =>
  ops.map((op) =>
    op.kind === 'path'
      ? { ...op, steps: op.steps.map((step) => shiftStep(step, dx, dy)) }
      : { ...op, x: op.x + dx, y: op.y + dy },
  );
