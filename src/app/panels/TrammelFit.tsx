import { type Hold, holds } from '../../core/job/jobSchema.ts';
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
            {adjustment.cause && <Cause cause={adjustment.cause} />}
          </li>
        ))}
      </ul>
    </section>
  );
};

const Cause = ({ cause }: { readonly cause: NonNullable<Adjustment['cause']> }) => {
  const units = usePrefs((prefs) => prefs.units);
  const readings = useAnswer((answer) => answer.atOnce?.live.readings);
  switch (cause.kind) {
    case 'misread': {
      const reading = readings?.find(({ id }) => id === cause.reading);
      const ends = reading?.ends.map(({ cluster }) => cluster) ?? [];
      return (
        <span className="notice small">
          Take again first: {ends.length > 0 ? ends.join(' to ') : cause.reading}. The others say it should be{' '}
          {showLength(cause.shouldBeIn, units)}.{' '}
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
