import { useState } from 'react';
import type { Trammel } from '../../core/trammel/result.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { useEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { drawnText } from '../text/trammelOwn.ts';
import { setDrawn } from '../trammelDeeds.ts';

/** A distance that a drawing gives for the line in hand, with its tolerance and its sheet. */
export const Drawn = ({ trammel }: { readonly trammel: Trammel }) => {
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
    <section className="stack tight" aria-label={drawnText.region}>
      <h3>{drawnText.title(target?.id)}</h3>
      <div className="fields">
        <LengthField
          label={drawnText.length}
          typed={texts.length}
          onChange={(v) => setTexts({ ...texts, length: v })}
        />
        <LengthField
          label={drawnText.tolerance}
          hint={drawnText.toleranceHint}
          typed={texts.tolerance}
          onChange={(v) => setTexts({ ...texts, tolerance: v })}
        />
        <label className="field wide">
          <span className="caption">{drawnText.source}</span>
          <input value={texts.source} onChange={(e) => setTexts({ ...texts, source: e.target.value })} />
        </label>
        <button type="button" disabled={!ready} onClick={send}>
          {drawnText.enter}
        </button>
      </div>
    </section>
  );
};
