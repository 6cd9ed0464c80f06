import { useState } from 'react';
import type { Trammel } from '../../core/trammel/result.ts';
import { holdWords } from '../../present/words/record.ts';
import { Cautions } from '../parts/Caution.tsx';
import { setEntry, useEntry } from '../state/entry.ts';
import { spreadText } from '../text/trammelSpread.ts';
import { SpreadEntry } from './TrammelSpreadEntry.tsx';

const SHOWN = 3;

/** What to spread or draw in, in the order of the work, as a hold or as a set. */
export const TrammelSpread = ({ trammel }: { readonly trammel: Trammel }) => {
  const job = useEntry((entry) => entry.job);
  const [all, setAll] = useState(false);
  const list = trammel.spread ?? [];
  if (trammel.latest === undefined) return null;
  return (
    <section className="stack tight" aria-label={spreadText.region}>
      <h2>{spreadText.title}</h2>
      <p className="small soft">{spreadText.from(holdWords[trammel.latest])}</p>
      {list.length === 0 ? (
        <p className="small">{spreadText.nothing}</p>
      ) : (
        <>
          <Cautions step="spreading" />
          <fieldset className="halves" aria-label={spreadText.which}>
            <button type="button" aria-pressed={job === 'hold'} onClick={() => setEntry({ job: 'hold' })}>
              {spreadText.jobs.hold}
            </button>
            <button type="button" aria-pressed={job === 'set'} onClick={() => setEntry({ job: 'set' })}>
              {spreadText.jobs.set}
            </button>
          </fieldset>
          <p className="small">{spreadText.how[job]}</p>
          <ol className="entries">
            {(all ? list : list.slice(0, SHOWN)).map((one) => (
              <SpreadEntry key={one.target} one={one} job={job} />
            ))}
          </ol>
          {list.length > SHOWN && (
            <button type="button" className="link" onClick={() => setAll(!all)}>
              {all ? spreadText.fewer : spreadText.all(list.length)}
            </button>
          )}
        </>
      )}
    </section>
  );
};
