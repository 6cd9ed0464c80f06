import { type Figure, figure } from '../base/figure.ts';
import { type Issue, issue } from '../base/issue.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import { chosenDesign } from '../plan/chosen.ts';
import { type WorkUnit, workUnits } from '../plan/units.ts';
import type { Design, Splices } from '../splice/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { ledgerOf } from './ledger.ts';
import { originOf } from './origin.ts';
import { type Cut, piecesOf } from './pieces.ts';
import type { RepairTakes, StockLine, Takeoff } from './result.ts';
import { stockCuts } from './stockCuts.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Starting values, yours to change (topics `stock-length`, `kerf`); no source. */
const STOCK_IN = 240;
const KERF_IN = 1 / 16;
/** Old tube painted again past each joint, inches. Common practice, no source. */
const PAST_JOINT_IN = 2;

const settingOf = (manual: Manual, topic: string, start: number): Figure => {
  const own = manual.findLast((m) => m.topic === topic && (m.valueIn ?? 0) > 0);
  return own
    ? figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id })
    : figure(start, 'in', { kind: 'assumed', ref: topic }, ['starting-value']);
};

const sizeKey = ({ tube, material }: Cut): string => `${tube.odIn} ${tube.wallIn} ${material}`;

const stockLine = (cuts: readonly Cut[], stockIn: Figure, kerfIn: Figure): StockLine => {
  const { tube, material } = cuts[0]!;
  const pieces = cuts.map((c) => c.piece);
  const nested = stockCuts(
    pieces.map((p) => ({ id: p.id, takesIn: p.takesIn.value })),
    stockIn.value,
    kerfIn.value,
  );
  const bought = nested.bars.length * stockIn.value;
  const inBars = pieces
    .filter((p) => !nested.tooLong.includes(p.id))
    .reduce((sum, p) => sum + p.netIn.value, 0);
  const computed = (value: number, ref: string): Figure =>
    figure(value, 'in', { kind: 'computed', ref }, stockIn.assumed);
  return {
    tube,
    material,
    pieces,
    stockIn,
    ...nested,
    boughtIn: computed(bought, 'bars-times-length'),
    wasteIn: computed(bought - inBars, 'bought-less-net'),
  };
};

/**
 * Rod and primer of one repair.
 *
 *   rod = ½ t² · weld length · ρ       primer = Σ π D l over outside parts + π D · 2 in past each joint
 *
 * Assumes: a fillet whose leg is the wall, no loss; t, D of the old tube. Common practice, no source.
 */
const takesOf = (truss: Truss, coverage: Coverage, unit: WorkUnit, design: Design | null): RepairTakes => {
  const common = { member: unit.id, method: design?.method ?? null, origin: originOf(coverage, unit.id) };
  const section = truss.members.find((m) => m.id === unit.id)?.section;
  if (!design?.plan || !section)
    return { ...common, rosettes: null, weldIn: null, rodLb: null, primerIn2: null };
  const { plan } = design;
  const outside = plan.parts.filter(
    (p) => !(p.kind === 'sleeve' && design.method === 'innerSleeve') && p.kind !== 'patch',
  );
  const area =
    outside.reduce((sum, p) => sum + Math.PI * p.tube.odIn * p.axisIn.value, 0) +
    2 * Math.PI * section.odIn * PAST_JOINT_IN;
  const rod = (section.wallIn ** 2 / 2) * plan.weldIn.value * section.densityLbIn3;
  return {
    ...common,
    rosettes: plan.rosettes?.count ?? figure(0, 'count', { kind: 'computed', ref: 'no-rosettes' }),
    weldIn: plan.weldIn,
    rodLb: figure(rod, 'lb', { kind: 'computed', ref: 'fillet' }, ['fillet-leg-is-wall', 'no-loss']),
    primerIn2: figure(area, 'in2', { kind: 'computed', ref: 'outside-area' }, ['two-inches-past-each-joint']),
  };
};

/**
 * What the decided repairs take: tube by size on stock lengths, rosettes, weld, rod, primer, and the weight ledger.
 *
 * @param splices  null: not worked, and every repair's weld and weight is not known
 */
export const takeoff = (
  truss: Truss,
  coverage: Coverage,
  splices: Splices | null,
  manual: Manual,
): Takeoff => {
  const stockIn = settingOf(manual, 'stock-length', STOCK_IN);
  const kerfIn = settingOf(manual, 'kerf', KERF_IN);
  const units = workUnits(truss, coverage).filter((u) => u.way !== 'bend');
  const designed = units.map((unit) => ({ unit, design: chosenDesign(splices, manual, unit.id) }));
  const bySize = new Map<string, Cut[]>();
  for (const cut of designed.flatMap(({ unit, design }) => piecesOf(truss, unit, design, kerfIn))) {
    const list = bySize.get(sizeKey(cut));
    if (list) list.push(cut);
    else bySize.set(sizeKey(cut), [cut]);
  }
  const stock = [...bySize.values()]
    .map((cuts) => stockLine(cuts, stockIn, kerfIn))
    .sort(
      (p, q) =>
        p.tube.odIn - q.tube.odIn || p.tube.wallIn - q.tube.wallIn || (p.material < q.material ? -1 : 1),
    );
  const without = designed.filter((d) => !d.design).map((d) => d.unit.id);
  const issues: readonly Issue[] = [
    ...stock.flatMap((line) =>
      line.tooLong.map((id) =>
        issue('piece-longer-than-stock', id, { id, stockIn: stockIn.value }, 'get-a-longer-length'),
      ),
    ),
    ...without.map((id) => issue('takeoff-without-design', id, { id }, 'design-the-repair')),
  ];
  return {
    stock,
    repairs: designed.map(({ unit, design }) => takesOf(truss, coverage, unit, design)),
    ledger: ledgerOf(
      truss,
      designed.map(({ unit, design }) => ({ member: unit.id, design })),
      manual,
    ),
    issues,
  };
};
