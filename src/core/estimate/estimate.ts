import type { RecordOf } from '../job/jobSchema.ts';
import type { LoadPath } from '../loadPath/result.ts';
import type { Plan } from '../plan/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { hiddenBands, nextHour } from './hidden.ts';
import { linesOf } from './lines.ts';
import { ratesOf } from './rates.ts';
import { type Estimate, type EstimateLine, type Origin, origins } from './result.ts';
import type { Chance } from './spreads.ts';
import { totalOf } from './total.ts';
import { momentsOf } from './triangle.ts';

/** What no line is for. Worded in `present`. */
const excluded = [
  'not-planned-repairs',
  'material-prices',
  'fabric-and-finish',
  'systems-and-rigging',
  'engine-and-propeller',
  'transport',
  'outside-inspection-and-engineering',
  'data-search',
] as const;

const byOrigin = (lines: readonly EstimateLine[]): Estimate['byOrigin'] =>
  Object.fromEntries(
    origins.map((origin) => {
      const of = lines.filter((l) => l.origin === origin);
      return [origin, { lines: of.length, meanH: of.reduce((sum, l) => sum + momentsOf(l.hours).mean, 0) }];
    }),
  ) as Record<Origin, { lines: number; meanH: number }>;

const moneyOf = (rates: readonly RecordOf<'rate'>[], total: Estimate['withHidden']): Estimate['money'] => {
  const record = rates.findLast((r) => r.operation === 'labour' && (r.amount ?? 0) > 0);
  if (!record?.amount) return undefined;
  const perHour = record.amount;
  return {
    perHour,
    currency: record.currency ?? '',
    record: record.id,
    best: total.bestH.value * perHour,
    likely: total.likelyH.value * perHour,
    worst: total.worstH.value * perHour,
  };
};

/**
 * Hours of the plan by operation, with what nobody has looked at beside them: priced when the user gives a chance, else
 * counted.
 *
 * `rate` records read: one an operation (`hours`, `bestHours`, `worstHours`, `setUpHours`), and `labour` (`amount` an hour,
 * `currency`). Manual topics: `hidden:BAND`.
 */
export const estimate = (
  coverage: Coverage,
  loadPath: LoadPath,
  plan: Plan,
  records: readonly RecordOf<'rate'>[],
  manual: readonly RecordOf<'manual'>[],
): Estimate => {
  const { rates, issues } = ratesOf(records);
  const rate = (operation: string) => rates.find((r) => r.operation === operation)!;
  const lines = linesOf(plan, coverage, rates);
  const sure = lines.map(
    (l): Chance => ({ rate: `${l.kind} ${l.operation}`, chance: 1, many: 1, hours: l.hours }),
  );
  const hidden = hiddenBands(coverage, loadPath, manual, rate('hidden'));
  const maybe = hidden.bands.flatMap(({ chance, members }): Chance[] =>
    chance
      ? [{ rate: 'each hidden', chance: chance.value, many: members.length, hours: rate('hidden').each }]
      : [],
  );
  const known = totalOf(sure);
  const withHidden = maybe.length > 0 ? totalOf([...sure, ...maybe]) : known;
  const money = moneyOf(records, withHidden);
  return {
    rates,
    lines,
    known,
    withHidden,
    hidden: hidden.bands,
    nextHour: nextHour(hidden.bands, rate('look'), rate('hidden'), withHidden.stdH),
    counts: coverage.members,
    byOrigin: byOrigin(lines),
    ...(money && { money }),
    excluded,
    issues: [...issues, ...hidden.issues],
  };
};
