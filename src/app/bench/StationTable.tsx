import { type KeyboardEvent, useRef, useState } from 'react';
import { type Origin, origins, type Station } from '../../core/job/modelSchema.ts';
import { nextLabel } from '../../core/truss/modelStations.ts';
import { changeModel, leaveField, setDraft, useDraft } from './draft.ts';
import { asDrawn, readDrawn } from './drawn.ts';

export const originWords = {
  drawing: 'Drawing',
  measured: 'Measured',
  mirrored: 'Mirrored',
  assumed: 'Assumed',
} as const satisfies Record<Origin, string>;

const columns = ['station', 'upperWl', 'upperHw', 'lowerWl', 'lowerHw'] as const;
type ColumnName = (typeof columns)[number];
type Texts = Readonly<Record<ColumnName, string>>;

const columnWords = {
  station: 'station',
  upperWl: 'upper water line',
  upperHw: 'upper half-width',
  lowerWl: 'lower water line',
  lowerHw: 'lower half-width',
} as const satisfies Record<ColumnName, string>;

const textsOf = (row: Station, drawnIn: 'in' | 'mm'): Texts => ({
  station: asDrawn(row.stationIn, drawnIn),
  upperWl: asDrawn(row.upper?.waterLineIn, drawnIn),
  upperHw: asDrawn(row.upper?.halfWidthIn, drawnIn),
  lowerWl: asDrawn(row.lower?.waterLineIn, drawnIn),
  lowerHw: asDrawn(row.lower?.halfWidthIn, drawnIn),
});

const none: Texts = { station: '', upperWl: '', upperHw: '', lowerWl: '', lowerHw: '' };

interface ReadRow {
  /** As far as it can be read; a pair with one of its two is left as it was. */
  readonly row: Station | null;
  readonly wrong: readonly { readonly column: ColumnName; readonly words: string }[];
}

/** The row that the texts say; `old` keeps what is only half typed. */
const readRow = (label: string, texts: Texts, drawnIn: 'in' | 'mm', old?: Station): ReadRow => {
  const read = Object.fromEntries(
    columns.map((c) => [c, readDrawn(texts[c], drawnIn, !c.endsWith('Hw'))]),
  ) as Record<ColumnName, ReturnType<typeof readDrawn>>;
  const wrong: { column: ColumnName; words: string }[] = columns.flatMap((column) => {
    const one = read[column];
    return one.kind === 'wrong' ? [{ column, words: one.words }] : [];
  });
  const value = (c: ColumnName): number | undefined => {
    const one = read[c];
    return one.kind === 'length' ? one.valueIn : undefined;
  };
  const pair = (which: 'upper' | 'lower'): Station['upper'] => {
    const [wl, hw] = [`${which}Wl`, `${which}Hw`] as const;
    const [waterLineIn, halfWidthIn] = [value(wl), value(hw)];
    if (waterLineIn !== undefined && halfWidthIn !== undefined) return { waterLineIn, halfWidthIn };
    if (read[wl].kind === 'empty' && read[hw].kind === 'empty') return undefined;
    for (const c of [wl, hw])
      if (read[c].kind === 'empty') wrong.push({ column: c, words: `The ${columnWords[c]} is missing.` });
    return old?.[which];
  };
  const [upper, lower] = [pair('upper'), pair('lower')];
  const stationIn = value('station') ?? old?.stationIn;
  if (read.station.kind === 'empty') wrong.push({ column: 'station', words: 'The station is missing.' });
  const { upper: _, lower: __, ...rest } = old ?? {};
  return {
    wrong,
    row:
      stationIn === undefined
        ? null
        : { ...rest, label, stationIn, ...(upper ? { upper } : {}), ...(lower ? { lower } : {}) },
  };
};

/** Up, down and Enter go to the same column of the next row, as in a spreadsheet. */
const alongColumn = (event: KeyboardEvent<HTMLInputElement>): void => {
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

const Cell = ({
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
        `${columnWords[column]} of ${row.label}`,
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
          <Cell
            key={column}
            label={`Station ${row.label}, ${columnWords[column]}`}
            column={column}
            text={texts[column]}
            wrong={wrong.some((w) => w.column === column)}
            onText={(text) => put(column, text)}
            onKey={alongColumn}
          />
        ))}
        <td>
          <select
            aria-label={`Station ${row.label}, where its place comes from`}
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
                `origin of ${row.label}`,
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
            aria-label={`Insert a station after ${row.label}`}
            title={`Insert a station half-way aft of ${row.label}`}
            onClick={() =>
              changeModel([{ kind: 'insertStation', after: row.label }], `a station after ${row.label}`)
            }
          >
            +½
          </button>
          <button
            type="button"
            className="quiet"
            aria-label={`Take out station ${row.label}`}
            title={`Take out station ${row.label} and all that names it`}
            onClick={() =>
              changeModel([{ kind: 'removeStation', label: row.label }], `station ${row.label} taken out`)
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

/** The empty row at the foot: filled from left to right, Enter takes it and begins the next. */
const NewRow = () => {
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
    if (!changeModel([{ kind: 'addStation', row }], `station ${name}`)) return;
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
            aria-label="New station, label"
            value={name}
            onChange={(e) => setLabel(e.target.value)}
          />
        </th>
        {columns.map((column) => (
          <Cell
            key={column}
            label={`New station, ${columnWords[column]}`}
            column={column}
            text={texts[column]}
            wrong={asked && wrong.some((w) => w.column === column)}
            onText={(text) => setTexts({ ...texts, [column]: text })}
            onKey={key}
          />
        ))}
        <td colSpan={2}>
          <button type="button" className="main" disabled={!started} onClick={add}>
            Add station {name}
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
      <p className="soft">
        One row a ring, forward first, in{' '}
        {model.drawnIn === 'mm' ? 'millimetres' : 'inches: 23 5/16 or 23.3125'}. Half-width 0 brings left and
        right together, as at a tail post. Leave a pair empty where there is none.
      </p>
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
                Ring
              </th>
              <th scope="col" rowSpan={2}>
                Station
              </th>
              <th scope="colgroup" colSpan={2}>
                Upper longerons
              </th>
              <th scope="colgroup" colSpan={2}>
                Lower longerons
              </th>
              <th scope="col" rowSpan={2}>
                From
              </th>
              <th scope="col" rowSpan={2}>
                <span className="unseen">Insert, take out</span>
              </th>
            </tr>
            <tr>
              <th scope="col">Water line</th>
              <th scope="col">Half-width</th>
              <th scope="col">Water line</th>
              <th scope="col">Half-width</th>
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
            <NewRow />
          </tbody>
        </table>
      </div>
      <p className="small soft">
        Enter or ↓ goes to the row below. A table copied from a spreadsheet can be pasted into any field.
      </p>
    </div>
  );
};
