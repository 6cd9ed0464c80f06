import { basename, dirname } from 'node:path';
import { issue, refused } from '../../core/base/issue.ts';
import { joining } from '../../core/job/joining.ts';
import { writeJob } from '../../core/job/write.ts';
import { packBackup } from '../../present/backup.ts';
import { comesWords, conflictWords, recordWords, whoWords } from '../../present/words/joining.ts';
import { readBackupFile, writeFiles } from '../files.ts';
import type { Command } from './command.ts';

/** Two tablets' jobs as one, with every conflict listed; nothing is dropped. */
export const merge: Command = {
  name: 'merge',
  takes: ['out'],
  files: 2,
  run: (file, { out }, other = '') => {
    if (out === undefined) return refused([issue('no-file-named', '--out', {}, 'name-a-file')]);
    const [mine, theirs] = [readBackupFile(file), readBackupFile(other)];
    if (!mine.ok || !theirs.ok) return refused([...mine.issues, ...theirs.issues]);
    const joined = joining(mine.value.job, theirs.value.job);
    if (!joined.ok) return joined;
    const { job, conflicts, comesInAll, onlyHere } = joined.value;
    const photos = new Map([...mine.value.photos, ...theirs.value.photos]);
    const asArchive = out.toLowerCase().endsWith('.zip');
    if (photos.size > 0 && !asArchive)
      return refused([issue('photos-need-archive', '--out', { got: photos.size }, 'name-a-zip')]);
    const text = writeJob(job);
    const bytes = asArchive ? packBackup({ text, photos }) : new TextEncoder().encode(text);
    const written = writeFiles(dirname(out), [{ name: basename(out), bytes }]);
    if (!written.ok) return written;
    const lines = conflicts.flatMap((conflict) => [
      `${conflict.about}: ${conflictWords[conflict.kind]}`,
      ...conflict.records.map((record) => `  ${recordWords(record, 'inFraction')} (${whoWords(record)})`),
    ]);
    return {
      ok: true,
      text: [
        `${out}: ${job.records.length} records. From ${other}: ${comesWords(joined.value)}.`,
        ...lines,
      ].join('\n'),
      json: { file: out, records: job.records.length, comes: comesInAll, onlyInFirst: onlyHere, conflicts },
      issues: [...mine.issues, ...theirs.issues, ...joined.issues],
    };
  },
};
