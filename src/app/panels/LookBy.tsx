import { type Look, lookMethods } from '../../core/job/jobSchema.ts';
import { methodWords } from '../../present/words/record.ts';
import { setView, useView } from '../state/view.ts';
import { lookByText } from '../text/walkRound.ts';

/** How one looks: goes on every look recorded from here on, until changed. */
export const LookBy = () => {
  const lookBy = useView((view) => view.lookBy);
  return (
    <div className="row look-by">
      <div className="field">
        <label htmlFor="look-method">{lookByText.method}</label>
        <select
          id="look-method"
          value={lookBy.method}
          onChange={(e) => setView({ lookBy: { ...lookBy, method: e.target.value as Look['method'] } })}
        >
          {lookMethods.map((method) => (
            <option key={method} value={method}>
              {methodWords[method]}
            </option>
          ))}
        </select>
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={lookBy.finishRemoved}
          onChange={(e) => setView({ lookBy: { ...lookBy, finishRemoved: e.target.checked } })}
        />
        {lookByText.finishRemoved}
      </label>
    </div>
  );
};
