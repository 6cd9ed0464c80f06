import { describe, expect, it } from 'vitest';
import { makeClient } from '../../../src/app/worker/client.ts';
import type { Answer, Question } from '../../../src/app/worker/protocol.ts';
import { emptyJob } from '../kit.ts';

const question = (key: string): Question => ({ key, job: emptyJob(), ask: {} });
const soon = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

/** A worker whose answers are given by hand. */
const byHand = () => {
  const open: { key: string; give: (answer: Answer) => void }[] = [];
  let [started, ended] = [0, 0];
  return {
    open,
    counts: () => ({ started, ended }),
    start: async () => {
      started += 1;
      return {
        assessor: {
          answer: ({ key }: Question) => new Promise<Answer>((give) => open.push({ key, give })),
        },
        end: () => {
          ended += 1;
        },
      };
    },
  };
};
const fault = (key: string): Answer => ({ kind: 'fault', key, fault: 'for the test' });
const done = (key: string): Answer => ({ kind: 'assessment', key, assessment: {} as never });

describe('the client', () => {
  it('works one question at a time and drops those that a newer one overtook', async () => {
    const hand = byHand();
    const told: string[] = [];
    const client = makeClient(
      ({ key }) => told.push(key),
      () => {},
      hand.start,
    );
    client.put(question('a'));
    await soon();
    client.put(question('b'));
    client.put(question('c'));
    hand.open[0]?.give(done('a'));
    await soon();
    hand.open[1]?.give(done('c'));
    await soon();
    expect(hand.open.map(({ key }) => key)).toEqual(['a', 'c']);
    expect(told).toEqual(['a', 'c']);
  });

  it('ends the worker when stopped, says nothing of its answer, and starts afresh with the next question', async () => {
    const hand = byHand();
    const told: string[] = [];
    const client = makeClient(
      ({ key }) => told.push(key),
      () => {},
      hand.start,
    );
    client.put(question('a'));
    await soon();
    client.stop();
    hand.open[0]?.give(done('a'));
    await soon();
    expect(hand.counts()).toEqual({ started: 1, ended: 1 });
    client.put(question('b'));
    await soon();
    hand.open[1]?.give(done('b'));
    await soon();
    expect(told).toEqual(['b']);
    expect(hand.counts().started).toBe(2);
  });

  it('starts another worker after a fault', async () => {
    const hand = byHand();
    const told: string[] = [];
    const client = makeClient(
      (_, answer) => told.push(answer.kind),
      () => {},
      hand.start,
    );
    client.put(question('a'));
    await soon();
    hand.open[0]?.give(fault('a'));
    await soon();
    client.put(question('a'));
    await soon();
    hand.open[1]?.give(done('a'));
    await soon();
    expect(told).toEqual(['fault', 'assessment']);
    expect(hand.counts()).toEqual({ started: 2, ended: 1 });
  });
});
