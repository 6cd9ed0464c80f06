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
import { roundMarksText as text } from '../text/practiceHidden.ts';
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
      ? text.said.missed
      : marked.otherKind.some((m) => m.id === id)
        ? text.said.otherwise
        : text.said.found;
  return (
    <section className="stack" aria-label={text.region}>
      <div className="entry-head">
        <h2>{text.title}</h2>
        <span className="small soft">{text.madeBy(exercise.level, exercise.seed)}</span>
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
          {text.again}
        </button>
        <button
          type="button"
          aria-pressed={truthShown}
          onClick={() => setSession({ truthShown: !truthShown })}
        >
          {text.truth}
        </button>
      </p>
      <h3>{text.wasThere}</h3>
      <ul className="entries">
        {exercise.truth.findings.map((f) => (
          <li key={f.id}>
            <div className="entry-head">
              <button type="button" className="link" onClick={() => select(f.of)}>
                {f.of}
              </button>
              <span className="mark-word" data-mark={said(f.of) === text.said.found ? 'right' : 'wrong'}>
                {said(f.of)}
              </span>
            </div>
            <span>{text.damage(damageTags[f.damage].word, findingSize(f, units), f.origin === 'older')}</span>
            {(path.byMember[f.of] ?? []).slice(0, 1).map((row) => (
              <span key={row.id} className="small soft">
                {text.nextAfter(row.id, row.reasons[0] ? reasonWords(row.reasons[0]) : null)}
              </span>
            ))}
          </li>
        ))}
      </ul>
      {marked.falseCalls.length > 0 && (
        <p className="notice">{text.falseCalls(listWords(marked.falseCalls.map(({ id }) => id)))}</p>
      )}
      {strippedFirst.length > 0 && (
        <p className="notice">
          {text.strippedFirst(listWords([...new Set(strippedFirst)]), ruleWords('eye-first'))}
        </p>
      )}
      {marked.sizes.some((size) => !size.right) && (
        <ul className="entries" aria-label={text.sizes}>
          {marked.sizes
            .filter((size) => !size.right)
            .map((size) => (
              <li key={`${size.id} ${size.field} ${size.damage}`}>
                {text.size(size.id, showLength(size.gotIn, units, 64), showLength(size.trueIn, units, 64))}
              </li>
            ))}
        </ul>
      )}
      {wasted.length > 0 && (
        <details>
          <summary>{text.wasted(wasted.length)}</summary>
          <ul className="entries">
            {wasted.map(({ look, why }) => (
              <li key={look.record}>
                <span>{text.wastedLook(look.of, lookWords[look.method], wasteWords[why])}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
      {marked.choices.length > 0 && (
        <>
          <h3>{text.choices}</h3>
          <ul className="entries">
            {marked.choices.map((choice) => (
              <li key={choice.id}>
                {text.choice(choice.id, choiceWords[choice.choice], choiceMarkWords(choice))}
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="small soft">{text.drawn(now.truss.members.length)}</p>
    </section>
  );
};
