import { useState } from 'react';
import { farSides, lookMethods, type RecordOf } from '../../core/job/jobSchema.ts';
import {
  jointWords,
  type WeldRow,
  weldResultWords,
  weldRows,
  weldTopics,
} from '../../present/tables/welds.ts';
import { farSideWords, methodWords } from '../../present/words/record.ts';
import { setManual } from '../planDeeds.ts';
import { useAnswer } from '../state/answer.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';

type Weld = NonNullable<RecordOf<'progress'>['weld']>;
const captions = { process: 'Welding process', filler: 'Filler rod' } as const;
const names = ['process', 'filler'] as const;

/** Process and filler of the job, then every weld with what was seen of it. */
export const RecordWelds = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const units = usePrefs((prefs) => prefs.units);
  const [open, setOpen] = useState<string | null>(null);
  if (!now || !all) return null;
  const rows = weldRows({ job: now.job, assessment: all, units }, now.live);
  const missing = rows.filter(
    ({ process, filler, farSide, method, qualified }) =>
      !process || !filler || !farSide || !method || !qualified,
  ).length;
  return (
    <section className="stack tight" aria-label="Welds">
      <h2>Welds</h2>
      <details className="small">
        <summary>Process and filler of the whole job</summary>
        <OfTheJob />
      </details>
      {rows.length === 0 ? (
        <p className="empty">No weld is planned.</p>
      ) : (
        <details className="small">
          <summary>
            {rows.length} welds, {missing} with something not entered
          </summary>
          <ul className="paper-list" aria-label="Welds of the plan">
            {rows.map((row) => (
              <li key={row.step} className="weld-row">
                <span>
                  <button type="button" className="link" onClick={() => select(row.of)}>
                    {row.of}, {jointWords(row)}
                  </button>
                  <span className="small soft">{weldWords(row)}</span>
                </span>
                <button
                  type="button"
                  aria-expanded={open === row.step}
                  aria-label={`Write down: ${row.of}, ${jointWords(row)}`}
                  onClick={() => setOpen(open === row.step ? null : row.step)}
                >
                  {open === row.step ? 'Close' : 'Write down'}
                </button>
                {open === row.step && <OneWeld row={row} onDone={() => setOpen(null)} />}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};

const weldWords = (row: WeldRow): string =>
  [
    row.process ?? 'process not entered',
    row.filler ?? 'filler not entered',
    `far side ${row.farSide ? farSideWords[row.farSide] : 'not entered'}`,
    row.method ? methodWords[row.method] : 'not looked at yet',
    ...(row.result ? [weldResultWords[row.result]] : []),
    row.qualified ?? 'nobody named',
  ].join(' · ');

const OfTheJob = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const [typed, setTyped] = useState({ process: '', filler: '' });
  return (
    <div className="fields">
      {names.map((name) => (
        <label key={name} className="field">
          <span className="caption">
            {captions[name]}
            {': '}
            {now?.live.manual.findLast((m) => m.topic === weldTopics[name])?.words ?? 'not entered'}
          </span>
          <input value={typed[name]} onChange={(e) => setTyped({ ...typed, [name]: e.target.value })} />
        </label>
      ))}
      <button
        type="button"
        onClick={() => {
          for (const name of names)
            if (typed[name].trim() !== '')
              setManual(
                { topic: weldTopics[name], words: typed[name].trim(), source: 'as entered' },
                captions[name],
              );
          setTyped({ process: '', filler: '' });
        }}
      >
        Enter them
      </button>
    </div>
  );
};

/** One weld: its own process and filler begin as the job's; only what a person says is written down. */
const OneWeld = ({ row, onDone }: { readonly row: WeldRow; readonly onDone: () => void }) => {
  const [process, setProcess] = useState(row.process ?? '');
  const [filler, setFiller] = useState(row.filler ?? '');
  const [farSide, setFarSide] = useState<NonNullable<WeldRow['farSide']> | ''>(row.farSide ?? '');
  const [method, setMethod] = useState<NonNullable<WeldRow['method']> | ''>(row.method ?? '');
  const [result, setResult] = useState<NonNullable<WeldRow['result']> | ''>(row.result ?? '');
  const [second, setSecond] = useState(row.qualified ?? '');
  const write = (): void => {
    const weld: Weld = {
      ...(row.joint === null ? {} : { joint: row.joint }),
      ...(process.trim() === '' ? {} : { process: process.trim() }),
      ...(filler.trim() === '' ? {} : { filler: filler.trim() }),
      ...(farSide === '' ? {} : { farSide }),
      ...(method === '' ? {} : { method }),
      ...(result === '' ? {} : { result }),
    };
    const progress = {
      step: row.step,
      of: row.of,
      done: true,
      weld,
      ...(second.trim() === '' ? {} : { secondPerson: second.trim() }),
    };
    if (change({ kind: 'addProgress', progress }, `Weld written down: ${row.of}, ${jointWords(row)}`))
      onDone();
  };
  return (
    <div className="fields wide">
      <label className="field">
        <span className="caption">{captions.process}</span>
        <input value={process} onChange={(e) => setProcess(e.target.value)} />
      </label>
      <label className="field">
        <span className="caption">{captions.filler}</span>
        <input value={filler} onChange={(e) => setFiller(e.target.value)} />
      </label>
      <label className="field">
        <span className="caption">Far side</span>
        <select value={farSide} onChange={(e) => setFarSide(e.target.value as typeof farSide)}>
          <option value="">not entered</option>
          {farSides.map((one) => (
            <option key={one} value={one}>
              {farSideWords[one]}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="caption">Method</span>
        <select value={method} onChange={(e) => setMethod(e.target.value as typeof method)}>
          <option value="">not looked at yet</option>
          {lookMethods.map((one) => (
            <option key={one} value={one}>
              {methodWords[one]}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="caption">Result</span>
        <select value={result} onChange={(e) => setResult(e.target.value as typeof result)}>
          <option value="">not entered</option>
          <option value="clear">{weldResultWords.clear}</option>
          <option value="crack">{weldResultWords.crack}</option>
        </select>
      </label>
      <label className="field">
        <span className="caption">Person qualified for the method</span>
        <input value={second} onChange={(e) => setSecond(e.target.value)} />
      </label>
      <button type="button" onClick={write}>
        Write it down
      </button>
    </div>
  );
};
