import { useState } from 'react';
import { paperNames, paperTitles } from '../../present/papers/titles.ts';
import { chapterNames, chapterTitles, usualChapters } from '../../present/record/chapterNames.ts';
import type { ReportPart } from '../../present/record.ts';
import { type ReportState, saveCopy, saveReport } from '../handout.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { reportText as text } from '../text/record.ts';

const reportWords = (report: ReportState): string => {
  switch (report.kind) {
    case 'idle':
      return '';
    case 'working':
      return text.working;
    case 'done':
      return text.saved[report.what];
    case 'stopped':
      return text.stopped;
    case 'failed':
      return text.failed(report.why);
    default: {
      const never: never = report;
      return never;
    }
  }
};

/** The report and its tables, what the report holds, and a copy of the job. */
export const RecordPapers = () => {
  const paper = usePrefs((prefs) => prefs.paper);
  const purpose = useJob((state) => state.job?.purpose);
  const [report, setReport] = useState<ReportState>({ kind: 'idle' });
  const [holds, setHolds] = useState<ReadonlySet<ReportPart>>(new Set(usualChapters));
  const working = report.kind === 'working';
  const usual = holds.size === usualChapters.length && usualChapters.every((name) => holds.has(name));
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      <div className="row">
        <label className="check">
          <span>{text.paper}</span>
          <select
            value={paper}
            onChange={(e) => setPrefs({ paper: e.target.value === 'letter' ? 'letter' : 'a4' })}
          >
            <option value="a4">{text.sizes.a4}</option>
            <option value="letter">{text.sizes.letter}</option>
          </select>
        </label>
        <button
          type="button"
          className="main"
          disabled={working}
          onClick={() => void saveReport('pdf', setReport, usual ? undefined : [...holds])}
        >
          {text.pdf}
        </button>
        <button type="button" disabled={working} onClick={() => void saveReport('csv', setReport)}>
          {text.csv}
        </button>
        <button type="button" onClick={() => void saveCopy()}>
          {text.copy}
        </button>
      </div>
      <div className="row small">
        <span role="status" aria-label={text.report}>
          {reportWords(report)}
        </span>
        {report.kind === 'working' && (
          <button type="button" className="link" onClick={report.stop}>
            {text.stop}
          </button>
        )}
      </div>
      <Holds holds={holds} usual={usual} onChange={setHolds} />
      {purpose === 'practice' && <p className="small">{text.practice}</p>}
    </section>
  );
};

const groups = [
  { name: text.chapters, parts: chapterNames, title: (name: ReportPart) => chapterTitles[name as never] },
  { name: text.papers, parts: paperNames, title: (name: ReportPart) => paperTitles[name as never] },
] as const;

const Holds = ({
  holds,
  usual,
  onChange,
}: {
  readonly holds: ReadonlySet<ReportPart>;
  readonly usual: boolean;
  readonly onChange: (holds: ReadonlySet<ReportPart>) => void;
}) => {
  const put = (name: ReportPart, held: boolean): void => {
    const next = new Set(holds);
    if (held) next.add(name);
    else next.delete(name);
    onChange(next);
  };
  return (
    <details className="small">
      <summary>{text.holds(usual ? null : holds.size)}</summary>
      <p className="small soft">{text.holdsNote}</p>
      {groups.map(({ name, parts, title }) => (
        <fieldset key={name} className="holds">
          <legend>{name}</legend>
          {parts.map((part) => (
            <label key={part} className="check">
              <input
                type="checkbox"
                checked={holds.has(part)}
                onChange={(e) => put(part, e.target.checked)}
              />
              <span>{title(part)}</span>
            </label>
          ))}
        </fieldset>
      ))}
      <button type="button" disabled={usual} onClick={() => onChange(new Set(usualChapters))}>
        {text.usualAgain}
      </button>
    </details>
  );
};
