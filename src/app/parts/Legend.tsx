import { useState } from 'react';
import { type Coverage, states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import { useAnswer } from '../state/answer.ts';
import { setView, useView } from '../state/view.ts';
import { legendText as text } from '../text/frame.ts';
import { TagMark, TagSign } from './TagMark.tsx';

const wide = (): boolean => matchMedia('(min-width: 1251px) and (min-height: 700px)').matches;

/** The legend; folded on a small sheet, where its line still shows every sign with its count. */
export const Legend = () => {
  const coverage = useAnswer((answer) => answer.atOnce?.coverage);
  const [open, setOpen] = useState(wide);
  if (!coverage) return null;
  return (
    <details className="legend-fold" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary aria-label={text.title}>
        {open ? (
          <span className="small soft">{text.lead}</span>
        ) : (
          states.map((state) => (
            <span key={state} className="legend-sign" title={tags[state].word}>
              <TagSign state={state} />
              {coverage.members[state]}
            </span>
          ))
        )}
      </summary>
      <Filter coverage={coverage} />
    </details>
  );
};

/** What the marks mean, how many there are, and which of them are shown. Pressed = shown. */
const Filter = ({ coverage }: { readonly coverage: Coverage }) => {
  const hidden = useView((view) => view.hidden);
  return (
    <fieldset className="legend" aria-label={text.filter}>
      {states.map((state) => {
        const shown = !hidden.includes(state);
        const [tubes, clusters] = [coverage.members[state], coverage.clusters[state]];
        return (
          <button
            key={state}
            type="button"
            className="quiet legend-item"
            aria-pressed={shown}
            aria-label={text.item(tags[state].word, text.counts(tubes, clusters), shown)}
            onClick={() =>
              setView({ hidden: shown ? [...hidden, state] : hidden.filter((s) => s !== state) })
            }
          >
            <TagMark state={state} />
            <span className="legend-count" title={text.counts(tubes, clusters)}>
              {tubes}
              <span className="soft"> + {clusters}</span>
            </span>
          </button>
        );
      })}
    </fieldset>
  );
};
