import { describe, expect, it } from 'vitest';
import { lookMethods, recordSchemas } from '../../../src/core/job/jobSchema.ts';
import { jsonSchema, schemaNames } from '../../../src/core/job/schema.ts';

describe('jsonSchema', () => {
  it.each(schemaNames)('gives %s as JSON Schema that is plain JSON', (name) => {
    const schema = jsonSchema(name);
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it('names every kind of record and every method of looking', () => {
    const text = JSON.stringify(jsonSchema('job'));
    for (const word of [...Object.keys(recordSchemas), ...lookMethods]) expect(text).toContain(`"${word}"`);
  });
});
