import { useState } from 'react';
import type { DispositionRow, Option } from '../../core/disposition/result.ts';
import { type Choice, choices } from '../../core/job/jobSchema.ts';
import { choiceWords } from '../../present/tags.ts';
import { answerWords } from '../../present/words/disposition.ts';
import { decide } from '../deeds.ts';
import { useAnswer } from '../state/answer.ts';
import { setView } from '../state/view.ts';
import { decideHereText } from '../text/decideHere.ts';

/** What is to be done about what was found. Nothing is chosen beforehand; the person decides and may say why. */
export const Decide = ({ ids }: { readonly ids: readonly string[] }) => {
  const [choice, setChoice] = useState<Choice | ''>('');
  const [reason, setReason] = useState('');
  const rows = useAnswer((answer) => answer.assessment?.disposition.rows);
  const answers = choice === '' ? [] : answersOf(rows ?? [], ids, choice);
  const needed = answers.length > 0 && reason.trim() === '';
  return (
    <details>
      <summary>{decideHereText.title}</summary>
      <div className="stack tight">
        <div className="fields">
          <div className="field">
            <label htmlFor="decide-choice">{decideHereText.decision}</label>
            <select
              id="decide-choice"
              value={choice}
              onChange={(e) => setChoice(choices.find((one) => one === e.target.value) ?? '')}
            >
              <option value="">{decideHereText.notChosen}</option>
              {choices.map((one) => (
                <option key={one} value={one}>
                  {choiceWords[one]}
                </option>
              ))}
            </select>
          </div>
          <div className="field">
            <label htmlFor="decide-reason">
              {answers.length > 0 ? decideHereText.reasonNeeded : decideHereText.reason}
            </label>
            <input
              id="decide-reason"
              type="text"
              value={reason}
              onChange={(e) => setReason(e.target.value)}
            />
          </div>
        </div>
        {answers.length > 0 && choice !== '' && (
          <p className="notice small" role="status">
            {decideHereText.answers(
              choiceWords[choice],
              answers.map(({ id, answer }) => ({ id, says: answerWords[answer] })),
            )}
          </p>
        )}
        <button
          type="button"
          className="main"
          disabled={choice === '' || needed}
          onClick={() => {
            if (choice !== '' && decide(ids, choice, reason)) {
              setChoice('');
              setReason('');
            }
          }}
        >
          {decideHereText.record}
        </button>
        <button type="button" className="link back" onClick={() => setView({ route: 'decide' })}>
          {decideHereText.toRules}
        </button>
      </div>
    </details>
  );
};

/** What the rules answer to this choice where it is not plainly allowed. Those with nothing recorded are not held to any. */
const answersOf = (
  rows: readonly DispositionRow[],
  ids: readonly string[],
  choice: Choice,
): readonly { readonly id: string; readonly answer: Option['answer'] }[] =>
  rows
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ id, options }) => {
      const answer = options.find((o) => o.choice === choice)?.answer;
      return answer === undefined || answer === 'applies' ? [] : [{ id, answer }];
    });
