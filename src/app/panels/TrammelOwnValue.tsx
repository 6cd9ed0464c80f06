import { useState } from 'react';
import { instruments, type Reading } from '../../core/job/jobSchema.ts';
import type { DistanceKind } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { distanceWords, instrumentWords } from '../../present/words/record.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { ownValueText } from '../text/trammelOwn.ts';
import { setOwn } from '../trammelDeeds.ts';

const kinds = Object.keys(distanceWords) as DistanceKind[];
const topics = [
  ...kinds.map((kind) => `tolerance:${kind}`),
  'shrink',
  ...kinds.map((kind) => `shrink:${kind}`),
  ...instruments.map((one) => `std:${one}`),
  'trammel-reach',
] as const;

const topicWords = (topic: string): string => {
  const [what, of = ''] = topic.split(':');
  if (what === 'tolerance') return ownValueText.limit(distanceWords[of as DistanceKind].toLowerCase());
  if (what === 'std') return ownValueText.sure(instrumentWords[of as Reading['instrument']]);
  if (what === 'trammel-reach') return ownValueText.reach;
  return of === ''
    ? ownValueText.shrinkageOfAll
    : ownValueText.shrinkage(distanceWords[of as DistanceKind].toLowerCase());
};

/** The user's own limits, weld shrinkage, sureness of instruments and reach, each with where it comes from. */
export const OwnValue = ({ now }: { readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [topic, setTopic] = useState<string>(topics[0]);
  const [typed, setTyped] = useState('');
  const [source, setSource] = useState('');
  const standing = topics.flatMap((one) => {
    const own = now.live.manual.findLast((m) => m.topic === one && m.valueIn !== undefined);
    return own ? [own] : [];
  });
  const entry = readEntry(typed, units, false);
  const send = (): void => {
    if (entry.kind !== 'length' || source.trim() === '') return;
    if (setOwn(topic, entry.valueIn, typed, source.trim(), topicWords(topic))) setTyped('');
  };
  return (
    <section className="stack tight" aria-label={ownValueText.title}>
      <h3>{ownValueText.title}</h3>
      {standing.map((own) => (
        <div key={own.id} className="figure figure-plain">
          <span>{topicWords(own.topic)}</span>
          <span className="value">{showLength(own.valueIn!, units, 64)}</span>
        </div>
      ))}
      <p className="small soft">{ownValueText.noLimit}</p>
      <div className="fields">
        <label className="field wide">
          <span className="caption">{ownValueText.what}</span>
          <select value={topic} onChange={(e) => setTopic(e.target.value)}>
            {topics.map((one) => (
              <option key={one} value={one}>
                {topicWords(one)}
              </option>
            ))}
          </select>
        </label>
        <LengthField label={ownValueText.value} typed={typed} onChange={setTyped} />
        <label className="field">
          <span className="caption">{ownValueText.source}</span>
          <input value={source} onChange={(e) => setSource(e.target.value)} />
        </label>
        <button type="button" disabled={entry.kind !== 'length' || source.trim() === ''} onClick={send}>
          {ownValueText.enter}
        </button>
      </div>
    </section>
  );
};
