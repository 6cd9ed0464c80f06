import { assessCommand } from './assess.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { expand } from './expand.ts';
import { merge } from './merge.ts';
import { report } from './report.ts';
import { schema } from './schema.ts';

/** Every verb of the terminal. */
export const verbs: readonly Command[] = [check, expand, assessCommand, report, merge, schema];
