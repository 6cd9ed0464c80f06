import { useState } from 'react';
import type { Spread } from '../../core/trammel/result.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { usePrefs } from '../state/prefs.ts';
import { pushText } from '../text/trammelSpread.ts';
import { recordSpread } from '../trammelDeeds.ts';

/** One push as it went: how far, and what stayed. The next over-travel follows it. */
export const Pushed = ({ one }: { readonly one: Spread }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [texts, setTexts] = useState({ pushed: '', left: '' });
  const [wanted, setWanted] = useState(false);
  const asked = wanted ? pushText.enterLength : undefined;
  const send = (): void => {
    const [pushed, left] = [readEntry(texts.pushed, units, false), readEntry(texts.left, units, false)];
    if (pushed.kind !== 'length' || left.kind !== 'length') {
      setWanted(true);
      return;
    }
    const saved = recordSpread({
      from: one.from,
      to: one.to,
      beforeIn: one.foundIn.value,
      pushedIn: pushed.valueIn,
      leftIn: left.valueIn,
    });
    if (saved) setTexts({ pushed: '', left: '' });
    setWanted(false);
  };
  return (
    <details>
      <summary>{pushText.title}</summary>
      <div className="fields">
        <LengthField
          label={pushText.heldAt}
          typed={texts.pushed}
          wanted={asked}
          onChange={(pushed) => setTexts({ ...texts, pushed })}
        />
        <LengthField
          label={pushText.after}
          typed={texts.left}
          wanted={asked}
          onChange={(left) => setTexts({ ...texts, left })}
        />
        <button type="button" onClick={send}>
          {pushText.record}
        </button>
      </div>
    </details>
  );
};
