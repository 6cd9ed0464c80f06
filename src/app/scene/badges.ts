import type { Vec3 } from '../../core/base/vec3.ts';
import type { Box } from './declutter.ts';
import { card, font, type Overlay, stroke, widthOf, write } from './overlay.ts';
import type { SceneProps, SceneShape } from './sceneProps.ts';
import { type Basis, isFlat, standsWhere } from './turntable.ts';

/** A direction of the aircraft as the picture shows it: x right, y down, `near` toward the viewer; length one in space. */
export interface Pointer {
  readonly x: number;
  readonly y: number;
  readonly near: number;
}

const pointer = (b: Basis, [x, y, z]: Vec3): Pointer => ({
  x: x * b.right[0] + y * b.right[1] + z * b.right[2],
  y: -(x * b.up[0] + y * b.up[1] + z * b.up[2]),
  near: x * b.back[0] + y * b.back[1] + z * b.back[2],
});

/** Where forward, up and the pilot's left and right lie in the picture. */
export const bearings = (b: Basis) =>
  ({
    forward: pointer(b, [-1, 0, 0]),
    left: pointer(b, [0, -1, 0]),
    right: pointer(b, [0, 1, 0]),
    up: pointer(b, [0, 0, 1]),
  }) as const;

const REACH = 40;
const MIDDLE = 76;

/** Boxes the badges keep for themselves. */
export const badgeBoxes = (o: Overlay, shape?: SceneShape): readonly Box[] => {
  const [right, bottom] = [2 * MIDDLE, o.size.height];
  const width = widthOf(o, stand(o), font(o, 400));
  return [
    ...(shape ? [noteOf(o, shape).box] : []),
    { left: 0, top: bottom - 2 * MIDDLE + 16, right, bottom },
    { left: right, top: bottom - (isFlat(o.basis) ? 56 : 34), right: right + Math.max(width, 240), bottom },
  ];
};

/** Where the viewer stands; in a flat view also what may be measured in it. */
const stand = (o: Overlay): string => {
  const where = standsWhere(o.basis);
  if (!isFlat(o.basis)) return where;
  return o.size.width < 560 ? `${where}, flat` : `${where}, flat: lengths in this plane are true`;
};

const disc = (o: Overlay, x: number, y: number, letter: string): void => {
  const { pen, inks } = o;
  pen.beginPath();
  pen.arc(x, y, 11, 0, 2 * Math.PI);
  pen.fillStyle = inks.paper;
  pen.fill();
  pen.strokeStyle = inks.ink;
  pen.lineWidth = 1.5 * inks.line;
  pen.stroke();
  pen.font = font(o, 600, 14);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = inks.ink;
  pen.fillText(letter, x, y + 1);
};

/** An arrow from the middle; pointed at the viewer it is a dot, away a cross, as on a drawing. */
const arrow = (o: Overlay, cx: number, cy: number, p: Pointer): void => {
  const { pen, inks } = o;
  const long = Math.hypot(p.x, p.y);
  pen.strokeStyle = inks.ink;
  pen.fillStyle = inks.ink;
  pen.lineWidth = 2 * inks.line;
  if (long < 0.25) {
    pen.beginPath();
    pen.arc(cx, cy, 7, 0, 2 * Math.PI);
    pen.stroke();
    pen.beginPath();
    if (p.near > 0) {
      pen.arc(cx, cy, 2.5, 0, 2 * Math.PI);
      pen.fill();
      return;
    }
    for (const side of [1, -1]) {
      pen.moveTo(cx - 5, cy - 5 * side);
      pen.lineTo(cx + 5, cy + 5 * side);
    }
    pen.stroke();
    return;
  }
  const [ux, uy] = [p.x / long, p.y / long];
  const tip = { x: cx + p.x * REACH, y: cy + p.y * REACH };
  stroke(o, { x: cx, y: cy }, { x: tip.x - ux * 6, y: tip.y - uy * 6 }, inks.ink, 2 * inks.line);
  pen.beginPath();
  pen.moveTo(tip.x + ux * 4, tip.y + uy * 4);
  pen.lineTo(tip.x - ux * 8 - uy * 5, tip.y - uy * 8 + ux * 5);
  pen.lineTo(tip.x - ux * 8 + uy * 5, tip.y - uy * 8 - ux * 5);
  pen.closePath();
  pen.fill();
};

