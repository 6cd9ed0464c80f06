import { useState } from 'react';
import { paperNames, paperTitles } from '../../present/papers/titles.ts';
import { chapterNames, chapterTitles, usualChapters } from '../../present/record/chapterNames.ts';
import type { ReportPart } from '../../present/record.ts';
import { type ReportState, saveCopy, saveReport } from '../handout.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';

const reportWords = (report: ReportState): string => {
  switch (report.kind) {
    case 'idle':
      return '';
    case 'working':
      return 'The report is being worked out and drawn …';
    case 'done':
      return report.what === 'pdf'
        ? 'The report is saved as report.pdf.'
        : 'The tables are saved, a CSV each.';
    case 'stopped':
      return 'Stopped. Nothing was saved.';
    case 'failed':
      return `The report could not be made, by our own fault: ${report.why} The job is saved.`;
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
    <section className="stack tight" aria-label="Papers and copies">
      <h2>Papers and copies</h2>
      <div className="row">
        <label className="check">
          <span>Paper</span>
          <select
            value={paper}
            onChange={(e) => setPrefs({ paper: e.target.value === 'letter' ? 'letter' : 'a4' })}
          >
            <option value="a4">A4</option>
            <option value="letter">Letter</option>
          </select>
        </label>
        <button
          type="button"
          className="main"
          disabled={working}
          onClick={() => void saveReport('pdf', setReport, usual ? undefined : [...holds])}
        >
          Download the report (PDF)
        </button>
        <button type="button" disabled={working} onClick={() => void saveReport('csv', setReport)}>
          Download the tables (CSV)
        </button>
        <button type="button" onClick={() => void saveCopy()}>
          Save a copy of the job
        </button>
      </div>
      <div className="row small">
        <span role="status" aria-label="Report">
          {reportWords(report)}
        </span>
        {report.kind === 'working' && (
          <button type="button" className="link" onClick={report.stop}>
            Stop
          </button>
        )}
      </div>
      <Holds holds={holds} usual={usual} onChange={setHolds} />
      {purpose === 'practice' && <p className="small">Practice file: every page carries the mark.</p>}
    </section>
  );
};

const groups = [
  { name: 'Chapters', parts: chapterNames, title: (name: ReportPart) => chapterTitles[name as never] },
  { name: 'Papers bound in', parts: paperNames, title: (name: ReportPart) => paperTitles[name as never] },
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
      <summary>What is in the report: {usual ? 'the usual chapters' : `${holds.size} chosen`}</summary>
      <p className="small soft">Page one always stands first. Every page says what nobody has looked at.</p>
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
        The usual chapters again
      </button>
    </details>
  );
};
