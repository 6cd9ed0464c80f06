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

/** A part of a value with the schema it should follow. */
interface Part {
  readonly value: unknown;
  readonly schema: Schema | undefined;
}

/** Fields in the order of the schema, then those it does not know, sorted. Fields that are `undefined` are absent. */
export const fieldsInOrder = (
  value: object,
  schema: Schema | undefined,
): readonly (Part & { readonly key: string })[] => {
  const def = fitting(schema, value);
  const shape = def?.shape ?? {};
  const known = Object.keys(shape).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !Object.hasOwn(shape, key));
  return [...known, ...others.sort(byText)]
    .map((key) => ({
      key,
      value: (value as Readonly<Record<string, unknown>>)[key],
      schema: Object.hasOwn(shape, key) ? shape[key] : def?.valueType,
    }))
    .filter((field) => field.value !== undefined);
};

/** Items of a list, each with the schema it should follow. */
export const itemsInOrder = (list: readonly unknown[], schema: Schema | undefined): readonly Part[] => {
  const def = fitting(schema, list);
  return list.map((value, i) => ({ value, schema: def?.items?.[i] ?? def?.element }));
};

/**
 * A value as one line of JSON that depends on its content only. Without a schema all keys are sorted, so that two
 * values are deep-equal exactly when their texts are equal.
 * A number too large for JSON readers (it came as `1e999`) is written so that it comes back as it was.
 */
export const jsonText = (value: unknown, schema?: Schema): string => {
  if (typeof value === 'number') return numberText(value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value))
    return `[${itemsInOrder(value, schema)
      .map((item) => jsonText(item.value, item.schema))
      .join(', ')}]`;
  const fields = fieldsInOrder(value, schema).map(
    (field) => `${JSON.stringify(field.key)}: ${jsonText(field.value, field.schema)}`,
  );
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
};
