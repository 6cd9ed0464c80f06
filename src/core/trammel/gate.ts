import type { RecordOf } from '../job/jobSchema.ts';
import type { AskedReading, FitUp, Gate } from './result.ts';

type Progress = RecordOf<'progress'>;

/**
 * Whether a hold can be marked done: not while a reading it asks for is outside its limit or missing, nor while a joint
 * has no fit-up entry. No limit loaded: the reading is recorded and closes nothing. Cannot tell after one reading asks for
 * one repeat (or a better instrument) and closes nothing.
 * Common practice, no source.
 */
export const gateOf = (asks: readonly AskedReading[], fitUps: readonly FitUp[]): Gate => {
  const of = (is: (a: AskedReading) => boolean): readonly string[] => asks.filter(is).map((a) => a.target);
  const outside = of((a) => a.verdict === 'outside');
  const notRead = of((a) => a.taken === 0);
  const fitUp = fitUps.filter((f) => f.lacks.length > 0).map((f) => f.member);
  return {
    opens: outside.length + notRead.length + fitUp.length === 0,
    outside,
    notRead,
    repeat: of((a) => a.verdict === 'cannotTell' && a.taken < 2),
    fitUp,
  };
};

/** A hold may be marked done when its gate opens, or with a written reason. */
export const mayBeDone = (gate: Gate, reason: string | undefined): boolean =>
  gate.opens || (reason ?? '').trim() !== '';

/** What the record of a joint's fit-up lacks: gap, overlap, marks, and a second person who is not the doer. */
export const fitUpOf = (member: string, progress: readonly Progress[]): FitUp => {
  const entry = progress.findLast((p) => p.step === `fitUp:${member}` && p.done);
  const seen = entry?.fitUp;
  const second = seen?.secondPerson?.trim().toLowerCase() ?? '';
  return {
    member,
    ...(entry ? { record: entry.id } : {}),
    lacks: [
      ...(seen?.gapIn === undefined ? (['gap'] as const) : []),
      ...(seen?.overlapIn === undefined ? (['overlap'] as const) : []),
      ...(seen?.marksCentred === true ? [] : (['marks'] as const)),
      ...(second === ''
        ? (['secondPerson'] as const)
        : second === entry?.by.trim().toLowerCase()
          ? (['secondPersonIsDoer'] as const)
          : []),
    ],
  };
};
