import { useState } from 'react';
import { states } from '../../core/walkRound/result.ts';
import { pageFoot } from '../../present/words/cautions.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { type ReportState, saveCopy, saveReport } from '../handout.ts';
import { PlainLine } from '../parts/FigureLine.tsx';
import { TagMark } from '../parts/TagMark.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { PapersOfWork } from './PapersOfWork.tsx';

/** What stands on the record: counts, what nobody has looked at, and the papers to take away. */
export const RecordPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  if (!now) return <Waiting />;
  const { coverage } = now;
  const { members, clusters } = coverage.notLookedAt;
  return (
    <div className="stack">
      <Papers />
      <PapersOfWork />
      <section className="stack tight" aria-label="Counts">
        <h2>How the job stands</h2>
        <div className="figures">
          {states.map((state) => (
            <div key={state} className="figure figure-plain">
              <TagMark state={state} />
              <span className="value">
                {coverage.members[state]}
                <span className="soft"> + {coverage.clusters[state]}</span>
              </span>
            </div>
          ))}
          <PlainLine name="Findings recorded">{coverage.findings.length}</PlainLine>
          <PlainLine name="Readings recorded">{now.live.readings.length}</PlainLine>
        </div>
        <p className="small soft">Tubes + clusters.</p>
      </section>
      <section className="stack tight" aria-label="Not looked at">
        <h2>
          Not looked at: {members.length} tubes, {clusters.length} clusters
        </h2>
        {members.length + clusters.length === 0 && <p>Every tube and cluster has been looked at.</p>}
        <Ids ids={members} words={(id) => memberWords(now.members.get(id)!)} name="Tubes not looked at" />
        <Ids ids={clusters} words={clusterWords} name="Clusters not looked at" />
      </section>
      <p className="small soft">{pageFoot}</p>
    </div>
  );
};

const Ids = ({
  ids,
  words,
  name,
}: {
  readonly ids: readonly string[];
  readonly words: (id: string) => string;
  readonly name: string;
}) =>
  ids.length === 0 ? null : (
    <ul className="id-list" aria-label={name}>
      {ids.map((id) => (
        <li key={id}>
          <button type="button" className="link" title={words(id)} onClick={() => select(id)}>
            {id}
          </button>
        </li>
      ))}
    </ul>
  );

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

const Papers = () => {
  const paper = usePrefs((prefs) => prefs.paper);
  const purpose = useJob((state) => state.job?.purpose);
  const [report, setReport] = useState<ReportState>({ kind: 'idle' });
  const working = report.kind === 'working';
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
          onClick={() => void saveReport('pdf', setReport)}
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
      {purpose === 'practice' && <p className="small">Practice file: every page carries the mark.</p>}
    </section>
  );
};
