import { useRef, useState } from 'react';
import { type Origin, origins, type Station } from '../../core/job/modelSchema.ts';
import { stationText as words } from '../text/modelStations.ts';
import { changeModel, setDraft, useDraft } from './draft.ts';
import { NewStation } from './NewStation.tsx';
import { alongColumn, StationCell } from './StationCell.tsx';
import {
  type ColumnName,
  columns,
  columnWords,
  originWords,
  readRow,
  type Texts,
  textsOf,
} from './stationEntry.ts';

const Row = ({ row, last }: { readonly row: Station; readonly last: boolean }) => {
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const [typed, setTyped] = useState<Texts | null>(null);
  const texts = typed ?? textsOf(row, drawnIn);
  const { wrong } = typed ? readRow(row.label, typed, drawnIn, row) : { wrong: [] };
  const put = (column: ColumnName, text: string): void => {
    const now = { ...texts, [column]: text };
    setTyped(now);
    const read = readRow(row.label, now, drawnIn, row);
    if (read.row)
      changeModel(
        [{ kind: 'setStation', label: row.label, row: read.row }],
        words.columnOf(columnWords[column], row.label),
        `${row.label} ${column}`,
      );
  };
  return (
    <>
      <tr
        onBlur={(e) => {
          if (!e.currentTarget.contains(e.relatedTarget)) setTyped(null);
        }}
      >
        <th scope="row">{row.label}</th>
        {columns.map((column) => (
          <StationCell
            key={column}
            label={words.cell(row.label, columnWords[column])}
            column={column}
            text={texts[column]}
            wrong={wrong.some((w) => w.column === column)}
            onText={(text) => put(column, text)}
            onKey={alongColumn}
          />
        ))}
        <td>
          <select
            aria-label={words.origin(row.label)}
            value={row.origin ?? 'drawing'}
            onChange={(e) =>
              changeModel(
                [
                  {
                    kind: 'setStation',
                    label: row.label,
                    row: { ...row, origin: e.target.value as Origin },
                  },
                ],
                words.originOf(row.label),
              )
            }
          >
            {origins.map((origin) => (
              <option key={origin} value={origin}>
                {originWords[origin]}
              </option>
            ))}
          </select>
        </td>
        <td className="row-deeds">
          <button
            type="button"
            className="quiet"
            disabled={last}
            aria-label={words.insert(row.label)}
            title={words.insertTitle(row.label)}
            onClick={() =>
              changeModel([{ kind: 'insertStation', after: row.label }], words.inserted(row.label))
            }
          >
            +½
          </button>
          <button
            type="button"
            className="quiet"
            aria-label={words.takeOut(row.label)}
            title={words.takeOutTitle(row.label)}
            onClick={() =>
              changeModel([{ kind: 'removeStation', label: row.label }], words.takenOut(row.label))
            }
          >
            ×
          </button>
        </td>
      </tr>
      {wrong.length > 0 && (
        <tr className="said">
          <td colSpan={8} className="small" role="status">
            {wrong.map((w) => w.words).join(' ')}
          </td>
        </tr>
      )}
    </>
  );
};

/** Stations as the drawing lists them. The truss follows each key press; a pasted table goes to its preview. */
export const StationTable = () => {
  const model = useDraft((draft) => draft.model);
  const busy = useRef<readonly string[] | null>(null);
  const labels = model.stations.map((s) => s.label);
  // Rows stand still while one is being typed in; half a number would send it up and down the table.
  const order = busy.current
    ? [...busy.current.filter((l) => labels.includes(l)), ...labels.filter((l) => !busy.current?.includes(l))]
    : labels;
  const [, settle] = useState(0);
  return (
    <div className="stack">
      <p className="soft">{words.lead(model.drawnIn)}</p>
      <div className="wide-table">
        <table
          className="entry-table"
          onFocus={() => {
            busy.current ??= labels;
          }}
          onBlur={(e) => {
            if (e.currentTarget.contains(e.relatedTarget)) return;
            busy.current = null;
            settle((n) => n + 1);
          }}
          onPaste={(e) => {
            const text = e.clipboardData.getData('text/plain');
            if (!/\t|\n./.test(text)) return;
            e.preventDefault();
            setDraft({ pasted: text, section: 'tables' });
          }}
        >
          <thead>
            <tr>
              <th scope="col" rowSpan={2}>
                {words.ring}
              </th>
              <th scope="col" rowSpan={2}>
                {words.station}
              </th>
              <th scope="colgroup" colSpan={2}>
                {words.upper}
              </th>
              <th scope="colgroup" colSpan={2}>
                {words.lower}
              </th>
              <th scope="col" rowSpan={2}>
                {words.from}
              </th>
              <th scope="col" rowSpan={2}>
                <span className="unseen">{words.deeds}</span>
              </th>
            </tr>
            <tr>
              <th scope="col">{words.waterLine}</th>
              <th scope="col">{words.halfWidth}</th>
              <th scope="col">{words.waterLine}</th>
              <th scope="col">{words.halfWidth}</th>
            </tr>
          </thead>
          <tbody>
            {order.map((label) => (
              <Row
                key={label}
                row={model.stations.find((s) => s.label === label)!}
                last={label === labels.at(-1)}
              />
            ))}
            <NewStation />
          </tbody>
        </table>
      </div>
      <p className="small soft">{words.foot}</p>
    </div>
  );
};
