import { useState } from 'react';
import type { Model } from '../../core/job/modelSchema.ts';
import { readModel } from '../../core/job/read.ts';
import { blankModel } from '../../core/truss/modelEdit.ts';
import { roughModel } from '../../core/truss/rough.ts';
import { issueSentence } from '../../present/words/issues.ts';
import { models } from '../models.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { changeModel, putModel, setDraft, useDraft } from './draft.ts';
import { LengthCell, TextCell } from './fields.tsx';
import { MeasuredUp } from './MeasuredUp.tsx';

const About = () => {
  const model = useDraft((draft) => draft.model);
  const describe = (
    set: Partial<Pick<Model, 'name' | 'source' | 'datum' | 'drawnIn' | 'joints'>>,
    what: string,
  ) => changeModel([{ kind: 'describe', set }], what);
  return (
    <section className="stack tight" aria-label="The model on the bench">
      <h3>The model on the bench</h3>
      <div className="fields">
        <div className="wide">
          <TextCell
            shown="Name"
            label="Name of the model"
            value={model.name}
            onText={(name) => describe({ name }, 'name')}
          />
        </div>
        <div className="wide">
          <TextCell
            shown="Where its numbers come from"
            label="Source of the model"
            value={model.source}
            hint="drawing and sheet, or measured by whom"
            onText={(source) => describe({ source }, 'source')}
          />
        </div>
        <div className="wide">
          <TextCell
            shown="Where station 0, butt line 0 and water line 0 are"
            label="Datum in words"
            value={model.datum}
            hint="station 0 at the firewall; butt line 0 on the centre plane; water line 0 …"
            onText={(datum) => describe({ datum }, 'datum')}
          />
        </div>
        <label className="field">
          <span className="caption">Drawn in</span>
          <select
            value={model.drawnIn}
            onChange={(e) => describe({ drawnIn: e.target.value as Model['drawnIn'] }, 'unit of the drawing')}
          >
            <option value="in">inches</option>
            <option value="mm">millimetres</option>
          </select>
        </label>
        <label className="field">
          <span className="caption">Joints</span>
          <select
            value={model.joints}
            onChange={(e) => describe({ joints: e.target.value as Model['joints'] }, 'joints')}
          >
            <option value="welded">welded</option>
            <option value="pinned">pinned</option>
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
    if (read.ok) putModel(read.value, `model ${name}`);
  };
  return (
    <section className="stack tight" aria-label="Start from">
      <h3>Start from</h3>
      <div className="row">
        <button
          type="button"
          onClick={() => {
            putModel(blankModel(drawnIn), 'a blank model');
            setDraft({ section: 'stations' });
          }}
        >
          Blank
        </button>
        {job && (
          <button type="button" onClick={() => putModel(live ?? job.model, 'this job’s model')}>
            This job’s model
          </button>
        )}
        {models.map(({ name, text }) => (
          <button key={name} type="button" onClick={() => void fromShelf(name, text)}>
            A copy of {name.replace(/-/g, ' ')}
          </button>
        ))}
      </div>
      <label className="pressable from-file">
        From a model file
        <input
          type="file"
          accept=".json,application/json"
          className="unseen"
          onChange={(e) => {
            const file = e.target.files?.[0];
            if (file)
              void file.text().then((text) => {
                const read = readModel(text);
                if (read.ok) putModel(read.value, `model from ${file.name}`);
                setDraft({ refused: read.ok ? [] : read.issues.slice(0, 3) });
              });
            e.target.value = '';
          }}
        />
      </label>
      <p className="small soft">What is on the bench now can be brought back with Undo.</p>
    </section>
  );
};

const sizesAsked = [
  ['lengthIn', 'Length, first ring to last'],
  ['forwardHeightIn', 'Height, forward'],
  ['aftHeightIn', 'Height, aft'],
  ['forwardWidthIn', 'Width, forward'],
  ['aftWidthIn', 'Width, aft'],
] as const;
type Asked = (typeof sizesAsked)[number][0];

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
      ...{ name: 'Rough truss', drawnIn, stations: Number(count), tailPost },
      lengthIn: sizes.lengthIn ?? 0,
      forwardHeightIn: sizes.forwardHeightIn ?? 0,
      aftHeightIn: sizes.aftHeightIn ?? 0,
      forwardWidthIn: sizes.forwardWidthIn ?? 0,
      aftWidthIn: sizes.aftWidthIn ?? 0,
    });
    setSaid(made.issues.map((one) => `${one.at}: ${issueSentence(one)}`).join(' '));
    if (made.ok) putModel(made.value, 'a rough truss');
  };
  return (
    <section className="stack tight" aria-label="Rough truss">
      <h3>Rough truss, from a tape and a count</h3>
      <p className="soft">
        Enough for the walk-round, counts and a price range on the first day. Every cluster is marked assumed:
        no distance is given to work to until it has been measured.
      </p>
      <div className="fields">
        <div className="field">
          <label htmlFor="rough-count">Rings, forward to aft</label>
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
            label={`Rough truss: ${shown.toLowerCase()}`}
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
          Ends in a tail post
        </label>
        <button type="button" className="end" disabled={!ready} onClick={build}>
          Build the rough truss
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
