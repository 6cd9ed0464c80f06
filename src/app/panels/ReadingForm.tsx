import { type FormEvent, useState } from 'react';
import type { Draft } from '../../core/job/change.ts';
import {
  type Hold,
  holds,
  instruments,
  markKinds,
  type Reading,
  type ReadingEnd,
} from '../../core/job/jobSchema.ts';
import { holdWords, instrumentWords, markWords } from '../../present/words/record.ts';
import { saveReading } from '../deeds.ts';
import { ClockDial } from '../parts/ClockDial.tsx';
import { dialWords } from '../parts/dialWords.ts';
import { Issues } from '../parts/Issues.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { readingText } from '../text/trammelReading.ts';

export interface EndState {
  readonly mark: ReadingEnd['mark'];
  readonly on: string;
  readonly clock: number | undefined;
}

export const axisEnd: EndState = { mark: 'axis', on: '', clock: undefined };

/** The end of a reading as the record keeps it. */
export const endOf = (cluster: string, { mark, on, clock }: EndState): ReadingEnd => ({
  cluster,
  mark,
  ...(mark === 'axis' || on === '' ? {} : { on }),
  ...(mark === 'axis' || clock === undefined ? {} : { clock }),
});

/** One distance as it was taken: a length, or a trammel set and by how much it missed. */
export const ReadingForm = ({ from, to }: { readonly from: string; readonly to: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  const refused = useJob((state) => state.refused);
  const [by, setBy] = useState<'length' | 'setAndMiss'>('length');
  const [texts, setTexts] = useState({ length: '', set: '', miss: '', std: '' });
  const [wanted, setWanted] = useState(false);
  const [instrument, setInstrument] = useState<Reading['instrument']>('trammel');
  const [hold, setHold] = useState<Hold>('beforeCutting');
  const [ends, setEnds] = useState<readonly [EndState, EndState]>([axisEnd, axisEnd]);
  const set = (key: keyof typeof texts) => (typed: string) => setTexts({ ...texts, [key]: typed });
  const asked = wanted ? readingText.enterLength : undefined;

  const send = (event: FormEvent): void => {
    event.preventDefault();
    const entry = (key: keyof typeof texts) => readEntry(texts[key], units, key === 'miss');
    const [length, setAt, miss, std] = [entry('length'), entry('set'), entry('miss'), entry('std')];
    const enough =
      by === 'length' ? length.kind === 'length' : setAt.kind === 'length' && miss.kind === 'length';
    if (!enough || std.kind === 'wrong') {
      setWanted(true);
      return;
    }
    const typed = by === 'length' ? { lengthIn: texts.length } : { setIn: texts.set, missIn: texts.miss };
    const reading = {
      ends: [endOf(from, ends[0]), endOf(to, ends[1])],
      ...(by === 'length' && length.kind === 'length' ? { lengthIn: length.valueIn } : {}),
      ...(by === 'setAndMiss' && setAt.kind === 'length' && miss.kind === 'length'
        ? { setAndMiss: { setIn: setAt.valueIn, missIn: miss.valueIn } }
        : {}),
      instrument,
      ...(std.kind === 'length' ? { stdIn: std.valueIn } : {}),
      hold,
      typed,
    } as unknown as Draft<Reading>;
    if (saveReading(reading)) {
      setTexts({ length: '', set: '', miss: '', std: texts.std });
      setWanted(false);
    }
  };

  return (
    <form className="stack tight" onSubmit={send} aria-label={readingText.named(from, to)}>
      <div className="row" role="radiogroup" aria-label={readingText.how}>
        <label className="check">
          <input type="radio" checked={by === 'length'} onChange={() => setBy('length')} />{' '}
          {readingText.by.length}
        </label>
        <label className="check">
          <input type="radio" checked={by === 'setAndMiss'} onChange={() => setBy('setAndMiss')} />{' '}
          {readingText.by.setAndMiss}
        </label>
      </div>
      <div className="fields">
        {by === 'length' ? (
          <LengthField
            label={readingText.length}
            typed={texts.length}
            wanted={asked}
            onChange={set('length')}
          />
        ) : (
          <>
            <LengthField label={readingText.setTo} typed={texts.set} wanted={asked} onChange={set('set')} />
            <LengthField
              label={readingText.missedBy}
              typed={texts.miss}
              signed
              wanted={asked}
              onChange={set('miss')}
            />
          </>
        )}
        <Pick
          label={readingText.instrument}
          value={instrument}
          options={instruments}
          words={instrumentWords}
          onChange={setInstrument}
        />
        <Pick
          wide
          label={readingText.hold}
          value={hold}
          options={holds}
          words={holdWords}
          onChange={setHold}
        />
        <LengthField
          label={readingText.sure}
          hint={readingText.sureHint}
          typed={texts.std}
          onChange={set('std')}
        />
      </div>
      <details>
        <summary>{readingText.points(ends.map(({ mark }) => markWords[mark]).join(', '))}</summary>
        <div className="stack">
          <End cluster={from} end={ends[0]} onChange={(end) => setEnds([end, ends[1]])} />
          <End cluster={to} end={ends[1]} onChange={(end) => setEnds([ends[0], end])} />
        </div>
      </details>
      <Issues issues={refused} title={readingText.notRecorded} />
      <button type="submit" className="main">
        {readingText.record}
      </button>
    </form>
  );
};

export const Pick = <V extends string>({
  label,
  value,
  options,
  words,
  wide = false,
  onChange,
}: {
  readonly label: string;
  readonly wide?: boolean;
  readonly value: V;
  readonly options: readonly V[];
  readonly words: Readonly<Record<V, string>>;
  readonly onChange: (value: V) => void;
}) => (
  <label className={wide ? 'field wide' : 'field'}>
    <span className="caption">{label}</span>
    <select value={value} onChange={(e) => onChange(e.target.value as V)}>
      {options.map((option) => (
        <option key={option} value={option}>
          {words[option]}
        </option>
      ))}
    </select>
  </label>
);

export const End = ({
  cluster,
  end,
  onChange,
}: {
  readonly cluster: string;
  readonly end: EndState;
  readonly onChange: (end: EndState) => void;
}) => {
  const now = useAnswer((answer) => answer.atOnce);
  const meeting = now?.truss.members.filter(({ from, to }) => from === cluster || to === cluster) ?? [];
  return (
    <fieldset className="stack tight" aria-label={readingText.point(cluster)}>
      <legend className="caption">{readingText.point(cluster)}</legend>
      <div className="fields">
        <Pick
          label={readingText.mark}
          value={end.mark}
          options={markKinds}
          words={markWords}
          onChange={(mark) => onChange({ ...end, mark })}
        />
        {end.mark !== 'axis' && (
          <label className="field">
            <span className="caption">{readingText.tube}</span>
            <select value={end.on} onChange={(e) => onChange({ ...end, on: e.target.value })}>
              <option value="">{readingText.choose}</option>
              {meeting.map(({ id }) => (
                <option key={id} value={id}>
                  {id}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      {end.mark !== 'axis' && now && end.on !== '' && (
        <ClockDial
          label={readingText.clock}
          words={dialWords(now, end.on)}
          value={end.clock}
          onChange={(clock) => onChange({ ...end, clock })}
        />
      )}
    </fieldset>
  );
};
