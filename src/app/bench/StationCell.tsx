import type { KeyboardEvent } from 'react';
import { leaveField } from './draft.ts';
import type { ColumnName } from './stationEntry.ts';

/** Up, down and Enter go to the same column of the next row, as in a spreadsheet. */
export const alongColumn = (event: KeyboardEvent<HTMLInputElement>): void => {
  const step = { ArrowUp: -1, ArrowDown: 1, Enter: 1 }[event.key];
  if (step === undefined) return;
  const { column } = event.currentTarget.dataset;
  const table = event.currentTarget.closest('table');
  const cells = [...(table?.querySelectorAll<HTMLInputElement>(`input[data-column="${column}"]`) ?? [])];
  const next = cells[cells.indexOf(event.currentTarget) + step];
  if (!next) return;
  event.preventDefault();
  next.focus();
};

/** One number of a row of the station table. */
export const StationCell = ({
  label,
  column,
  text,
  wrong,
  onText,
  onKey,
}: {
  readonly label: string;
  readonly column: ColumnName;
  readonly text: string;
  readonly wrong: boolean;
  readonly onText: (text: string) => void;
  readonly onKey: (event: KeyboardEvent<HTMLInputElement>) => void;
}) => (
  <td>
    <input
      type="text"
      inputMode="text"
      autoComplete="off"
      spellCheck={false}
      data-column={column}
      aria-label={label}
      aria-invalid={wrong}
      value={text}
      onFocus={(e) => e.currentTarget.select()}
      onChange={(e) => onText(e.target.value)}
      onBlur={leaveField}
      onKeyDown={onKey}
    />
  </td>
);