/** Forward arrow and the pilot's L and R, always in the picture, the nearer one in front. */
const compass = (o: Overlay): void => {
  const [cx, cy] = [MIDDLE, o.size.height - MIDDLE];
  const { forward, left, right, up } = bearings(o.basis);
  const { inks, pen } = o;
  // a ground of its own, so that it reads over the tubes of a close look
  pen.beginPath();
  pen.arc(cx, cy, MIDDLE - 6, 0, 2 * Math.PI);
  pen.fillStyle = inks.paper;
  pen.globalAlpha = 0.85;
  pen.fill();
  pen.globalAlpha = 1;
  stroke(
    o,
    { x: cx + left.x * REACH, y: cy + left.y * REACH },
    { x: cx + right.x * REACH, y: cy + right.y * REACH },
    inks.soft,
    inks.line,
  );
  stroke(o, { x: cx, y: cy }, { x: cx + up.x * 24, y: cy + up.y * 24 }, inks.soft, inks.line);
  arrow(o, cx, cy, forward);
  const sides = [
    { letter: 'L', ...left },
    { letter: 'R', ...right },
  ].sort((a, b) => a.near - b.near);
  for (const { letter, x, y } of sides) disc(o, cx + x * REACH, cy + y * REACH, letter);
  const out = Math.hypot(forward.x, forward.y);
  if (out < 0.25) return;
  const reach = REACH + 20 / out;
  write(o, 'FWD', cx + forward.x * reach, cy + forward.y * reach, font(o, 600), inks.ink, 'center');
};

/** A length worth drawing as a scale bar: 1, 2 or 5 of a power of ten that takes 70 to 180 pixels. */
export const barLength = (pxPerUnit: number): number => {
  const power = 10 ** Math.floor(Math.log10(180 / pxPerUnit));
  return [5, 2, 1].map((n) => n * power).find((long) => long * pxPerUnit <= 180)!;
};

const caption = (o: Overlay, unit: 'in' | 'mm'): void => {
  const { inks } = o;
  const left = 2 * MIDDLE;
  const y = o.size.height - 20;
  const words = stand(o);
  const high = isFlat(o.basis) ? 50 : 28;
  const right = left + Math.max(widthOf(o, words, font(o, 400)), isFlat(o.basis) ? 240 : 0) + 6;
  card(
    o,
    { left: left - 6, top: o.size.height - 6 - high, right, bottom: o.size.height - 6 },
    inks.paper,
    inks.paper,
    0,
  );
  write(o, words, left, y, font(o, 400), inks.soft);
  if (!isFlat(o.basis)) return;
  const pxPerUnit = unit === 'mm' ? o.turntable.scale / 25.4 : o.turntable.scale;
  const long = barLength(pxPerUnit);
  const px = long * pxPerUnit;
  const top = y - 20;
  stroke(o, { x: left, y: top }, { x: left + px, y: top }, inks.ink, 1.5 * inks.line);
  for (const x of [left, left + px / 2, left + px])
    stroke(o, { x, y: top - 5 }, { x, y: top + (x === left + px / 2 ? 0 : 5) }, inks.ink, 1.5 * inks.line);
  write(o, `${long} ${unit}`, left + px + 8, top, font(o, 600), inks.ink);
};

/** Top of the room left for the truss when the corner says which shape it has. */
export const underNote = 72;

const noteOf = (o: Overlay, shape: SceneShape) => {
  const text = `${shape.name}: ${shape.size ?? `moves drawn × ${shape.factor}`}`;
  const second = shape.bothWays ? 'Hairlines: as drawn, and the other way' : 'Hairline: as drawn';
  const face = font(o, 600);
  const width = Math.max(widthOf(o, text, face), widthOf(o, second, font(o, 400))) + 20;
  const right = o.size.width - 12;
  const high = 2 * (o.inks.small + 5) + 10;
  return { text, second, face, high, box: { left: right - width, top: 12, right, bottom: 12 + high } };
};

/** Which shape is drawn over which, and how much its moves are enlarged, in the upper right corner. */
const shapeNote = (o: Overlay, shape: SceneShape): void => {
  const { text, second, face, high, box } = noteOf(o, shape);
  card(o, box, o.inks.paper, o.inks.ink, o.inks.line);
  write(o, text, box.left + 10, 12 + high * 0.3, face, o.inks.ink);
  write(o, second, box.left + 10, 12 + high * 0.72, font(o, 400), o.inks.soft);
};

/** What the sheet says about itself, whatever is shown. */
export const paintBadges = (o: Overlay, props: Pick<SceneProps, 'shape' | 'scaleUnit'>): void => {
  compass(o);
  caption(o, props.scaleUnit ?? 'in');
  if (props.shape) shapeNote(o, props.shape);
};
