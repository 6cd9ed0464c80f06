import type { AxisFit, SetUp } from '../../core/straighten/result.ts';
import { showLength, type Units } from '../show.ts';
import { type Drawing, ink, type Ops, type Point, polygon, polyline, segment, stroke, text } from './pen.ts';

const EDGE = 6;
const SIZE = 2.8;

/** How often the departure is enlarged: a round number that fills the height. */
const enlarged = (bowIn: number, perIn: number, heightMm: number): number => {
  const most = heightMm / Math.max(1e-6, bowIn * perIn);
  return [1, 2, 5, 10, 20, 50, 100, 200].findLast((f) => f <= most) ?? 1;
};

/**
 * The fitted axis of a bent tube over its chord, with ram and blocks of one set-up: the departure enlarged by a factor that
 * is printed, crown up.
 *
 * @param lengthIn  cluster to cluster
 * @param setup  left out: the axis alone
 */
export const axisDrawing = (
  fit: AxisFit,
  lengthIn: number,
  ends: readonly [string, string],
  units: Units,
  setup?: SetUp,
  widthMm = 100,
): Drawing => {
  const perIn = (widthMm - 2 * EDGE) / lengthIn;
  const rise = 16;
  const base = 9 + rise;
  const factor = enlarged(fit.bowIn.value, perIn, rise);
  const x = (alongIn: number): number => EDGE + alongIn * perIn;
  const [start, end] = [fit.line[0]!.atIn, fit.line.at(-1)!.atIn];
  const points = fit.line.map((p): Point => [x(p.atIn), base - p.bowIn * factor * perIn]);
  const deepest = fit.line.reduce((a, b) => (Math.abs(b.bowIn) > Math.abs(a.bowIn) ? b : a));
  const crown: Point = [x(deepest.atIn), base - deepest.bowIn * factor * perIn];
  const bowAt = (alongIn: number): number => {
    const k = fit.line.findIndex((p) => p.atIn >= alongIn);
    return k <= 0 ? 0 : fit.line[k]!.bowIn;
  };
  const arrow = ([px, py]: Point, down: boolean, colour: string): Ops => {
    const s = down ? -1 : 1;
    return [
      segment([px, py + s * 6], [px, py + s * 1.8], stroke(colour, 0.5)),
      polygon(
        [
          [px, py + s * 0.6],
          [px - 1.2, py + s * 2.8],
          [px + 1.2, py + s * 2.8],
        ],
        { fill: colour },
      ),
    ];
  };
  const label = (at: number, y: number, words: string): Ops => {
    const align = at < widthMm * 0.2 ? 'left' : at > widthMm * 0.8 ? 'right' : 'middle';
    const shifted =
      align === 'left' ? Math.max(EDGE, at - 2) : align === 'right' ? Math.min(widthMm - EDGE, at + 2) : at;
    return [text([shifted, y], words, SIZE, { align })];
  };
  const set: Ops = setup
    ? [
        ...arrow([x(setup.atIn), base - bowAt(setup.atIn) * factor * perIn], true, ink.line),
        ...setup.blocksIn.flatMap((b) => arrow([x(b), base - bowAt(b) * factor * perIn], false, ink.line)),
        ...label(x(setup.blocksIn[0]), base + 11, `block ${showLength(setup.blocksIn[0], units)}`),
        ...label(x(setup.blocksIn[1]), base + 11, `block ${showLength(setup.blocksIn[1], units)}`),
        ...label(x(setup.atIn), base + 15.5, `ram ${showLength(setup.atIn, units)}`),
      ]
    : [];
  return {
    widthMm,
    heightMm: base + (setup ? 22 : 12),
    ops: [
      segment([x(0), base], [x(lengthIn), base], stroke(ink.rule, 0.2, [4, 1.5])),
      polyline(
        [
          [x(0), base],
          [x(start), base],
        ],
        { stroke: stroke(ink.line, 0.5) },
      ),
      polyline(points, { stroke: stroke(ink.line, 0.7) }),
      polyline(
        [
          [x(end), base],
          [x(lengthIn), base],
        ],
        { stroke: stroke(ink.line, 0.5) },
      ),
      segment([crown[0], base], crown, stroke(ink.quiet, 0.2, [1, 1])),
      text([x(0), base + 5], ends[0], SIZE, { weight: 'bold' }),
      text([x(lengthIn), base + 5], ends[1], SIZE, { weight: 'bold', align: 'right' }),
      text([EDGE, 4], `Crown up, departure × ${factor}; places from ${ends[0]}.`, SIZE, {
        colour: ink.quiet,
      }),
      ...set,
    ],
  };
};
