import { useState } from 'react';
import type { Plan } from '../../core/plan/result.ts';
import { showTime } from '../../present/show.ts';
import { countWords } from '../../present/words/names.ts';
import { phasesOf } from '../../present/words/phases.ts';
import {
  notPlannedWords,
  orderRuleSource,
  orderRuleWords,
  planShare,
  solvedLine,
} from '../../present/words/planOrder.ts';
import { stepLine, stepNamed } from '../../present/words/planSteps.ts';
import { FigureLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useNamed, WhoField } from '../parts/WhoField.tsx';
import { freezePlan, workedOrderAgain } from '../planDeeds.ts';
import { useAnswer } from '../state/answer.ts';
import { setPlanning, usePlanning } from '../state/planning.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, useView } from '../state/view.ts';
import { PlanGates } from './PlanGates.tsx';
import { PlanStep } from './PlanStep.tsx';

/** The order of work: steps by bay with what stands before them, what they take and what to beware of. */
export const PlanPanel = () => {
  const all = useAnswer((answer) => answer.assessment);
  if (!all) return <Waiting />;
  const { plan } = all;
  return (
    <div className="stack">
      {plan.steps.length === 0 ? (
        <p className="empty">
          Nothing is planned yet: decide a tube or cluster first. The steps follow from the decisions.
        </p>
      ) : (
        <>
          <Through plan={plan} />
          <Agreed plan={plan} />
          <Steps plan={plan} />
          <PlanGates plan={plan} />
        </>
      )}
      <NotPlannedList plan={plan} />
      <Issues issues={plan.issues} />
    </div>
  );
};

/** One step after another, each as the truss stands after it. */
const Through = ({ plan }: { readonly plan: Plan }) => {
  const units = usePrefs((prefs) => prefs.units);
  const stepId = usePlanning((planning) => planning.step);
  const at = plan.steps.findIndex(({ id }) => id === stepId);
  const step = plan.steps[at];
  const go = (to: number): void => setPlanning({ step: plan.steps[to]?.id ?? null });
  const next = plan.steps.findIndex(({ done }) => !done);
  const solved = plan.steps.slice(0, at + 1).findLast((s) => s.solved)?.solved;
  return (
    <section className="stack tight" aria-label="Through the plan">
      <h2>{planShare(plan)}</h2>
      <FigureLine name="Own-weight sag may grow by" figure={plan.sagLimitIn} />
      <div className="plan-through">
        <button type="button" aria-label="Step before" disabled={at <= 0} onClick={() => go(at - 1)}>
          ‹
        </button>
        <div aria-live="polite">
          <strong>
            {step ? `${at + 1} of ${plan.steps.length}` : 'Step through the plan in the picture'}
          </strong>
          <span className="small">
            {step ? stepLine(step) : 'Open tubes fade, braces are drawn, the tubes of the step are named.'}
          </span>
          {step && (
            <span className="small soft">{solved ? solvedLine(solved, units) : 'no tube is open yet'}</span>
          )}
        </div>
        <button
          type="button"
          aria-label="Next step"
          disabled={at >= plan.steps.length - 1}
          onClick={() => go(at + 1)}
        >
          ›
        </button>
      </div>
      <div className="row">
        {next >= 0 && (
          <button type="button" onClick={() => go(next)}>
            To the next open step
          </button>
        )}
        {step && (
          <button type="button" className="link" onClick={() => setPlanning({ step: null })}>
            Show the whole truss
          </button>
        )}
      </div>
    </section>
  );
};

/** The plan as it was agreed, what is different since, and whose order it is in. */
const Agreed = ({ plan }: { readonly plan: Plan }) => {
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
          <button type="button" className="link" onClick={() => workedOrderAgain(order.record!)}>
            Take the worked order
          </button>
        </p>
      )}
    </section>
  );
};

const Steps = ({ plan }: { readonly plan: Plan }) => {
  const refused = usePlanning((planning) => planning.refused);
  const selected = useView((view) => view.selected);
  const [only, setOnly] = useState(false);
  const place = new Map(plan.steps.map(({ id }, k) => [id, k + 1]));
  const shown = only
    ? plan.steps.filter(({ members, of }) => selected.some((id) => id === of || members.includes(id)))
    : plan.steps;
  return (
    <section className="stack tight" aria-label="Steps">
      <h2>Steps</h2>
      {selected.length > 0 && (
        <label className="check small">
          <input type="checkbox" checked={only} onChange={(e) => setOnly(e.target.checked)} /> Only those of{' '}
          {selected.join(', ')}
        </label>
      )}
      {refused && (
        <div className="notice blocking small row" role="alert">
          <span>{refused}</span>
          <button type="button" onClick={() => setPlanning({ refused: null })}>
            Close
          </button>
        </div>
      )}
      {phasesOf(shown).map(({ title, steps }) => {
        const done = steps.filter((s) => s.done).length;
        const first = steps[0]!;
        const current = steps.some((s) => !s.done) && plan.steps.find((s) => !s.done);
        return (
          <details
            key={first.id}
            className="plan-phase"
            open={only || steps.some(({ id }) => id === (current || undefined)?.id)}
          >
            <summary>
              <strong>{title}</strong>
              <span className="small soft">
                {place.get(first.id)}–{place.get(steps.at(-1)!.id)} · {done} of{' '}
                {countWords(steps.length, 'step')} ticked
              </span>
            </summary>
            <ol className="plan-steps">
              {steps.map((step) => (
                <PlanStep key={step.id} plan={plan} step={step} place={place.get(step.id)!} />
              ))}
            </ol>
          </details>
        );
      })}
      <details className="small">
        <summary>The rules of the order, and their sources</summary>
        <ul className="basis">
          {[...new Set(plan.steps.flatMap(({ needs }) => needs.map(({ rule }) => rule)))].map((rule) => (
            <li key={rule}>
              {orderRuleWords(rule)} <span className="soft">{orderRuleSource(rule)}</span>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
};

const NotPlannedList = ({ plan }: { readonly plan: Plan }) =>
  plan.notPlanned.length === 0 ? null : (
    <section className="stack tight" aria-label="Not in the plan">
      <h2>Not in the plan: {plan.notPlanned.length}</h2>
      <ul className="entries small">
        {plan.notPlanned.map(({ id, why, clusters }) => (
          <li key={id}>
            <span>
              <button type="button" className="link" onClick={() => select(id)}>
                {id}
              </button>
              {notPlannedWords[why]}
              {clusters.length > 0 ? ` at ${clusters.join(', ')}` : ''}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
