import { type FormEvent, useState } from 'react';
import type { Draft } from '../../core/job/change.ts';
import type { Damage, Finding } from '../../core/job/jobSchema.ts';
import { showLength } from '../../present/show.ts';
import { damageTags } from '../../present/tags.ts';
import { originWords } from '../../present/words/record.ts';
import { saveFinding } from '../deeds.ts';
import { ClockDial } from '../parts/ClockDial.tsx';
import { dialWords } from '../parts/dialWords.ts';
import { Issues } from '../parts/Issues.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { GlyphMark } from '../parts/TagMark.tsx';
import type { AtOnce } from '../state/answer.ts';
import { forgetRefused, useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { useView } from '../state/view.ts';
import { findingText } from '../text/findings.ts';
import { type Choice, choicesOf, findingFields, startTexts } from './findingFields.ts';

const kinds = Object.keys(damageTags) as Damage[];

/** A measured finding: its kind, then only the sizes that kind is known by, and where it is. */
export const FindingForm = ({
  now,
  id,
  old,
  onDone,
}: {
  readonly now: AtOnce;
  readonly id: string;
  /** The finding that is corrected; none for a new one. */
  readonly old?: Finding;
  readonly onDone?: () => void;
}) => {
  const [kind, setKind] = useState<Damage | null>(old?.damage ?? null);
  return (
    <section
      className="stack tight finding-form"
      aria-label={old ? findingText.correct(id) : findingText.add(id)}
    >
      <h3>{old ? findingText.correctTitle : findingText.addTitle}</h3>
      <fieldset className="kinds" aria-label={findingText.kinds}>
        {kinds.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={kind === one}
            onClick={() => {
              setKind(kind === one && !old ? null : one);
              forgetRefused();
            }}
          >
            <GlyphMark glyph={damageTags[one].glyph} />
            {damageTags[one].word}
          </button>
        ))}
      </fieldset>
      {kind !== null && (
        <Sizes
          key={kind}
          now={now}
          id={id}
          kind={kind}
          old={old}
          onDone={() => {
            if (!old) setKind(null);
            onDone?.();
          }}
        />
      )}
    </section>
  );
};

