import { type KeyboardEvent, type MouseEvent, memo, useEffect, useMemo, useRef, useState } from 'react';
import { lengthUnit, showBareLength, showTube, type Units } from '../../present/show.ts';
import { findIndex } from '../find.ts';
import { TagMark } from '../parts/TagMark.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { type SortBy, select, selectAll, setView, useView } from '../state/view.ts';
import { tableText as text } from '../text/truss.ts';
import { rowGroups, shownRows, type TrussRow, trussRows } from './trussRows.ts';

const columns = Object.keys(text.columns) as SortBy[];

const Row = memo(
  ({
    row,
    units,
    selected,
    current,
  }: {
    readonly row: TrussRow;
    readonly units: Units;
    readonly selected: boolean;
    readonly current: boolean;
  }) => (
    <tr data-id={row.id} aria-selected={selected} tabIndex={current ? 0 : -1}>
      <th scope="row">{row.id}</th>
      <td className="wide">{row.words}</td>
      <td>
        <TagMark state={row.state} damage={row.damage} word={row.stateWords} />
      </td>
      <td className="number in-card tube">{row.member?.tube ? showTube(row.member.tube, units) : ''}</td>
      <td className="number in-card">
        {row.member && !row.member.guessed ? showBareLength(row.member.lengthIn, units) : ''}
      </td>
    </tr>
  ),
);

const RowGroup = memo(
  ({
    rows,
    units,
    picked,
    current,
  }: {
    readonly rows: readonly TrussRow[];
    readonly units: Units;
    readonly picked: ReadonlySet<string>;
    readonly current: string;
  }) => {
    return rows.map((row) => (
      <Row key={row.id} row={row} units={units} selected={picked.has(row.id)} current={row.id === current} />
    ));
  },
);

/** The truss as rows: the same things, the same selection as the picture, all of it by keyboard. */
export const TrussTable = () => {
  const now = useAnswer((answer) => answer.atOnce);
  return now ? <Rows now={now} /> : null;
};

const Rows = ({ now }: { readonly now: AtOnce }) => {
  const { search, sort, hidden, selected } = useView();
  const units = usePrefs((prefs) => prefs.units);
  const body = useRef<HTMLTableSectionElement>(null);
  const [at, setAt] = useState('');
  const [anchor, setAnchor] = useState('');
  const index = useMemo(() => findIndex(now.truss), [now.truss]);
  const before = useRef<{ all: readonly TrussRow[]; groups: readonly (readonly TrussRow[])[] }>({
    all: [],
    groups: [],
  });
  const all = useMemo(
    () => trussRows(now.truss.members, now.truss.clusters, now.marks, before.current.all),
    [now.truss, now.marks],
  );
  const rows = useMemo(() => shownRows(all, index, search, hidden, sort), [all, index, search, hidden, sort]);
  const groups = useMemo(() => rowGroups(rows, before.current.groups), [rows]);
  before.current = { all, groups };
  const picked = useMemo(() => new Set(selected), [selected]);
  const last = selected.at(-1);
  const current = rows.some(({ id }) => id === at) ? at : (rows[0]?.id ?? '');

  useEffect(() => {
    if (last === undefined) return;
    setAt(last);
    body.current?.querySelector(`[data-id="${CSS.escape(last)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [last]);

  const span = (from: string, to: string): readonly string[] => {
    const [a, b] = [rows.findIndex(({ id }) => id === from), rows.findIndex(({ id }) => id === to)];
    return a < 0 || b < 0 ? [to] : rows.slice(Math.min(a, b), Math.max(a, b) + 1).map(({ id }) => id);
  };
  const pick = (id: string, also: boolean, range: boolean): void => {
    if (range) selectAll([...span(anchor || current, id).filter((one) => one !== id), id]);
    else {
      select(id, also);
      setAnchor(id);
    }
    setAt(id);
  };
  const clicked = (event: MouseEvent): void => {
    const id = (event.target as Element).closest('tr')?.dataset.id;
    if (id === undefined) return;
    pick(id, event.ctrlKey || event.metaKey || useView.getState().several, event.shiftKey);
  };
  const pressed = (event: KeyboardEvent): void => {
    const place = rows.findIndex(({ id }) => id === current);
    const goTo: Readonly<Record<string, number>> = {
      ArrowDown: place + 1,
      ArrowUp: place - 1,
      PageDown: place + 12,
      PageUp: place - 12,
      Home: 0,
      End: rows.length - 1,
    };
    const aim = goTo[event.key];
    if (aim !== undefined) {
      const id = rows[Math.max(0, Math.min(rows.length - 1, aim))]?.id;
      if (id === undefined) return;
      event.preventDefault();
      if (event.shiftKey) pick(id, false, true);
      setAt(id);
      body.current?.querySelector<HTMLElement>(`[data-id="${CSS.escape(id)}"]`)?.focus();
    } else if (event.key === ' ' || event.key === 'Enter') {
      event.preventDefault();
      pick(current, event.key === ' ' && !event.shiftKey, event.shiftKey);
    } else if (event.key === 'a' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      selectAll(rows.map(({ id }) => id));
    }
  };

  return (
    <section className="truss-table" aria-label={text.region}>
      <div className="row table-bar">
        <input
          type="search"
          aria-label={text.search}
          placeholder={text.hint}
          value={search}
          onChange={(e) => setView({ search: e.target.value })}
        />
        <span className="small soft" role="status">
          {text.shown(rows.length, all.length, selected.length)}
        </span>
      </div>
      <div className="table-scroll">
        <table
          className="sheet-table"
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose rows are picked is a grid
          role="grid"
          aria-multiselectable="true"
          aria-rowcount={rows.length + 1}
        >
          <caption className="unseen">{text.caption}</caption>
          <thead>
            <tr>
              {columns.map((by) => (
                <th
                  key={by}
                  scope="col"
                  className={by === 'tube' ? 'in-card tube' : by === 'length' ? 'in-card' : undefined}
                  aria-sort={sort.by !== by ? 'none' : sort.down ? 'descending' : 'ascending'}
                >
                  <button
                    type="button"
                    onClick={() => setView({ sort: { by, down: sort.by === by && !sort.down } })}
                  >
                    {by === 'length' ? `${text.columns[by]}, ${lengthUnit(units)}` : text.columns[by]}
                    <span aria-hidden="true">{sort.by === by ? (sort.down ? '▾' : '▴') : ''}</span>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody ref={body} onClick={clicked} onKeyDown={pressed}>
            {groups.map((group, k) => (
              <RowGroup
                // biome-ignore lint/suspicious/noArrayIndexKey: a group is a place in the table
                key={k}
                rows={group}
                units={units}
                picked={picked}
                current={current}
              />
            ))}
          </tbody>
        </table>
        {rows.length === 0 && <p className="empty">{text.nothing}</p>}
      </div>
    </section>
  );
};
