import type * as z from 'zod/mini';
import { byText } from './stampOrder.ts';

type Schema = z.core.$ZodType;
interface Def {
  readonly type: string;
  readonly innerType?: Schema;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly element?: Schema;
  readonly items?: readonly Schema[];
  readonly valueType?: Schema;
  readonly options?: readonly Schema[];
  readonly discriminator?: string;
  readonly values?: readonly unknown[];
}
const defOf = (schema: Schema | undefined): Def | undefined => schema?._zod.def as Def | undefined;

/** The definition that fits this value: optional wrappers taken off, the option of a discriminated union chosen. */
const fitting = (schema: Schema | undefined, value: object): Def | undefined => {
  const def = defOf(schema);
  if (def?.innerType) return fitting(def.innerType, value);
  const by = def?.discriminator;
  if (!def?.options || by === undefined) return def;
  const said = (value as Readonly<Record<string, unknown>>)[by];
  return defOf(def.options.find((option) => defOf(defOf(option)?.shape?.[by])?.values?.includes(said)));
};

const numberText = (value: number): string =>
  Object.is(value, -0)
    ? '-0'
    : Number.isFinite(value)
      ? JSON.stringify(value)
      : value > 0
        ? '1e999'
        : '-1e999';

/** Keys in the order of the schema, then those it does not know, sorted. Fields that are `undefined` are absent. */
export const keysInOrder = (value: object, def: Def | undefined): readonly string[] => {
  const known = Object.keys(def?.shape ?? {}).filter((key) => Object.hasOwn(value, key));
  const named = new Set(known);
  const others = Object.keys(value).filter((key) => !named.has(key));
  return [...known, ...others.sort(byText)].filter(
    (key) => (value as Record<string, unknown>)[key] !== undefined,
  );
};

/**
 * A value as one line of JSON that depends on its content only. Without a schema all keys are sorted, so that two
 * values are deep-equal exactly when their texts are equal.
 * A number too large for JSON readers (it came as `1e999`) is written so that it comes back as it was.
 */
export const jsonText = (value: unknown, schema?: Schema): string => {
  if (typeof value === 'number') return numberText(value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const def = fitting(schema, value);
  if (Array.isArray(value))
    return `[${value.map((item, i) => jsonText(item, def?.items?.[i] ?? def?.element)).join(', ')}]`;
  const inside = value as Readonly<Record<string, unknown>>;
  const fields = keysInOrder(value, def).map(
    (key) => `${JSON.stringify(key)}: ${jsonText(inside[key], def?.shape?.[key] ?? def?.valueType)}`,
  );
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
};
