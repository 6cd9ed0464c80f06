import type { Reading, RecordOf } from '../job/jobSchema.ts';
import { byStamp } from '../job/stampOrder.ts';
import type { HeldNow } from '../statics/held.ts';
import { openTubes } from '../trammel/openTubes.ts';
import { doneOf, stepDone } from './done.ts';
import type { Draft } from './draft.ts';
import { idOf } from './draft.ts';
import type { Gate, HandOver } from './result.ts';

type Progress = RecordOf<'progress'>;

/** At most this many of the latest readings are named. */
const MOST_READINGS = 12;

/** What the next shift must know: what is open, cut, tacked, loose and in place, what was read last, and what comes next. */
export const handOverOf = (
  steps: readonly Draft[],
  gates: readonly Gate[],
  progress: readonly Progress[],
  readings: readonly Reading[],
  support: HeldNow,
): HandOver => {
  const done = (id: string): boolean => doneOf(progress, id) !== undefined;
  const of = (kind: Draft['kind']): readonly Draft[] => steps.filter((s) => s.kind === kind);
  const finished = new Set(steps.filter((s) => stepDone(progress, s)).map((s) => s.id));
  const shut = new Set(gates.filter((g) => g.state === 'waits' || g.state === 'ready').map((g) => g.id));
  const latest = progress.toSorted(byStamp).reverse();
  return {
    openGates: gates.filter((g) => shut.has(g.id)).map((g) => g.id),
    cutNotClosed: openTubes(progress).members,
    tackedNotWelded: of('tack')
      .filter((s) => finished.has(s.id) && !done(idOf('weld', s.of!)))
      .map((s) => s.of!),
    loose: of('sleeves')
      .filter((s) => finished.has(s.id) && !done(idOf('tack', s.of!)) && !done(idOf('weld', s.of!)))
      .map((s) => s.of!),
    inPlace: [
      ...of('brace').filter((s) => finished.has(s.id) && !done(`un${s.id}`)),
      ...of('spread').filter((s) => finished.has(s.id) && !done(idOf('spreaderOut', s.of!))),
      ...of('release').filter((s) => finished.has(s.id) && !done(s.id.replace(/^release/, 'refit'))),
    ].map((s) => s.id),
    heldAs: support.heldAs,
    lastReadings: readings
      .toSorted(byStamp)
      .reverse()
      .slice(0, MOST_READINGS)
      .map((r) => r.id),
    next: steps
      .filter((s) => !finished.has(s.id) && s.needs.every((n) => finished.has(n.step)))
      .map((s) => s.id),
    who: [...new Set(latest.map((p) => p.by))],
  };
};
