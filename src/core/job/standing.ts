import { type Issue, issue } from '../base/issue.ts';
import { atRecord, type Clash, uncorrected } from './corrections.ts';
import type {
  Decision,
  Finding,
  Held,
  JobRecord,
  Look,
  Mishap,
  Reading,
  RecordKind,
  RecordOf,
} from './jobSchema.ts';
import type { Model } from './modelSchema.ts';
import { byText, latestOf } from './stampOrder.ts';

/** The records that count now, by kind, each list earliest first. */
export interface Standing {
  readonly looks: readonly Look[];
  readonly areas: readonly RecordOf<'area'>[];
  readonly findings: readonly Finding[];
  readonly readings: readonly Reading[];
  readonly decisions: readonly Decision[];
  /** Every way it was held, latest last. */
  readonly held: readonly Held[];
  readonly mishap: Mishap | undefined;
  readonly manual: readonly RecordOf<'manual'>[];
  readonly rates: readonly RecordOf<'rate'>[];
  readonly progress: readonly RecordOf<'progress'>[];
  readonly photos: readonly RecordOf<'photo'>[];
  readonly notes: readonly RecordOf<'note'>[];
  /** The latest amendment; none: the model the job began with. */
  readonly model: Model | undefined;
  readonly clashes: readonly Clash[];
  readonly issues: readonly Issue[];
}

const byMember = (decisions: readonly Decision[]): readonly (readonly Decision[])[] => {
  const lists = new Map<string, Decision[]>();
  for (const decision of decisions) {
    const list = lists.get(decision.of);
    if (list) list.push(decision);
    else lists.set(decision.of, [decision]);
  }
  return [...lists.values()];
};

const severalStand = (records: readonly JobRecord[], what: string): readonly Issue[] => {
  const last = latestOf(records);
  if (!last || records.length < 2) return [];
  const facts = { what, counted: last.id, others: records.filter((r) => r !== last).map((r) => r.id) };
  return [issue('several-stand', atRecord(last.id), facts, 'withdraw-all-but-one')];
};

/** The records that count, by kind. Does not depend on the order of the records. What counts: `corrections.ts`. */
export const standing = (records: readonly JobRecord[]): Standing => {
  const { live, clashes, issues } = uncorrected(records);
  const of = <K extends RecordKind>(kind: K): readonly RecordOf<K>[] =>
    live.filter((r) => r.kind === kind) as unknown as readonly RecordOf<K>[];
  const decisions = of('decision');
  const mishaps = of('mishap');
  const models = of('model');
  const several = [
    ...byMember(decisions).flatMap((list) => severalStand(list, 'decision')),
    ...severalStand(mishaps, 'mishap'),
    ...severalStand(models, 'model'),
  ];
  return {
    looks: of('look'),
    areas: of('area'),
    findings: of('finding'),
    readings: of('reading'),
    decisions,
    held: of('held'),
    mishap: latestOf(mishaps),
    manual: of('manual'),
    rates: of('rate'),
    progress: of('progress'),
    photos: of('photo'),
    notes: of('note'),
    model: latestOf(models)?.model,
    clashes,
    issues: [...issues, ...several].sort((a, b) => byText(a.at, b.at) || byText(a.code, b.code)),
  };
};
