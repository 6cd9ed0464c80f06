import { type Hold, holds } from '../../core/job/jobSchema.ts';
import { lengthRead } from '../../core/trammel/observations.ts';
import type { Adjustment, Trammel } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { holdWords } from '../../present/words/record.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll } from '../state/view.ts';

const fitWords = {
  fits: 'the readings agree with one another',
  doesNotFit: 'the readings do not agree with one another',
  cannotTell: 'cannot tell whether the readings agree: too few cross each other',
} as const satisfies Record<Adjustment['fits'], string>;

/** Whether the readings of each hold agree, and which one to take again when they do not. */
export const Fits = ({ trammel }: { readonly trammel: Trammel }) => {
  const worked = holds.flatMap((hold): readonly [Hold, Adjustment][] => {
    const adjustment = trammel.byHold[hold];
    return adjustment ? [[hold, adjustment]] : [];
  });
  if (worked.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Do the readings agree">
      <h2>Do the readings agree?</h2>
      <ul className="entries">
        {worked.map(([hold, adjustment]) => (
          <li key={hold}>
            <span>
              <strong>{holdWords[hold]}</strong>: {fitWords[adjustment.fits]}, {adjustment.readings.length}{' '}
              readings.
            </span>
            {(adjustment.causes ?? []).map((cause) => (
              <Cause key={causeKey(cause)} cause={cause} />
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
};

type CauseOf = NonNullable<Adjustment['cause']>;

const causeKey = (cause: CauseOf): string =>
  cause.kind === 'misread' ? cause.reading : cause.kind === 'datumMoved' ? cause.cluster : cause.kind;

const Cause = ({ cause }: { readonly cause: CauseOf }) => {
  const units = usePrefs((prefs) => prefs.units);
  const readings = useAnswer((answer) => answer.atOnce?.live.readings) ?? [];
  /** A reading by its line and what was read; a cluster by its id. */
  const named = (id: string): string => {
    const reading = readings.find((r) => r.id === id);
    if (!reading) return id;
    const lengthIn = lengthRead(reading);
    const ends = reading.ends.map(({ cluster }) => cluster).join(' to ');
    return lengthIn === undefined ? ends : `${ends}, read as ${showLength(lengthIn, units)}`;
  };
  switch (cause.kind) {
    case 'misread': {
      const ends = readings.find(({ id }) => id === cause.reading)?.ends.map(({ cluster }) => cluster) ?? [];
      return (
        <span className="notice small">
          Take again: {named(cause.reading)}. The others say it should be{' '}
          {showLength(cause.shouldBeIn, units)}; the shape does not lean on it.{' '}
          <button type="button" className="link" onClick={() => selectAll(ends)}>
            Show it
          </button>
        </span>
      );
    }
    case 'datumMoved':
      return (
        <span className="notice small">
          The cluster {cause.cluster} has moved itself: measure from sound ones.
        </span>
      );
    case 'cannotTell':
      return (
        <span className="notice small">
          {cause.between && cause.between.length > 1
            ? `Cannot tell which is wrong: ${cause.between.map(named).join('; or ')}. `
            : ''}
          {cause.readAlso.length > 0
            ? `To tell, read also ${listWords(cause.readAlso)}.`
            : 'To tell, read more distances.'}
        </span>
      );
    default: {
      const never: never = cause;
      return never;
    }
  }
};
