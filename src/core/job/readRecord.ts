import * as z from 'zod/mini';
import { type Issue, issue, ok, type Result } from '../base/issue.ts';
import { type JobRecord, type RecordKind, recordSchemas } from './jobSchema.ts';
import { climb, type Doc, modelSteps } from './migrations.ts';
import { MODEL_VERSION } from './modelSchema.ts';
import { brief, type Placed, pathText, schemaIssues } from './schemaIssues.ts';

/** A record, or why the value is none. */
export type ReadRecord =
  | { readonly ok: true; readonly record: JobRecord }
  | { readonly ok: false; readonly placed: readonly Placed[] };

type Path = readonly PropertyKey[];

/** The value with the model it holds, if it holds one with a version, as of the newest version. */
export const withModelLifted = (doc: Doc, at: string): Result<Doc> => {
  const { model } = doc;
  if (typeof model !== 'object' || model === null || !Object.hasOwn(model, 'version')) return ok(doc);
  const climbed = climb(model as Doc, MODEL_VERSION, modelSteps, at);
  return climbed.ok ? ok({ ...doc, model: climbed.value }) : climbed;
};

const place = (path: Path, code: string, facts: Issue['facts'], mend: string): Placed => ({
  path,
  issue: issue(code, pathText(path), facts, mend),
});

/**
 * One record, checked against the schema of its kind.
 *
 * @param path  the way to it in the file
 * @param notFinite  numbers in it that are too large, found when the text was parsed
 */
export const readRecord = (value: unknown, path: Path, notFinite: readonly Placed[] = []): ReadRecord => {
  const not = (...placed: readonly Placed[]): ReadRecord => ({ ok: false, placed });
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return not(
      place(path, 'wrong-kind-of-value', { got: brief(value), expected: 'object' }, 'write-as-expected'),
    );
  const { kind } = value as Doc;
  if (typeof kind !== 'string' || !Object.hasOwn(recordSchemas, kind)) {
    const facts = { got: brief(kind), expected: Object.keys(recordSchemas) };
    return not(place([...path, 'kind'], 'not-one-of', facts, 'use-one-of-these'));
  }
  const versionAt = [...path, 'model', 'version'];
  const lifted = kind === 'model' ? withModelLifted(value as Doc, pathText(versionAt)) : ok(value as Doc);
  if (!lifted.ok) return not(...lifted.issues.map((found) => ({ path: versionAt, issue: found })));
  const parsed = z.safeParse(recordSchemas[kind as RecordKind] as z.ZodMiniType<JobRecord>, lifted.value);
  if (!parsed.success) return not(...schemaIssues(parsed.error.issues, lifted.value, path), ...notFinite);
  return notFinite.length > 0 ? not(...notFinite) : { ok: true, record: parsed.data };
};
