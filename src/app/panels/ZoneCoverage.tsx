import { zoneWords } from '../../present/words/names.ts';
import { useAnswer } from '../state/answer.ts';
import { setView } from '../state/view.ts';
import { zoneText } from '../text/loadPath.ts';

/** How far each bay's faces have been looked at, the least first: what nobody has seen stays on every list. */
export const ZoneCoverage = () => {
  const coverage = useAnswer((answer) => answer.atOnce?.coverage);
  if (!coverage) return null;
  const open = coverage.zones
    .filter(({ notLookedAt }) => notLookedAt.length > 0)
    .sort((a, b) => b.notLookedAt.length / b.members.length - a.notLookedAt.length / a.members.length);
  return (
    <details>
      <summary>
        {zoneText.title}{' '}
        <span className="small soft">{zoneText.notDone(open.length, coverage.zones.length)}</span>
      </summary>
      <ul className="held-list small">
        {open.map(({ id, members, notLookedAt, access }) => (
          <li key={id}>
            <button
              type="button"
              className="link"
              onClick={() => setView({ apart: { zone: id, how: 'isolate' } })}
            >
              {zoneWords(id)}
            </button>
            <span>
              {zoneText.seen(members.length - notLookedAt.length, members.length)}
              {access === undefined ? '' : `, ${access}`}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
};
