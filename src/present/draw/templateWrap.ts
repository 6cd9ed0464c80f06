import { MM_PER_IN } from '../../core/base/units.ts';
import type { Rosette } from '../../core/splice/result.ts';
import { holeCurve } from '../../core/splice/rosette.ts';
import { textWidth } from './helvetica.ts';
import { ink, type Op, type Ops, type Point, polygon, polyline, segment, stroke, text } from './pen.ts';

/** A template at its true size, or a drawing that goes with it: straight steps and words, mm, from its own top left. */
export interface Template {
  readonly id: string;
  readonly title: string;
  /** Words above it: tube, which end, what it marks. */
  readonly lines: readonly string[];
  readonly widthMm: number;
  readonly heightMm: number;
  /** Left out: full size. */
  readonly scale?: string;
  readonly ops: Ops;
}

/** A line round the tube: its place along the tube at each clock position. */
export interface WrapLine {
  readonly kind: 'cut' | 'inner' | 'edge' | 'mark';
  readonly says: string;
  readonly at: (clock: number) => number;
}

/** A paper laid round a tube. */
export interface Wrap {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly string[];
  readonly odIn: number;
  /** The clock is read looking from `from` to `to` (1) or back (−1). */
  readonly looks: 1 | -1;
  /** Stretch of the tube it covers, from the `from` cluster point. */
  readonly fromIn: number;
  readonly toIn: number;
  readonly curves: readonly WrapLine[];
  readonly rosettes: readonly Rosette[];
  readonly holeIn: number;
  /** Clock positions of lines along the tube: seams. */
  readonly seams: readonly number[];
  /** What lies that way. */
  readonly up: string;
  readonly down: string;
  /** Second cut of a pair. */
  readonly reverse: boolean;
  /** What each stretch between the lines is, at a place of the tube. */
  readonly sides: readonly { readonly atIn: number; readonly says: string }[];
}

/**
 * Length of a paper wrap once round, mm: the middle of the paper's thickness lies at OD/2 + t/2.
 *
 *   C = π (OD + t)
 *
 * Source: methods.md §9.
 */
export const wrapLength = (odIn: number, paperMm: number): number => Math.PI * (odIn * MM_PER_IN + paperMm);

const styles = {
  cut: stroke(ink.line, 0.3),
  inner: stroke(ink.quiet, 0.15, [2, 1]),
  edge: stroke(ink.line, 0.2, [4, 1, 1, 1]),
  mark: stroke(ink.quiet, 0.2, [6, 2]),
} as const;

/** Strip that goes under, to glue. */
const LAP_MM = 6;
const TOP_MM = 5;
/** Room for words within the paper, above and below its lines. */
const BAND_MM = 11;
const SOLE_MM = 5;
const STEPS = 360;

/** Where the lines of a wrap lie on its paper. Its outside is seen; `to` is up. */
export const paperPlace = (
  wrap: Pick<Wrap, 'odIn' | 'looks' | 'toIn'>,
  paperMm: number,
): ((clock: number, alongIn: number) => Point) => {
  const round = wrapLength(wrap.odIn, paperMm);
  return (clock, alongIn) => {
    const share = clock / 12;
    return [
      round * (wrap.looks === 1 ? share : 1 - share),
      TOP_MM + BAND_MM + (wrap.toIn - alongIn) * MM_PER_IN,
    ];
  };
};

const curveOps = (curve: WrapLine, place: (clock: number, alongIn: number) => Point): Ops => {
  const clocks = Array.from({ length: STEPS + 1 }, (_, k) => (12 * k) / STEPS);
  const at = clocks.map((c) => [c, curve.at(c)] as const).filter(([, x]) => !Number.isNaN(x));
  if (at.length < 2) return [];
  const level = at.every(([, x]) => x === at[0]![1]);
  const points = (level ? [at[0]!, at.at(-1)!] : at).map(([c, x]) => place(c, x));
  const left = points.reduce((a, b) => (b[0] < a[0] ? b : a));
  return [
    polyline(points, { stroke: styles[curve.kind] }),
    ...(curve.says === ''
      ? []
      : [
          text([left[0] + 1, left[1] - 0.8], curve.says, 2, {
            colour: curve.kind === 'cut' ? ink.text : ink.quiet,
          }),
        ]),
  ];
};

