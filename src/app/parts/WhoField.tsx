import { useState } from 'react';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { fieldText as text } from '../text/fields.ts';

/** Asks for a name where one is needed and none is kept on this device. */
export const WhoField = () => {
  const who = usePrefs((prefs) => prefs.who);
  const [typed, setTyped] = useState('');
  if (who.trim() !== '') return null;
  const take = (): void => {
    if (typed.trim() !== '') setPrefs({ who: typed.trim() });
  };
  return (
    <label className="field">
      <span className="caption">{text.who}</span>
      <input
        value={typed}
        onChange={(e) => setTyped(e.target.value)}
        onBlur={take}
        onKeyDown={(e) => e.key === 'Enter' && take()}
      />
    </label>
  );
};

/** Whether somebody has given a name. */
export const useNamed = (): boolean => usePrefs((prefs) => prefs.who.trim() !== '');
