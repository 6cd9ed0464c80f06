import { assess } from '../../core/assess.ts';
import { readJobFile } from '../files.ts';
import { printTable } from '../print.ts';
import { stageTables } from '../stageTables.ts';
import type { Command } from './command.ts';

/** Clusters and members made from the station table and the bracing words. */
export const expand: Command = {
  name: 'expand',
  takes: [],
  run: (file) => {
    const read = readJobFile(file);
    if (!read.ok) return read;
    const assessment = assess(read.value);
    const tables = stageTables.truss({ job: read.value, assessment, units: 'inFraction' });
    return {
      ok: true,
      text: tables.map(printTable).join('\n\n'),
      json: assessment.truss,
      issues: read.issues,
    };
  },
};
