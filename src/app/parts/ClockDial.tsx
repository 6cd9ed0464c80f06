import { useId } from 'react';
import { fieldText as text } from '../text/fields.ts';

const positions = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;

/** Which way one looks along a tube, and what is at 12 and 3; core fixes this per direction of the tube. */
export interface DialWords {
  readonly look: string;
  readonly at12: string;
  readonly at3: string;
}

/** Twelve positions round a tube, as one radio group with a picture of which way one looks. */
export const ClockDial = ({
  label,
  value,
  words,
  onChange,
}: {
  readonly label: string;
  readonly value: number | undefined;
  readonly words: DialWords;
  readonly onChange: (clock: number | undefined) => void;
}) => {
  const name = useId();
  return (
    <fieldset className="field">
      <legend className="caption">
        {label}. {words.look}
      </legend>
      <div className="dial">
        <svg viewBox="0 0 188 188" aria-hidden="true" fill="none" stroke="currentColor">
          <circle cx="94" cy="94" r="46" strokeWidth="2.5" />
          <circle cx="94" cy="94" r="38" strokeWidth="1" />
          <path d="M94 48V32M140 94h16M94 140v16M48 94H32" strokeWidth="1" />
          <text x="94" y="78" className="dial-word">
            {words.at12}
          </text>
          <text x="94" y="98" className="dial-word">
            3 = {words.at3}
          </text>
          {value !== undefined && (
            <circle
              cx={94 + 46 * Math.sin((value * Math.PI) / 6)}
              cy={94 - 46 * Math.cos((value * Math.PI) / 6)}
              r="6"
              fill="currentColor"
            />
          )}
        </svg>
        {positions.map((clock) => {
          const angle = (clock * Math.PI) / 6;
          return (
            <label key={clock} style={{ left: 94 + 72 * Math.sin(angle), top: 94 - 72 * Math.cos(angle) }}>
              <input
                type="radio"
                name={name}
                checked={value === clock}
                aria-label={text.clock(clock)}
                onChange={() => onChange(clock)}
              />
              <span aria-hidden="true">{clock}</span>
            </label>
          );
        })}
      </div>
      <button
        type="button"
        className="link"
        disabled={value === undefined}
        onClick={() => onChange(undefined)}
      >
        {text.noDirection}
      </button>
    </fieldset>
  );
};
