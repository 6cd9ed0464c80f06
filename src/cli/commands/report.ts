import { issue, refused } from '../../core/base/issue.ts';
import { reportFiles } from '../../present/report.ts';
import { readJobFile, writeFiles } from '../files.ts';
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
    const read = readJobFile(file);
    if (!read.ok) return read;
    const files = await reportFiles(read.value, { paper, units: 'inFraction' });
    const written = writeFiles(options.out, files);
    if (!written.ok) return written;
    return { ok: true, text: written.value.join('\n'), json: { files: written.value }, issues: read.issues };
  },
};
