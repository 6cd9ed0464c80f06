import { formedBlocks, roundnessGauge, sawGuide } from '../../core/splice/blocks.ts';
import { cutAt, reachOf } from '../../core/splice/cut.ts';
import type { EndCut } from '../../core/splice/endCut.ts';
import type { Design, Part, Piece, Plan } from '../../core/splice/result.ts';
import { showLength, showTube, type Units } from '../show.ts';
import { formedBlocksTemplate, gaugeTemplate, patchTemplate, sawGuideTemplate } from './templateBlocks.ts';
import { methodWords } from './templateWords.ts';
import { type Template, type Wrap, wrapLength, wrapTemplate } from './templateWrap.ts';

/** What templates are drawn with; all of it is printed. */
export interface TemplateOptions {
  readonly units: Units;
  /** Thickness of the paper, mm; left out: 0.1, said as a starting value. */
  readonly paperMm?: number;
}

export const PAPER_MM = 0.1;
/** Tube shown beyond the outermost line of a wrap. */
const MARGIN_IN = 0.3;

interface Setting {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly method: string;
  readonly units: Units;
  readonly paperMm: number;
}

const fixedMm = (mm: number): string => mm.toFixed(2);

/** The lines every wrap carries: tube, paper, how the clock is read. */
const wrapLines = ({ piece, units, paperMm }: Setting, odIn: number, what: string): readonly string[] => [
  `Tube ${piece.id}, ${what}`,
  `Round it: OD ${showLength(odIn, units, 64)}; wrap ${fixedMm(wrapLength(odIn, paperMm))} mm = pi (OD + ${paperMm} mm), for paper ${paperMm} mm thick (starting value: measure yours).`,
  `Clock read looking from ${piece.ends[piece.looks === 1 ? 0 : 1].cluster} to ${piece.ends[piece.looks === 1 ? 1 : 0].cluster}. Lay the 12 line on 12 o'clock; the two edges must meet and the cut line run through.`,
];

const wrapOf = (set: Setting, wrap: Omit<Wrap, 'looks' | 'up' | 'down'>): Template =>
  wrapTemplate(
    {
      ...wrap,
      looks: set.piece.looks,
      up: `towards ${set.piece.ends[1].cluster}`,
      down: `towards ${set.piece.ends[0].cluster}`,
    },
    set.paperMm,
  );

const lineOf =
  (cut: EndCut, odIn: number): ((clock: number) => number) =>
  (clock) =>
    cutAt(cut, odIn / 2, clock);

/** One joint of an inner-sleeve splice: stub cut, gap, section cut, rosettes of both, sleeve ends and centre mark. */
const jointWrap = (set: Setting, k: 0 | 1): Template | null => {
  const { piece, plan, units } = set;
  const section = plan.parts.find((p) => p.kind === 'section');
  const sleeve = plan.parts.filter((p) => p.kind === 'sleeve')[k];
  if (!section || !sleeve || !plan.stubs) return null;
  const od = piece.tube.odIn;
  const stub = plan.stubs[k];
  const [low, high] = [reachOf(sleeve.ends[0], od / 2).low, reachOf(sleeve.ends[1], od / 2).high];
  const middle = (low + high) / 2;
  const inThis = k === 0 ? 'fromStub' : 'toStub';
  return wrapOf(set, {
    id: `joint-${stub.cluster}`,
    title: `${set.method}: cuts and rosettes at the ${stub.cluster} end`,
    lines: [
      ...wrapLines(
        set,
        od,
        `${showTube(piece.tube, units)}, ${piece.material}; marks stub and section, joint nearer ${stub.cluster}`,
      ),
      `Stub ${showLength(stub.longIn.value, units)} long point, ${showLength(stub.shortIn.value, units)} short point from ${stub.cluster}. Gap ${showLength(plan.gapIn.value, units, 64)} along the tube (square to the cut it would be ${showLength(plan.gapOtherIn.value, units, 64)} along it).`,
      `Sleeve ${showTube(sleeve.tube, units)}, ${showLength(sleeve.axisIn.value, units)} long, under the dashed ends; its centre mark in the gap.`,
    ],
    odIn: od,
    fromIn: low - MARGIN_IN,
    toIn: high + MARGIN_IN,
    curves: [
      { kind: 'cut', says: 'cut: stub', at: lineOf(stub.cut, od) },
      { kind: 'cut', says: 'cut: section', at: lineOf(section.ends[k], od) },
      { kind: 'edge', says: 'sleeve end beneath', at: () => low },
      { kind: 'edge', says: 'sleeve end beneath', at: () => high },
      { kind: 'mark', says: 'sleeve centre mark', at: () => middle },
    ],
    rosettes: (plan.rosettes?.places ?? []).filter(
      (r) => r.in === inThis || (r.in === 'section' && r.atIn.value > low && r.atIn.value < high),
    ),
    holeIn: plan.rosettes?.holeIn.value ?? 0,
    seams: [],
    reverse: k === 1,
    sides: [
      { atIn: low + 0.12, says: k === 0 ? 'STUB' : 'SECTION' },
      { atIn: high - 0.2, says: k === 0 ? 'SECTION' : 'STUB' },
    ],
  });
};

