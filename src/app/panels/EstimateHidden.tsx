import { useState } from 'react';
import type { Estimate, HiddenBand } from '../../core/estimate/result.ts';
import { fixed } from '../../present/show.ts';
import { bandWords, hoursText } from '../../present/words/estimate.ts';
import { countWords, listWords } from '../../present/words/names.ts';
import { setManual } from '../planDeeds.ts';
import { selectAll } from '../state/view.ts';
import { hiddenText as text } from '../text/estimate.ts';

/** What nobody has looked at: a line of its own that cannot be taken out, priced only by the user's own chance. */
export const HiddenBands = ({ estimate }: { readonly estimate: Estimate }) => {
  const unseen = estimate.hidden.reduce((sum, { members }) => sum + members.length, 0);
  const { nextHour } = estimate;
  if (unseen === 0) return null;
  const priced = estimate.hidden.filter(({ chance }) => chance !== null);
  return (
    <section className="stack tight" aria-label={text.region}>
      <h2>{text.title(countWords(unseen, 'tube'), priced.length > 0)}</h2>
      <p className="small soft">{text.note}</p>
      <div className="figures">
        {estimate.hidden
          .filter(({ members }) => members.length > 0)
          .map((band) => (
            <Band key={`${band.band} ${band.record ?? ''}`} band={band} />
          ))}
      </div>
      {nextHour && (
        <p className="notice small">
          {text.nextHour(listWords(nextHour.members))}{' '}
          <button type="button" className="link" onClick={() => selectAll(nextHour.members)}>
            {text.show}
          </button>{' '}
          {text.takes(
            hoursText(nextHour.stdBeforeH),
            hoursText(nextHour.stdAfterH),
            fixed(nextHour.finds, 1),
          )}
        </p>
      )}
    </section>
  );
};

const Band = ({ band }: { readonly band: HiddenBand }) => {
  const [typed, setTyped] = useState(band.chance ? fixed(100 * band.chance.value, 0) : '');
  const value = typed.trim() === '' ? null : Number(typed);
  const fits = value !== null && value >= 0 && value <= 100;
  const send = (): void => {
    if (fits && value !== (band.chance ? 100 * band.chance.value : null))
      setManual(
        { topic: `hidden:${band.band}`, value: value!, unit: '%', source: text.source },
        text.entered(bandWords[band.band].toLowerCase()),
      );
  };
  return (
    <div className="figure figure-plain hidden-band">
      <button type="button" className="link" onClick={() => selectAll(band.members)}>
        {bandWords[band.band]}: {band.members.length}
      </button>
      <label className="check small">
        <input
          inputMode="decimal"
          aria-label={text.chance(bandWords[band.band])}
          aria-invalid={typed !== '' && !fits}
          value={typed}
          onChange={(e) => setTyped(e.target.value)}
          onBlur={send}
          onKeyDown={(e) => e.key === 'Enter' && send()}
        />
        %
      </label>
      <span className="value small">
        {band.meanH === null ? text.notPriced : `${hoursText(band.meanH)} h`}
      </span>
    </div>
  );
};
