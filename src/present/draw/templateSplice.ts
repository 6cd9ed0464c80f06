import { cutAt, reachOf } from '../../core/splice/cut.ts';
import type { EndCut } from '../../core/splice/endCut.ts';
import type { Design, Part, Piece, Plan } from '../../core/splice/result.ts';
import type { Units } from '../show.ts';
import {
  type Drawing,
  ink,
  type Op,
  type Ops,
  type Point,
  polygon,
  polyline,
  segment,
  stroke,
  text,
} from './pen.ts';
import { dimension, dimensionWords, measured, type Scale } from './templateDimensions.ts';

const SIZE = 2.6;
const CLOCK_MM = 2.2;
const EDGE_MM = 12;
const ROW_MM = 6;
const outline = stroke(ink.line, 0.3);
const beneath = stroke(ink.quiet, 0.2, [2, 1]);
const axis = stroke(ink.quiet, 0.12, [8, 1.5, 1.5, 1.5]);

const STEPS = 72;
/** Half of a cut as it is seen from the side: from its top line to its bottom line, through the near quarter. */
const sideCut = (s: Scale, cut: EndCut, radiusIn: number, y: number): readonly Point[] =>
  Array.from({ length: STEPS + 1 }, (_, k): Point => {
    const turn = (6 * k) / STEPS;
    const at = cutAt(cut, radiusIn, s.topClock + turn);
    return [s.x(at), y - radiusIn * Math.cos((turn / 6) * Math.PI) * s.perIn];
  });

/** A piece of tube from the side. */
const sidePart = (
  s: Scale,
  ends: readonly [EndCut, EndCut],
  odIn: number,
  y: number,
  hidden: boolean,
): Ops => {
  const [a, b] = ends.map((cut) => sideCut(s, cut, odIn / 2, y)) as [readonly Point[], readonly Point[]];
  return [polygon([...a, ...[...b].reverse()], { stroke: hidden ? beneath : outline })];
};

const aroundSteps = Array.from({ length: 2 * STEPS + 1 }, (_, k) => (12 * k) / (2 * STEPS));
/** A cut with the tube unrolled, top line in the middle. */
const flatCut = (s: Scale, cut: EndCut, radiusIn: number, y: number, hidden: boolean): Op =>
  polyline(
    aroundSteps.map((c): Point => {
      const at = cutAt(cut, radiusIn, s.topClock + c - 6);
      return [s.x(at), y + ((c - 6) / 6) * Math.PI * radiusIn * s.perIn];
    }),
    { stroke: hidden ? beneath : outline },
  );

const isHidden = (part: Part, piece: Piece): boolean => part.tube.odIn < piece.tube.odIn;

const damageOps = (s: Scale, y: number, half: number): Ops => {
  const { damage } = s.piece;
  if (!damage) return [];
  const [a, b] = [s.x(damage.fromIn), s.x(damage.toIn)];
  const n = Math.max(1, Math.round((b - a) / 1.5));
  return Array.from({ length: n + 1 }, (_, k) => {
    const at = a + ((b - a) * k) / n;
    return segment([at - 1, y + half], [at + 1, y - half], stroke(ink.rule, 0.15));
  });
};

const sideView = (s: Scale, y: number): Ops => {
  const { piece, plan } = s;
  const od = piece.tube.odIn;
  const end = (atIn: number): EndCut => ({ kind: 'square', atIn });
  const rosettes = (plan.rosettes?.places ?? []).flatMap((r) => {
    const turn = ((r.clock - s.topClock) / 6) * Math.PI;
    if (Math.sin(turn) < -1e-9) return [];
    const at: Point = [s.x(r.atIn.value), y - (od / 2) * Math.cos(turn) * s.perIn];
    return [
      segment([at[0] - 1.2, at[1]], [at[0] + 1.2, at[1]], outline),
      segment([at[0], at[1] - 1.2], [at[0], at[1] + 1.2], outline),
    ];
  });
  const stubs = plan.stubs
    ? [
        ...sidePart(s, [end(s.lowIn), plan.stubs[0].cut], od, y, false),
        ...sidePart(s, [plan.stubs[1].cut, end(s.highIn)], od, y, false),
      ]
    : plan.parts.some((p) => p.kind === 'member')
      ? []
      : sidePart(s, [end(s.lowIn), end(s.highIn)], od, y, false);
  return [
    segment([s.x(s.lowIn) - 4, y], [s.x(s.highIn) + 4, y], axis),
    ...damageOps(s, y, (od / 2) * s.perIn),
    ...stubs,
    ...plan.parts.flatMap((p) => sidePart(s, p.ends, p.tube.odIn, y, isHidden(p, piece))),
    ...rosettes,
  ];
};

