import { type FormEvent, useState } from 'react';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { setOwn } from '../shopDeeds.ts';
import { ownDataText } from '../text/ownData.ts';

/** One thing the user may enter as their own data: a topic of core, and how it is given. */
export interface OwnTopic {
  readonly topic: string;
  readonly label: string;
  readonly takes: 'words' | 'length' | 'share' | 'psi' | 'sleeve' | 'clock';
  readonly hint?: string;
}

/** The user's own data, which outranks the general rules; its source is asked for, and stands beside every answer it gives. */
export const OwnData = ({
  topics,
  title = ownDataText.title,
}: {
  readonly topics: readonly OwnTopic[];
  readonly title?: string;
}) => {
  const [at, setAt] = useState('');
  const [source, setSource] = useState('');
  const [words, setWords] = useState('');
  const [number, setNumber] = useState('');
  const [asked, setAsked] = useState(false);
  const lengths = useLengths<'length'>();
  const one = topics.find(({ topic }) => topic === at);
  const value = Number(number.replace(',', '.'));
  const good =
    one !== undefined &&
    source.trim() !== '' &&
    (one.takes === 'words' ||
      (one.takes === 'length' && lengths.value('length') !== undefined) ||
      (one.takes === 'sleeve' && words.trim() !== '') ||
      (one.takes !== 'length' && one.takes !== 'sleeve' && value > 0));
  const send = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (!one || !good) return;
    const lengthIn = lengths.value('length');
    const sent = setOwn(
      {
        topic: one.topic,
        source: source.trim(),
        ...(words.trim() === '' ? {} : { words: words.trim() }),
        ...((one.takes === 'length' || one.takes === 'sleeve') && lengthIn !== undefined
          ? { valueIn: lengthIn }
          : {}),
        ...(one.takes === 'share' ? { value, unit: '%' as const } : {}),
        ...(one.takes === 'psi' ? { value: value * 1000, unit: 'psi' as const } : {}),
        ...(one.takes === 'clock' ? { value } : {}),
      },
      ownDataText.changed(one.label),
    );
    if (!sent) return;
    setAt('');
    setWords('');
    setNumber('');
    setAsked(false);
    lengths.clear();
  };
  return (
    <details className="own-data">
      <summary>{title}</summary>
      <form className="stack tight" onSubmit={send} aria-label={title}>
        <label className="field">
          <span className="caption">{ownDataText.what}</span>
          <select value={at} onChange={(e) => setAt(e.target.value)}>
            <option value="">{ownDataText.notChosen}</option>
            {topics.map(({ topic, label }) => (
              <option key={topic} value={topic}>
                {label}
              </option>
            ))}
          </select>
        </label>
        {one && (
          <>
            <div className="fields">
              {one.takes === 'length' && (
                <LengthField label={ownDataText.value} hint={one.hint} {...lengths.field('length')} />
              )}
              {(one.takes === 'share' || one.takes === 'psi' || one.takes === 'clock') && (
                <label className="field">
                  <span className="caption">
                    {one.takes === 'share'
                      ? ownDataText.share
                      : one.takes === 'psi'
                        ? ownDataText.psi
                        : ownDataText.clock}
                  </span>
                  <input
                    type="text"
                    inputMode="decimal"
                    value={number}
                    onChange={(e) => setNumber(e.target.value)}
                  />
                  <span className="echo">{one.hint}</span>
                </label>
              )}
              {one.takes === 'sleeve' && (
                <>
                  <label className="field">
                    <span className="caption">{ownDataText.tube}</span>
                    <input
                      type="text"
                      placeholder={ownDataText.tubeLike}
                      value={words}
                      onChange={(e) => setWords(e.target.value)}
                    />
                    <span className="echo">{one.hint}</span>
                  </label>
                  <LengthField label={ownDataText.length} {...lengths.field('length')} />
                </>
              )}
            </div>
            {one.takes !== 'sleeve' && (
              <label className="field">
                <span className="caption">{ownDataText.words}</span>
                <input type="text" value={words} onChange={(e) => setWords(e.target.value)} />
              </label>
            )}
            <label className="field">
              <span className="caption">{ownDataText.source}</span>
              <input
                type="text"
                value={source}
                aria-invalid={asked && source.trim() === ''}
                onChange={(e) => setSource(e.target.value)}
              />
              {asked && source.trim() === '' && <span className="error">{ownDataText.sourceWanted}</span>}
            </label>
            <button type="submit" className="main">
              {ownDataText.record}
            </button>
          </>
        )}
      </form>
    </details>
  );
};
