import { useEffect, useRef } from 'react';
import { setPlanning } from '../state/planning.ts';
import { planBarText as text } from '../text/planBar.ts';
import type { Stages } from './planStateFor.ts';

/** The work in stages under the picture: which step is in hand, and how the truss stands when it is done. */
export const PlanBar = ({
  stages: { stages, at, ids, title, wrong, facts },
}: {
  readonly stages: Stages;
}) => {
  const go = (to: number): void => setPlanning({ step: ids[to] ?? null });
  const here = stages.findIndex(({ first, count }) => at >= first && at < first + count);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    // only the row scrolls: the page stays where it is
    const [row, one] = [list.current, list.current?.children[here]];
    if (row && one instanceof HTMLElement)
      row.scrollLeft = one.offsetLeft + one.offsetWidth / 2 - row.clientWidth / 2;
  }, [here]);
  return (
    <section className="plan-bar" aria-label={text.region}>
      <ol ref={list} className="plan-stages">
        {stages.map(({ title: stage, first, count, done }, k) => (
          <li key={first} style={{ flexGrow: count }}>
            <button
              type="button"
              aria-label={text.stage(stage, first + 1, first + count, done)}
              aria-current={k === here ? 'step' : undefined}
              onClick={() => go(first)}
            >
              <span>{stage.replace(/,.*/, '')}</span>
              <span className="plan-stage-part" aria-hidden="true">
                <i style={{ width: `${(100 * done) / count}%` }} />
                {k === here && <b style={{ left: `${(100 * (at - first + 0.5)) / count}%` }} />}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <div className="plan-bar-step">
        <button type="button" aria-label={text.before} disabled={at < 0} onClick={() => go(at - 1)}>
          ‹
        </button>
        <div aria-live="polite">
          <strong>{title}</strong>
          <dl className="small" data-wrong={wrong ? '' : undefined}>
            {facts.map(({ name, words }) => (
              <div key={name} data-fact={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ))}
          </dl>
        </div>
        <button
          type="button"
          aria-label={text.next}
          disabled={at >= ids.length - 1}
          onClick={() => go(at + 1)}
        >
          ›
        </button>
      </div>
    </section>
  );
};
