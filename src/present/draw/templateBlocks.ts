import { MM_PER_IN } from '../../core/base/units.ts';
import type { FormedBlocks, RoundnessGauge, SawGuide } from '../../core/splice/blocks.ts';
import type { Part } from '../../core/splice/result.ts';
import { box, ink, type Ops, type Point, polygon, polyline, segment, stroke, text } from './pen.ts';
import type { Template } from './templateWrap.ts';

const line = stroke(ink.line, 0.3);
const hidden = stroke(ink.quiet, 0.2, [3, 1.5]);
const centre = stroke(ink.quiet, 0.15, [6, 1.5, 1, 1.5]);

/** A circle, or a part of one, in straight steps of 2°: a hundredth of a millimetre on the largest tube. */
const arc = (cx: number, cy: number, r: number, from: number, to: number): readonly Point[] => {
  const n = Math.max(2, Math.ceil(Math.abs(to - from) / (Math.PI / 90)));
  return Array.from({ length: n + 1 }, (_, k): Point => {
    const t = from + ((to - from) * k) / n;
    return [cx + r * Math.cos(t), cy + r * Math.sin(t)];
  });
};
const round = (cx: number, cy: number, r: number): Ops => [
  polyline(arc(cx, cy, r, 0, 2 * Math.PI), { stroke: line }),
  segment([cx - r - 3, cy], [cx + r + 3, cy], centre),
  segment([cx, cy - r - 3], [cx, cy + r + 3], centre),
];

const mm = (inches: number): number => inches * MM_PER_IN;
const GAP = 8;

/** Saw-guide block: side with the slot, and end with the bore. */
export const sawGuideTemplate = (guide: SawGuide, lines: readonly string[]): Template => {
  const [l, w, bore] = [mm(guide.lengthIn.value), mm(guide.widthIn.value), mm(guide.boreIn.value)];
  const [s0, s1] = guide.slotIn.map((s) => mm(s.value)) as [number, number];
  const top = 6;
  const below = top + w + GAP;
  return {
    id: 'saw-guide',
    title: 'Saw-guide block for the 30° cut',
    lines,
    widthMm: l + 2,
    heightMm: below + w + 6,
    ops: [
      box(0, top, l, w, { stroke: line }),
      segment([0, top + (w - bore) / 2], [l, top + (w - bore) / 2], hidden),
      segment([0, top + (w + bore) / 2], [l, top + (w + bore) / 2], hidden),
      segment([0, top + w / 2], [l, top + w / 2], centre),
      segment([s0, top + w], [s1, top], line),
      text([l / 2, top - 1.5], 'side: saw slot right through', 2.2, { align: 'middle' }),
      box(0, below, w, w, { stroke: line }),
      ...round(w / 2, below + w / 2, bore / 2),
      text([w / 2, below + w + 4], 'end: bore', 2.2, { align: 'middle' }),
    ],
  };
};

/** Formed blocks, end on: bore and the kerf between the halves. */
export const formedBlocksTemplate = (blocks: FormedBlocks, lines: readonly string[]): Template => {
  const [w, bore, kerf] = [mm(blocks.widthIn.value), mm(blocks.boreIn.value), mm(blocks.kerfIn.value)];
  const top = 6;
  return {
    id: 'formed-blocks',
    title: 'Formed blocks, bore',
    lines,
    widthMm: w + 6,
    heightMm: w + top + 6,
    ops: [
      box(3, top, w, w, { stroke: line }),
      ...round(3 + w / 2, top + w / 2, bore / 2),
      segment([3, top + w / 2 - kerf / 2], [3 + w, top + w / 2 - kerf / 2], hidden),
      segment([3, top + w / 2 + kerf / 2], [3 + w, top + w / 2 + kerf / 2], hidden),
      text([3 + w / 2, top + w + 4], 'bore first, then saw out the strip', 2.2, { align: 'middle' }),
    ],
  };
};

/** Roundness gauge: a plate with a half-round notch. */
export const gaugeTemplate = (gauge: RoundnessGauge, lines: readonly string[]): Template => {
  const [w, h, r] = [mm(gauge.widthIn.value), mm(gauge.heightIn.value), mm(gauge.notchIn.value) / 2];
  const top = 4;
  return {
    id: 'roundness-gauge',
    title: 'Roundness gauge',
    lines,
    widthMm: w + 2,
    heightMm: h + top + 4,
    ops: [
      polygon([[0, top], ...arc(w / 2, top, r, Math.PI, 0), [w, top], [w, top + h], [0, top + h]], {
        stroke: line,
      }),
      segment([w / 2, top], [w / 2, top + h], centre),
    ],
  };
};

/** A patch laid flat. Its corners are the welder's to round. */
export const patchTemplate = (patch: Part, lines: readonly string[]): Template => {
  const [w, h] = [mm(patch.shortIn.value), mm(patch.longIn.value)];
  return {
    id: 'patch',
    title: 'Patch, laid flat',
    lines,
    widthMm: w + 2,
    heightMm: h + 8,
    ops: [
      box(0, 4, w, h, { stroke: line }),
      segment([w / 2, 4], [w / 2, 4 + h], centre),
      segment([0, 4 + h / 2], [w, 4 + h / 2], centre),
      text([w / 2, 3], 'around the tube', 2.2, { align: 'middle' }),
    ],
  };
};
