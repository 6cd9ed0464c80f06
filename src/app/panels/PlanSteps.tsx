import { useState } from 'react';
import type { Plan } from '../../core/plan/result.ts';
import { countWords } from '../../present/words/names.ts';
import { type Phase, phasesOf } from '../../present/words/phases.ts';
import { orderRuleSource, orderRuleWords } from '../../present/words/planOrder.ts';
import { setPlanning, usePlanning } from '../state/planning.ts';
import { useView } from '../state/view.ts';
import { stepsText as text } from '../text/plan.ts';
import { PlanStep } from './PlanStep.tsx';
import { useDrop } from './planDrop.ts';

/** Heads keep their key when steps move: the bay and the how-manieth time it is come to. */
const headed = (steps: Plan['steps']): readonly { readonly key: string; readonly phase: Phase }[] => {
  const times = new Map<string, number>();
  return phasesOf(steps).map((phase) => {
    const time = (times.get(phase.title) ?? 0) + 1;
    times.set(phase.title, time);
    return { key: `${phase.title} ${time}`, phase };
  });
};

/** All the steps under the heads of the work, each to be ticked, opened and moved. */
export const PlanSteps = ({ plan }: { readonly plan: Plan }) => {
  const dragged = usePlanning((planning) => planning.dragged);
  const selected = useView((view) => view.selected);
  const [only, setOnly] = useState(false);
  const place = new Map(plan.steps.map(({ id }, k) => [id, k + 1]));
  const shown = only
    ? plan.steps.filter(({ members, of }) => selected.some((id) => id === of || members.includes(id)))
    : plan.steps;
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      {selected.length > 0 && (
        <label className="check small">
          <input type="checkbox" checked={only} onChange={(e) => setOnly(e.target.checked)} />{' '}
          {text.onlyThose(selected.join(', '))}
        </label>
      )}
      <Said />
      {headed(shown).map(({ key, phase }) => (
        <PhaseOf key={key} plan={plan} phase={phase} place={place} open={only} />
      ))}
      {dragged !== null && !only && <LastPlace plan={plan} />}
      <details className="small">
        <summary>{text.rules}</summary>
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

/** What came of the latest move: it stays in sight however far the list is scrolled. */
const Said = () => {
  const said = usePlanning((planning) => planning.said);
  if (!said) return null;
  return (
    <div
      className={`notice small row plan-said ${said.moved ? '' : 'blocking'}`}
      role={said.moved ? 'status' : 'alert'}
    >
      <span>{said.words}</span>
      <button type="button" onClick={() => setPlanning({ said: null })}>
        {text.close}
      </button>
    </div>
  );
};

interface PhaseProps {
  readonly plan: Plan;
  readonly phase: Phase;
  readonly place: ReadonlyMap<string, number>;
  readonly open: boolean;
}

/** The steps under one head. A step let go on the head is put before its first. */
const PhaseOf = ({ plan, phase: { title, steps }, place, open }: PhaseProps) => {
  const inHand = usePlanning((planning) => planning.step);
  const first = steps[0]!;
  const drop = useDrop(plan, first.id);
  const next = plan.steps.find(({ done }) => !done)?.id;
  return (
    <details className="plan-phase" open={open || steps.some(({ id }) => id === next || id === inHand)}>
      <summary {...drop}>
        <strong>{title}</strong>
        <span className="small soft">
          {text.phase(
            place.get(first.id)!,
            place.get(steps.at(-1)!.id)!,
            steps.filter((s) => s.done).length,
            countWords(steps.length, 'step'),
          )}
        </span>
      </summary>
      <ol className="plan-steps">
        {steps.map((step) => (
          <PlanStep key={step.id} plan={plan} step={step} place={place.get(step.id)!} />
        ))}
      </ol>
    </details>
  );
};

const LastPlace = ({ plan }: { readonly plan: Plan }) => (
  <p className="plan-last small soft" {...useDrop(plan, null)}>
    {text.last}
  </p>
);
