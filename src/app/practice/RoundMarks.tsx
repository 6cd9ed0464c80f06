import { showLength } from '../../present/show.ts';
import { choiceWords, damageTags } from '../../present/tags.ts';
import { findingSize } from '../../present/words/findings.ts';
import { listWords } from '../../present/words/names.ts';
import {
  choiceMarkWords,
  lookWords,
  roundSkillWords,
  ruleWords,
  wasteWords,
} from '../../present/words/practice.ts';
import { reasonWords } from '../../present/words/reasons.ts';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { beginRound } from './hiddenRun.ts';
import { Shares } from './Shares.tsx';
import { type HandedIn, setSession, useSession } from './session.ts';

/** A round handed in: marks by skill, what was there, where the load went, what was wasted. */
export const RoundMarks = ({ handedIn, now }: { readonly handedIn: HandedIn; readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const truthShown = useSession((session) => session.truthShown);
  const model = useAnswer((answer) => answer.atOnce?.live.model ?? answer.atOnce?.job.model);
  const { round, exercise, path } = handedIn;
  const { marked, wasted, strippedFirst } = round;
  const said = (id: string): string =>
    marked.misses.some((m) => m.id === id)
      ? 'missed'
      : marked.otherKind.some((m) => m.id === id)
        ? 'found, called otherwise'
        : 'found';
  return (
    <section className="stack" aria-label="Marks of this round">
      <div className="entry-head">
        <h2>Marks</h2>
        <span className="small soft">
          level {exercise.level} · seed {exercise.seed}
        </span>
      </div>
      <Shares
        shares={Object.fromEntries(
          Object.entries(round.shares).map(([skill, share]) => [
            roundSkillWords[skill as keyof typeof roundSkillWords],
            share,
          ]),
        )}
      />
      <p className="row">
        <button
          type="button"
          className="main"
          onClick={() => model && void beginRound(model, exercise.level, exercise.hintsLocked)}
        >
          Again, another seed
        </button>
        <button
          type="button"
          aria-pressed={truthShown}
          onClick={() => setSession({ truthShown: !truthShown })}
        >
          Truth in the picture
        </button>
      </p>
      <h3>What was there</h3>
      <ul className="entries">
        {exercise.truth.findings.map((f) => (
          <li key={f.id}>
            <div className="entry-head">
              <button type="button" className="link" onClick={() => select(f.of)}>
                {f.of}
              </button>
              <span className="mark-word" data-mark={said(f.of) === 'found' ? 'right' : 'wrong'}>
                {said(f.of)}
              </span>
            </div>
            <span>
              {damageTags[f.damage].word}, {findingSize(f, units)}
              {f.origin === 'older' ? ', older than the blow' : ''}
            </span>
            {(path.byMember[f.of] ?? []).slice(0, 1).map((row) => (
              <span key={row.id} className="small soft">
                Next to look at after it: {row.id}
                {row.reasons[0] ? `, ${reasonWords(row.reasons[0])}` : ''}
              </span>
            ))}
          </li>
        ))}
      </ul>
      {marked.falseCalls.length > 0 && (
        <p className="notice">
          Called, and nothing is there: {listWords(marked.falseCalls.map(({ id }) => id))}.
        </p>
      )}
      {strippedFirst.length > 0 && (
        <p className="notice">
          Finish off before the first look: {listWords([...new Set(strippedFirst)])}. {ruleWords('eye-first')}
        </p>
      )}
      {marked.sizes.some((size) => !size.right) && (
        <ul className="entries" aria-label="Sizes">
          {marked.sizes
            .filter((size) => !size.right)
            .map((size) => (
              <li key={`${size.id} ${size.field} ${size.damage}`}>
                {size.id}: {showLength(size.gotIn, units, 64)} written down,{' '}
                {showLength(size.trueIn, units, 64)} there
              </li>
            ))}
        </ul>
      )}
      {wasted.length > 0 && (
        <details>
          <summary>Looks wasted ({wasted.length})</summary>
          <ul className="entries">
            {wasted.map(({ look, why }) => (
              <li key={look.record}>
                <span>
                  {look.of}, {lookWords[look.method].toLowerCase()}: {wasteWords[why]}
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
      {marked.choices.length > 0 && (
        <>
          <h3>Repairs chosen</h3>
          <ul className="entries">
            {marked.choices.map((choice) => (
              <li key={choice.id}>
                {choice.id}, {choiceWords[choice.choice].toLowerCase()}: {choiceMarkWords(choice)}.
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="small soft">
        {now.truss.members.length} tubes. Drawn: the shape as struck, enlarged, and the blow. Marked against
        the same results that a real job gets.
      </p>
    </section>
  );
};
