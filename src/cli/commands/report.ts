import { issue, refused } from '../../core/base/issue.ts';
import { standing } from '../../core/job/standing.ts';
import { reportFiles } from '../../present/report.ts';
import { readBackupFile, writeFiles } from '../files.ts';
import type { Command } from './command.ts';

/** The damage report as PDF and a CSV per table, the same bytes as from the screen. */
export const report: Command = {
  name: 'report',
  takes: ['out', 'paper'],
  run: async (file, options) => {
    const paper = options.paper ?? 'a4';
    if (paper !== 'a4' && paper !== 'letter')
      return refused([
        issue('no-such-paper', '--paper', { got: paper, expected: ['a4', 'letter'] }, 'use-a4-or-letter'),
      ]);
    if (options.out === undefined) return refused([issue('no-folder-named', '--out', {}, 'name-a-folder')]);
    const read = readBackupFile(file);
    if (!read.ok) return read;
    const { job, photos } = read.value;
    const missing = standing(job.records).photos.filter(({ hash }) => !photos.has(hash));
    const ids = [...new Set(missing.map(({ hash }) => hash.slice(0, 12)))];
    const files = await reportFiles(job, { paper, units: 'inFraction' }, photos);
    const written = writeFiles(options.out, files);
    if (!written.ok) return written;
    return {
      ok: true,
      text: written.value.join('\n'),
      json: { files: written.value },
      issues: [
        ...read.issues,
        ...(ids.length > 0 ? [issue('photos-missing', '', { ids }, 'find-the-backup')] : []),
      ],
    };
  },
};
