import { useEffect, useState } from 'react';
import { renameJob, setAircraft, setHeldAs } from '../deeds.ts';
import { saveCopy } from '../handout.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { startText as text } from '../text/start.ts';

/** A text that is taken when the field is left, so that one entry is one change. */
const TextField = ({
  id,
  label,
  value,
  hint,
  onTake,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly onTake: (text: string) => void;
}) => {
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);
  return (
    <div className="field wide">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={typed}
        placeholder={hint}
        onChange={(e) => setTyped(e.target.value)}
        onBlur={() => {
          if (typed !== value) onTake(typed);
        }}
        onKeyDown={(e) => {
          if (e.key === 'Enter') e.currentTarget.blur();
        }}
      />
    </div>
  );
};

/** Name, aircraft, who enters, how the truss is held, and a copy of it all. */
export const ThisJob = () => {
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live);
  const who = usePrefs((prefs) => prefs.who);
  const held = live?.held.at(-1);
  const model = live?.model ?? job?.model;
  if (!job || !model) return null;
  return (
    <section className="stack tight" aria-label={text.thisJob}>
      <h2>{text.thisJob}</h2>
      <div className="fields">
        <TextField id="job-name" label={text.job} value={job.name} onTake={renameJob} />
        <TextField
          id="job-aircraft"
          label={text.aircraft}
          value={job.aircraft ?? ''}
          hint={text.aircraftHint}
          onTake={setAircraft}
        />
        <TextField
          id="job-who"
          label={text.who}
          value={who}
          hint={text.whoHint}
          onTake={(name) => setPrefs({ who: name })}
        />
        <div className="field wide">
          <label htmlFor="job-held">{text.held}</label>
          <select
            id="job-held"
            value={held?.setup ?? ''}
            onChange={(e) => {
              const setup = model.setups.find(({ id }) => id === e.target.value);
              if (setup) setHeldAs(setup.id, setup.name);
            }}
          >
            <option value="" disabled>
              {text.notSaid}
            </option>
            {model.setups.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      </div>
      <p className="small soft">{text.truss(model.name, model.source, model.datum)}</p>
      <p>
        <button type="button" onClick={() => void saveCopy()}>
          {text.saveCopy}
        </button>
      </p>
    </section>
  );
};
