import { useState } from 'react';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import type { AtOnce } from '../state/answer.ts';
import { setEntry, useEntry } from '../state/entry.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { planeText } from '../text/trammelOwn.ts';
import { Pick } from './ReadingForm.tsx';

/** Offset from a centre-line string, or height over a level line: what distances alone tell least surely. */
export const Plane = ({ now }: { readonly now: AtOnce }) => {
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
      planeText.recorded[line](id),
    );
    if (saved) setTexts({ ...texts, off: '' });
    setEntry({ text: '' });
  };
  return (
    <section className="stack tight" aria-label={planeText.region}>
      <h3>{planeText.title}</h3>
      <p className="small soft">{planeText.why}</p>
      <div className="fields">
        <Pick
          label={planeText.from}
          value={line}
          options={['centreLine', 'level']}
          words={planeText.lines}
          onChange={setLine}
        />
        <label className="field">
          <span className="caption">{planeText.cluster}</span>
          <input value={id} spellCheck={false} onChange={(e) => setCluster(e.target.value.trim())} />
          <span className="error">{id !== '' && !known ? planeText.unknown : ''}</span>
        </label>
        <LengthField
          label={planeText.off[line]}
          signed
          typed={texts.off}
          onChange={(v) => setTexts({ ...texts, off: v })}
        />
        <LengthField
          label={planeText.lineAt[line]}
          hint={planeText.lineAtHint}
          signed
          typed={texts.at}
          onChange={(v) => setTexts({ ...texts, at: v })}
        />
        <button type="button" disabled={off.kind !== 'length' || !known} onClick={send}>
          {planeText.record}
        </button>
      </div>
    </section>
  );
};
