import { useMemo } from 'react';
import { cautionsFor } from '../../present/words/cautions.ts';
import { openBench, putModel } from '../bench/draft.ts';
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
import { ThisJob } from './ThisJob.tsx';

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
