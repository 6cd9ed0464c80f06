import type { Assessment } from '../../core/assessment.ts';
import { whole } from '../../present/show.ts';
import { countWords } from '../../present/words/names.ts';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { routes, setView, useView } from '../state/view.ts';
import { routeText, countText as text } from '../text/frame.ts';

/** The count that matters at each word of the route. */
const counts = {
  start: () => '',
  walkRound: (now) => {
    if (!now) return '';
    const unseen = now.coverage.notLookedAt.members.length;
    return text.unseen(unseen, now.truss.members.length);
  },
  loadPath: (_, all) => (all?.loadPath.next[0] ? text.next(all.loadPath.next[0].id) : ''),
  trammel: (_, all) => {
    if (!all) return '';
    const latest = all.trammel.targets.flatMap((target) => target.compared.slice(-1));
    const outside = latest.filter((one) => one.verdict === 'outside').length;
    return outside > 0 ? text.outside(outside) : text.measured(latest.length, all.trammel.targets.length);
  },
  decide: (now) => {
    if (!now) return '';
    const undecided = now.coverage.members.undecided + now.coverage.clusters.undecided;
    return undecided > 0 ? text.undecided(undecided) : text.noneUndecided;
  },
  plan: (_, all) => {
    if (!all || all.plan.steps.length === 0) return '';
    return text.ticked(all.plan.steps.filter((step) => step.done).length, all.plan.steps.length);
  },
  estimate: (_, all) =>
    all && all.estimate.lines.length > 0
      ? text.hours(whole(all.estimate.withHidden.bestH.value), whole(all.estimate.withHidden.worstH.value))
      : '',
  relieve: (now, all) => {
    const hurt = all?.relief.targets.filter(({ member, candidates }) => {
      const mark = now?.marks.get(member);
      return candidates.length > 0 && (mark?.choice !== undefined || (mark?.findings.length ?? 0) > 0);
    });
    return hurt && hurt.length > 0 ? text.cuts(countWords(hurt.length, 'tube')) : '';
  },
  straighten: (now, all) => {
    const chosen = all?.straighten.members.filter(({ member, says }) => {
      const choice = now?.marks.get(member)?.choice;
      return (choice === 'straighten' || choice === 'roundOut') && says !== 'straight';
    });
    return chosen && chosen.length > 0 ? text.toStraighten(chosen.length) : '';
  },
  splice: (_, all) => {
    const decided = all?.splice.members.length ?? 0;
    return decided > 0 ? text.decided(countWords(decided, 'tube')) : '';
  },
  record: (now) => {
    if (!now) return '';
    const { undecided } = now.coverage.members;
    return undecided > 0 ? text.undecided(undecided) : countWords(now.coverage.findings.length, 'finding');
  },
  practice: () => '',
} as const satisfies Record<(typeof routes)[number], (now: AtOnce | null, all: Assessment | null) => string>;

/** The way through the job, in the order of the work. It shows the way and locks nothing. */
export const Route = () => {
  const route = useView((view) => view.route);
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  return (
    <nav className="route" aria-label="Route">
      <ol>
        {routes.map((name) => (
          <li key={name}>
            <button
              type="button"
              className="quiet"
              aria-current={name === route ? 'true' : undefined}
              onClick={() => setView({ route: name })}
            >
              <span className="route-word">{routeText[name]}</span>
              <span className="route-count small">{counts[name](now, all)}</span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
};
