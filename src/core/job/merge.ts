import { type Issue, issue, ok, type Result, refused } from '../base/issue.ts';
import type { Job, JobRecord } from './jobSchema.ts';
import { jsonText } from './jsonText.ts';
import { byStamp, byText } from './stampOrder.ts';

type Fields = Readonly<Record<string, unknown>>;

const distinct = <T>(values: readonly T[]): readonly (readonly [string, T])[] => [
  ...new Map(values.map((value) => [jsonText(value), value])),
];

const mergedRecords = (records: readonly JobRecord[]): readonly JobRecord[] =>
  [...distinct(records)]
    .sort(([textA, a], [textB, b]) => byStamp(a, b) || byText(textA, textB))
    .map(([, record]) => record);

const mergedAside = (values: readonly unknown[]): readonly unknown[] =>
  [...distinct(values)].sort(([a], [b]) => byText(a, b)).map(([, value]) => value);

/** One value of a field that both jobs may say: what is said wins over nothing, else the first by text, and it is listed. */
const agreed = (key: string, a: unknown, b: unknown): readonly [unknown, readonly Issue[]] => {
  if (a === undefined || b === undefined) return [a === undefined ? b : a, []];
  const [textA, textB] = [jsonText(a), jsonText(b)];
  if (textA === textB) return [a, []];
  const kept = byText(textA, textB) < 0 ? a : b;
  return [kept, [issue('field-differs', key, { kept: jsonText(kept).slice(0, 60) }, 'rename-if-wrong')]];
};

const refusals = (a: Job, b: Job): readonly Issue[] => [
  ...(a.purpose === b.purpose
    ? []
    : [issue('other-purpose', 'purpose', { got: b.purpose, expected: a.purpose }, 'open-it-on-its-own')]),
  ...(jsonText(a.model) === jsonText(b.model)
    ? []
    : [issue('other-model', 'model', { got: b.model.name, expected: a.model.name }, 'open-it-on-its-own')]),
];

/**
 * Two tablets' jobs as one: the union of their records. The order of merging does not matter, nor merging twice.
 * Records with one id and different content are both kept; which counts, and that there are two, says `standing`.
 * A job of another purpose (practice) or begun on another model is refused.
 */
export const merge = (a: Job, b: Job): Result<Job> => {
  const wrong = refusals(a, b);
  if (wrong.length > 0) return refused(wrong);
  const { records: recordsA, setAside: asideA = [], ...bodyA } = a;
  const { records: recordsB, setAside: asideB = [], ...bodyB } = b;
  const keys = [...new Set([...Object.keys(bodyA), ...Object.keys(bodyB)])].sort(byText);
  const fields = keys.map((key) => {
    const said = (body: Fields): unknown => (Object.hasOwn(body, key) ? body[key] : undefined);
    const [value, issues] = agreed(key, said(bodyA), said(bodyB));
    return { key, value, issues };
  });
  const setAside = mergedAside([...asideA, ...asideB]);
  const merged = {
    ...bodyA,
    ...Object.fromEntries(fields.map(({ key, value }) => [key, value])),
    records: mergedRecords([...recordsA, ...recordsB]),
    ...(setAside.length > 0 && { setAside }),
  };
  return ok(
    merged,
    fields.flatMap(({ issues }) => issues),
  );
};
