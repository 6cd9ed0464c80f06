import { assess } from '../../core/assess.ts';
import { type Stage, stages } from '../../core/assessment.ts';
import { issue, refused } from '../../core/base/issue.ts';
import { pageFoot } from '../../present/words/cautions.ts';
import { readJobFile } from '../files.ts';
import { printTable } from '../print.ts';
import { stageTables } from '../stageTables.ts';
import type { Command } from './command.ts';

const kebab = (stage: string): string => stage.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

/** Every result of a job, or of one stage of it. */
export const assessCommand: Command = {
  name: 'assess',
  takes: ['only', 'target'],
  run: (file, options) => {
    const only = stages.find((stage) => kebab(stage) === options.only);
    if (options.only !== undefined && !only)
      return refused([
        issue(
          'no-such-stage',
          '--only',
          { got: options.only, expected: stages.map(kebab) },
          'use-a-stage-name',
        ),
      ]);
    const read = readJobFile(file);
    if (!read.ok) return read;
    const job = read.value;
    const targets = options.target ?? [];
    const assessment = assess(job, { targets });
    const known = new Set(assessment.truss.members.map((m) => m.id));
    const unknown = targets.filter((id) => !known.has(id));
    if (unknown.length > 0)
      return refused(
        unknown.map((id) => issue('unknown-target', '--target', { got: id }, 'use-a-member-id')),
      );
    const chosen: readonly Stage[] = only ? [only] : stages;
    const tables = chosen.flatMap((stage) => stageTables[stage]({ job, assessment, units: 'inFraction' }));
    return {
      ok: true,
      text: `${tables.map(printTable).join('\n\n')}\n\n${pageFoot}`,
      json: only ? assessment[only] : assessment,
      issues: read.issues,
    };
  },
};
