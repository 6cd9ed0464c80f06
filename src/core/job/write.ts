import type * as z from 'zod/mini';
import { type Job, type JobRecord, jobSchema, recordSchemas } from './jobSchema.ts';
import { fieldsInOrder, itemsInOrder, jsonText } from './jsonText.ts';
import { type Model, modelSchema } from './modelSchema.ts';
import { byStamp, byText } from './stampOrder.ts';

/** Objects that are written one field a line, in place of on one line. */
const opened = new Set(['model', 'tubes']);

const rowsText = (rows: readonly string[], indent: string): string =>
  rows.length === 0 ? '[]' : `[\n${rows.map((row) => `${indent}  ${row}`).join(',\n')}\n${indent}]`;

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** An object one field a line, lists of objects one row a line. `rowsOf` gives the rows of a list by its own rule. */
const blockText = (
  value: object,
  schema: z.core.$ZodType | undefined,
  indent: string,
  rowsOf: ReadonlyMap<string, readonly string[]> = new Map(),
): string => {
  const deeper = `${indent}  `;
  const lines = fieldsInOrder(value, schema).map((field) => {
    const { key, value: held } = field;
    const own = rowsOf.get(key);
    const text = own
      ? rowsText(own, deeper)
      : Array.isArray(held) && held.some(isObject)
        ? rowsText(
            itemsInOrder(held, field.schema).map((item) => jsonText(item.value, item.schema)),
            deeper,
          )
        : isObject(held) && !Array.isArray(held) && opened.has(key)
          ? blockText(held, field.schema, deeper)
          : jsonText(held, field.schema);
    return `${deeper}${JSON.stringify(key)}: ${text}`;
  });
  return `{\n${lines.join(',\n')}\n${indent}}`;
};

const recordText = (record: JobRecord): string => jsonText(record, recordSchemas[record.kind]);

/**
 * The job as text: equal jobs give equal text, whatever the order of their records. One record a line, earliest first;
 * keys in the order of the schema, unknown ones after them, sorted. Records set aside come last, as they came.
 */
export const writeJob = (job: Job): string => {
  const { setAside = [], ...body } = job;
  const records = job.records
    .map((record) => ({ record, text: recordText(record) }))
    .sort((a, b) => byStamp(a.record, b.record) || byText(a.text, b.text))
    .map(({ text }) => text);
  const rows = [...records, ...setAside.map((value) => jsonText(value))];
  return `${blockText(body, jobSchema, '', new Map([['records', rows]]))}\n`;
};

/** The model as text: one station, member, load case … a line. */
export const writeModel = (model: Model): string => `${blockText(model, modelSchema, '')}\n`;
