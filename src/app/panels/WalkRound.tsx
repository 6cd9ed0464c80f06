import { lazy, Suspense } from 'react';
import { commandOf } from '../commands.ts';
import { type TagWord, tag, tagStates } from '../deeds.ts';
import { Waiting } from '../parts/Waiting.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { setView, useView } from '../state/view.ts';
import { tagText } from '../text/frame.ts';
import { walkRoundText } from '../text/walkRound.ts';
import { BulkLook } from './BulkLook.tsx';
import { Decide } from './Decide.tsx';
import { FindingForm } from './FindingForm.tsx';
import { FindingList } from './FindingList.tsx';
import { LookBy } from './LookBy.tsx';
import { Twins } from './Twins.tsx';

const Photos = lazy(async () => ({ default: (await import('./Photos.tsx')).Photos }));

/** The walk-round: tag what is selected, measure what was found, and see what is left. */
export const WalkRoundPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const selected = useView((view) => view.selected);
  if (!now) return <Waiting />;
  const known = selected.filter((id) => now.marks.has(id));
  const [only] = known.length === 1 ? known : [];
  return (
    <div className="stack">
      {known.length > 0 && <Tags now={now} ids={known} />}
      {only !== undefined && (
        <>
          <FindingList now={now} id={only} />
          <FindingForm key={only} now={now} id={only} />
          <Suspense fallback={null}>
            <Photos key={`photos ${only}`} now={now} id={only} />
          </Suspense>
        </>
      )}
      {known.length > 0 && <Decide ids={known} />}
      <Twins now={now} />
      {known.length === 0 && <Left now={now} />}
      <BulkLook now={now} />
    </div>
  );
};

const words: readonly TagWord[] = ['bent', 'cracked', 'forReplacement', 'lookAgain', 'lookedAt'];

const Tags = ({ now, ids }: { readonly now: AtOnce; readonly ids: readonly string[] }) => {
  const stands = tagStates(now, ids);
  const letters = usePrefs((prefs) => prefs.letterKeys);
  return (
    <fieldset className="stack tight" aria-label={walkRoundText.tag(ids)}>
      <div className="tag-buttons">
        {words.map((word) => (
          <button
            key={word}
            type="button"
            aria-label={tagText[word].name}
            aria-pressed={stands[word]}
            onClick={() => tag(ids, word)}
          >
            {tagText[word].name}
            {letters && <kbd>{commandOf(`tag-${word}`).keys}</kbd>}
          </button>
        ))}
      </div>
      <LookBy />
    </fieldset>
  );
};

const Left = ({ now }: { readonly now: AtOnce }) => {
  const { members, clusters } = now.coverage.notLookedAt;
  const next = members[0] ?? clusters[0];
  return (
    <section className="stack tight" aria-label={walkRoundText.left}>
      <h2>{walkRoundText.tubesLeft(members.length, now.truss.members.length)}</h2>
      <p className="soft">{walkRoundText.clustersLeft(clusters.length, now.truss.clusters.length)}</p>
      {next !== undefined && (
        <p>
          <button type="button" className="main" onClick={() => setView({ selected: [next] })}>
            {walkRoundText.begin(next)}
          </button>
        </p>
      )}
    </section>
  );
};
