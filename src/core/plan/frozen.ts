import { hashOf } from '../base/seeded.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Draft } from './draft.ts';
import type { Frozen } from './result.ts';

type Manual = readonly RecordOf<'manual'>[];
type Content = Pick<Draft, 'id' | 'kind' | 'members' | 'needs' | 'materials' | 'brace'>;

/** The topic of the record that keeps a plan as agreed. */
export const FROZEN_TOPIC = 'plan-frozen';

const hex = (text: string): string => hashOf(text).toString(16).padStart(8, '0');

/** What a step is, without who did it and where it stands in the order. */
const mark = ({ id, kind, members, needs, materials, brace }: Content): string =>
  hex(JSON.stringify([id, kind, members, [...needs.map((n) => n.step)].sort(), materials, brace ?? null]));

/** One line a step, in order: mark and id. */
const linesOf = (steps: readonly Content[]): readonly string[] => steps.map((s) => `${mark(s)} ${s.id}`);

/** A short sign of the whole plan, its order in it. It tells plans apart; it guards nothing. Source: FNV-1a, twice. */
export const digestOf = (steps: readonly Content[]): string => {
  const text = linesOf(steps).join('\n');
  return `${hex(text)}${hex(`${text}\n`)}`;
};

/** The words of a `plan-frozen` record: digest, then one line a step. */
export const freezing = (steps: readonly Content[]): string =>
  [digestOf(steps), ...linesOf(steps)].join('\n');

/** The plan agreed last, and what is different now. */
export const frozenNow = (steps: readonly Content[], manual: Manual): Frozen | undefined => {
  const record = manual.findLast((m) => m.topic === FROZEN_TOPIC);
  if (!record) return undefined;
  const [digest = '', ...lines] = (record.words ?? '').split('\n').filter((l) => l.trim() !== '');
  const then = new Map(lines.map((l) => [l.slice(9), l.slice(0, 8)]));
  const now = new Map(steps.map((s) => [s.id, mark(s)]));
  const both = (ids: readonly string[], other: ReadonlyMap<string, string>): readonly string[] =>
    ids.filter((id) => other.has(id));
  const order = [both([...then.keys()], now), both([...now.keys()], then)] as const;
  return {
    record: record.id,
    by: record.by,
    at: record.at,
    digest,
    added: [...now.keys()].filter((id) => !then.has(id)),
    removed: [...then.keys()].filter((id) => !now.has(id)),
    altered: [...now].filter(([id, m]) => then.has(id) && then.get(id) !== m).map(([id]) => id),
    reordered: order[0].some((id, k) => id !== order[1][k]),
  };
};
