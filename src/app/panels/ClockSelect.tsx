import { clockSelectText } from '../text/clock.ts';

const clocks = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;

/** A clock position on a tube, or none chosen. */
export const ClockSelect = ({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) => (
  <label className="field">
    <span className="caption">{label}</span>
    <select value={value} onChange={(e) => onChange(e.target.value)}>
      <option value="">{clockSelectText.notChosen}</option>
      {clocks.map((clock) => (
        <option key={clock} value={clock}>
          {clockSelectText.hour(clock)}
        </option>
      ))}
    </select>
  </label>
);
