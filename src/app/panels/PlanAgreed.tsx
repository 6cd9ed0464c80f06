import { useState } from 'react';
import type { Plan } from '../../core/plan/result.ts';
import { showTime } from '../../present/show.ts';
import { countWords } from '../../present/words/names.ts';
import { stepNamed } from '../../present/words/planSteps.ts';
import { useNamed, WhoField } from '../parts/WhoField.tsx';
import { freezePlan, workedOrderAgain } from '../planDeeds.ts';

/** The plan as it was agreed, what is different since, and whose order it is in. */
export const PlanAgreed = ({ plan }: { readonly plan: Plan }) => {
  const [reason, setReason] = useState('');
  const named = useNamed();
  const { frozen, order } = plan;
  const nameOf = stepNamed(plan);
  const changes = frozen ? frozen.added.length + frozen.removed.length + frozen.altered.length : 0;
  return (
    <section className="stack tight" aria-label="Plan as agreed">
      <h2>
        {frozen
          ? changes > 0 || frozen.reordered
            ? `Changed since it was frozen: ${countWords(changes, 'step')}`
            : 'Frozen, unchanged'
          : 'Not frozen yet'}
      </h2>
      {frozen && (
        <p className="small soft">
          Frozen by {frozen.by}, {showTime(frozen.at)} · {frozen.digest}
          {frozen.digest === plan.digest ? '' : ` · now ${plan.digest}`}
          {frozen.reordered ? ' · steps in another order' : ''}
        </p>
      )}
      {frozen &&
        (['added', 'removed', 'altered'] as const).map((what) =>
          frozen[what].length === 0 ? null : (
            <details key={what} className="small">
              <summary>
                {countWords(frozen[what].length, 'step')} {what}
              </summary>
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
            <span className="caption">{frozen ? 'Why it changed' : 'Agreed with'}</span>
            <input value={reason} onChange={(e) => setReason(e.target.value)} />
          </label>
          <button type="button" disabled={!named} onClick={() => freezePlan(plan, reason) && setReason('')}>
            {frozen ? 'Freeze it again' : 'Freeze the plan'}
          </button>
        </div>
      )}
      {!named && <WhoField />}
      {order.kind === 'own' && (
        <p className="small">
          In your own order.{' '}
          <button type="button" className="link" onClick={workedOrderAgain}>
            Take the worked order
          </button>
        </p>
      )}
    </section>
  );
};
