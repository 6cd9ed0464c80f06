import { useState } from 'react';
import { type Choice, choices } from '../../core/job/jobSchema.ts';
import { choiceWords } from '../../present/tags.ts';
import { decide } from '../deeds.ts';

/** What is to be done about what was found. Nothing is chosen beforehand; the person decides and may say why. */
export const Decide = ({ ids }: { readonly ids: readonly string[] }) => {
  const [choice, setChoice] = useState<Choice | ''>('');
  const [reason, setReason] = useState('');
  return (
    <details>
      <summary>Decide what is to be done</summary>
      <div className="stack tight">
        <div className="fields">
          <div className="field">
            <label htmlFor="decide-choice">Decision</label>
            <select
              id="decide-choice"
              value={choice}
              onChange={(e) => setChoice(choices.find((one) => one === e.target.value) ?? '')}
            >
              <option value="">not chosen</option>
              {choices.map((one) => (
                <option key={one} value={one}>
                  {choiceWords[one]}
                </option>
              ))}
            </select>
          </div>
          <div className="field">
            <label htmlFor="decide-reason">Reason</label>
            <input
              id="decide-reason"
              type="text"
              value={reason}
              onChange={(e) => setReason(e.target.value)}
            />
          </div>
        </div>
        <button
          type="button"
          className="main"
          disabled={choice === ''}
          onClick={() => {
            if (choice !== '' && decide(ids, choice, reason)) {
              setChoice('');
              setReason('');
            }
          }}
        >
          Record the decision
        </button>
      </div>
    </details>
  );
};
