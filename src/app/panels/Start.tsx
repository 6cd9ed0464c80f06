import { useEffect, useMemo, useState } from 'react';
import { cautionsFor } from '../../present/words/cautions.ts';
import { openBench, putModel } from '../bench/draft.ts';
import { renameJob, setAircraft, setHeldAs } from '../deeds.ts';
import { saveCopy } from '../handout.ts';
import { demos, models } from '../models.ts';
import { openFromPicker, openText } from '../opening.ts';
import { Issues } from '../parts/Issues.tsx';
import { useAnswer } from '../state/answer.ts';
import { useDialog } from '../state/dialog.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { useSaved } from '../state/saved.ts';
import { setView } from '../state/view.ts';
import { lightText, unitText } from '../text/frame.ts';
import { startText as text } from '../text/start.ts';
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
  const truss = now?.truss;
  const odd = useMemo(() => (truss ? [...truss.issues, ...truss.odd] : []), [truss]);
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
      <Issues issues={readIssues} title={text.inFile} />
      <Issues issues={odd} title={text.oddInTruss} />
      {now && <Issues issues={[...now.live.issues, ...now.coverage.issues]} title={text.oddInRecords} />}
      {all && <Issues issues={all.statics.issues} title={text.aboutSums} />}
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

const asWords = (name: string): string => name.replace(/-/g, ' ').replace(/^./, (c) => c.toUpperCase());

const OwnTruss = () => {
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live.model);
  const change = (): void => {
    if (!job) return;
    putModel(live ?? job.model, text.thisModel);
    openBench('stations');
  };
  return (
    <section className="stack tight" aria-label={text.ownTruss}>
      <h2>{text.ownTruss}</h2>
      <div className="row">
        <button type="button" onClick={() => openBench('begin')}>
          {text.modelBench}
        </button>
        {job && (
          <button type="button" onClick={change}>
            {text.changeModel}
          </button>
        )}
      </div>
      <p className="small soft">{text.ownTrussLead}</p>
    </section>
  );
};

const Begin = () => (
  <section className="stack tight" aria-label={text.begin}>
    <h2>{text.begin}</h2>
    <div className="row">
      <button type="button" onClick={openFromPicker}>
        {text.open}
      </button>
      {demos.map(({ name, text: read }) => (
        <button key={name} type="button" onClick={() => void read().then((t) => openText(t, name))}>
          {text.demo(asWords(name))}
        </button>
      ))}
    </div>
    <p className="small soft">{text.beginLead}</p>
    <div className="row">
      {models.map(({ name, text: read }) => (
        <button
          key={name}
          type="button"
          onClick={() =>
            void read().then((t) => openText(t, name, name.startsWith('practice') ? 'practice' : 'job'))
          }
        >
          {text.newJob(asWords(name))}
        </button>
      ))}
    </div>
  </section>
);

const BenchWay = () => (
  <section className="stack tight" aria-label={text.benchSums}>
    <h2>{text.benchSums}</h2>
    <p className="small soft">{text.benchLead}</p>
    <p>
      <button type="button" onClick={() => setView({ route: 'bench' })}>
        {text.benchSums}
      </button>
    </p>
  </section>
);

const Shown = () => {
  const { units, light, letterKeys, hand } = usePrefs();
  return (
    <section className="stack tight" aria-label={text.shown}>
      <h2>{text.shown}</h2>
      <div className="fields">
        <label className="field">
          <span className="caption">{text.units}</span>
          <select value={units} onChange={(e) => setPrefs({ units: e.target.value as typeof units })}>
            {Object.entries(unitText).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="caption">{text.light}</span>
          <select value={light} onChange={(e) => setPrefs({ light: e.target.value as typeof light })}>
            {Object.entries(lightText).map(([value, words]) => (
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
        {text.leftHand}
      </label>
      <label className="check">
        <input
          type="checkbox"
          checked={letterKeys}
          onChange={(e) => setPrefs({ letterKeys: e.target.checked })}
        />
        {text.letterKeys}
      </label>
      <p>
        <button type="button" className="link" onClick={() => useDialog.setState({ open: 'keys' })}>
          {text.keys}
        </button>
      </p>
    </section>
  );
};
