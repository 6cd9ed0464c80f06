import { useEffect, useRef, useState } from 'react';
import { lookMethods } from '../../core/job/jobSchema.ts';
import type { Plan, Step } from '../../core/plan/result.ts';
import { showTime } from '../../present/show.ts';
import { levelWords } from '../../present/words/cautions.ts';
import { cautionsOf } from '../../present/words/planCautions.ts';
import { gateNamed, gatesTogether } from '../../present/words/planGates.ts';
import { letGoLine, orderRuleWords, solvedLine } from '../../present/words/planOrder.ts';
import { stepDeed, stepLine, stepNamed, stepWhere } from '../../present/words/planSteps.ts';
import { braceLine, materialLine, toolsLine } from '../../present/words/planTakes.ts';
import { methodWords } from '../../present/words/record.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { nudgeStep, putStep, tickStep } from '../planDeeds.ts';
import { useAnswer } from '../state/answer.ts';
import { setPlanning, usePlanning } from '../state/planning.ts';
import { usePrefs } from '../state/prefs.ts';
import { setView } from '../state/view.ts';
import { stepText as text } from '../text/plan.ts';
import { useDrop } from './planDrop.ts';

interface Of {
  readonly plan: Plan;
  readonly step: Step;
}

/** Hold points before a step that are neither done nor opened by name: they close it. */
const closedBy = ({ plan, step }: Of): readonly string[] =>
  step.gatesBefore.filter((id) => {
    const gate = plan.gates.find((g) => g.id === id);
    return gate !== undefined && gate.state !== 'done' && gate.state !== 'openedByName';
  });

/** Is the step ticked: as just done by hand while the plan is still being worked out anew, else as the plan has it. */
const useTicked = ({ id, done }: Step): boolean => {
  const byHand = useAnswer(({ atOnce, forJob }) =>
    atOnce && forJob !== atOnce.job ? atOnce.live.progress.findLast((p) => p.step === id)?.done : undefined,
  );
  return byHand ?? done !== undefined;
};

/** One step: its tick, its place in the order, and all it needs one tap away. */
export const PlanStep = ({ plan, step, place }: Of & { readonly place: number }) => {
  const inHand = usePlanning((planning) => planning.step);
  const ticked = useTicked(step);
  const drop = useDrop(plan, step.id);
  const line = useRef<HTMLLIElement>(null);
  const here = inHand === step.id ? place : null;
  useEffect(() => {
    if (here !== null) line.current?.scrollIntoView({ block: 'nearest' });
  }, [here]);
  const closed = closedBy({ plan, step });
  return (
    <li
      ref={line}
      className="plan-step"
      data-done={step.done ? '' : undefined}
      aria-current={inHand === step.id ? 'step' : undefined}
      {...drop}
    >
      <div className="plan-step-head">
        <span
          className="plan-grip"
          draggable
          title={text.drag}
          aria-hidden="true"
          onDragStart={(event) => {
            event.dataTransfer.effectAllowed = 'move';
            event.dataTransfer.setData('text/plain', step.id);
            // what was said last stays until the drop: nothing may move under the hand
            setPlanning({ dragged: step.id });
          }}
          onDragEnd={() => {
            // what was dropped on a step has been dealt with: nothing is in hand then
            if (usePlanning.getState().dragged !== null)
              setPlanning({ dragged: null, said: { moved: false, words: letGoLine(step) } });
          }}
        >
          ⠿
        </span>
        <label className="check plan-tick">
          <input
            type="checkbox"
            aria-label={text.done(stepLine(step))}
            checked={ticked}
            disabled={!ticked && closed.length > 0}
            onChange={(e) => tickStep(step, e.target.checked)}
          />
        </label>
        <button
          type="button"
          className="plan-step-name"
          aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown"
          onKeyDown={(event) => {
            if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
            event.preventDefault();
            nudgeStep(plan, step.id, event.key === 'ArrowUp' ? -1 : 1);
          }}
          onClick={() => setPlanning({ step: inHand === step.id ? null : step.id, said: null })}
        >
          <span>
            <span className="soft">{place}</span> {stepDeed(step)}
          </span>
          <span className="small soft">
            {step.done ? text.doneBy(step.done.by, showTime(step.done.at)) : stepWhere(step)}
          </span>
        </button>
      </div>
      {!step.done && closed.length > 0 && (
        <p className="small plan-closed">{text.closedUntil(gatesTogether(closed).join('; '))}</p>
      )}
      {inHand === step.id && <More plan={plan} step={step} />}
    </li>
  );
};

