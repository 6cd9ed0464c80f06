import type { Vec3 } from '../../core/base/vec3.ts';
import type { Box } from './declutter.ts';
import type { Inks } from './inks.ts';
import { type Basis, project, type ScreenPoint, type Size, type Turntable } from './turntable.ts';

/** One frame of the flat drawing that lies over the picture. */
export interface Overlay {
  readonly pen: CanvasRenderingContext2D;
  readonly basis: Basis;
  readonly turntable: Turntable;
  readonly size: Size;
  readonly inks: Inks;
  readonly family: string;
  /** Widths of writing, remembered. */
  readonly widths: Map<string, number>;
  readonly labelWidths: Map<object, number>;
}

export const at = (o: Overlay, p: Vec3): ScreenPoint => project(o.basis, o.turntable, o.size, p);

export const font = (o: Overlay, weight: 400 | 600, px = o.inks.small): string =>
  `${weight} ${px}px ${o.family}`;

/** Width of a text in a font, measured once. */
export const widthOf = (o: Overlay, text: string, face: string): number => {
  const key = `${face}|${text}`;
  const known = o.widths.get(key);
  if (known !== undefined) return known;
  o.pen.font = face;
  const { width } = o.pen.measureText(text);
  o.widths.set(key, width);
  return width;
};

/** Writing with a rim of paper, so that it reads over tubes. `y` is the middle of the line. */
export const write = (
  o: Overlay,
  text: string,
  x: number,
  y: number,
  face: string,
  ink: string,
  align: CanvasTextAlign = 'left',
): void => {
  const { pen } = o;
  pen.font = face;
  pen.textAlign = align;
  pen.textBaseline = 'middle';
  pen.lineJoin = 'round';
  pen.lineWidth = 4;
  pen.strokeStyle = o.inks.paper;
  pen.strokeText(text, x, y + 0.5);
  pen.fillStyle = ink;
  pen.fillText(text, x, y + 0.5);
};

export const stroke = (o: Overlay, from: ScreenPoint, to: ScreenPoint, ink: string, width: number): void => {
  const { pen } = o;
  pen.strokeStyle = ink;
  pen.lineWidth = width;
  pen.beginPath();
  pen.moveTo(from.x, from.y);
  pen.lineTo(to.x, to.y);
  pen.stroke();
};

/** A plain box of paper with an edge. */
export const card = (o: Overlay, b: Box, fill: string, edge: string, width: number): void => {
  const { pen } = o;
  pen.beginPath();
  pen.roundRect(b.left, b.top, b.right - b.left, b.bottom - b.top, 2);
  pen.fillStyle = fill;
  pen.fill();
  pen.strokeStyle = edge;
  pen.lineWidth = width;
  pen.stroke();
};
