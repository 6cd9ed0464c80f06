import { useMemo, useState } from 'react';
import { type ImportKind, importKinds } from '../../core/truss/importColumns.ts';
import { type Imported, importRows } from '../../core/truss/importRows.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import { modelCsv, tableCells } from '../../present/importTable.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { countWords } from '../../present/words/names.ts';
import { fileName, readFile, saveFile } from '../storage/files.ts';
import { tablesText as words } from '../text/modelTables.ts';
import { changeModel, setDraft, useDraft, useDraftTruss } from './draft.ts';

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
    <section className="stack tight" aria-label={words.preview}>
      <p role="status">
        {read.missing.length > 0
          ? words.columnsMissing(read.missing, read.columns)
          : words.counted(countWords(read.good.length, 'row'), bad, same)}
      </p>
      <div className="wide-table">
        <table className="entry-table preview">
          <thead>
            <tr>
              <th scope="col">{words.row}</th>
              {read.columns.map((title) => (
                <th key={title} scope="col">
                  {title}
                </th>
              ))}
              <th scope="col">{words.wrong}</th>
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
                  {r.same ? words.same : ''}
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
            if (changeModel([changeOf(read)], words.taken(words.kinds[read.kind]))) setDraft({ pasted: '' });
          }}
        >
          {words.take(countWords(read.good.length, words.goodRow))}
        </button>
        <button type="button" onClick={() => setDraft({ pasted: '' })}>
          {words.throwAway}
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
  const [said, setSaid] = useState('');
  const takeFile = async (file: File): Promise<void> => {
    const opened = await readFile(file);
    if (opened.kind === 'text') setDraft({ pasted: opened.text });
    setSaid(
      opened.kind === 'text'
        ? ''
        : words.notRead(opened.name, opened.kind === 'tooLarge' ? words.tooLarge : words.unreadable),
    );
  };
  const read = useMemo(
    () => (pasted.trim() === '' ? null : importRows(kind, tableCells(pasted), model, truss)),
    [kind, pasted, model, truss],
  );
  return (
    <div className="stack">
      <section className="stack tight" aria-label={words.in}>
        <h3>{words.in}</h3>
        <div className="row">
          <select
            aria-label={words.holds}
            value={kind}
            onChange={(e) => setKind(e.target.value as ImportKind)}
          >
            {importKinds.map((one) => (
              <option key={one} value={one}>
                {words.kinds[one]}
              </option>
            ))}
          </select>
          <label className="pressable">
            {words.fromFile}
            <input
              type="file"
              accept=".csv,.tsv,.txt,text/csv"
              className="unseen"
              onChange={(e) => {
                const file = e.target.files?.[0];
                if (file) void takeFile(file);
                e.target.value = '';
              }}
            />
          </label>
        </div>
        <textarea
          aria-label={words.paste}
          rows={5}
          spellCheck={false}
          placeholder={words.pasteHint}
          value={pasted}
          onChange={(e) => setDraft({ pasted: e.target.value })}
        />
        {said !== '' && <p role="alert">{said}</p>}
      </section>
      {read && <Preview read={read} />}
      <section className="stack tight" aria-label={words.out}>
        <h3>{words.out}</h3>
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
              {words.asCsv(words.kinds[one])}
            </button>
          ))}
        </div>
        <p className="small soft">{words.axes(model.drawnIn)}</p>
      </section>
    </div>
  );
};
