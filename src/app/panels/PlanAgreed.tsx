import { useState } from 'react';
import type { Plan } from '../../core/plan/result.ts';
import { showTime } from '../../present/show.ts';
import { countWords } from '../../present/words/names.ts';
import { stepNamed } from '../../present/words/planSteps.ts';
import { useNamed, WhoField } from '../parts/WhoField.tsx';
import { freezePlan, workedOrderAgain } from '../planDeeds.ts';
import { agreedText as text } from '../text/plan.ts';

/** The plan as it was agreed, what is different since, and whose order it is in. */
export const PlanAgreed = ({ plan }: { readonly plan: Plan }) => {
  const [reason, setReason] = useState('');
  const named = useNamed();
  const { frozen, order } = plan;
  const nameOf = stepNamed(plan);
  const changes = frozen ? frozen.added.length + frozen.removed.length + frozen.altered.length : 0;
  return (
    <section className="stack tight" aria-label={text.region}>
      <h2>
        {frozen
          ? changes > 0 || frozen.reordered
            ? text.changed(countWords(changes, 'step'))
            : text.unchanged
          : text.notFrozen}
      </h2>
      {frozen && (
        <p className="small soft">
          {text.frozenBy(
            frozen.by,
            showTime(frozen.at),
            frozen.digest,
            frozen.digest === plan.digest ? null : plan.digest,
            frozen.reordered,
          )}
        </p>
      )}
      {frozen &&
        (['added', 'removed', 'altered'] as const).map((what) =>
          frozen[what].length === 0 ? null : (
            <details key={what} className="small">
              <summary>{text.steps[what](countWords(frozen[what].length, 'step'))}</summary>
              <ul className="basis">
                {frozen[what].map((id) => (
                  <li key={id}>{nameOf(id)}</li>
                ))}
              </ul>
            </details>
          ),
        )}
      {(!frozen || changes > 0 || frozen.reordered) && (
        <div className="plan-freeze">
          <label className="field">
            <span className="caption">{frozen ? text.whyChanged : text.agreedWith}</span>
            <input value={reason} onChange={(e) => setReason(e.target.value)} />
          </label>
          <button type="button" disabled={!named} onClick={() => freezePlan(plan, reason) && setReason('')}>
            {frozen ? text.again : text.freeze}
          </button>
        </div>
      )}
      {!named && <WhoField />}
      {order.kind === 'own' && (
        <p className="small">
          {text.ownOrder}{' '}
          <button type="button" className="link" onClick={workedOrderAgain}>
            {text.takeWorked}
          </button>
        </p>
      )}
    </section>
  );
};
