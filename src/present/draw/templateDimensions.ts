import { reachOf } from '../../core/splice/cut.ts';
import type { Piece, Plan } from '../../core/splice/result.ts';
import { showLength, type Units } from '../show.ts';
import { textWidth } from './helvetica.ts';
import { box, ink, type Ops, segment, stroke, text } from './pen.ts';

const SIZE = 2.6;
const outline = stroke(ink.line, 0.3);
const thin = stroke(ink.quiet, 0.12);

/** How inches along the tube, and across or around it, lie on the drawing. */
export interface Scale {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly units: Units;
  readonly perIn: number;
  readonly widthMm: number;
  readonly lowIn: number;
  readonly highIn: number;
  /** Line of the tube that lies at the top of the longitudinal view. */
  readonly topClock: number;
  readonly x: (alongIn: number) => number;
}

/** One dimension line, and hairs up to what it measures. */
export const dimension = (s: Scale, fromIn: number, toIn: number, y: number, upTo: number): Ops => {
  const [a, b] = [s.x(fromIn), s.x(toIn)];
  return [
    segment([a, upTo], [a, y + 1], thin),
    segment([b, upTo], [b, y + 1], thin),
    segment([a, y], [b, y], thin),
    segment([a - 0.8, y + 0.8], [a + 0.8, y - 0.8], outline),
    segment([b - 0.8, y + 0.8], [b + 0.8, y - 0.8], outline),
  ];
};

/** Where the middle of the words stands, in mm across the sheet; beside the line or over it. */
interface Spot {
  readonly at: number;
  readonly beside: boolean;
}

/** Clear paper around words, and how far beside its line they are looked for, in mm. */
const PAD = 1;
const REACH_MM = 14;

/** The middle of the line, then other places over it, then further and further out at either end. */
const spots = (s: Scale, a: number, b: number, half: number): readonly Spot[] => {
  const least = half + 0.5;
  const most = s.widthMm - half - 0.5;
  const middle = Math.min(Math.max((a + b) / 2, least), most);
  const room = Math.max(0, Math.floor((b - a) / 2 - half));
  const out = Array.from({ length: REACH_MM }, (_, k) => 2 + k);
  return [
    { at: middle, beside: false },
    ...Array.from({ length: room }, (_, k) => [middle + k + 1, middle - k - 1])
      .flat()
      .map((at) => ({ at, beside: false })),
    ...out.map((d) => ({ at: b + d + half, beside: true })).filter(({ at }) => at <= most),
    ...out.map((d) => ({ at: a - d - half, beside: true })).filter(({ at }) => at >= least),
  ];
};

/**
 * The words of a dimension, over its line or beside it: where the fewest hairs run, and never off the sheet.
 * A hair that runs there all the same is broken off, with a clear gap above and below the words.
 *
 * `hairs`: where hairs run down through this row, its own among them, in mm.
 */
export const dimensionWords = (
  s: Scale,
  fromIn: number,
  toIn: number,
  y: number,
  says: string,
  hairs: readonly number[],
): Ops => {
  const half = textWidth(says, SIZE) / 2 + PAD;
  const [a, b] = [s.x(fromIn), s.x(toIn)];
  const crossed = ({ at }: Spot): number => hairs.filter((x) => Math.abs(x - at) < half).length;
  const all = spots(s, a, b, half);
  const fewest = Math.min(...all.map(crossed));
  const { at, beside } = all.find((spot) => crossed(spot) === fewest)!;
  const base = beside ? y + SIZE * 0.36 : y - 0.8;
  const top = base - SIZE * 0.8 - PAD;
  const foot = beside ? base + SIZE * 0.2 + PAD : y - 0.2;
  return [
    // the line runs on to words that stand beside it
    ...(beside ? [segment(at > b ? [b, y] : [a, y], [at, y], thin)] : []),
    box(at - half, top, 2 * half, foot - top, { fill: ink.paper }),
    text([at, base], says, SIZE, { align: 'middle' }),
  ];
};

/** What is measured, in rows beneath the view: words, from where, to where. */
export const measured = (s: Scale): readonly (readonly [says: string, fromIn: number, toIn: number])[] => {
  const { plan, piece, units } = s;
  const r = piece.tube.odIn / 2;
  const show = (n: number): string => showLength(n, units);
  const { low, high } = { low: s.lowIn, high: s.highIn };
  const [a, b] = piece.ends;
  const stubs = (plan.stubs ?? []).flatMap((stub, k) => {
    const reach = reachOf(stub.cut, r);
    const points: readonly (readonly [string, number])[] =
      stub.cut.kind === 'square'
        ? [['square cut', reach.low]]
        : [
            ['long point', k === 0 ? reach.high : reach.low],
            ['short point', k === 0 ? reach.low : reach.high],
          ];
    return points.map(([name, at]): readonly [string, number, number] => {
      const says = `${show(k === 0 ? at : piece.lengthIn - at)} ${name} from ${stub.cluster}`;
      return k === 0 ? [says, low, at] : [says, at, high];
    });
  });
  const parts = plan.parts.map((p) => {
    const ends = [reachOf(p.ends[0], p.tube.odIn / 2), reachOf(p.ends[1], p.tube.odIn / 2)] as const;
    const same = p.longIn.value - p.shortIn.value < 1e-9;
    const says = same
      ? `${p.id} ${show(p.longIn.value)}`
      : `${p.id} ${show(p.longIn.value)} longest line, ${show(p.shortIn.value)} shortest`;
    return [says, ends[0].low, ends[1].high] as const;
  });
  return [[`${show(piece.lengthIn)} between ${a.cluster} and ${b.cluster}`, low, high], ...stubs, ...parts];
};
