import { states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import { useAnswer } from '../state/answer.ts';
import { setView, useView } from '../state/view.ts';
import { TagMark } from './TagMark.tsx';

/** What the marks mean, how many there are, and which of them are shown. Pressed = shown. */
export const Legend = () => {
  const coverage = useAnswer((answer) => answer.atOnce?.coverage);
  const hidden = useView((view) => view.hidden);
  if (!coverage) return null;
  return (
    <fieldset className="legend" aria-label="Legend and filter: tubes and clusters in each state">
      {states.map((state) => {
        const shown = !hidden.includes(state);
        const [tubes, clusters] = [coverage.members[state], coverage.clusters[state]];
        return (
          <button
            key={state}
            type="button"
            className="quiet legend-item"
            aria-pressed={shown}
            aria-label={`${tags[state].word}: ${tubes} tubes, ${clusters} clusters. ${shown ? 'Shown' : 'Faded'}`}
            onClick={() =>
              setView({ hidden: shown ? [...hidden, state] : hidden.filter((s) => s !== state) })
            }
          >
            <TagMark state={state} />
            <span className="legend-count" title={`${tubes} tubes, ${clusters} clusters`}>
              {tubes}
              <span className="soft"> + {clusters}</span>
            </span>
          </button>
        );
      })}
      <span className="soft small legend-note">tubes + clusters; press to fade</span>
    </fieldset>
  );
};
