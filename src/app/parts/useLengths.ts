import { useState } from 'react';
import { usePrefs } from '../state/prefs.ts';
import { readEntry } from './lengthEntry.ts';

/** Length fields of one form: what was typed, and what it reads as once it is sent. */
export const useLengths = <K extends string>(start: Partial<Record<K, string>> = {}) => {
  const units = usePrefs((prefs) => prefs.units);
  const [typed, setTyped] = useState<Partial<Record<K, string>>>(start);
  const field = (key: K) => ({
    typed: typed[key] ?? '',
    onChange: (text: string) => setTyped((old) => ({ ...old, [key]: text })),
  });
  /** Inches; undefined while it is empty or no length. */
  const value = (key: K, signed = false): number | undefined => {
    const entry = readEntry(typed[key] ?? '', units, signed);
    return entry.kind === 'length' ? entry.valueIn : undefined;
  };
  const clear = (): void => setTyped({});
  return { field, value, clear, typed };
};
