import { issue, ok, type Result, refused } from '../../core/base/issue.ts';
import { standing } from '../../core/job/standing.ts';
import { usualChapters } from '../../present/record/chapterNames.ts';
import { type ReportPart, reportParts } from '../../present/record.ts';
import { reportFiles } from '../../present/report.ts';
import type { SinceAsk } from '../../present/sinceAsk.ts';
import { readBackupFile, readJobFile, writeFiles } from '../files.ts';
import type { Command } from './command.ts';

/** `damage`: the usual chapters of the damage report; `all`: everything there is. */
const groups: Readonly<Record<string, readonly ReportPart[]>> = { damage: usualChapters, all: reportParts };

/** The chapters and papers named in a list such as `damage,work-cards`. */
const holdsOf = (list: string): Result<readonly ReportPart[]> => {
  const names = list.split(',').map((name) => name.trim());
  const wrong = names.filter(
    (name) => !Object.hasOwn(groups, name) && !reportParts.includes(name as ReportPart),
  );
  return wrong.length > 0
    ? refused([
        issue(
          'no-such-papers',
          '--papers',
          { got: wrong, expected: [...Object.keys(groups), ...reportParts] },
          'use-these-papers',
        ),
      ])
    : ok(names.flatMap((name) => groups[name] ?? [name as ReportPart]));
};

const time = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/;

/** A time, or an older copy of the job. */
const sinceOf = (named: string): Result<SinceAsk> => {
  if (time.test(named)) return ok({ kind: 'time', at: named });
  const read = readJobFile(named);
  return read.ok ? ok({ kind: 'copy', job: read.value }, read.issues) : read;
};

/** The damage report and every paper as PDF, drawings, glTF and a CSV per table: the same bytes as from the screen. */
export const report: Command = {
  name: 'report',
  takes: ['out', 'paper', 'papers', 'since'],
  run: async (file, options) => {
    const paper = options.paper ?? 'a4';
    if (paper !== 'a4' && paper !== 'letter')
      return refused([
        issue('no-such-paper', '--paper', { got: paper, expected: ['a4', 'letter'] }, 'use-a4-or-letter'),
      ]);
    if (options.out === undefined) return refused([issue('no-folder-named', '--out', {}, 'name-a-folder')]);
    const holds = options.papers === undefined ? undefined : holdsOf(options.papers);
    if (holds && !holds.ok) return holds;
    const since = options.since === undefined ? undefined : sinceOf(options.since);
    if (since && !since.ok) return since;
    const read = readBackupFile(file);
    if (!read.ok) return read;
    const { job, photos } = read.value;
    const missing = standing(job.records).photos.filter(({ hash }) => !photos.has(hash));
    const ids = [...new Set(missing.map(({ hash }) => hash.slice(0, 12)))];
    const files = await reportFiles(
      job,
      {
        paper,
        units: 'inFraction',
        ...(holds ? { holds: holds.value } : {}),
        ...(since ? { since: since.value } : {}),
      },
      photos,
    );
    const written = writeFiles(options.out, files);
    if (!written.ok) return written;
    return {
      ok: true,
      text: written.value.join('\n'),
      json: { files: written.value },
      issues: [
        ...read.issues,
        ...(since?.issues ?? []),
        ...(ids.length > 0 ? [issue('photos-missing', '', { ids }, 'find-the-backup')] : []),
      ],
    };
  },
};
