import type { Trammel } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { distanceLine } from '../../present/tables/pairs.ts';
import { clusterWords } from '../../present/words/names.ts';
import { holdWords } from '../../present/words/record.ts';
import type { AtOnce } from '../state/answer.ts';
import { setEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { measuringPlanText as text } from '../text/trammelPlan.ts';
import { strike, unstrike } from '../trammelDeeds.ts';

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
        {text.title(trammel.latest && holdWords[trammel.latest], left.length, plan.readings.length)}
      </summary>
      <div className="stack">
        <p className="small">
          {text.covers(
            plan.bays.join(', '),
            plan.datum.length,
            text.datum[plan.datumBy],
            plan.readings.filter((r) => r.purpose === 'fixes').length,
          )}
          {plan.worstStdIn === null ? '' : text.leastSure(showLength(plan.worstStdIn, units, 64))}
        </p>
        {plan.unchecked.length > 0 && <p className="small">{text.unchecked(plan.unchecked.length)}</p>}
        {plan.loose.length > 0 && (
          <p className="notice small">{text.loose(plan.loose.map((l) => l.cluster).join(', '))}</p>
        )}
        {adjusted && (
          <div className="stack tight">
            <h3>{text.fixed}</h3>
            <Fixed title={text.fixedBy.all} ids={fixed('all')} />
            <Fixed title={text.fixedBy.some} ids={fixed('some')} />
            <Fixed title={text.fixedBy.none} ids={[...fixed('none'), ...(adjusted.notMeasured ?? [])]} />
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
                  ? text.showsNothing
                  : text.shows(showLength(one.leastSeenIn, units))}
              </span>
              <button
                type="button"
                className="quiet"
                onClick={() => strike(one.target)}
                aria-label={text.strikeNamed(one.target)}
              >
                {text.strike}
              </button>
            </li>
          ))}
        </ol>
        {plan.struck.length > 0 && (
          <div className="stack tight">
            <h3>{text.struck}</h3>
            <ul className="small">
              {plan.struck.map((id) => (
                <li key={id} className="entry-head">
                  <span>{id}</span>
                  <button type="button" className="link" onClick={() => unstrike(id)}>
                    {text.putBack}
                  </button>
                </li>
              ))}
            </ul>
          </div>
        )}
        {now.live.readings.length === 0 && <p className="small soft">{text.nothingRead}</p>}
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