/** One end of a sleeve that lies over the tube, or of a coped member. */
const endWrap = (set: Setting, part: Part, k: 0 | 1): Template => {
  const { piece, units } = set;
  const od = part.tube.odIn;
  const cut = part.ends[k];
  const { cluster } = piece.ends[k];
  const { low, high } = reachOf(cut, od / 2);
  const cope = cut.kind === 'cope';
  const inner = (clock: number): number => cutAt(cut, od / 2 - part.tube.wallIn, clock);
  const keep = (high - low) / 2 + MARGIN_IN;
  const lengths = cope
    ? `Between cluster points ${showLength(piece.lengthIn, units)}; coped to ${cut.against.map((a) => a.member).join(', ')}. Cut line at the outside; dashed where the bore first touches.`
    : `Part ${showLength(part.longIn.value, units)} on its longest line, ${showLength(part.shortIn.value, units)} on its shortest.`;
  return wrapOf(set, {
    id: `${part.id}-${cluster}`,
    title: `${set.method}: ${part.id.replace(/-/g, ' ')}, ${cluster} end`,
    lines: [
      ...wrapLines(
        set,
        od,
        `${showTube(part.tube, units)}, ${part.material}; ${part.id.replace(/-/g, ' ')}, end nearer ${cluster}`,
      ),
      lengths,
    ],
    odIn: od,
    fromIn: low - (k === 0 ? MARGIN_IN : keep),
    toIn: high + (k === 0 ? keep : MARGIN_IN),
    curves: [
      { kind: 'cut', says: 'cut', at: lineOf(cut, od) },
      ...(cope ? [{ kind: 'inner', says: '', at: inner } as const] : []),
    ],
    rosettes: [],
    holeIn: 0,
    seams: set.plan.seamClocks,
    reverse: k === 1 && cut.kind === 'scarf',
    sides: [
      k === 0
        ? { atIn: high + keep * 0.35, says: 'KEEP THIS SIDE' }
        : { atIn: low - keep * 0.6, says: 'KEEP THIS SIDE' },
    ],
  });
};

const bothEnds = (set: Setting, part: Part | undefined): readonly Template[] =>
  part ? [endWrap(set, part, 0), endWrap(set, part, 1)] : [];

/** Bench pieces that go with any work on this tube. */
export const benchTemplates = (piece: Piece, units: Units): readonly Template[] => {
  const od = piece.tube.odIn;
  const says = (rest: string): readonly string[] => [
    `Tube ${piece.id}, OD ${showLength(od, units, 64)}. ${rest}`,
    'Try it on the tube: sizes are nominal. Common practice, no source.',
  ];
  return [
    sawGuideTemplate(sawGuide(od), says('Saw at 30° to the axis, not 30° off square.')),
    formedBlocksTemplate(formedBlocks(od), says('Kerf and cheeks are starting values, yours to change.')),
    gaugeTemplate(roundnessGauge(od), says('Hold it against the tube all round.')),
  ];
};

/** Every template of one method on one tube; none where it does not fit here. */
export const templatesOf = (piece: Piece, design: Design, options: TemplateOptions): readonly Template[] => {
  const { plan, method } = design;
  if (!plan) return [];
  const set: Setting = {
    piece,
    plan,
    method: methodWords[method],
    units: options.units,
    paperMm: options.paperMm ?? PAPER_MM,
  };
  const [first] = plan.parts;
  switch (method) {
    case 'innerSleeve':
      return [jointWrap(set, 0), jointWrap(set, 1)].filter((t) => t !== null);
    case 'outerSleeve':
      return bothEnds(
        set,
        plan.parts.find((p) => p.kind === 'sleeve'),
      );
    case 'largerTube':
    case 'splitSleeve':
    case 'fullMember':
      return bothEnds(set, first);
    case 'patch':
      return first
        ? [
            patchTemplate(first, [
              `Tube ${piece.id}. Round the corners. Thickness ${showLength(first.tube.wallIn, options.units, 64)}.`,
            ]),
          ]
        : [];
    default:
      return method satisfies never;
  }
};
