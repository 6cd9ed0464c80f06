import { writeJob } from '../core/job/write.ts';
import type { ReportPart } from '../present/record.ts';
import { save } from './jobs.ts';
import { photosOf } from './photos.ts';
import { noteCopied, useJob } from './state/job.ts';
import { usePrefs } from './state/prefs.ts';
import { useSaved } from './state/saved.ts';
import { fileName, saveFile } from './storage/files.ts';
import type { Kept } from './storage/keep.ts';
import { drawStoppable } from './worker/asked.ts';

/** Handing out: copies of the job, and its papers. */

/** A kept job as a file, even when it cannot be read here. */
export const saveKeptCopy = (kept: Kept): void =>
  saveFile(fileName(kept.name, '.tubewright.json'), kept.text, 'application/json');

/**
 * Hands out the job as a file: with photos, one archive of both. From now on undo withdraws what the copy holds.
 */
export const saveCopy = async (): Promise<void> => {
  const { job } = useJob.getState();
  if (!job) return;
  const text = writeJob(job);
  const photos = await photosOf(job).catch(() => new Map<string, Uint8Array>());
  if (photos.size === 0) saveFile(fileName(job.name, '.tubewright.json'), text, 'application/json');
  else {
    const { packBackup } = await import('../present/backup.ts');
    const bytes = new Uint8Array(packBackup({ text, photos }));
    saveFile(fileName(job.name, '.tubewright.zip'), bytes, 'application/zip');
  }
  noteCopied(job.records.map(({ id }) => id));
  useSaved.setState({ copy: { at: new Date().toISOString(), records: job.records.length } });
  void save();
};

export type ReportState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly stop: () => void }
  | { readonly kind: 'done'; readonly what: Paper }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly why: string };

export type Paper = 'pdf' | 'csv';

const types = { pdf: 'application/pdf', csv: 'text/csv' } as const satisfies Record<Paper, string>;

/** Draws the report of the open job, with what it is to hold, and hands out its PDF or its tables; `tell` hears how it goes. */
export const saveReport = async (
  what: Paper,
  tell: (state: ReportState) => void,
  holds?: readonly ReportPart[],
): Promise<void> => {
  const { job } = useJob.getState();
  if (!job) return;
  const { units, paper } = usePrefs.getState();
  try {
    const drawing = drawStoppable({
      kind: 'report',
      job,
      choice: { units, paper, ...(holds ? { holds } : {}) },
      photos: await photosOf(job),
    });
    tell({ kind: 'working', stop: drawing.stop });
    const files = await drawing.answer;
    for (const { name, bytes } of files ?? [])
      if (what === 'pdf' ? name === 'report.pdf' : name.endsWith('.csv'))
        saveFile(name.replace(/^.*\//, ''), new Uint8Array(bytes), types[what]);
    tell(files ? { kind: 'done', what } : { kind: 'stopped' });
  } catch (why) {
    tell({ kind: 'failed', why: why instanceof Error ? why.message : String(why) });
  }
};
