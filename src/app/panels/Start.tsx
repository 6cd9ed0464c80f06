import { useEffect, useState } from 'react';
import { cautionsFor } from '../../present/words/cautions.ts';
import { openBench, putModel } from '../bench/draft.ts';
import { renameJob, setAircraft, setHeldAs } from '../deeds.ts';
import { saveCopy } from '../handout.ts';
import { demos, models } from '../models.ts';
import { openFromPicker, openText } from '../opening.ts';
import { lightWords, unitWords } from '../parts/Head.tsx';
import { Issues } from '../parts/Issues.tsx';
import { useAnswer } from '../state/answer.ts';
import { useDialog } from '../state/dialog.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { useSaved } from '../state/saved.ts';
import { setView } from '../state/view.ts';
import { Earlier } from './Earlier.tsx';
import { JoiningPanel } from './Joining.tsx';
import { OnThisDevice } from './OnThisDevice.tsx';
import { Program } from './Program.tsx';

/** Where a job begins: new, opened or kept; who enters, how the truss is held, what is odd in the file. */
export const StartPanel = () => {
  const job = useJob((state) => state.job);
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const readIssues = useSaved((saved) => saved.readIssues);
  return (
    <div className="stack">
      {cautionsFor('firstStart').map(({ id, text }) => (
        <p key={id} className="soft">
          {text}
        </p>
      ))}
      {job && <ThisJob />}
      <Begin />
      <OwnTruss />
      <BenchWay />
      <OnThisDevice />
      <Earlier />
      {job && <JoiningPanel />}
      <Shown />
      <Program />
      <Issues issues={readIssues} title="In the file" />
      {now && <Issues issues={[...now.truss.issues, ...now.truss.odd]} title="Odd in the truss" />}
      {now && <Issues issues={[...now.live.issues, ...now.coverage.issues]} title="Odd in the records" />}
      {all && <Issues issues={all.statics.issues} title="About the sums" />}
    </div>
  );
};

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
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  return (
    <div className="field wide">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder={hint}
        onChange={(e) => setText(e.target.value)}
        onBlur={() => {
          if (text !== value) onTake(text);
        }}
        onKeyDown={(e) => {
          if (e.key === 'Enter') e.currentTarget.blur();
        }}
      />
    </div>
  );
};

const ThisJob = () => {
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live);
  const who = usePrefs((prefs) => prefs.who);
  const held = live?.held.at(-1);
  const model = live?.model ?? job?.model;
  if (!job || !model) return null;
  return (
    <section className="stack tight" aria-label="This job">
      <h2>This job</h2>
      <div className="fields">
        <TextField id="job-name" label="Job" value={job.name} onTake={renameJob} />
        <TextField
          id="job-aircraft"
          label="Aircraft"
          value={job.aircraft ?? ''}
          hint="as you call it"
          onTake={setAircraft}
        />
        <TextField
          id="job-who"
          label="Who is entering"
          value={who}
          hint="name on each record"
          onTake={(name) => setPrefs({ who: name })}
        />
        <div className="field wide">
          <label htmlFor="job-held">The truss is held</label>
          <select
            id="job-held"
            value={held?.setup ?? ''}
            onChange={(e) => {
              const setup = model.setups.find(({ id }) => id === e.target.value);
              if (setup) setHeldAs(setup.id, setup.name);
            }}
          >
            <option value="" disabled>
              not said yet
            </option>
            {model.setups.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
      </div>
      <p className="small soft">
        Truss: {model.name}. {model.source} {model.datum}
      </p>
      <p>
        <button type="button" onClick={() => void saveCopy()}>
          Save a copy of the job
        </button>
      </p>
    </section>
  );
};

const asWords = (name: string): string => name.replace(/-/g, ' ').replace(/^./, (c) => c.toUpperCase());

const OwnTruss = () => {
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live.model);
  const change = (): void => {
    if (!job) return;
    putModel(live ?? job.model, 'this job’s model');
    openBench('stations');
  };
  return (
    <section className="stack tight" aria-label="Your own truss">
      <h2>Your own truss</h2>
      <div className="row">
        <button type="button" onClick={() => openBench('begin')}>
          Model bench
        </button>
        {job && (
          <button type="button" onClick={change}>
            Change this job’s model
          </button>
        )}
      </div>
      <p className="small soft">
        From a drawing, a rough truss from a few lengths, or measured up from the sound side.
      </p>
    </section>
  );
};

const Begin = () => (
  <section className="stack tight" aria-label="Begin">
    <h2>Begin</h2>
    <div className="row">
      <button type="button" onClick={openFromPicker}>
        Open a file
      </button>
      {demos.map(({ name, text }) => (
        <button key={name} type="button" onClick={() => void text().then((t) => openText(t, name))}>
          Demo: {asWords(name)}
        </button>
      ))}
    </div>
    <p className="small soft">
      Or drop a file anywhere on the page. A new job starts with everything not looked at:
    </p>
    <div className="row">
      {models.map(({ name, text }) => (
        <button
          key={name}
          type="button"
          onClick={() =>
            void text().then((t) => openText(t, name, name.startsWith('practice') ? 'practice' : 'job'))
          }
        >
          New job: {asWords(name)}
        </button>
      ))}
    </div>
  </section>
);

const BenchWay = () => (
  <section className="stack tight" aria-label="Bench sums">
    <h2>Bench sums</h2>
    <p className="small soft">
      One bent or dented tube, no job: fit, cut card, sleeve, template, straightening.
    </p>
    <p>
      <button type="button" onClick={() => setView({ route: 'bench' })}>
        Bench sums
      </button>
    </p>
  </section>
);

const Shown = () => {
  const { units, light, letterKeys, hand } = usePrefs();
  return (
    <section className="stack tight" aria-label="How it is shown">
      <h2>How it is shown</h2>
      <div className="fields">
        <label className="field">
          <span className="caption">Lengths in</span>
          <select value={units} onChange={(e) => setPrefs({ units: e.target.value as typeof units })}>
            {Object.entries(unitWords).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="caption">Sheet for</span>
          <select value={light} onChange={(e) => setPrefs({ light: e.target.value as typeof light })}>
            {Object.entries(lightWords).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={hand === 'left'}
          onChange={(e) => setPrefs({ hand: e.target.checked ? 'left' : 'right' })}
        />
        Card on the left, for the left hand
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={letterKeys}
          onChange={(e) => setPrefs({ letterKeys: e.target.checked })}
        />
        Single letters act as commands
      </label>
      <p>
        <button type="button" className="link" onClick={() => useDialog.setState({ open: 'keys' })}>
          All keys on one sheet
        </button>
      </p>
    </section>
  );
};
