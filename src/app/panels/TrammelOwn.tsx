import { useState } from 'react';
import { instruments, type Reading } from '../../core/job/jobSchema.ts';
import type { DistanceKind, Trammel } from '../../core/trammel/result.ts';
import { showLength } from '../../present/show.ts';
import { distanceWords, instrumentWords } from '../../present/words/record.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import type { AtOnce } from '../state/answer.ts';
import { setEntry, useEntry } from '../state/entry.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { setDatum, setDrawn, setOwn } from '../trammelDeeds.ts';
import { Pick } from './ReadingForm.tsx';

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
  if (what === 'tolerance') return `Limit ±, ${distanceWords[of as DistanceKind].toLowerCase()}`;
  if (what === 'std') return `Sure to about, ${instrumentWords[of as Reading['instrument']]}`;
  if (what === 'trammel-reach') return 'Reach of the trammel';
  return of === ''
    ? 'Weld shrinkage to allow, every distance'
    : `Weld shrinkage, ${distanceWords[of as DistanceKind].toLowerCase()}`;
};

/** The user's own limits, weld shrinkage and instruments, drawing distances, and the clusters taken as undamaged. */
export const TrammelOwn = ({ now, trammel }: { readonly now: AtOnce; readonly trammel: Trammel }) => (
  <details>
    <summary>Your own limits, drawing distances and reference</summary>
    <div className="stack">
      <OwnValue now={now} />
      <Drawn trammel={trammel} />
      <Reference now={now} trammel={trammel} />
      <Plane now={now} />
    </div>
  </details>
);

const OwnValue = ({ now }: { readonly now: AtOnce }) => {
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
    <section className="stack tight" aria-label="Your own values">
      <h3>Your own values</h3>
      {standing.map((own) => (
        <div key={own.id} className="figure figure-plain">
          <span>{topicWords(own.topic)}</span>
          <span className="value">{showLength(own.valueIn!, units, 64)}</span>
        </div>
      ))}
      <p className="small soft">
        No published limit exists for these distances. What you enter stands as yours.
      </p>
      <div className="fields">
        <label className="field wide">
          <span className="caption">What</span>
          <select value={topic} onChange={(e) => setTopic(e.target.value)}>
            {topics.map((one) => (
              <option key={one} value={one}>
                {topicWords(one)}
              </option>
            ))}
          </select>
        </label>
        <LengthField label="Value" typed={typed} onChange={setTyped} />
        <label className="field">
          <span className="caption">Where it comes from</span>
          <input value={source} onChange={(e) => setSource(e.target.value)} />
        </label>
        <button type="button" disabled={entry.kind !== 'length' || source.trim() === ''} onClick={send}>
          Enter it
        </button>
      </div>
    </section>
  );
};

const Drawn = ({ trammel }: { readonly trammel: Trammel }) => {
  const units = usePrefs((prefs) => prefs.units);
  const lit = useEntry((entry) => entry.lit);
  const [texts, setTexts] = useState({ length: '', tolerance: '', source: '' });
  const [from, to] = lit;
  const target = trammel.targets.find((t) => t.from === from && t.to === to);
  const [length, tolerance] = [
    readEntry(texts.length, units, false),
    readEntry(texts.tolerance, units, false),
  ];
  const ready =
    target && length.kind === 'length' && tolerance.kind !== 'wrong' && texts.source.trim() !== '';
  const send = (): void => {
    if (!ready || length.kind !== 'length') return;
    const saved = setDrawn({
      from: target.from,
      to: target.to,
      lengthIn: length.valueIn,
      ...(tolerance.kind === 'length' ? { toleranceIn: tolerance.valueIn } : {}),
      source: texts.source.trim(),
    });
    if (saved) setTexts({ ...texts, length: '', tolerance: '' });
  };
  return (
    <section className="stack tight" aria-label="Drawing distance">
      <h3>Drawing distance of {target?.id ?? 'the line in hand'}</h3>
      <div className="fields">
        <LengthField
          label="Length by the drawing"
          typed={texts.length}
          onChange={(v) => setTexts({ ...texts, length: v })}
        />
        <LengthField
          label="Its tolerance ±"
          hint="empty: none given"
          typed={texts.tolerance}
          onChange={(v) => setTexts({ ...texts, tolerance: v })}
        />
        <label className="field wide">
          <span className="caption">Drawing, sheet, view</span>
          <input value={texts.source} onChange={(e) => setTexts({ ...texts, source: e.target.value })} />
        </label>
        <button type="button" disabled={!ready} onClick={send}>
          Enter the drawing distance
        </button>
      </div>
    </section>
  );
};

