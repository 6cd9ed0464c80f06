import { useState } from 'react';
import type { Trammel } from '../../core/trammel/result.ts';
import type { AtOnce } from '../state/answer.ts';
import { referenceText } from '../text/trammelOwn.ts';
import { setDatum } from '../trammelDeeds.ts';

/** The clusters taken as undamaged, and how hard the readings pull at them. */
export const Reference = ({ now, trammel }: { readonly now: AtOnce; readonly trammel: Trammel }) => {
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
    <section className="stack tight" aria-label={referenceText.region}>
      <h3>{referenceText.title}</h3>
      {worst && <p className="small">{referenceText.pulled(worst.id, worst.moved === 'moved')}</p>}
      <label className="field">
        <span className="caption">{referenceText.named}</span>
        <input value={words} spellCheck={false} onChange={(e) => setWords(e.target.value)} />
        <span className="error">{unknown.length > 0 ? referenceText.unknown(unknown) : ''}</span>
      </label>
      <label className="field">
        <span className="caption">{referenceText.why}</span>
        <input value={why} onChange={(e) => setWhy(e.target.value)} />
      </label>
      <button
        type="button"
        disabled={ids.length === 0 || unknown.length > 0 || why.trim() === ''}
        onClick={() => setDatum(ids.join(' '), why.trim())}
      >
        {referenceText.measure}
      </button>
    </section>
  );
};
