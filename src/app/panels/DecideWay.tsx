import { useState } from 'react';
import type { DispositionRow, Missing, Option } from '../../core/disposition/result.ts';
import type { Choice } from '../../core/job/jobSchema.ts';
import { choiceWords } from '../../present/tags.ts';
import {
  answerSigns,
  answerWords,
  conditionWords,
  missingWay,
  missingWords,
  reasonSentence,
  reasonSource,
  sentence,
} from '../../present/words/disposition.ts';
import { decide } from '../deeds.ts';
import { Cautions } from '../parts/Caution.tsx';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { setView } from '../state/view.ts';
import { wayText } from '../text/decide.ts';

/** Where the missing thing is entered. */
const goEnter = (row: DispositionRow, missing: Missing, now: AtOnce): (() => void) | null => {
  const way = missingWay(missing);
  const of = now.coverage.findings.find((f) => f.id === missing.finding)?.of ?? row.id;
  return way === 'finding' || way === 'look' ? () => setView({ route: 'walkRound', selected: [of] }) : null;
};

/** One way to go on: what each rule says to it, what is missing, what goes with it, and the deed. */
export const DecideWay = ({
  now,
  row,
  option,
}: {
  readonly now: AtOnce;
  readonly row: DispositionRow;
  readonly option: Option;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const chosen = row.decided?.choice === option.choice;
  return (
    <details className={`option answer-${option.answer}`}>
      <summary>
        <span className="sign" aria-hidden="true">
          {answerSigns[option.answer]}
        </span>
        <span className="option-name">
          {choiceWords[option.choice]}
          {chosen && <span className="small">{wayText.decided}</span>}
        </span>
        <span className="small option-answer">{answerWords[option.answer]}</span>
      </summary>
      <div className="option-body stack tight">
        <ul className="why small">
          {option.reasons.map((reason, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one rule may meet several findings
            <li key={`${reason.rule} ${k}`}>
              <span className="sign" aria-hidden="true">
                {answerSigns[reason.says]}
              </span>
              <span>
                {reasonSentence(reason, units)}
                <span className="soft source"> {reasonSource(reason)}</span>
              </span>
            </li>
          ))}
        </ul>
        {option.missing.length > 0 && (
          <div className="small">
            <strong>{wayText.missing}</strong>
            <ul className="lacks">
              {option.missing.map((one) => {
                const go = goEnter(row, one, now);
                return (
                  <li key={`${one.name} ${one.finding ?? ''}`}>
                    <span>{sentence(missingWords(one))}</span>
                    {go ? (
                      <button type="button" className="link" onClick={go}>
                        {wayText.enter}
                      </button>
                    ) : (
                      <span className="soft">{wayText.below}</span>
                    )}
                  </li>
                );
              })}
            </ul>
          </div>
        )}
        {option.conditions.length > 0 && (
          <div className="small">
            <strong>{wayText.goesWithIt}</strong>
            <ul className="reasons">
              {option.conditions.map((c) => (
                <li key={c}>{conditionWords(c)}</li>
              ))}
            </ul>
          </div>
        )}
        {(option.choice === 'straighten' || option.choice === 'roundOut') && (
          <Cautions step="straightening" />
        )}
        {row.scope.length > 0 && option.answer === 'doesNotApply' && <Cautions step="outsideScope" />}
        <Choose
          ids={[row.id]}
          choice={option.choice}
          reasonNeeded={option.answer !== 'applies'}
          answer={option.answer}
        />
      </div>
    </details>
  );
};

/** The deed itself. Where the rules do not allow it, or cannot say, the form asks for a written reason. */
const Choose = ({
  ids,
  choice,
  reasonNeeded,
  answer,
}: {
  readonly ids: readonly string[];
  readonly choice: Choice;
  readonly reasonNeeded: boolean;
  readonly answer: Option['answer'];
}) => {
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const who = usePrefs((prefs) => prefs.who);
  const wanting = reasonNeeded && reason.trim() === '';
  return (
    <form
      className="stack tight choose"
      aria-label={wayText.form(choiceWords[choice])}
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (!wanting && decide(ids, choice, reason)) {
          setReason('');
          setAsked(false);
        }
      }}
    >
      <label className="field">
        <span className="caption">
          {reasonNeeded ? wayText.reasonNeeded(answer === 'cannotSay') : wayText.reason}
        </span>
        <input
          type="text"
          value={reason}
          aria-invalid={asked && wanting}
          onChange={(e) => setReason(e.target.value)}
        />
        {asked && wanting && <span className="error">{wayText.writeWhy}</span>}
      </label>
      <div className="row">
        <button type="submit" className="main">
          {wayText.form(choiceWords[choice])}
        </button>
        <span className="small soft">{wayText.as(who)}</span>
      </div>
    </form>
  );
};
