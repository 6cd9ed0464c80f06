import { type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { StepKind } from '../plan/kinds.ts';
import type { LineGroup, Rate, ThreePoint } from './result.ts';

type Rates = readonly RecordOf<'rate'>[];

/** Operations with a rate: the kinds of step, and a few that are no step. */
export type Operation = StepKind | 'trammelWhole' | 'paper' | 'hidden' | 'look';

interface Row {
  readonly group: LineGroup;
  readonly each: ThreePoint;
  readonly setUp: ThreePoint;
}

const points = (best: number, likely: number, worst: number): ThreePoint => ({ best, likely, worst });
const none = points(0, 0, 0);
const row = (group: LineGroup, each: ThreePoint, setUp: ThreePoint = none): Row => ({ group, each, setUp });

/**
 * Hours of each operation. INVENTED by us to start from, every one of them: no source. A `rate` record of the user's
 * replaces a row; lines say which of the two they rest on.
 */
export const inventedRates = {
  makeSafe: row('access', points(0.5, 1, 2)),
  defuel: row('access', points(1, 2, 4)),
  battery: row('access', points(0.25, 0.5, 1)),
  support: row('jig', points(4, 8, 16)),
  strip: row('access', points(1, 3, 6)),
  inspect: row('inspection', points(0.5, 1.5, 3)),
  layOut: row('geometry', points(0.25, 0.5, 1)),
  photo: row('inspection', points(0.25, 0.5, 1)),
  trammel: row('geometry', points(0.1, 0.25, 0.5)),
  trammelWhole: row('geometry', points(2, 3, 4)),
  release: row('structure', points(0.25, 0.5, 1)),
  brace: row('jig', points(0.5, 1, 2)),
  cut: row('structure', points(0.1, 0.2, 0.4)),
  straighten: row('structure', points(0.5, 1, 2), points(0.25, 0.5, 1)),
  roundOut: row('structure', points(0.25, 0.5, 1)),
  inspectBend: row('inspection', points(0.25, 0.4, 0.75)),
  cutOut: row('structure', points(0.3, 0.5, 1)),
  spread: row('jig', points(0.1, 0.3, 0.75)),
  opening: row('geometry', points(0.1, 0.2, 0.3)),
  section: row('structure', points(0.5, 1, 2), points(0.2, 0.3, 0.5)),
  sleeves: row('structure', points(0.5, 1, 1.5)),
  drill: row('structure', points(0.2, 0.3, 0.6)),
  trialFit: row('structure', points(0.2, 0.4, 0.8)),
  fire: row('access', points(0.3, 0.5, 1)),
  fitUp: row('inspection', points(0.1, 0.2, 0.4)),
  tack: row('structure', points(0.2, 0.3, 0.6)),
  spreaderOut: row('jig', points(0.05, 0.1, 0.2)),
  weldFirst: row('structure', points(0.3, 0.5, 1), points(0.25, 0.5, 0.75)),
  weld: row('structure', points(0.3, 0.5, 1)),
  clean: row('structure', points(0.1, 0.2, 0.3)),
  inspectWelds: row('inspection', points(0.25, 0.4, 0.5), points(0.2, 0.3, 0.5)),
  unbrace: row('jig', points(0.1, 0.2, 0.4)),
  refit: row('reassembly', points(0.25, 0.5, 1.5)),
  protect: row('protection', points(0.2, 0.4, 0.8), points(0.25, 0.5, 1)),
  vents: row('protection', points(0.1, 0.15, 0.3)),
  weigh: row('weighing', points(3, 4, 5)),
  paper: row('paper', points(4, 6, 8)),
  /** One more tube found damaged. */
  hidden: row('structure', points(3, 6, 12)),
  /** One tube looked at. */
  look: row('inspection', points(0.1, 0.2, 0.3)),
} as const satisfies Readonly<Record<Operation, Row>>;

const own = (record: RecordOf<'rate'>, start: Row): Rate | null => {
  const likely = record.hours ?? start.each.likely;
  const each =
    record.hours === undefined
      ? start.each
      : points(record.bestHours ?? likely, likely, record.worstHours ?? likely);
  const setUp =
    record.setUpHours === undefined
      ? start.setUp
      : points(record.setUpHours, record.setUpHours, record.setUpHours);
  const inOrder = (t: ThreePoint): boolean => t.best >= 0 && t.best <= t.likely && t.likely <= t.worst;
  return inOrder(each) && inOrder(setUp)
    ? { operation: record.operation, each, setUp, record: record.id }
    : null;
};

/** The rate table as it counts: the user's latest record of an operation, else our invented row. */
export const ratesOf = (
  records: Rates,
): { readonly rates: readonly Rate[]; readonly issues: readonly Issue[] } => {
  const issues: Issue[] = [];
  const rates = Object.entries(inventedRates).map(([operation, start]): Rate => {
    const record = records.findLast((r) => r.operation === operation);
    const rate = record && own(record, start);
    if (record && !rate)
      issues.push(
        issue(
          'rate-out-of-order',
          atRecord(record.id),
          {
            operation,
            best: record.bestHours ?? null,
            likely: record.hours ?? null,
            worst: record.worstHours ?? null,
          },
          'best-not-over-likely-not-over-worst',
        ),
      );
    return rate ?? { operation, each: start.each, setUp: start.setUp };
  });
  const known = new Set<string>([...Object.keys(inventedRates), 'labour']);
  for (const r of records)
    if (!known.has(r.operation))
      issues.push(
        issue('rate-of-no-operation', atRecord(r.id), { operation: r.operation }, 'name-an-operation'),
      );
  return { rates, issues };
};
