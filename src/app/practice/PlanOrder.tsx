import { checkOrder, planDrill, planShare } from '../../core/practice/planDrill.ts';
import { heldNow } from '../../core/statics/held.ts';
import { prepareFrame } from '../../core/statics/prepareFrame.ts';
import { memberWords } from '../../present/words/names.ts';
import { brokenWords, cardWords } from '../../present/words/practice.ts';
import { say } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll } from '../state/view.ts';
import { endRun } from './layoutRun.ts';
import { keepResult } from './progress.ts';
import { Shares } from './Shares.tsx';
import { freshSeed, type PlanRun, setSession } from './session.ts';

/** Steps of a splice, mixed by a seed, on a longeron of the open truss. */
export const beginPlan = (seed = freshSeed()): void => {
  const now = useAnswer.getState().atOnce;
  const drill = now && planDrill(now.truss, seed);
  if (!drill) {
    say('This truss has no longeron to plan a splice in.');
    return;
  }
  selectAll([]);
  select(drill.member);
  setSession({
    run: {
      kind: 'plan',
      key: useJob.getState().key,
      seed,
      drill,
      order: drill.cards.map(({ id }) => id),
      broken: null,
    },
  });
};

const check = (run: PlanRun): void => {
  const { atOnce: now, assessment } = useAnswer.getState();
  if (!now) return;
  const support = heldNow(now.truss, now.live.model ?? now.job.model, now.live.held);
  const frame = prepareFrame(now.truss, support);
  const target = assessment?.relief.targets.find(({ member }) => member === run.drill.member);
  const locked = target && target.now.axialLbf.high > 0 ? target.now.axialLbf : undefined;
  const broken = checkOrder(run.order, run.drill, now.truss, support, frame, locked);
  setSession({ run: { ...run, broken } });
  keepResult({
    at: new Date().toISOString(),
    who: usePrefs.getState().who,
    kind: 'plan',
    what: `${useJob.getState().job?.model.name ?? ''}, seed ${run.seed}`,
    level: null,
    exam: false,
    shares: { 'Rules of order kept': planShare(broken) },
  });
};

/** Putting the steps of a splice in order, by buttons that need no dragging. */
export const PlanOrder = ({ run }: { readonly run: PlanRun }) => {
  const units = usePrefs((prefs) => prefs.units);
  const member = useAnswer((answer) => answer.atOnce?.members.get(run.drill.member));
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
  const wrong = new Set((run.broken ?? []).map(({ later }) => later));
  return (
    <section className="stack" aria-label="Plan practice">
      <div className="entry-head">
        <h2>Plan practice</h2>
        <button type="button" onClick={endRun}>
          {run.broken ? 'Close' : 'Leave'}
        </button>
      </div>
      <p>
        A section is spliced into {member ? memberWords(member).toLowerCase() : ''} ({run.drill.member}); the
        bent tube beside it is straightened. Put the steps in order, first at the top.
      </p>
      <ol className="plan-order">
        {run.order.map((id, k) => (
          <li key={id} data-mark={wrong.has(id) ? 'wrong' : undefined}>
            <span className="plan-place">{k + 1}</span>
            <span className="plan-word">{cardWords(cards.get(id)!)}</span>
            <button
              type="button"
              className="quiet"
              aria-label={`Earlier: ${cardWords(cards.get(id)!)}`}
              disabled={k === 0}
              onClick={() => move(id, -1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="quiet"
              aria-label={`Later: ${cardWords(cards.get(id)!)}`}
              disabled={k === run.order.length - 1}
              onClick={() => move(id, 1)}
            >
              ↓
            </button>
          </li>
        ))}
      </ol>
      <p className="row">
        <button type="button" className="main" onClick={() => check(run)}>
          Check the order
        </button>
        <button type="button" onClick={() => beginPlan()}>
          Other tube, other mix
        </button>
      </p>
      {run.broken && (
        <div role="status" className="stack tight">
          <Shares shares={{ 'Rules of order kept': planShare(run.broken) }} />
          {run.broken.length === 0 ? (
            <p className="notice">No rule is broken. More than one order keeps them all.</p>
          ) : (
            <ul className="entries">
              {run.broken.map((one) => (
                <li key={`${one.first} ${one.later}`}>
                  {brokenWords(one, run.drill.cards, run.drill.member, units)}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </section>
  );
};