const flatView = (s: Scale, y: number): Ops => {
  const { piece, plan } = s;
  const r = piece.tube.odIn / 2;
  const half = Math.PI * r * s.perIn;
  const clocks = [-6, -3, 0, 3, 6].map((q) => {
    const at = y + (q / 6) * Math.PI * r * s.perIn;
    const clock = ((((s.topClock + q - 1) % 12) + 12) % 12) + 1;
    return [
      segment([s.x(s.lowIn), at], [s.x(s.highIn), at], q % 6 === 0 ? stroke(ink.rule, 0.15) : axis),
      ...(half > 4 * CLOCK_MM || q % 6 === 0
        ? [
            text([s.x(s.lowIn) - 1.5, at + 0.9], `${Math.round(clock * 100) / 100}`, CLOCK_MM, {
              align: 'right',
            }),
          ]
        : []),
    ];
  });
  const wrapHole = (clock: number): number => ((((clock - s.topClock + 6) % 12) + 12) % 12) - 6;
  return [
    ...clocks.flat(),
    segment([s.x(s.lowIn), y - half], [s.x(s.lowIn), y + half], stroke(ink.rule, 0.15)),
    segment([s.x(s.highIn), y - half], [s.x(s.highIn), y + half], stroke(ink.rule, 0.15)),
    ...(plan.stubs ?? []).map((stub) => flatCut(s, stub.cut, r, y, false)),
    ...plan.parts.flatMap((p) =>
      p.ends.map((cut) => flatCut(s, cut, p.tube.odIn / 2, y, isHidden(p, piece))),
    ),
    ...(plan.rosettes?.places ?? []).map((h) => {
      const at: Point = [s.x(h.atIn.value), y + (wrapHole(h.clock) / 6) * Math.PI * r * s.perIn];
      const d = ((plan.rosettes?.holeIn.value ?? 0) / 2) * s.perIn;
      return polygon(
        Array.from(
          { length: 24 },
          (_, k): Point => [
            at[0] + d * Math.cos((k / 12) * Math.PI),
            at[1] + d * Math.sin((k / 12) * Math.PI),
          ],
        ),
        { stroke: outline },
      );
    }),
    ...plan.seamClocks.map((clock) => {
      const at = y + (wrapHole(clock) / 6) * Math.PI * r * s.perIn;
      const [a, b] = plan.parts[0]!.ends.map((cut) =>
        s.x(cutAt(cut, plan.parts[0]!.tube.odIn / 2, clock)),
      ) as [number, number];
      return segment([a, at], [b, at], stroke(ink.line, 0.3, [1, 1]));
    }),
  ];
};

/** The line of the tube that the views are turned to: the longest line of the new piece. */
const topOf = (plan: Plan): number => {
  const cut = plan.parts.flatMap((p) => p.ends).find((c) => c.kind === 'scarf' || c.kind === 'fishmouth');
  return cut && 'pointClock' in cut ? cut.pointClock : 12;
};

/**
 * A splice from the side and unrolled, with its dimensions: every one a true length along the tube. Not full size; the
 * scale is said. `null` where the method does not fit: there is nothing to draw.
 */
export const spliceDrawing = (
  piece: Piece,
  design: Design,
  units: Units,
  widthMm: number,
): Drawing | null => {
  const { plan } = design;
  if (!plan) return null;
  const all = [
    ...plan.parts.flatMap((p) => p.ends.map((c) => reachOf(c, p.tube.odIn / 2))),
    ...(plan.stubs ?? []).map((s) => reachOf(s.cut, piece.tube.odIn / 2)),
  ];
  const beyond = 1.5 * piece.tube.odIn;
  const lowIn = Math.max(0, Math.min(...all.map((a) => a.low)) - beyond);
  const highIn = Math.min(piece.lengthIn, Math.max(...all.map((a) => a.high)) + beyond);
  const perIn = (widthMm - 2 * EDGE_MM) / (highIn - lowIn);
  const s: Scale = {
    piece,
    plan,
    units,
    perIn,
    widthMm,
    lowIn,
    highIn,
    topClock: topOf(plan),
    x: (alongIn) => EDGE_MM + (alongIn - lowIn) * perIn,
  };
  const widest = Math.max(piece.tube.odIn, ...plan.parts.map((p) => (p.kind === 'patch' ? 0 : p.tube.odIn)));
  const side = 8 + (widest / 2) * perIn;
  const rows = measured(s);
  const under = side + (widest / 2) * perIn;
  const flat = under + (rows.length + 2) * ROW_MM + (Math.PI * widest * perIn) / 2;
  const heightMm = flat + (Math.PI * widest * perIn) / 2 + 8;
  return {
    widthMm,
    heightMm,
    ops: [
      text(
        [EDGE_MM, 4],
        `From the side, ${Math.round(s.topClock * 100) / 100} o'clock up; ${piece.ends[0].cluster} to the left. All lengths true, along the tube.`,
        SIZE,
      ),
      ...sideView(s, side),
      ...rows.flatMap(([, a, b], k) => dimension(s, a, b, under + (k + 1) * ROW_MM, under)),
      ...rows.flatMap(([says, a, b], k) => {
        const hairs = rows.slice(k).flatMap(([, from, to]) => [s.x(from), s.x(to)]);
        return dimensionWords(s, a, b, under + (k + 1) * ROW_MM, says, hairs);
      }),
      text(
        [EDGE_MM, flat - (Math.PI * widest * perIn) / 2 - 2.5],
        'Unrolled, seen from outside; clock positions at the left.',
        SIZE,
      ),
      ...flatView(s, flat),
      text(
        [widthMm - EDGE_MM, heightMm - 1.5],
        `scale ${(perIn / 25.4).toFixed(2)} : 1, not for measuring`,
        2.2,
        { align: 'right', colour: ink.quiet },
      ),
    ],
  };
};
