import { type Issue, ok, type Result } from '../base/issue.ts';
import type { Job, JobRecord, RecordKind } from './jobSchema.ts';
import { jsonText } from './jsonText.ts';
import { merge } from './merge.ts';
import { byText } from './stampOrder.ts';
import { standing } from './standing.ts';

/** Things two tablets say differently, side by side. All of them stay in the joined job; `counts` is the one that counts there. */
export interface Conflict {
  /** One id with two contents; two corrections of one record; two standing decisions or the like; a field of the job itself. */
  readonly kind: 'sameId' | 'corrections' | 'severalStand' | 'field';
  /** Record id, or the name of the field. */
  readonly about: string;
  readonly records: readonly JobRecord[];
  readonly counts: string | null;
}

/** The joined job, and what joining does. */
export interface Joining {
  readonly job: Job;
  /** Records that only the other tablet has, by kind. */
  readonly comes: Readonly<Partial<Record<RecordKind, number>>>;
  readonly comesInAll: number;
  /** Records that only this one has. */
  readonly onlyHere: number;
  readonly conflicts: readonly Conflict[];
  readonly fields: readonly Issue[];
}

const textsOf = (job: Job): ReadonlySet<string> => new Set(job.records.map((record) => jsonText(record)));

const conflictsOf = (job: Job): readonly Conflict[] => {
  const { clashes, issues } = standing(job.records);
  const byId = (id: string): readonly JobRecord[] => job.records.filter((record) => record.id === id);
  return [
    ...clashes.map(
      ({ replaced, by }): Conflict => ({
        kind: 'corrections',
        about: replaced,
        records: by.flatMap(byId),
        counts: null,
      }),
    ),
    ...issues.flatMap(({ code, facts }): Conflict[] => {
      if (code === 'same-id-differs')
        return [
          {
            kind: 'sameId',
            about: String(facts.id),
            records: byId(String(facts.id)),
            counts: String(facts.id),
          },
        ];
      if (code !== 'several-stand') return [];
      const ids = [String(facts.counted), ...(Array.isArray(facts.others) ? facts.others.map(String) : [])];
      return [
        { kind: 'severalStand', about: ids[0]!, records: ids.flatMap(byId), counts: String(facts.counted) },
      ];
    }),
  ];
};

const keyOf = ({ kind, records }: Conflict): string =>
  `${kind} ${records
    .map((record) => jsonText(record))
    .sort(byText)
    .join()}`;

/**
 * What joining another tablet's job to this one gives: the union of their records, what comes with it, and every
 * conflict that neither had alone. Nothing is dropped. Refused as `merge` refuses: practice, or another model.
 */
export const joining = (mine: Job, theirs: Job): Result<Joining> => {
  const merged = merge(mine, theirs);
  if (!merged.ok) return merged;
  const job = merged.value;
  const [here, there] = [textsOf(mine), textsOf(theirs)];
  const coming = theirs.records.filter((record) => !here.has(jsonText(record)));
  const comes: Partial<Record<RecordKind, number>> = {};
  for (const { kind } of coming) comes[kind] = (comes[kind] ?? 0) + 1;
  const known = new Set([...conflictsOf(mine), ...conflictsOf(theirs)].map(keyOf));
  return ok(
    {
      job,
      comes,
      comesInAll: coming.length,
      onlyHere: mine.records.filter((record) => !there.has(jsonText(record))).length,
      conflicts: conflictsOf(job).filter((conflict) => !known.has(keyOf(conflict))),
      fields: merged.issues,
    },
    merged.issues,
  );
};
