import type { Plan } from '../../core/plan/result.ts';
import { notPlannedWords, planShare } from '../../present/words/planOrder.ts';
import { FigureLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { setPlanning, usePlanning } from '../state/planning.ts';
import { select } from '../state/view.ts';
import { planText as text } from '../text/plan.ts';
import { PlanAgreed } from './PlanAgreed.tsx';
import { PlanGates } from './PlanGates.tsx';
import { PlanSteps } from './PlanSteps.tsx';

/** The order of work: steps by bay with what stands before them, what they take and what to beware of. */
export const PlanPanel = () => {
  const all = useAnswer((answer) => answer.assessment);
  if (!all) return <Waiting />;
  const { plan } = all;
  return (
    <div className="stack">
      {plan.steps.length === 0 ? (
        <p className="empty">{text.none}</p>
      ) : (
        <>
          <Through plan={plan} />
          <PlanAgreed plan={plan} />
          <PlanSteps plan={plan} />
          <PlanGates plan={plan} />
        </>
      )}
      <NotPlannedList plan={plan} />
      <Issues issues={plan.issues} />
    </div>
  );
};

/** How far the work is; the bar over the picture steps through it. */
const Through = ({ plan }: { readonly plan: Plan }) => {
  const stepId = usePlanning((planning) => planning.step);
  const next = plan.steps.find(({ done }) => !done);
  return (
    <section className="stack tight" aria-label={text.through}>
      <h2>{planShare(plan)}</h2>
      <FigureLine name={text.sagLimit} figure={plan.sagLimitIn} />
      <div className="row">
        {next && (
          <button type="button" onClick={() => setPlanning({ step: next.id })}>
            {text.next}
          </button>
        )}
        {stepId !== null && (
          <button type="button" className="link" onClick={() => setPlanning({ step: null })}>
            {text.whole}
          </button>
        )}
      </div>
    </section>
  );
};

const NotPlannedList = ({ plan }: { readonly plan: Plan }) =>
  plan.notPlanned.length === 0 ? null : (
    <section className="stack tight" aria-label={text.notPlannedNamed}>
      <h2>{text.notPlanned(plan.notPlanned.length)}</h2>
      <ul className="entries small">
        {plan.notPlanned.map(({ id, why, clusters }) => (
          <li key={id}>
            <span>
              <button type="button" className="link" onClick={() => select(id)}>
                {id}
              </button>
              {notPlannedWords[why]}
              {clusters.length > 0 ? text.notPlannedAt(clusters.join(', ')) : ''}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
