import { type Issue, issue, ok, type Result, refused } from '../base/issue.ts';
import { jsonFault, lineAndColumn, tooDeepAt } from './jsonFault.ts';
import type { Doc } from './migrations.ts';
import { brief, type Placed, pathText } from './schemaIssues.ts';

/** Above this a file is not a job of ours: the largest made for tests has a tenth of it. */
export const MOST_CHARACTERS = 40_000_000;
const MOST_NESTED = 64;

export interface Parsed {
  readonly doc: Doc;
  /** Fields named `__proto__`, which are left out: they would change what every object is. */
  readonly leftOut: readonly Placed[];
  /** Numbers too large to be numbers (`1e999`). */
  readonly notFinite: readonly Placed[];
}

/** Goes through a freshly parsed value; takes out what must not be there. Depth is bounded by `MOST_NESTED`. */
const tidy = (root: unknown): Omit<Parsed, 'doc'> => {
  const leftOut: Placed[] = [];
  const notFinite: Placed[] = [];
  const path: (string | number)[] = [];
  const note = (list: Placed[], code: string, mend: string): void => {
    const way = [...path];
    list.push({ path: way, issue: issue(code, pathText(way), {}, mend) });
  };
  const visit = (value: unknown): void => {
    if (typeof value === 'number' && !Number.isFinite(value))
      note(notFinite, 'number-too-large', 'check-value-and-unit');
    if (typeof value !== 'object' || value === null) return;
    const keys = Array.isArray(value) ? value.keys() : Object.keys(value);
    for (const key of keys) {
      path.push(key);
      if (key === '__proto__') {
        note(leftOut, 'field-left-out', 'rename-the-field');
        Reflect.deleteProperty(value, key);
      } else visit((value as Record<string | number, unknown>)[key]);
      path.pop();
    }
  };
  visit(root);
  return { leftOut, notFinite };
};

const syntaxIssue = (text: string): Issue => {
  const fault = jsonFault(text);
  if (!fault) throw new Error('JSON.parse refused a text in which jsonFault finds no fault');
  const { line, column, got, expected } = fault;
  return got === ''
    ? issue('text-cut-short', '', { line, column, expected }, 'use-another-copy')
    : issue('not-json', '', { line, column, got, expected }, 'mend-the-text-there');
};

const parsedOr = (text: string): { readonly value: unknown } | undefined => {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
};

/** A text as an object whose fields nobody has looked at yet; the place of the fault when it is none. Never throws. */
export const parseDoc = (given: string): Result<Parsed> => {
  const text = given.startsWith('\ufeff') ? given.slice(1) : given;
  if (text.length > MOST_CHARACTERS)
    return refused([
      issue('too-large', '', { got: text.length, most: MOST_CHARACTERS }, 'choose-a-tubewright-file'),
    ]);
  const deep = tooDeepAt(text, MOST_NESTED);
  if (deep >= 0)
    return refused([
      issue(
        'nested-too-deep',
        '',
        { most: MOST_NESTED, ...lineAndColumn(text, deep) },
        'choose-a-tubewright-file',
      ),
    ]);
  const parsed = parsedOr(text);
  if (!parsed) return refused([syntaxIssue(text)]);
  const doc = parsed.value;
  if (typeof doc !== 'object' || doc === null || Array.isArray(doc))
    return refused([
      issue('wrong-kind-of-value', '', { got: brief(doc), expected: 'object' }, 'choose-a-tubewright-file'),
    ]);
  return ok({ doc: doc as Doc, ...tidy(doc) });
};
