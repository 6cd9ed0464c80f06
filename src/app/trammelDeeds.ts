import type { Draft } from '../core/job/change.ts';
import type { Hold, Reading, RecordOf } from '../core/job/jobSchema.ts';
import type { Model } from '../core/job/modelSchema.ts';
import { holdWords } from '../present/words/record.ts';
import { useAnswer } from './state/answer.ts';
import { setEntry, useEntry } from './state/entry.ts';
import { change, useJob } from './state/job.ts';
import { trammelDeedText } from './text/trammelDeeds.ts';

/** What a person does at the trammel, each as one named change. */

/** Records a reading and notes it, so that the last one can be undone with one touch. */
export const recordReading = (reading: Draft<Reading>): boolean => {
  const before = new Set(useJob.getState().job?.records.map(({ id }) => id));
  const [a, b] = reading.ends;
  if (!change({ kind: 'addReading', reading }, trammelDeedText.reading(a.cluster, b.cluster))) return false;
  const added = useJob.getState().job?.records.find(({ id }) => !before.has(id));
  if (added) setEntry({ recorded: [...useEntry.getState().recorded, added.id], text: '' });
  return true;
};

/** Takes the last reading recorded here out again, and puts its line back in hand. */
export const undoReading = (line: (reading: Reading) => string): void => {
  const { recorded } = useEntry.getState();
  const standing = new Map(useAnswer.getState().atOnce?.live.readings.map((r) => [r.id, r]));
  const last = recorded.findLast((id) => standing.has(id));
  if (last === undefined) return;
  const reading = standing.get(last)!;
  change({ kind: 'withdraw', ids: [last], reason: trammelDeedText.undoneReason }, trammelDeedText.undone);
  setEntry({ recorded: recorded.filter((id) => id !== last), line: line(reading), text: '' });
};

const manual = (entry: Draft<RecordOf<'manual'>>, name: string): boolean =>
  change({ kind: 'addManual', manual: entry }, name);

export const strike = (target: string): void => {
  if (useEntry.getState().line === target) setEntry({ line: null, text: '' });
  manual(
    { topic: `strike:${target}`, words: trammelDeedText.unreachable, source: trammelDeedText.byHand },
    trammelDeedText.struck(target),
  );
};

/** Puts a struck line back; whichever way round it was written. */
export const unstrike = (target: string): void => {
  const ends = (topic: string): string =>
    topic
      .slice('strike:'.length)
      .split(/[–-]/)
      .map((id) => id.trim())
      .sort()
      .join(' ');
  const mine = ends(`strike:${target}`);
  const ids =
    useAnswer
      .getState()
      .atOnce?.live.manual.filter(({ topic }) => topic.startsWith('strike:') && ends(topic) === mine)
      .map(({ id }) => id) ?? [];
  if (ids.length > 0)
    change({ kind: 'withdraw', ids, reason: trammelDeedText.putBackReason }, trammelDeedText.putBack(target));
};

/** The user's own value for a topic, with where it comes from; an earlier one of the same topic is withdrawn with it. */
export const setOwn = (
  topic: string,
  valueIn: number,
  typed: string,
  source: string,
  name: string,
): boolean => manual({ topic, valueIn, typed: { valueIn: typed }, source }, name);

export const setDatum = (words: string, source: string): boolean =>
  manual({ topic: 'datum', words, source }, trammelDeedText.datum);

/** A drawing distance with its tolerance, written into the model. */
export const setDrawn = (distance: Model['distances'][number]): boolean => {
  const now = useAnswer.getState().atOnce;
  if (!now) return false;
  const model = now.live.model ?? now.job.model;
  const same = (d: Model['distances'][number]): boolean =>
    [d.from, d.to].sort().join() === [distance.from, distance.to].sort().join();
  return change(
    {
      kind: 'amendModel',
      model: { ...model, distances: [...model.distances.filter((d) => !same(d)), distance] },
    },
    trammelDeedText.drawn(distance.from, distance.to),
  );
};

/** Marks a hold done, or open again; the reason stands where its gate is closed. */
export const markHold = (hold: Hold, done: boolean, reason: string): boolean =>
  change(
    {
      kind: 'addProgress',
      progress: { step: `hold:${hold}`, done, ...(reason.trim() === '' ? {} : { reason: reason.trim() }) },
    },
    trammelDeedText.hold(holdWords[hold], done),
  );

export const recordFitUp = (member: string, fitUp: NonNullable<RecordOf<'progress'>['fitUp']>): boolean =>
  change(
    { kind: 'addProgress', progress: { step: `fitUp:${member}`, done: true, of: member, fitUp } },
    trammelDeedText.fitUp(member),
  );

export const recordSpread = (spread: NonNullable<RecordOf<'progress'>['spread']>): boolean =>
  change(
    { kind: 'addProgress', progress: { step: `spread:${spread.from}–${spread.to}`, done: true, spread } },
    trammelDeedText.spread(spread.from, spread.to),
  );
