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
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { setManual } from '../planDeeds.ts';
import { useAnswer } from '../state/answer.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { weldsText as text } from '../text/record.ts';

type Weld = NonNullable<RecordOf<'progress'>['weld']>;
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
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      <details className="small">
        <summary>{text.ofTheJob}</summary>
        <OfTheJob />
      </details>
      {rows.length === 0 ? (
        <p className="empty">{text.none}</p>
      ) : (
        <details className="small">
          <summary>{text.count(rows.length, missing)}</summary>
          <ul className="paper-list" aria-label={text.list}>
            {rows.map((row) => (
              <li key={row.step} className="weld-row">
                <span>
                  <button type="button" className="link" onClick={() => select(row.of)}>
                    {text.weld(row.of, jointWords(row))}
                  </button>
                  <span className="small soft">{weldWords(row)}</span>
                </span>
                <button
                  type="button"
                  aria-expanded={open === row.step}
                  aria-label={text.writeOf(text.weld(row.of, jointWords(row)))}
                  onClick={() => setOpen(open === row.step ? null : row.step)}
                >
                  {open === row.step ? text.close : text.write}
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
    row.process ?? text.noProcess,
    row.filler ?? text.noFiller,
    text.farSideIs(row.farSide ? farSideWords[row.farSide] : text.notEntered),
    row.method ? methodWords[row.method] : text.notLookedAt,
    ...(row.result ? [weldResultWords[row.result]] : []),
    row.qualified ?? text.nobody,
  ].join(' · ');

const OfTheJob = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const [typed, setTyped] = useState({ process: '', filler: '' });
  return (
    <div className="fields">
      {names.map((name) => (
        <label key={name} className="field">
          <span className="caption">
            {text.nowEntered(
              text.names[name],
              now?.live.manual.findLast((m) => m.topic === weldTopics[name])?.words ?? text.notEntered,
            )}
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
                { topic: weldTopics[name], words: typed[name].trim(), source: text.asEntered },
                text.names[name],
              );
          setTyped({ process: '', filler: '' });
        }}
      >
        {text.enter}
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
    if (change({ kind: 'addProgress', progress }, text.written(text.weld(row.of, jointWords(row))))) onDone();
  };
  return (
    <div className="fields wide">
      <label className="field">
        <span className="caption">{text.names.process}</span>
        <input value={process} onChange={(e) => setProcess(e.target.value)} />
      </label>
      <label className="field">
        <span className="caption">{text.names.filler}</span>
        <input value={filler} onChange={(e) => setFiller(e.target.value)} />
      </label>
      <ChoiceField
        label={text.farSide}
        value={farSide}
        words={[['', text.notEntered], ...farSides.map((one) => [one, farSideWords[one]] as const)]}
        onWord={setFarSide}
      />
      <ChoiceField
        label={text.method}
        value={method}
        words={[['', text.notLookedAt], ...lookMethods.map((one) => [one, methodWords[one]] as const)]}
        onWord={setMethod}
      />
      <ChoiceField
        label={text.result}
        value={result}
        words={[
          ['', text.notEntered],
          ['clear', weldResultWords.clear],
          ['crack', weldResultWords.crack],
        ]}
        onWord={setResult}
      />
      <label className="field">
        <span className="caption">{text.qualified}</span>
        <input value={second} onChange={(e) => setSecond(e.target.value)} />
      </label>
      <button type="button" onClick={write}>
        {text.writeIt}
      </button>
    </div>
  );
};
