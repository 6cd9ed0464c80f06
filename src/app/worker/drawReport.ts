import * as Comlink from 'comlink';
import type { Job } from '../../core/job/jobSchema.ts';
import type { Photos } from '../../present/backup.ts';
import type { PaperName } from '../../present/papers/papers.ts';
import type { Draughtsman, PaperChoice, PaperFile } from './protocol.ts';

export interface Drawing {
  /** The files; null when it was stopped. */
  readonly files: Promise<readonly PaperFile[] | null>;
  readonly stop: () => void;
}

/** Draws the report in a worker that lives as long as it takes. */
export const drawReport = (job: Job, choice: PaperChoice, photos: Photos): Drawing => {
  const worker = new Worker(new URL('./report.worker.ts', import.meta.url), { type: 'module' });
  let stopped = (): void => {};
  const files = new Promise<readonly PaperFile[] | null>((give, fail) => {
    stopped = () => give(null);
    worker.onerror = (event) => fail(new Error(event.message || 'the worker could not start'));
    Comlink.wrap<Draughtsman>(worker).draw(job, choice, photos).then(give, fail);
  }).finally(() => worker.terminate());
  return { files, stop: () => stopped() };
};

/** Draws one paper of the work, or the tagged truss, in the same way. */
export const drawPaper = async (
  job: Job,
  choice: PaperChoice,
  name: PaperName | 'truss',
): Promise<PaperFile> => {
  const worker = new Worker(new URL('./report.worker.ts', import.meta.url), { type: 'module' });
  try {
    return await Comlink.wrap<Draughtsman>(worker).paper(job, choice, name);
  } finally {
    worker.terminate();
  }
};
