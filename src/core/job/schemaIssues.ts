import type * as z from 'zod/mini';
import { type Fact, type Issue, issue } from '../base/issue.ts';

type Path = readonly PropertyKey[];
type SchemaIssue = z.core.$ZodIssue;

/** An issue with the way to it from the top of the file, so that issues can be put in the file's order. */
export interface Placed {
  readonly path: Path;
  readonly issue: Issue;
}

const LONGEST = 60;
const cut = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);

/** A value as a fact a person can read: never the whole of something large. */
export const brief = (value: unknown): Fact => {
  if (typeof value === 'string') return cut(value);
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (typeof value === 'boolean' || value === null) return value;
  return value === undefined ? 'nothing' : Array.isArray(value) ? 'a list' : 'an object';
};

/** `records[12].lengthIn`. */
export const pathText = (path: Path): string =>
  path
    .map((key) =>
      typeof key === 'number'
        ? `[${key}]`
        : /^\w+$/.test(String(key))
          ? `.${cut(String(key))}`
          : `[${JSON.stringify(cut(String(key)))}]`,
    )
    .join('')
    .replace(/^\./, '');

const step = (value: unknown, key: PropertyKey): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<PropertyKey, unknown>)[key]
    : undefined;

const bound = (
  found: Extract<SchemaIssue, { code: 'too_small' | 'too_big' }>,
): Readonly<Record<string, Fact>> =>
  found.code === 'too_small' ? { least: Number(found.minimum) } : { most: Number(found.maximum) };

const worded = (found: SchemaIssue, at: string, value: unknown): Issue => {
  const got = brief(value);
  if (value === undefined) return issue('field-missing', at, {}, 'add-the-field');
  switch (found.code) {
    case 'too_small':
    case 'too_big': {
      if (found.origin === 'string')
        return issue(
          found.code === 'too_small' ? 'text-empty' : 'text-too-long',
          at,
          bound(found),
          'write-another-text',
        );
      if (found.origin === 'array')
        return issue('wrong-count', at, { got, ...bound(found) }, 'write-as-expected');
      const open = found.inclusive === false;
      return issue(
        'out-of-range',
        at,
        { got, ...bound(found), ...(open && { boundItselfToo: true }) },
        'check-value-and-unit',
      );
    }
    case 'invalid_type':
      return issue('wrong-kind-of-value', at, { got, expected: found.expected }, 'write-as-expected');
    case 'invalid_value':
      return issue('not-one-of', at, { got, expected: found.values.map(String) }, 'use-one-of-these');
    case 'invalid_union':
      return issue(
        'not-one-of',
        at,
        { got, expected: 'options' in found ? (found.options as readonly unknown[]).map(String) : [] },
        'use-one-of-these',
      );
    case 'invalid_format':
      return issue(
        'wrong-form',
        at,
        { got, expected: cut(found.pattern ?? found.format) },
        'write-as-expected',
      );
    case 'unrecognized_keys':
      return issue('unknown-name', at, { got: found.keys.map(cut) }, 'use-one-of-these');
    default:
      return issue('wrong-kind-of-value', at, { got }, 'write-as-expected');
  }
};

/** What the schema found, in our own terms. `root` is the value it looked at, `base` the way to that value. */
export const schemaIssues = (
  found: readonly SchemaIssue[],
  root: unknown,
  base: Path = [],
): readonly Placed[] =>
  found.map((one) => {
    const path = [...base, ...one.path];
    return { path, issue: worded(one, pathText(path), one.path.reduce(step, root)) };
  });

const places = (path: Path, root: unknown): readonly number[] => {
  let value = root;
  return path.map((key) => {
    const keys =
      typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.keys(value) : [];
    const index = typeof key === 'number' ? key : keys.indexOf(String(key));
    value = step(value, key);
    return index < 0 ? Number.MAX_SAFE_INTEGER : index;
  });
};

const earlier = (a: readonly number[], b: readonly number[]): number => {
  const fork = a.findIndex((place, i) => place !== b[i]);
  return fork < 0 ? a.length - b.length : (a[fork] as number) - (b[fork] ?? -1);
};

/** Issues in the order of the file; what is missing comes after what is there. */
export const inFileOrder = (placed: readonly Placed[], root: unknown): readonly Issue[] =>
  placed
    .map((one) => ({ issue: one.issue, places: places(one.path, root) }))
    .sort((a, b) => earlier(a.places, b.places))
    .map((one) => one.issue);
