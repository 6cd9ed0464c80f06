import { issue, refused } from '../../core/base/issue.ts';
import { jsonSchema, schemaNames } from '../../core/job/schema.ts';
import type { Command } from './command.ts';

/** The JSON Schema of a document. */
export const schema: Command = {
  name: 'schema',
  takes: [],
  run: (name) => {
    const known = schemaNames.find((n) => n === name);
    if (!known)
      return refused([
        issue('no-such-schema', '', { got: name, expected: [...schemaNames] }, 'name-a-schema'),
      ]);
    const json = jsonSchema(known);
    return { ok: true, text: JSON.stringify(json, null, 2), json, issues: [] };
  },
};
