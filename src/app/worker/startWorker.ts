/** Starts a worker of our own. It sums, compares and draws; which of it, the questions say. */
export const newWorker = (): Worker =>
  new Worker(new URL('./work.worker.ts', import.meta.url), { type: 'module' });