const holeOps = (wrap: Wrap, paperMm: number, place: (clock: number, alongIn: number) => Point): Ops => {
  const radius = wrap.odIn / 2;
  const share = wrapLength(wrap.odIn, paperMm) / (2 * Math.PI * radius);
  const drawn = (r: Rosette, clock: number): Ops => {
    const [cx, cy] = place(clock, r.atIn.value);
    const outline = Array.from({ length: 48 }, (_, k): Point => {
      const [s, x] = holeCurve(radius, wrap.holeIn, (k / 24) * Math.PI);
      return [cx + s * share, cy + x * MM_PER_IN];
    });
    const arm = (wrap.holeIn / 2) * MM_PER_IN + 1.5;
    const thin = stroke(ink.quiet, 0.12);
    return [
      polygon(outline, { stroke: styles.cut }),
      segment([cx - arm, cy], [cx + arm, cy], thin),
      segment([cx, cy - arm], [cx, cy + arm], thin),
    ];
  };
  // the seam lies on 12: a hole there stands half at either edge, and is drawn at both
  return wrap.rosettes.flatMap((r) =>
    r.clock === 12 ? [...drawn(r, 12), ...drawn(r, 0)] : drawn(r, r.clock),
  );
};

const clockOps = (place: (clock: number, alongIn: number) => Point, wrap: Wrap): Ops =>
  Array.from({ length: 13 }, (_, clock): readonly Op[] => {
    const [x] = place(clock, 0);
    const y0 = TOP_MM;
    const y1 = place(clock, wrap.fromIn)[1] + SOLE_MM;
    const quarter = clock % 3 === 0;
    const label = `${clock === 0 ? 12 : clock}`;
    return [
      ...(quarter
        ? [segment([x, y0], [x, y1], stroke(ink.faint, 0.15, [3, 1.5]))]
        : [segment([x, y0], [x, y0 + 2], styles.inner), segment([x, y1 - 2], [x, y1], styles.inner)]),
      text([x, y0 - 1], label, quarter ? 2.8 : 2, { align: 'middle', weight: quarter ? 'bold' : 'regular' }),
      text([x, y1 + 3], label, 2, { align: 'middle' }),
    ];
  }).flat();

/** A wrap drawn flat: cut lines, clock marks, rosettes, seams, which way is which, and the strip to glue. */
export const wrapTemplate = (wrap: Wrap, paperMm: number): Template => {
  const place = paperPlace(wrap, paperMm);
  const round = wrapLength(wrap.odIn, paperMm);
  const high = BAND_MM + (wrap.toIn - wrap.fromIn) * MM_PER_IN + SOLE_MM;
  const [top, bottom] = [TOP_MM, TOP_MM + high];
  const notes: readonly [number, string, boolean][] = [
    [top + 4, `up: ${wrap.up}`, false],
    [bottom - 1.5, `down: ${wrap.down}`, false],
    ...wrap.sides.map((s): [number, string, boolean] => [place(0, s.atIn)[1], s.says, false]),
  ];
  const outside = wrap.reverse ? 'OUTSIDE OF PAPER · REVERSE ANGLE' : 'OUTSIDE OF PAPER';
  const size = Math.min(3, (3 * (round - 4)) / textWidth(outside, 3, 'bold'));
  return {
    id: wrap.id,
    title: wrap.title,
    lines: wrap.lines,
    widthMm: round + LAP_MM + 1,
    heightMm: high + TOP_MM + 5,
    ops: [
      polygon(
        [
          [0, top],
          [round, top],
          [round, bottom],
          [0, bottom],
        ],
        { stroke: stroke(ink.rule, 0.2) },
      ),
      polyline(
        [
          [round, top],
          [round + LAP_MM, top],
          [round + LAP_MM, bottom],
          [round, bottom],
        ],
        { stroke: stroke(ink.faint, 0.2, [1, 1]) },
      ),
      text([round + 0.6, top + 3], 'goes', 1.8, { colour: ink.quiet }),
      text([round + 0.6, top + 5.2], 'under', 1.8, { colour: ink.quiet }),
      ...clockOps(place, wrap),
      ...wrap.seams.map((clock) =>
        segment(place(clock, wrap.toIn), place(clock, wrap.fromIn), stroke(ink.line, 0.25, [1, 1])),
      ),
      ...wrap.curves.flatMap((curve) => curveOps(curve, place)),
      ...holeOps(wrap, paperMm, place),
      ...notes.map(([y, says]) => text([round / 2, y], says, 2.2, { align: 'middle', colour: ink.quiet })),
      text([round / 2, top + 8.6], outside, size, { align: 'middle', weight: 'bold' }),
    ],
  };
};