const More = ({ plan, step }: Of) => {
  const units = usePrefs((prefs) => prefs.units);
  const named = stepNamed(plan);
  const rules = [...new Set(step.needs.map(({ rule }) => rule))];
  return (
    <div className="stack tight plan-more">
      {cautionsOf(step.cautions).map(({ id, level, text: says }) => (
        <p key={id} className={`notice ${level} small`} role="note">
          <strong>{levelWords[level]}</strong> {says}
        </p>
      ))}
      <dl className="plan-facts small">
        {step.tools.length > 0 && <Fact name={text.facts.tools}>{toolsLine(step.tools)}</Fact>}
        {step.materials.length > 0 && (
          <Fact name={text.facts.material}>
            {step.materials.map((m) => materialLine(m, units)).join('; ')}
          </Fact>
        )}
        {step.brace && <Fact name={text.facts.brace}>{braceLine(step.brace, units)}</Fact>}
        {step.solved && <Fact name={text.facts.solved}>{solvedLine(step.solved, units)}</Fact>}
        {step.gatesAfter.length > 0 && (
          <Fact name={text.facts.next}>{step.gatesAfter.map(gateNamed).join('; ')}</Fact>
        )}
        {rules.length > 0 && (
          <Fact name={text.facts.after}>
            {rules.map((rule) => (
              <span key={rule} className="plan-need">
                {orderRuleWords(rule)}{' '}
                <span className="soft">
                  {step.needs
                    .filter((n) => n.rule === rule)
                    .map((n) => named(n.step))
                    .join('; ')}
                </span>
              </span>
            ))}
          </Fact>
        )}
      </dl>
      {step.kind === 'inspectWelds' && <WeldSeen step={step} />}
      {step.kind === 'fitUp' && (
        <button type="button" className="link" onClick={() => setView({ route: 'splice' })}>
          {text.fitUp}
        </button>
      )}
      {step.hold && (
        <button type="button" className="link" onClick={() => setView({ route: 'trammel' })}>
          {text.trammel}
        </button>
      )}
      <div className="row plan-move">
        <button type="button" onClick={() => nudgeStep(plan, step.id, -1)}>
          {text.up}
        </button>
        <button type="button" onClick={() => nudgeStep(plan, step.id, 1)}>
          {text.down}
        </button>
        <PutBefore plan={plan} step={step} />
      </div>
    </div>
  );
};

/** A long way in one go, without dragging. */
const PutBefore = ({ plan, step }: Of) => (
  <select
    aria-label={text.putBefore}
    value=""
    onChange={({ target }) => putStep(plan, step.id, target.value === 'last' ? null : target.value)}
  >
    <option value="" disabled>
      {text.putBeforeChoose}
    </option>
    {plan.steps.map((other, k) => (
      <option key={other.id} value={other.id} disabled={other.id === step.id}>
        {text.other(k + 1, stepLine(other))}
      </option>
    ))}
    <option value="last">{text.last}</option>
  </select>
);

const Fact = ({ name, children }: { readonly name: string; readonly children: React.ReactNode }) => (
  <>
    <dt className="soft">{name}</dt>
    <dd>{children}</dd>
  </>
);

/** Welds looked over: by which method, with what result, and who looked too. */
const WeldSeen = ({ step }: { readonly step: Step }) => {
  const [method, setMethod] = useState<(typeof lookMethods)[number]>('eye');
  const [result, setResult] = useState<'clear' | 'crack'>('clear');
  const [second, setSecond] = useState('');
  return (
    <div className="fields">
      <ChoiceField
        label={text.method}
        value={method}
        words={lookMethods.map((one) => [one, methodWords[one]] as const)}
        onWord={setMethod}
      />
      <ChoiceField
        label={text.result}
        value={result}
        words={[
          ['clear', text.results.clear],
          ['crack', text.results.crack],
        ]}
        onWord={setResult}
      />
      <label className="field wide">
        <span className="caption">{text.second}</span>
        <input value={second} onChange={(e) => setSecond(e.target.value)} />
      </label>
      <button
        type="button"
        onClick={() =>
          tickStep(step, true, {
            inspected: { method, place: 'endWelds', result },
            ...(second.trim() === '' ? {} : { secondPerson: second.trim() }),
          })
        }
      >
        {text.write}
      </button>
    </div>
  );
};