const Reference = ({ now, trammel }: { readonly now: AtOnce; readonly trammel: Trammel }) => {
  const named = now.live.manual.findLast((m) => m.topic === 'datum' && m.words);
  const [words, setWords] = useState(named?.words ?? '');
  const [why, setWhy] = useState('');
  const ids = words.split(/[\s,;]+/).filter((id) => id !== '');
  const unknown = ids.filter((id) => !now.clusters.has(id));
  const pulls = (trammel.latest ? trammel.byHold[trammel.latest]?.clusters : undefined)?.filter(
    (c) => c.pull !== undefined,
  );
  const worst = pulls && [...pulls].sort((a, b) => b.pull! - a.pull!)[0];
  return (
    <section className="stack tight" aria-label="Reference clusters">
      <h3>Clusters taken as undamaged</h3>
      {worst && (
        <p className="small">
          Pulled hardest off its drawing place by the readings: {worst.id}
          {worst.moved === 'moved' ? ', more than its uncertainty explains' : ', within its uncertainty'}.
        </p>
      )}
      <label className="field">
        <span className="caption">Named by you, four at least; empty: the largest sound group</span>
        <input value={words} spellCheck={false} onChange={(e) => setWords(e.target.value)} />
        <span className="error">{unknown.length > 0 ? `Not in the truss: ${unknown.join(', ')}` : ''}</span>
      </label>
      <label className="field">
        <span className="caption">Why these</span>
        <input value={why} onChange={(e) => setWhy(e.target.value)} />
      </label>
      <button
        type="button"
        disabled={ids.length === 0 || unknown.length > 0 || why.trim() === ''}
        onClick={() => setDatum(ids.join(' '), why.trim())}
      >
        Measure from these
      </button>
    </section>
  );
};

/** Offset from a centre-line string, or height over a level line: what distances alone tell least surely. */
const Plane = ({ now }: { readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { hold, lit } = useEntry();
  const [line, setLine] = useState<'centreLine' | 'level'>('centreLine');
  const [cluster, setCluster] = useState('');
  const [texts, setTexts] = useState({ off: '', at: '' });
  const id = cluster === '' ? (lit[0] ?? '') : cluster;
  const [off, at] = [readEntry(texts.off, units, true), readEntry(texts.at, units, true)];
  const known = now.clusters.has(id);
  const send = (): void => {
    if (off.kind !== 'length' || at.kind === 'wrong' || !known) return;
    const end = { cluster: id, mark: 'axis' as const };
    const saved = change(
      {
        kind: 'addReading',
        reading: {
          ends: [end, end],
          plane: { line, offIn: off.valueIn, ...(at.kind === 'length' ? { lineAtIn: at.valueIn } : {}) },
          instrument: 'tape',
          hold,
          typed: { offIn: texts.off },
        },
      },
      `${line === 'level' ? 'Height' : 'Offset'} of ${id}`,
    );
    if (saved) setTexts({ ...texts, off: '' });
    setEntry({ text: '' });
  };
  return (
    <section className="stack tight" aria-label="String and level">
      <h3>Offset from a string, height over a level line</h3>
      <p className="small soft">
        Towards the tail distances alone leave the place unsure; one of these each few stations steadies it.
      </p>
      <div className="fields">
        <Pick
          label="Measured from"
          value={line}
          options={['centreLine', 'level']}
          words={{ centreLine: 'string, centre line', level: 'level line' }}
          onChange={setLine}
        />
        <label className="field">
          <span className="caption">Cluster</span>
          <input value={id} spellCheck={false} onChange={(e) => setCluster(e.target.value.trim())} />
          <span className="error">{id !== '' && !known ? 'Not in the truss' : ''}</span>
        </label>
        <LengthField
          label={line === 'level' ? 'Height, above +' : 'Offset, right +'}
          signed
          typed={texts.off}
          onChange={(v) => setTexts({ ...texts, off: v })}
        />
        <LengthField
          label={line === 'level' ? 'Water line of the line' : 'Butt line of the string'}
          hint="empty: 0"
          signed
          typed={texts.at}
          onChange={(v) => setTexts({ ...texts, at: v })}
        />
        <button type="button" disabled={off.kind !== 'length' || !known} onClick={send}>
          Record it
        </button>
      </div>
    </section>
  );
};
