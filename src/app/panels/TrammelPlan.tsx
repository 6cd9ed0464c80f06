import type { Trammel } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { distanceLine } from '../../present/tables/pairs.ts';
import { clusterWords } from '../../present/words/names.ts';
import { holdWords } from '../../present/words/record.ts';
import type { AtOnce } from '../state/answer.ts';
import { setEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { strike, unstrike } from '../trammelDeeds.ts';

const datumWords = {
  named: 'named by you',
  noFinding: 'the largest group without a finding',
  noBend: 'the largest group without a bend or break',
  forwardStations: 'the forward station: nothing is found yet',
  none: 'none: no sound group spans a plane',
} as const;

/** The measuring plan: what to read, what cannot be reached, and what the readings so far fix. */
export const TrammelPlan = ({ trammel, now }: { readonly trammel: Trammel; readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { plan } = trammel;
  if (!plan) return null;
  const left = plan.readings.filter(({ read }) => !read);
  const adjusted = trammel.latest === undefined ? undefined : trammel.byHold[trammel.latest];
  const fixed = (by: 'all' | 'some' | 'none'): readonly string[] =>
    (adjusted?.clusters ?? []).filter((c) => c.fixedBy === by).map((c) => c.id);
  return (
    <details>
      <summary>
        Measuring plan{trammel.latest === undefined ? '' : `, ${holdWords[trammel.latest]}`}: {left.length} of{' '}
        {plan.readings.length} still to read
      </summary>
      <div className="stack">
        <p className="small">
          Bays {plan.bays.join(', ')}. Measured from {plan.datum.length} clusters taken as undamaged (
          {datumWords[plan.datumBy]}). {plan.readings.filter((r) => r.purpose === 'fixes').length} fix the
          shape, the rest let a misreading show.
          {plan.worstStdIn === null
            ? ''
            : ` Read in full, the least sure cluster is placed to ± ${showLength(plan.worstStdIn, units, 64)}, one standard deviation.`}
        </p>
        {plan.unchecked.length > 0 && (
          <p className="small">
            In {plan.unchecked.length} of them a misreading would hardly show: read those twice.
          </p>
        )}
        {plan.loose.length > 0 && (
          <p className="notice small">
            The lines in reach cannot fix {plan.loose.map((l) => l.cluster).join(', ')}.
          </p>
        )}
        {adjusted && (
          <div className="stack tight">
            <h3>Fixed by the readings so far</h3>
            <Fixed title="In all directions" ids={fixed('all')} />
            <Fixed title="In some directions" ids={fixed('some')} />
            <Fixed title="Not at all" ids={[...fixed('none'), ...(adjusted.notMeasured ?? [])]} />
          </div>
        )}
        <ol className="entries small">
          {left.map((one) => (
            <li key={one.target} className="line-row">
              <span>
                <button
                  type="button"
                  className="link"
                  onClick={() => setEntry({ line: one.target, text: '' })}
                >
                  {one.target}
                </button>{' '}
                {one.guessed ? '' : showLength(one.lengthIn, units)}
              </span>
              <span className="soft">
                {distanceLine(one)};{' '}
                {one.leastSeenIn === null
                  ? 'shows no misreading'
                  : `shows a misreading of ${showLength(one.leastSeenIn, units)}`}
              </span>
              <button
                type="button"
                className="quiet"
                onClick={() => strike(one.target)}
                aria-label={`Strike ${one.target}`}
              >
                Strike
              </button>
            </li>
          ))}
        </ol>
        {plan.struck.length > 0 && (
          <div className="stack tight">
            <h3>Struck</h3>
            <ul className="small">
              {plan.struck.map((id) => (
                <li key={id} className="entry-head">
                  <span>{id}</span>
                  <button type="button" className="link" onClick={() => unstrike(id)}>
                    Put back
                  </button>
                </li>
              ))}
            </ul>
          </div>
        )}
        {now.live.readings.length === 0 && <p className="small soft">Nothing is read yet.</p>}
      </div>
    </details>
  );
};

const Fixed = ({ title, ids }: { readonly title: string; readonly ids: readonly string[] }) =>
  ids.length === 0 ? null : (
    <div>
      <span className="small soft">
        {title}: {ids.length}
      </span>
      <div className="id-list">
        {ids.map((id) => (
          <button key={id} type="button" className="link" title={clusterWords(id)} onClick={() => select(id)}>
            {id}
          </button>
        ))}
      </div>
    </div>
  );
