import { holds, instruments } from '../../core/job/jobSchema.ts';
import { holdWords, instrumentWords } from '../../present/words/record.ts';
import { setEntry, useEntry } from '../state/entry.ts';
import { keptText } from '../text/trammelReading.ts';
import { Pick } from './ReadingForm.tsx';

/** What is kept from one reading to the next: at which hold it is taken, and with what. */
export const HoldAndInstrument = () => {
  const entry = useEntry();
  return (
    <details>
      <summary>{keptText.both(holdWords[entry.hold], instrumentWords[entry.instrument])}</summary>
      <div className="fields">
        <Pick
          label={keptText.hold}
          value={entry.hold}
          options={holds}
          words={holdWords}
          onChange={(hold) => setEntry({ hold, line: null, text: '' })}
        />
        <Pick
          label={keptText.instrument}
          value={entry.instrument}
          options={instruments}
          words={instrumentWords}
          onChange={(instrument) => setEntry({ instrument })}
        />
      </div>
    </details>
  );
};
