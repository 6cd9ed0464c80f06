import { useId } from 'react';
import { usePrefs } from '../state/prefs.ts';
import { readEntry } from './lengthEntry.ts';

/**
 * A length as a mechanic writes it: `23 5/16`, `1' 11 5/16"`, `23.3125`, `592.1 mm`. Keeps what was typed; says
 * beside the field what it was read as, or what is wrong with it.
 */
export const LengthField = ({
  label,
  hint,
  typed,
  signed = false,
  wanted,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly typed: string;
  readonly signed?: boolean;
  /** Said when the form was sent without it. */
  readonly wanted?: string | undefined;
  readonly onChange: (typed: string) => void;
}) => {
  const id = useId();
  const units = usePrefs((prefs) => prefs.units);
  const entry = readEntry(typed, units, signed);
  const error = entry.kind === 'wrong' ? entry.words : entry.kind === 'empty' ? wanted : undefined;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={typed}
        placeholder={units === 'mm' ? 'mm' : 'in'}
        aria-invalid={error !== undefined}
        aria-describedby={`${id}-said`}
        onChange={(e) => onChange(e.target.value)}
      />
      <span id={`${id}-said`} className={error === undefined ? 'echo' : 'error'} aria-live="polite">
        {error ?? (entry.kind === 'length' ? entry.shown : (hint ?? ''))}
      </span>
    </div>
  );
};
