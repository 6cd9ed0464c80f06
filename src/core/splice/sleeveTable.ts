import { type Issue, issue } from '../base/issue.ts';
import { parseLength } from '../base/lengthText.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';

type Manual = RecordOf<'manual'>;

/** Sizes typed in millimetres to 0.01 still find their inch row. */
const SAME_SIZE_IN = 0.0005;
export const sameSize = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_SIZE_IN;

/** `7/8 x .035`, `1-1/8 × 0.058`, `22.2 mm x 0.9 mm`; null when it is no tube. */
export const parseTube = (text: string): Tube | null => {
  const parts = text.split(/\s*[x×]\s*/i);
  if (parts.length !== 2) return null;
  const [od, wall] = parts.map((p) => parseLength(p, 'in'));
  if (!od?.ok || !wall?.ok) return null;
  const tube = { odIn: od.value.inches, wallIn: wall.value.inches };
  return tube.odIn > 0 && tube.wallIn > 0 && tube.wallIn <= tube.odIn / 2 ? tube : null;
};

/** What the user's own table says of one tube. */
export interface TableRow {
  readonly record: string;
  readonly source: string;
  readonly tube: Tube;
  /** Length of the sleeve; none: the table leaves it to the rule. */
  readonly lengthIn?: number;
}

/** Which table: sleeves inside the tube (`sleeve:`), or over it (`outer-sleeve:`). */
const topics = { inside: 'sleeve', outside: 'outer-sleeve' } as const;
export type Side = keyof typeof topics;

const original = (m: Manual, side: Side): Tube | null =>
  m.topic.startsWith(`${topics[side]}:`) ? parseTube(m.topic.slice(topics[side].length + 1)) : null;

/** A share of the old tube's diameter (`value`, unit 1), or inches (`valueIn`). */
const lengthOf = (m: Manual, odIn: number): number | undefined =>
  m.valueIn ?? (m.value !== undefined && m.unit === '1' ? m.value * odIn : undefined);

/**
 * The user's own sleeve for a tube: a `manual` record with the topic `sleeve:OD x WALL` (or `outer-sleeve:…`), the
 * sleeve's size in `words` (`7/8 x .035`), its length as `valueIn`, or in diameters as `value` with unit 1. The latest
 * record counts.
 */
export const tableRow = (tube: Tube, side: Side, manual: readonly Manual[]): TableRow | null => {
  const record = manual.findLast((m) => {
    const of = original(m, side);
    return of !== null && sameSize(of.odIn, tube.odIn) && sameSize(of.wallIn, tube.wallIn);
  });
  const sleeve = record && parseTube(record.words ?? '');
  if (!record || !sleeve) return null;
  const lengthIn = lengthOf(record, tube.odIn);
  return {
    record: record.id,
    source: record.source,
    tube: sleeve,
    ...(lengthIn === undefined ? {} : { lengthIn }),
  };
};

/** Rows of the user's tables that cannot be read. */
export const tableIssues = (manual: readonly Manual[]): readonly Issue[] =>
  manual
    .filter((m) => /^(outer-)?sleeve:/.test(m.topic))
    .flatMap((m) => {
      const sides = Object.keys(topics) as Side[];
      const bad =
        sides.every((side) => original(m, side) === null) ||
        parseTube(m.words ?? '') === null ||
        (m.valueIn ?? m.value ?? 1) <= 0;
      return bad
        ? [
            issue(
              'sleeve-table-unreadable',
              atRecord(m.id),
              { topic: m.topic, got: m.words ?? null },
              'write-sleeve-table',
            ),
          ]
        : [];
    });
