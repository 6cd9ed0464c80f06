import type { Units } from '../../present/show.ts';
import { keypadText as text } from '../text/keypad.ts';
import { type Key, underKeys } from './keypadText.ts';

const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

/** Keys for a gloved hand: digits, a row of fractions, feet and inch marks, sign, backspace. Says each press; keeps nothing. */
export const Keypad = ({
  units,
  signed = false,
  onKey,
}: {
  readonly units: Units;
  readonly signed?: boolean;
  readonly onKey: (key: Key) => void;
}) => {
  const key = (one: Key, look = '') => (
    <button
      key={one}
      type="button"
      className={`key ${look}`}
      aria-label={text.said[one] ?? (one.startsWith('/') ? text.over(one.slice(1)) : one)}
      onClick={() => onKey(one)}
    >
      {text.shown[one] ?? one}
    </button>
  );
  return (
    <fieldset className="keypad" aria-label={text.pad}>
      {digits.slice(0, 3).map((d) => key(d))}
      {key('back', 'deed')}
      {digits.slice(3, 6).map((d) => key(d))}
      {key('clear', 'deed')}
      {digits.slice(6).map((d) => key(d))}
      {units === 'mm' ? key('"', 'deed') : key("'", 'deed')}
      {key(signed ? 'sign' : '.')}
      {key('0')}
      {signed ? key('.') : units === 'mm' ? key('and') : key('and', 'wide-word')}
      {units === 'mm' ? key('sign', 'unseen-key') : key('"', 'deed')}
      {underKeys.map((d) => key(d, 'under'))}
    </fieldset>
  );
};
