import { planShare } from '../../core/practice/planDrill.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { stepLine } from '../../present/words/planSteps.ts';
import { brokenWords } from '../../present/words/practice.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { endRun } from './layoutRun.ts';
import { beginPlan, checkPlan } from './planRun.ts';
import { Shares } from './Shares.tsx';
import { type PlanRun, setSession } from './session.ts';

/** The marks come into sight when they are given; the list they stand above is long. */
const toTop = (marks: HTMLElement | null): void => marks?.scrollIntoView({ block: 'start' });

/** Putting the steps of a repair in order, by buttons that need no dragging. */
export const PlanOrder = ({ run }: { readonly run: PlanRun }) => {
  const units = usePrefs((prefs) => prefs.units);
  const member = useAnswer((answer) => answer.atOnce?.members.get(run.drill.of));
  const move = (id: string, by: -1 | 1): void => {
    const order = [...run.order];
    const k = order.indexOf(id);
    const other = order[k + by];
    if (other === undefined) return;
    order[k + by] = id;
    order[k] = other;
    setSession({ run: { ...run, order, broken: null } });
  };
  const cards = new Map(run.drill.cards.map((card) => [card.id, card]));
  const brokenAt = (id: string) => (run.broken ?? []).filter(({ later }) => later === id);
  return (
    <section className="stack" aria-label="Plan practice">
      <div className="entry-head">
        <h2>Plan practice</h2>
        <button type="button" onClick={endRun}>
          {run.broken ? 'Close' : 'Leave'}
        </button>
      </div>
      <p>
        {run.own
          ? 'Steps of this job’s own plan, round'
          : 'A truss like this one was broken by the seed. Steps of its plan, round'}{' '}
        {(member ? memberWords(member) : clusterWords(run.drill.of)).toLowerCase()} ({run.drill.of}). Put them
        in order, first at the top. Distances taken twice stand here once.
      </p>
      {run.broken && (
        <div role="status" className="stack tight" ref={toTop}>
          <Shares shares={{ 'Rules of order kept': planShare(run.drill, run.broken) }} />
          {run.broken.length === 0 && (
            <p className="notice">No rule is broken. More than one order keeps them all.</p>
          )}
        </div>
      )}
      <ol className="plan-order">
        {run.order.map((id, k) => (
          <li key={id} data-mark={brokenAt(id).length > 0 ? 'wrong' : undefined}>
            <span className="plan-place">{k + 1}</span>
            <span className="plan-word">{stepLine(cards.get(id)!)}</span>
            <button
              type="button"
              className="quiet"
              aria-label={`Earlier: ${stepLine(cards.get(id)!)}`}
              disabled={k === 0}
              onClick={() => move(id, -1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="quiet"
              aria-label={`Later: ${stepLine(cards.get(id)!)}`}
              disabled={k === run.order.length - 1}
              onClick={() => move(id, 1)}
            >
              ↓
            </button>
            {brokenAt(id).map((one) => (
              <p key={one.first} className="plan-why small">
                {brokenWords(one, run.drill.cards, units)}
              </p>
            ))}
          </li>
        ))}
      </ol>
      <p className="row">
        <button type="button" className="main" onClick={() => checkPlan(run)}>
          Check the order
        </button>
        <button type="button" onClick={() => void beginPlan()}>
          Other steps, other mix
        </button>
      </p>
    </section>
  );
};
