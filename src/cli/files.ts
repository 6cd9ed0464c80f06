import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Issue, issue, ok, type Result, refused } from '../core/base/issue.ts';
import { jobFromModel } from '../core/job/jobFromModel.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { readAny } from '../core/job/read.ts';

/** Issues with the file's name added: a message names file, place and mend. */
const named = (issues: readonly Issue[], file: string): readonly Issue[] =>
  issues.map((i) => ({ ...i, file }));

const readText = (path: string): Result<string> => {
  try {
    if (statSync(path).isDirectory()) return refused([issue('file-is-folder', '', { path }, 'name-a-file')]);
    return ok(readFileSync(path, 'utf8'));
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
    return refused([issue('file-not-readable', '', { path, reason: code }, 'check-the-path')]);
  }
};

/** The job in a file; a model alone opens as a job with nothing entered. */
export const readJobFile = (path: string): Result<Job> => {
  const text = readText(path);
  if (!text.ok) return refused(named(text.issues, path));
  const read = readAny(text.value);
  if (!read.ok) return refused(named(read.issues, path));
  const job = read.value.kind === 'job' ? read.value.job : jobFromModel(read.value.model, basename(path));
  return ok(job, named(read.issues, path));
};

/** Writes files into a folder, made when it is not there; gives their paths, or why not. */
export const writeFiles = (
  folder: string,
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Result<readonly string[]> => {
  try {
    mkdirSync(folder, { recursive: true });
    return ok(
      files.map((file) => {
        const path = join(folder, file.name);
        writeFileSync(path, file.bytes);
        return path;
      }),
    );
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
    return refused([issue('file-not-writable', '', { path: folder, reason: code }, 'choose-another-folder')]);
  }
};
