import { useMemo, useState } from 'react';
import { type ImportKind, importKinds } from '../../core/truss/importColumns.ts';
import { type Imported, importRows } from '../../core/truss/importRows.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import { modelCsv, tableCells } from '../../present/importTable.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { countWords } from '../../present/words/names.ts';
import { fileName, saveFile } from '../storage/files.ts';
import { changeModel, setDraft, useDraft, useDraftTruss } from './draft.ts';

const kindWords = { stations: 'Stations', clusters: 'Clusters', members: 'Tubes' } as const satisfies Record<
  ImportKind,
  string
>;

const changeOf = (read: Imported): ModelChange =>
  read.kind === 'stations'
    ? { kind: 'takeStations', rows: read.good }
    : read.kind === 'clusters'
      ? { kind: 'takeClusters', rows: read.good }
      : { kind: 'takeMembers', rows: read.good };

const Preview = ({ read }: { readonly read: Imported }) => {
  const bad = read.rows.filter((r) => r.faults.length > 0).length;
  const same = read.rows.filter((r) => r.same).length;
  return (
    <section className="stack tight" aria-label="Preview">
      <p role="status">
        {read.missing.length > 0
          ? `The table has no column ${read.missing.join(', ')}. It needs: ${read.columns.join(', ')}.`
          : `${countWords(read.good.length, 'row')} to take, ${bad} with something wrong, ${same} as it is already.`}
      </p>
      <div className="wide-table">
        <table className="entry-table preview">
          <thead>
            <tr>
              <th scope="col">Row</th>
              {read.columns.map((title) => (
                <th key={title} scope="col">
                  {title}
                </th>
              ))}
              <th scope="col">What is wrong</th>
            </tr>
          </thead>
          <tbody>
            {read.rows.map((r) => (
              <tr key={r.row} className={r.faults.length > 0 ? 'bad' : r.same ? 'same' : undefined}>
                <th scope="row">{r.row}</th>
                {r.cells.map((cell, k) => (
                  <td
                    key={read.columns[k]}
                    className={r.faults.some((f) => f.column === read.columns[k]) ? 'wrong' : undefined}
                  >
                    {cell}
                  </td>
                ))}
                <td className="small">
                  {r.faults
                    .map((f) => `${f.column}: ${issueSentence(f.issue)} ${mendSentence(f.issue)}`)
                    .join(' ')}
                  {r.same ? 'as it is already' : ''}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={read.good.length === 0}
          onClick={() => {
            if (changeModel([changeOf(read)], `${kindWords[read.kind].toLowerCase()} from a table`))
              setDraft({ pasted: '' });
          }}
        >
          Take {countWords(read.good.length, 'good row')}
        </button>
        <button type="button" onClick={() => setDraft({ pasted: '' })}>
          Throw the table away
        </button>
      </div>
    </section>
  );
};

/** Tables in and out: pasted from a spreadsheet or read from a CSV file, looked at before anything is taken. */
export const ImportTable = () => {
  const model = useDraft((draft) => draft.model);
  const pasted = useDraft((draft) => draft.pasted);
  const truss = useDraftTruss();
  const [kind, setKind] = useState<ImportKind>('stations');
  const read = useMemo(
    () => (pasted.trim() === '' ? null : importRows(kind, tableCells(pasted), model, truss)),
    [kind, pasted, model, truss],
  );
  return (
    <div className="stack">
      <section className="stack tight" aria-label="Table in">
        <h3>Table in</h3>
        <div className="row">
          <select
            aria-label="The table holds"
            value={kind}
            onChange={(e) => setKind(e.target.value as ImportKind)}
          >
            {importKinds.map((one) => (
              <option key={one} value={one}>
                {kindWords[one]}
              </option>
            ))}
          </select>
          <label className="pressable">
            From a CSV file
            <input
              type="file"
              accept=".csv,.tsv,.txt,text/csv"
              className="unseen"
              onChange={(e) => {
                const file = e.target.files?.[0];
                if (file) void file.text().then((text) => setDraft({ pasted: text }));
                e.target.value = '';
              }}
            />
          </label>
        </div>
        <textarea
          aria-label="Paste a table here"
          rows={5}
          spellCheck={false}
          placeholder="Paste here from a spreadsheet, with or without a row of titles."
          value={pasted}
          onChange={(e) => setDraft({ pasted: e.target.value })}
        />
      </section>
      {read && <Preview read={read} />}
      <section className="stack tight" aria-label="Tables out">
        <h3>Tables out</h3>
        <div className="row">
          {importKinds.map((one) => (
            <button
              key={one}
              type="button"
              disabled={truss.clusters.length === 0}
              onClick={() =>
                saveFile(fileName(model.name, `-${one}.csv`), modelCsv(one, model, truss), 'text/csv')
              }
            >
              {kindWords[one]} as CSV
            </button>
          ))}
        </div>
        <p className="small soft">
          x is station, aft; butt line is positive to the pilot’s right; water line is up. Lengths in{' '}
          {model.drawnIn}. Reading a table back changes nothing.
        </p>
      </section>
    </div>
  );
};
