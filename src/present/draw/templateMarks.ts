import { MM_PER_IN } from '../../core/base/units.ts';
import { box, ink, type Ops, type Point, segment, stroke, text } from './pen.ts';

/** Lengths of the check bars. */
export const BAR_MM = 100;
export const BAR_IN = 4;

const line = stroke(ink.line, 0.25);
const SIZE = 2.4;

/** One bar: a line with a tick at either end and at each division, and what it should measure. */
const bar = (x: number, y: number, lengthMm: number, parts: number, says: string, upright: boolean): Ops => {
  const to = (along: number, across: number): Point =>
    upright ? [x + across, y + along] : [x + along, y + across];
  return [
    segment(to(0, 0), to(lengthMm, 0), line),
    ...Array.from({ length: parts + 1 }, (_, k) => {
      const at = (lengthMm * k) / parts;
      const tall = k === 0 || k === parts ? 2 : 1.2;
      return segment(to(at, -tall), to(at, tall), line);
    }),
    text(to(2, upright ? -5.2 : 5), says, SIZE),
  ];
};

/** The 100 mm and the 4 in bar, lying: 101.6 wide, 15 high, and their words. */
export const lyingBars = (x: number, y: number): Ops => [
  ...bar(x, y + 2, BAR_MM, 10, 'must measure 100 mm', false),
  ...bar(x, y + 11, BAR_IN * MM_PER_IN, 4, 'must measure 4 in', false),
];

/** The same bars standing, so that a printer that stretches one way shows. Words beside, cut short: space is narrow. */
export const standingBars = (x: number, y: number): Ops => [
  ...bar(x + 3, y, BAR_MM, 10, '', true),
  ...bar(x + 10, y, BAR_IN * MM_PER_IN, 4, '', true),
  text([x, y + BAR_IN * MM_PER_IN + 4], '100 mm', 2),
  text([x + 9, y + BAR_IN * MM_PER_IN + 4], '4 in', 2),
];

/** A square of one inch. */
export const inchSquare = (x: number, y: number): Ops => [
  box(x, y, MM_PER_IN, MM_PER_IN, { stroke: line }),
  text([x + MM_PER_IN / 2, y + MM_PER_IN / 2 + 1], '1 in square', SIZE, { align: 'middle' }),
];

/** A cross that lies on both sheets: laid on one another they are joined true. */
export const matchMark = ([x, y]: Point, name: string): Ops => [
  segment([x - 4, y], [x + 4, y], stroke(ink.line, 0.15)),
  segment([x, y - 4], [x, y + 4], stroke(ink.line, 0.15)),
  text([x + 1, y - 1], name, 2.6, { weight: 'bold' }),
];
