import { type Issue, issue, ok, type Result, refused } from '../base/issue.ts';

/** A parsed document that has not been validated yet. */
export type Doc = Readonly<Record<string, unknown>>;

/** One step of the ladder: a document of version `from` as one of the next version. Changes nothing in place. */
export interface Step {
  readonly from: number;
  /** What the step does, in words, for the next developer. */
  readonly name: string;
  readonly lift: (doc: Doc) => Doc;
}

/** Steps of a job’s document; version 1 is the first there ever was. */
export const jobSteps: readonly Step[] = [];
/** Steps of a model’s document; version 1 is the first there ever was. */
export const modelSteps: readonly Step[] = [];

const versionFault = (code: string, at: string, got: unknown, newest: number, mend: string): Issue =>
  issue(code, at, { got: typeof got === 'number' ? got : String(typeof got), newest }, mend);

/**
 * The document at the newest version, lifted one step at a time. A newer one is refused: this program would drop
 * what it does not know; so is a version that never was.
 *
 * @param at  path of the version in the file
 */
export const climb = (doc: Doc, newest: number, steps: readonly Step[], at = 'version'): Result<Doc> => {
  const { version } = doc;
  if (typeof version !== 'number' || !Number.isInteger(version))
    return refused([versionFault('version-unreadable', at, version, newest, 'choose-a-tubewright-file')]);
  if (version > newest)
    return refused([versionFault('version-newer', at, version, newest, 'open-with-newer-tubewright')]);
  let lifted = doc;
  for (let from = version; from < newest; from++) {
    const step = steps.find((s) => s.from === from);
    if (!step)
      return refused([versionFault('version-unknown', at, version, newest, 'choose-a-tubewright-file')]);
    lifted = { ...step.lift(lifted), version: from + 1 };
  }
  return ok(lifted);
};
