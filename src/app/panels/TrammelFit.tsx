import { type Hold, holds } from '../../core/job/jobSchema.ts';
import type { Adjustment } from '../../core/trammel/adjustment.ts';
import { lengthRead } from '../../core/trammel/observations.ts';
import type { Trammel } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { holdWords } from '../../present/words/record.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll } from '../state/view.ts';
import { fitsText } from '../text/trammel.ts';

/** Whether the readings of each hold agree, and which one to take again when they do not. */
export const Fits = ({ trammel }: { readonly trammel: Trammel }) => {
  const worked = holds.flatMap((hold): readonly [Hold, Adjustment][] => {
    const adjustment = trammel.byHold[hold];
    return adjustment ? [[hold, adjustment]] : [];
  });
  if (worked.length === 0) return null;
  return (
    <section className="stack tight" aria-label={fitsText.region}>
      <h2>{fitsText.title}</h2>
      <ul className="entries">
        {worked.map(([hold, adjustment]) => (
          <li key={hold}>
            <span>
              <strong>{holdWords[hold]}</strong>
              {fitsText.said(fitsText.fits[adjustment.fits], adjustment.readings.length)}
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
    const line = fitsText.line(reading.ends[0].cluster, reading.ends[1].cluster);
    return lengthIn === undefined ? line : fitsText.readAs(line, showLength(lengthIn, units));
  };
  switch (cause.kind) {
    case 'misread': {
      const ends = readings.find(({ id }) => id === cause.reading)?.ends.map(({ cluster }) => cluster) ?? [];
      return (
        <span className="notice small">
          {fitsText.misread(named(cause.reading), showLength(cause.shouldBeIn, units))}{' '}
          <button type="button" className="link" onClick={() => selectAll(ends)}>
            {fitsText.show}
          </button>
        </span>
      );
    }
    case 'datumMoved':
      return <span className="notice small">{fitsText.datumMoved(cause.cluster)}</span>;
    case 'cannotTell':
      return (
        <span className="notice small">
          {cause.between && cause.between.length > 1 ? fitsText.cannotTell(cause.between.map(named)) : ''}
          {cause.readAlso.length > 0 ? fitsText.readAlso(listWords(cause.readAlso)) : fitsText.readMore}
        </span>
      );
    default: {
      const never: never = cause;
      return never;
    }
  }
};
