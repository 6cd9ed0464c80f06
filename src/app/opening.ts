import type { Issue } from '../core/base/issue.ts';
import { jobFromModel } from '../core/job/jobFromModel.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { readAny } from '../core/job/read.ts';
import { say, startJob, tellIssues } from './jobs.ts';
import { keepPhotos } from './photos.ts';
import { readFile } from './storage/files.ts';
import { openingText as text } from './text/messages.ts';

/** Opening: a job, a model or a backup archive from a file. What is none of them leaves the open job alone. */

const notOpened = async (name: string, issues: readonly Issue[]): Promise<false> => {
  tellIssues(issues, name);
  const { issueSentence, mendSentence } = await import('../present/words/issues.ts');
  say(
    text.notOpened(
      name,
      issues
        .slice(0, 2)
        .map((one) => `${issueSentence(one)} ${mendSentence(one)}`)
        .join(' '),
    ),
  );
  return false;
};

/** The job in a text: a job, or a model as a job with nothing entered. */
export const openText = async (text: string, name: string, purpose?: Job['purpose']): Promise<boolean> => {
  const read = readAny(text);
  if (!read.ok) return notOpened(name, read.issues);
  tellIssues(read.issues, name);
  startJob(
    read.value.kind === 'job'
      ? read.value.job
      : jobFromModel(read.value.model, read.value.model.name, purpose),
  );
  return true;
};

const openArchive = async (bytes: Uint8Array, name: string): Promise<boolean> => {
  const { unpackBackup } = await import('../present/backup.ts');
  const unpacked = unpackBackup(bytes);
  if (!unpacked.ok) return notOpened(name, unpacked.issues);
  if (!(await keepPhotos(unpacked.value.photos))) return false;
  return openText(unpacked.value.text, name);
};

/** Opens what is in a file; gives whether it was one of ours. */
export const openFile = async (file: File): Promise<boolean> => {
  const opened = await readFile(file);
  switch (opened.kind) {
    case 'text':
      return openText(opened.text, opened.name);
    case 'archive':
      return openArchive(opened.bytes, opened.name);
    case 'tooLarge':
      say(text.notOpened(opened.name, text.tooLarge));
      return false;
    case 'unreadable':
      say(text.notOpened(opened.name, text.unreadable));
      return false;
    default:
      return opened satisfies never;
  }
};

/** Opens the browser's own picker, from a key or a button. */
export const pickFile = (accept: string, take: (file: File) => void): void => {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = accept;
  picker.onchange = () => {
    const file = picker.files?.[0];
    if (file) take(file);
  };
  picker.click();
};

export const jobFiles = '.json,.zip,application/json,application/zip';

export const openFromPicker = (): void => pickFile(jobFiles, (file) => void openFile(file));
