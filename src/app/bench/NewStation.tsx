import { type KeyboardEvent, useRef, useState } from 'react';
import { nextLabel } from '../../core/truss/modelStations.ts';
import { stationText as words } from '../text/modelStations.ts';
import { changeModel, useDraft } from './draft.ts';
import { alongColumn, StationCell } from './StationCell.tsx';
import { columns, columnWords, none, readRow } from './stationEntry.ts';

/** The empty row at the foot: filled from left to right, Enter takes it and begins the next. */
export const NewStation = () => {
  const model = useDraft((draft) => draft.model);
  const [label, setLabel] = useState<string | null>(null);
  const [texts, setTexts] = useState(none);
  const [asked, setAsked] = useState(false);
  const first = useRef<HTMLTableRowElement>(null);
  const name = label ?? nextLabel(model.stations);
  const { row, wrong } = readRow(name, texts, model.drawnIn);
  const started = columns.some((c) => texts[c] !== '');
  const add = (): void => {
    setAsked(true);
    if (!row || wrong.length > 0) return;
    if (!changeModel([{ kind: 'addStation', row }], words.added(name))) return;
    setTexts(none);
    setLabel(null);
    setAsked(false);
    first.current?.querySelector<HTMLInputElement>('input[data-column="station"]')?.focus();
  };
  const key = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      add();
    } else alongColumn(event);
  };
  return (
    <>
      <tr ref={first} className="new-row">
        <th scope="row">
          <input
            type="text"
            aria-label={words.newLabel}
            value={name}
            onChange={(e) => setLabel(e.target.value)}
          />
        </th>
        {columns.map((column) => (
          <StationCell
            key={column}
            label={words.newCell(columnWords[column])}
            column={column}
            text={texts[column]}
            wrong={asked && wrong.some((w) => w.column === column)}
            onText={(text) => setTexts({ ...texts, [column]: text })}
            onKey={key}
          />
        ))}
        <td colSpan={2}>
          <button type="button" className="main" disabled={!started} onClick={add}>
            {words.add(name)}
          </button>
        </td>
      </tr>
      {asked && started && wrong.length > 0 && (
        <tr className="said">
          <td colSpan={8} className="small" role="status">
            {wrong.map((w) => w.words).join(' ')}
          </td>
        </tr>
      )}
    </>
  );
};
