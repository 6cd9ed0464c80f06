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

/** The words of a dimension over its line, on paper of their own so that no hair runs through them; never off the sheet. */
export const dimensionWords = (s: Scale, fromIn: number, toIn: number, y: number, says: string): Ops => {
  const half = textWidth(says, SIZE) / 2 + 0.6;
  const middle = (s.x(fromIn) + s.x(toIn)) / 2;
  const at = Math.min(Math.max(middle, half + 0.5), s.widthMm - half - 0.5);
  return [
    box(at - half, y - 0.8 - SIZE * 0.86, 2 * half, SIZE * 1.08, { fill: ink.paper }),
    text([at, y - 0.8], says, SIZE, { align: 'middle' }),
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
