import { planShare } from '../../core/practice/planDrill.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { stepLine } from '../../present/words/planSteps.ts';
import { brokenWords } from '../../present/words/practice.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { practiceText } from '../text/practice.ts';
import { planOrderText as text } from '../text/practicePlan.ts';
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
    <section className="stack" aria-label={text.region}>
      <div className="entry-head">
        <h2>{text.title}</h2>
        <button type="button" onClick={endRun}>
          {run.broken ? practiceText.close : practiceText.leave}
        </button>
      </div>
      <p>{text.lead(run.own, member ? memberWords(member) : clusterWords(run.drill.of), run.drill.of)}</p>
      {run.broken && (
        <div role="status" className="stack tight" ref={toTop}>
          <Shares shares={{ [text.rules]: planShare(run.drill, run.broken) }} />
          {run.broken.length === 0 && <p className="notice">{text.noneBroken}</p>}
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
              aria-label={text.earlier(stepLine(cards.get(id)!))}
              disabled={k === 0}
              onClick={() => move(id, -1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="quiet"
              aria-label={text.later(stepLine(cards.get(id)!))}
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
          {text.check}
        </button>
        <button type="button" onClick={() => void beginPlan()}>
          {text.again}
        </button>
      </p>
    </section>
  );
};
