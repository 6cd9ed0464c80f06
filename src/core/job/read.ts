import * as z from 'zod/mini';
import { type Fact, issue, ok, type Result, refused } from '../base/issue.ts';
import { JOB_VERSION, type Job, type JobRecord, jobSchema } from './jobSchema.ts';
import { climb, type Doc, jobSteps, modelSteps } from './migrations.ts';
import { MODEL_VERSION, type Model, modelSchema } from './modelSchema.ts';
import { type Parsed, parseDoc } from './parseDoc.ts';
import { readRecord, withModelLifted } from './readRecord.ts';
import { brief, inFileOrder, type Placed, pathText, schemaIssues } from './schemaIssues.ts';

export type Opened =
  | { readonly kind: 'job'; readonly job: Job }
  | { readonly kind: 'model'; readonly model: Model };

const JOB_FORMAT = 'tubewright-job';
const MODEL_FORMAT = 'tubewright-model';
const envelopeSchema = z.looseObject({ ...jobSchema.shape, records: z.array(z.unknown()) });

const otherFormat = (doc: Doc, expected: Fact): Result<never> =>
  refused([
    issue('other-format', 'format', { got: brief(doc.format), expected }, 'choose-a-tubewright-file'),
  ]);

const modelFrom = ({ doc, leftOut, notFinite }: Parsed): Result<Model> => {
  if (doc.format !== MODEL_FORMAT) return otherFormat(doc, MODEL_FORMAT);
  const climbed = climb(doc, MODEL_VERSION, modelSteps);
  if (!climbed.ok) return climbed;
  const parsed = z.safeParse(modelSchema, climbed.value);
  const wrong = [...schemaIssues(parsed.error?.issues ?? [], climbed.value), ...notFinite];
  const issues = inFileOrder([...leftOut, ...wrong], doc);
  return parsed.success && wrong.length === 0 ? ok(parsed.data, issues) : refused(issues);
};

interface Candidate {
  readonly value: unknown;
  readonly path: readonly PropertyKey[];
}
const listFields = ['records', 'setAside'] as const;

/** Everything that claims to be a record. A list `setAside` in a file is read as more of them. */
const candidates = (doc: Doc): readonly Candidate[] =>
  listFields.flatMap((field) => {
    const list = doc[field];
    return Array.isArray(list) ? list.map((value: unknown, i) => ({ value, path: [field, i] })) : [];
  });

const setAsideIssue = ({ value, path }: Candidate): Placed => {
  const said = typeof value === 'object' && value !== null ? (value as Doc) : {};
  const facts = Object.fromEntries(
    ['id', 'kind'].filter((key) => Object.hasOwn(said, key)).map((key) => [key, brief(said[key])]),
  );
  return { path, issue: issue('record-set-aside', pathText(path), facts, 'mend-or-enter-again') };
};

const idsTwice = (
  records: readonly { readonly record: JobRecord; readonly path: Candidate['path'] }[],
): readonly Placed[] => {
  const first = new Map<string, string>();
  return records.flatMap(({ record: { id }, path: way }) => {
    const path = [...way, 'id'];
    const seen = first.get(id);
    if (seen === undefined) first.set(id, pathText(path));
    return seen === undefined
      ? []
      : [{ path, issue: issue('id-twice', pathText(path), { id, first: seen }, 'keep-one-record') }];
  });
};

const jobFrom = ({ doc, leftOut, notFinite }: Parsed): Result<Job> => {
  if (doc.format !== JOB_FORMAT) return otherFormat(doc, JOB_FORMAT);
  const climbed = climb(doc, JOB_VERSION, jobSteps);
  if (!climbed.ok) return climbed;
  const lifted = withModelLifted(climbed.value, 'model.version');
  if (!lifted.ok) return lifted;
  const { setAside: _, ...body } = lifted.value;

  const listed = candidates(lifted.value);
  const keyOf = (path: Candidate['path']): string => pathText(path.slice(0, 2));
  const within = new Map(listed.map(({ path }): [string, Placed[]] => [keyOf(path), []]));
  const outside = notFinite.filter((one) => {
    const inRecord = within.get(keyOf(one.path));
    inRecord?.push(one);
    return !inRecord;
  });
  const envelope = z.safeParse(envelopeSchema, body);
  const wrong = [...schemaIssues(envelope.error?.issues ?? [], body), ...outside];

  const read = listed.map((candidate) => ({
    ...candidate,
    ...readRecord(candidate.value, candidate.path, within.get(keyOf(candidate.path))),
  }));
  const good = read.filter((one) => one.ok);
  const bad = read.filter((one) => !one.ok);
  const issues = inFileOrder(
    [...leftOut, ...wrong, ...bad.flatMap((one) => [setAsideIssue(one), ...one.placed]), ...idsTwice(good)],
    doc,
  );
  if (!envelope.success || wrong.length > 0) return refused(issues);
  const job: Job = {
    ...(envelope.data as unknown as Job),
    records: good.map((one) => one.record),
    ...(bad.length > 0 && { setAside: bad.map((one) => one.value) }),
  };
  return ok(job, issues);
};

/**
 * The job in a text. Collects every issue, in the order of the file.
 * The model must be readable for the job to open. A record that is not is kept as it came (`setAside`), listed, and
 * written back by `writeJob`; unknown fields are kept. Records that name unknown members are not refused here.
 */
export const readJob = (text: string): Result<Job> => {
  const parsed = parseDoc(text);
  return parsed.ok ? jobFrom(parsed.value) : parsed;
};

/** The model in a text, with every issue in the order of the file. */
export const readModel = (text: string): Result<Model> => {
  const parsed = parseDoc(text);
  return parsed.ok ? modelFrom(parsed.value) : parsed;
};

/** The job or the model in a text, by what its `format` says. */
export const readAny = (text: string): Result<Opened> => {
  const parsed = parseDoc(text);
  if (!parsed.ok) return parsed;
  const { format } = parsed.value.doc;
  if (format === JOB_FORMAT) {
    const read = jobFrom(parsed.value);
    return read.ok ? ok({ kind: 'job', job: read.value }, read.issues) : read;
  }
  if (format === MODEL_FORMAT) {
    const read = modelFrom(parsed.value);
    return read.ok ? ok({ kind: 'model', model: read.value }, read.issues) : read;
  }
  return otherFormat(parsed.value.doc, [JOB_FORMAT, MODEL_FORMAT]);
};
