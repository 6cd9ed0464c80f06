import * as Comlink from 'comlink';
import type { Assessment } from '../../core/assessment.ts';
import type { SideBySide } from '../../core/estimate/compare.ts';
import type { Supplement } from '../../core/estimate/supplement.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { PaperFile, PaperRequest, Trained, TrainRequest, Workshop } from './protocol.ts';
import { newWorker } from './startWorker.ts';

export interface Asked<T> {
  /** The answer; null when it was stopped. */
  readonly answer: Promise<T | null>;
  readonly stop: () => void;
}

/** Asks a worker that lives as long as the question. */
const ask = <T>(question: (workshop: Comlink.Remote<Workshop>) => Promise<T>): Asked<T> => {
  const worker = newWorker();
  let stopped = (): void => {};
  const answer = new Promise<T | null>((give, fail) => {
    stopped = () => give(null);
    worker.onerror = (event) => fail(new Error(event.message || 'the worker could not start'));
    question(Comlink.wrap<Workshop>(worker)).then(give, fail);
  }).finally(() => worker.terminate());
  return { answer, stop: () => stopped() };
};

/** Waits for an answer that nothing can stop. */
const whole = async <T>({ answer }: Asked<T>): Promise<T> => (await answer) as T;

export const drawStoppable = (request: PaperRequest): Asked<readonly PaperFile[]> =>
  ask((workshop) => workshop.draw(request));

export const draw = (request: PaperRequest): Promise<readonly PaperFile[]> => whole(drawStoppable(request));

export const assessed = (job: Job): Promise<Assessment> => whole(ask((workshop) => workshop.assessed(job)));

export const compareBay = (job: Job, bay: string): Promise<SideBySide> =>
  whole(ask((workshop) => workshop.bayRoutes(job, bay)));

export const compareJobs = (before: Job, after: Job): Promise<Supplement> =>
  whole(ask((workshop) => workshop.changedSince(before, after)));

export const trained = (request: TrainRequest): Asked<Trained> =>
  ask(async (workshop) => (await workshop.train(request)) as Trained);
