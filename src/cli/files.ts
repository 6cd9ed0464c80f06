import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Issue, issue, ok, type Result, refused } from '../core/base/issue.ts';
import { jobFromModel } from '../core/job/jobFromModel.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { readAny } from '../core/job/read.ts';
import { isArchive, type Photos, unpackBackup } from '../present/backup.ts';

/** Issues with the file's name added: a message names file, place and mend. */
const named = (issues: readonly Issue[], file: string): readonly Issue[] =>
  issues.map((i) => ({ ...i, file }));

const readBytes = (path: string): Result<Uint8Array> => {
  try {
    if (statSync(path).isDirectory()) return refused([issue('file-is-folder', '', { path }, 'name-a-file')]);
    return ok(new Uint8Array(readFileSync(path)));
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
    return refused([issue('file-not-readable', '', { path, reason: code }, 'check-the-path')]);
  }
};

/** A job with the photos that came with it: none unless the file is a backup archive. */
export interface JobWithPhotos {
  readonly job: Job;
  readonly photos: Photos;
}

/** The job in a file, with its photos; a model alone opens as a job with nothing entered. */
export const readBackupFile = (path: string): Result<JobWithPhotos> => {
  const bytes = readBytes(path);
  if (!bytes.ok) return refused(named(bytes.issues, path));
  const backup = isArchive(bytes.value)
    ? unpackBackup(bytes.value)
    : ok({ text: new TextDecoder().decode(bytes.value), photos: new Map<string, Uint8Array>() });
  if (!backup.ok) return refused(named(backup.issues, path));
  const { text, photos } = backup.value;
  const read = readAny(text);
  if (!read.ok) return refused(named(read.issues, path));
  const job = read.value.kind === 'job' ? read.value.job : jobFromModel(read.value.model, basename(path));
  return ok({ job, photos }, named(read.issues, path));
};

/** The job in a file. */
export const readJobFile = (path: string): Result<Job> => {
  const read = readBackupFile(path);
  return read.ok ? ok(read.value.job, read.issues) : read;
};

/** Writes files into a folder and those under it, made when they are not there; gives their paths, or why not. */
export const writeFiles = (
  folder: string,
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Result<readonly string[]> => {
  try {
    mkdirSync(folder, { recursive: true });
    return ok(
      files.map((file) => {
        const path = join(folder, file.name);
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, file.bytes);
        return path;
      }),
    );
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
    return refused([issue('file-not-writable', '', { path: folder, reason: code }, 'choose-another-folder')]);
  }
};
