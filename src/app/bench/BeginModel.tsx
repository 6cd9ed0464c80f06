import { useState } from 'react';
import type { Model } from '../../core/job/modelSchema.ts';
import { readModel } from '../../core/job/read.ts';
import { blankModel } from '../../core/truss/modelEdit.ts';
import { roughModel } from '../../core/truss/rough.ts';
import { issueSentence } from '../../present/words/issues.ts';
import { models } from '../models.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { aboutText, beginText, roughText } from '../text/modelBegin.ts';
import { changeModel, putModel, setDraft, useDraft } from './draft.ts';
import { LengthCell, TextCell } from './fields.tsx';
import { MeasuredUp } from './MeasuredUp.tsx';
import { takeText } from './modelFile.ts';

const About = () => {
  const model = useDraft((draft) => draft.model);
  const describe = (
    set: Partial<Pick<Model, 'name' | 'source' | 'datum' | 'drawnIn' | 'joints'>>,
    what: string,
  ) => changeModel([{ kind: 'describe', set }], what);
  return (
    <section className="stack tight" aria-label={aboutText.title}>
      <h3>{aboutText.title}</h3>
      <div className="fields">
        <div className="wide">
          <TextCell
            shown={aboutText.name}
            label={aboutText.nameOf}
            value={model.name}
            onText={(name) => describe({ name }, aboutText.changed.name)}
          />
        </div>
        <div className="wide">
          <TextCell
            shown={aboutText.source}
            label={aboutText.sourceOf}
            value={model.source}
            hint={aboutText.sourceHint}
            onText={(source) => describe({ source }, aboutText.changed.source)}
          />
        </div>
        <div className="wide">
          <TextCell
            shown={aboutText.datum}
            label={aboutText.datumOf}
            value={model.datum}
            hint={aboutText.datumHint}
            onText={(datum) => describe({ datum }, aboutText.changed.datum)}
          />
        </div>
        <label className="field">
          <span className="caption">{aboutText.drawnIn}</span>
          <select
            value={model.drawnIn}
            onChange={(e) =>
              describe({ drawnIn: e.target.value as Model['drawnIn'] }, aboutText.changed.drawnIn)
            }
          >
            <option value="in">{aboutText.units.in}</option>
            <option value="mm">{aboutText.units.mm}</option>
          </select>
        </label>
        <label className="field">
          <span className="caption">{aboutText.joints}</span>
          <select
            value={model.joints}
            onChange={(e) =>
              describe({ joints: e.target.value as Model['joints'] }, aboutText.changed.joints)
            }
          >
            <option value="welded">{aboutText.joint.welded}</option>
            <option value="pinned">{aboutText.joint.pinned}</option>
          </select>
        </label>
      </div>
    </section>
  );
};

const Start = () => {
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live.model);
  const fromShelf = async (name: string, text: () => Promise<string>): Promise<void> => {
    const read = readModel(await text());
    if (read.ok) putModel(read.value, beginText.wasCopy(name));
  };
  return (
    <section className="stack tight" aria-label={beginText.title}>
      <h3>{beginText.title}</h3>
      <div className="row">
        <button
          type="button"
          onClick={() => {
            putModel(blankModel(drawnIn), beginText.wasBlank);
            setDraft({ section: 'stations' });
          }}
        >
          {beginText.blank}
        </button>
        {job && (
          <button type="button" onClick={() => putModel(live ?? job.model, beginText.wasOfJob)}>
            {beginText.ofJob}
          </button>
        )}
        {models.map(({ name, text }) => (
          <button key={name} type="button" onClick={() => void fromShelf(name, text)}>
            {beginText.copyOf(name)}
          </button>
        ))}
      </div>
      <label className="pressable from-file">
        {beginText.fromFile}
        <input
          type="file"
          accept=".json,application/json"
          className="unseen"
          onChange={(e) => {
            const file = e.target.files?.[0];
            if (file)
              void takeText(file, (text) => {
                const read = readModel(text);
                if (read.ok) putModel(read.value, beginText.wasFromFile(file.name));
                setDraft({ refused: read.ok ? [] : read.issues.slice(0, 3) });
              });
            e.target.value = '';
          }}
        />
      </label>
      <p className="small soft">{beginText.undoable}</p>
    </section>
  );
};

type Asked = keyof typeof roughText.sizes;
const sizesAsked = Object.entries(roughText.sizes) as readonly (readonly [Asked, string])[];

const Rough = () => {
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const [count, setCount] = useState('');
  const [tailPost, setTailPost] = useState(true);
  const [sizes, setSizes] = useState<Readonly<Partial<Record<Asked, number>>>>({});
  const [said, setSaid] = useState('');
  const asked = sizesAsked.filter(([field]) => field !== 'aftWidthIn' || !tailPost);
  const ready = count !== '' && asked.every(([field]) => sizes[field] !== undefined);
  const build = (): void => {
    const made = roughModel({
      ...{ name: roughText.region, drawnIn, stations: Number(count), tailPost },
      lengthIn: sizes.lengthIn ?? 0,
      forwardHeightIn: sizes.forwardHeightIn ?? 0,
      aftHeightIn: sizes.aftHeightIn ?? 0,
      forwardWidthIn: sizes.forwardWidthIn ?? 0,
      aftWidthIn: sizes.aftWidthIn ?? 0,
    });
    setSaid(made.issues.map((one) => `${one.at}: ${issueSentence(one)}`).join(' '));
    if (made.ok) putModel(made.value, roughText.built);
  };
  return (
    <section className="stack tight" aria-label={roughText.region}>
      <h3>{roughText.title}</h3>
      <p className="soft">{roughText.lead}</p>
      <div className="fields">
        <div className="field">
          <label htmlFor="rough-count">{roughText.rings}</label>
          <input
            id="rough-count"
            type="text"
            inputMode="numeric"
            value={count}
            onChange={(e) => setCount(e.target.value)}
          />
        </div>
        {asked.map(([field, shown]) => (
          <LengthCell
            key={field}
            shown={shown}
            label={roughText.sizeNamed(shown)}
            valueIn={sizes[field]}
            negative={false}
            onValue={(v) => {
              const { [field]: _, ...rest } = sizes;
              setSizes(v === undefined ? rest : { ...rest, [field]: v });
            }}
          />
        ))}
        <label className="check">
          <input type="checkbox" checked={tailPost} onChange={(e) => setTailPost(e.target.checked)} />
          {roughText.tailPost}
        </label>
        <button type="button" className="end" disabled={!ready} onClick={build}>
          {roughText.build}
        </button>
      </div>
      {said !== '' && <p role="alert">{said}</p>}
    </section>
  );
};

/** Where a model begins: blank, a copy, a rough truss, or distances of the sound side; and what it is. */
export const BeginModel = () => (
  <div className="stack">
    <Start />
    <About />
    <Rough />
    <MeasuredUp />
  </div>
);
