import * as Comlink from 'comlink';
import type { Answer, Assessor, OnStage, Question } from './protocol.ts';
import { newWorker } from './startWorker.ts';

interface Running {
  readonly assessor: Pick<Assessor, 'answer'>;
  readonly end: () => void;
}

const none: Running = {
  assessor: { answer: ({ key }) => ({ kind: 'fault', key, fault: 'this browser has no workers' }) },
  end: () => {},
};

/** Starts the worker. A browser without workers says so in place of an answer. */
export const startWorker = async (): Promise<Running> => {
  if (typeof Worker !== 'function') return none;
  const worker = newWorker();
  const remote = Comlink.wrap<Assessor>(worker);
  return {
    assessor: {
      answer: (question, onStage) =>
        new Promise<Answer>((give) => {
          const failed = (words: string): void => give({ kind: 'fault', key: question.key, fault: words });
          worker.onerror = (event) => failed(event.message || 'the worker could not start');
          remote.answer(question, Comlink.proxy(onStage)).then(give, (why: unknown) => failed(String(why)));
        }),
    },
    end: () => worker.terminate(),
  };
};

export interface Client {
  /** Asks; a question still waiting when a newer one comes is dropped. */
  readonly put: (question: Question) => void;
  /** Ends what is running and starts afresh with the next question. */
  readonly stop: () => void;
}

/** One question at a time, the latest wins. `tell` hears every answer with the question it belongs to. */
export const makeClient = (
  tell: (question: Question, answer: Answer) => void,
  onStage: OnStage,
  start: () => Promise<Running> = startWorker,
): Client => {
  let running: Promise<Running> | undefined;
  let waiting: Question | undefined;
  let busy = false;
  let turn = 0;

  const drop = async (): Promise<void> => {
    const old = running;
    running = undefined;
    (await old)?.end();
  };

  const work = async (): Promise<void> => {
    const mine = turn;
    while (waiting && mine === turn) {
      const question = waiting;
      waiting = undefined;
      busy = true;
      running ??= start();
      const { assessor } = await running;
      const answer = await assessor.answer(question, (stage) => {
        if (mine === turn) onStage(stage);
      });
      if (mine !== turn) return;
      busy = false;
      if (answer.kind === 'fault') await drop();
      tell(question, answer);
    }
  };

  return {
    put: (question) => {
      waiting = question;
      if (!busy) void work();
    },
    stop: () => {
      turn += 1;
      busy = false;
      waiting = undefined;
      void drop();
    },
  };
};
