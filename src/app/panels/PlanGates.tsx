import { useState } from 'react';
import type { Gate, Plan } from '../../core/plan/result.ts';
import { showTime } from '../../present/show.ts';
import {
  evidenceLine,
  evidenceSign,
  gateLine,
  gateStateWords,
  secondWords,
} from '../../present/words/planGates.ts';
import { useNamed, WhoField } from '../parts/WhoField.tsx';
import { tickGate } from '../planDeeds.ts';
import { gatesText as text } from '../text/plan.ts';

/** Hold points of the work: one item, one tick. Never all at once. */
export const PlanGates = ({ plan }: { readonly plan: Plan }) => {
  const open = plan.gates.filter(({ state }) => state === 'waits' || state === 'ready').length;
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.open(open, plan.gates.length)}</h2>
      <p className="small soft">{text.note}</p>
      <div>
        {plan.gates.map((gate) => (
          <details key={gate.id} className="plan-gate">
            <summary>
              <strong>{gateLine(gate)}</strong>
              <span className="small">{gateStateWords[gate.state]}</span>
            </summary>
            <GateForm gate={gate} />
          </details>
        ))}
      </div>
    </section>
  );
};

const GateForm = ({ gate }: { readonly gate: Gate }) => {
  const [second, setSecond] = useState('');
  const [reason, setReason] = useState('');
  const named = useNamed();
  const missing = gate.evidence.filter(({ there }) => there === false);
  // the second person of the agreed plan is named in this very tick
  const namesItself = gate.name === 'H3' && second.trim() !== '';
  const lacks = missing.filter(({ what }) => !(namesItself && what === 'secondPerson'));
  const stamp = gate.opened ?? gate.done;
  return (
    <div className="stack tight plan-more">
      <ul className="why small">
        {gate.evidence.map((one) => (
          <li key={one.what}>
            <span aria-hidden="true">{evidenceSign(one)}</span>
            <span>{evidenceLine(one)}</span>
          </li>
        ))}
      </ul>
      {stamp ? (
        <div className="row small">
          <span>{text.stamp(stamp.by, showTime(stamp.at), gate.opened?.reason ?? null)}</span>
          <button type="button" onClick={() => tickGate(gate, false, '', '')}>
            {text.takeOff}
          </button>
        </div>
      ) : (
        <>
          <WhoField />
          <label className="field">
            <span className="caption">{text.secondName(secondWords[gate.secondPerson])}</span>
            <input value={second} onChange={(e) => setSecond(e.target.value)} />
          </label>
          {lacks.length > 0 && (
            <label className="field">
              <span className="caption">{text.why}</span>
              <input value={reason} onChange={(e) => setReason(e.target.value)} />
            </label>
          )}
          <button
            type="button"
            className="main"
            disabled={!named || (lacks.length > 0 && reason.trim() === '')}
            onClick={() => tickGate(gate, true, second, lacks.length > 0 ? reason : '')}
          >
            {lacks.length > 0 ? text.openIt : text.tick}
          </button>
        </>
      )}
    </div>
  );
};