const Sizes = ({
  now,
  id,
  kind,
  old,
  onDone,
}: {
  readonly now: AtOnce;
  readonly id: string;
  readonly kind: Damage;
  readonly old: Finding | undefined;
  readonly onDone: () => void;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const touchedIn = useView((view) => view.touchedIn);
  const refused = useJob((state) => state.refused);
  const member = now.members.get(id);
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(() => startTexts(old, units));
  const [picks, setPicks] = useState<Readonly<Record<string, string>>>(
    () => ({ ...old }) as Record<string, string>,
  );
  const [from, setFrom] = useState(old?.place?.from ?? member?.from ?? '');
  const [clock, setClock] = useState(old?.clock);
  const [origin, setOrigin] = useState<Finding['origin']>(old?.origin ?? 'unknown');
  const [note, setNote] = useState(old?.note ?? '');
  const [what, setWhat] = useState(old?.damage === 'other' ? old.what : '');
  const fields = findingFields[kind];
  const choices: readonly Choice[] = choicesOf[kind];
  const setText = (key: string, typed: string): void => setTexts({ ...texts, [key]: typed });

  const send = (event: FormEvent): void => {
    event.preventDefault();
    const keys = [...fields.map(({ key }) => key as string), 'place'];
    const read = keys.map(
      (key) => [key, texts[key] ?? '', readEntry(texts[key] ?? '', units, false)] as const,
    );
    const wrong = read.find(([, , entry]) => entry.kind === 'wrong');
    if (wrong) {
      (event.currentTarget as HTMLFormElement)
        .querySelector<HTMLInputElement>('[aria-invalid="true"]')
        ?.focus();
      return;
    }
    const given = read.flatMap(([key, typed, entry]) =>
      entry.kind === 'length' ? [{ key, typed, valueIn: entry.valueIn }] : [],
    );
    const place = given.find(({ key }) => key === 'place');
    const sizes = given.filter(({ key }) => key !== 'place');
    const finding = {
      damage: kind,
      of: id,
      origin,
      ...Object.fromEntries(sizes.map(({ key, valueIn }) => [key, valueIn])),
      ...Object.fromEntries(choices.flatMap(({ key }) => (picks[key] ? [[key, picks[key]]] : []))),
      ...(kind === 'other' ? { what } : {}),
      ...(place && from !== '' ? { place: { from, atIn: place.valueIn } } : {}),
      ...(clock === undefined ? {} : { clock }),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
      ...(given.length === 0
        ? {}
        : { typed: Object.fromEntries(given.map(({ key, typed }) => [typedKey(key), typed])) }),
    } as unknown as Draft<Finding>;
    if (saveFinding(finding, old?.id)) onDone();
  };

  return (
    <form className="stack" onSubmit={send} aria-label={findingText.on(damageTags[kind].word, id)}>
      {kind === 'other' && (
        <div className="field">
          <label htmlFor="finding-what">{findingText.what}</label>
          <input
            id="finding-what"
            type="text"
            required
            value={what}
            onChange={(e) => setWhat(e.target.value)}
          />
        </div>
      )}
      <div className="fields">
        {fields.map(({ key, label, hint }) => (
          <LengthField
            key={key}
            label={label}
            hint={hint}
            typed={texts[key] ?? ''}
            onChange={(typed) => setText(key, typed)}
          />
        ))}
        {choices.map(({ key, label, options }) => (
          <div key={key} className="field">
            <label htmlFor={`finding-${key}`}>{label}</label>
            <select
              id={`finding-${key}`}
              value={picks[key] ?? ''}
              onChange={(e) => setPicks({ ...picks, [key]: e.target.value })}
            >
              <option value="">{findingText.notSaid}</option>
              {Object.entries(options).map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
      {member && (
        <fieldset className="fields" aria-label={findingText.where}>
          <div className="field">
            <label htmlFor="finding-from">{findingText.from}</label>
            <select id="finding-from" value={from} onChange={(e) => setFrom(e.target.value)}>
              <option value={member.from}>{member.from}</option>
              <option value={member.to}>{member.to}</option>
            </select>
          </div>
          <LengthField
            label={findingText.distance(from)}
            typed={texts.place ?? ''}
            onChange={(typed) => setText('place', typed)}
          />
          {touchedIn !== null && (texts.place ?? '') === '' && (
            <button
              type="button"
              className="link"
              onClick={() => {
                setFrom(member.from);
                setText('place', showLength(touchedIn, units === 'mm' ? 'mm' : 'inDecimal'));
              }}
            >
              {findingText.asTouched(showLength(touchedIn, units === 'mm' ? 'mm' : 'inDecimal'), member.from)}
            </button>
          )}
        </fieldset>
      )}
      <details open={old?.clock !== undefined || kind === 'bow' || kind === 'kink'}>
        <summary>{clock === undefined ? findingText.clock : findingText.atClock(clock)}</summary>
        <ClockDial
          label={kind === 'bow' || kind === 'kink' ? findingText.bulges : findingText.isAt}
          words={dialWords(now, id)}
          value={clock}
          onChange={setClock}
        />
      </details>
      <div className="fields">
        <div className="field">
          <label htmlFor="finding-origin">{findingText.origin}</label>
          <select
            id="finding-origin"
            value={origin}
            onChange={(e) => setOrigin(e.target.value as Finding['origin'])}
          >
            {Object.entries(originWords).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="finding-note">{findingText.note}</label>
          <input id="finding-note" type="text" value={note} onChange={(e) => setNote(e.target.value)} />
        </div>
      </div>
      <Issues issues={refused} title={findingText.refused} />
      <button type="submit" className="main">
        {old ? findingText.recordCorrection : findingText.record(damageTags[kind].word)}
      </button>
    </form>
  );
};

const typedKey = (key: string): string => (key === 'place' ? 'atIn' : key);
