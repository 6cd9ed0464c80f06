import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { forgetRefused, useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { fieldText as text } from '../text/fields.ts';

/** A change that was refused, and what to do. */
export const Refused = () => {
  const [first] = useJob((job) => job.refused);
  const units = usePrefs((prefs) => prefs.units);
  if (!first) return null;
  return (
    <div className="banner row" role="alert">
      <span>{text.refused(`${issueSentence(first, units)} ${mendSentence(first, units)}`)}</span>
      <button type="button" onClick={forgetRefused}>
        {text.close}
      </button>
    </div>
  );
};
