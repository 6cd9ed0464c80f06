import { VERSION } from '../../core/version.ts';
import { csvText } from '../../present/csv.ts';
import { showTime } from '../../present/show.ts';
import { practiceResultsTable } from '../../present/tables/practice.ts';
import { exerciseWords, questionWords } from '../../present/words/practice.ts';
import { saveFile } from '../storage/files.ts';
import { progressText } from '../text/practice.ts';
import { forgetProgress, useProgress } from './progress.ts';
import { Shares } from './Shares.tsx';

const nameOf = (skill: string): string => (questionWords as Readonly<Record<string, string>>)[skill] ?? skill;

/** How the last rounds went, skill by skill, and the results as a table for an instructor. */
export const ProgressList = () => {
  const { results } = useProgress();
  if (results.length === 0) return null;
  const recent = results.slice(-20);
  const kinds = (['layout', 'hidden', 'trammel', 'plan'] as const).filter((kind) =>
    recent.some((r) => r.kind === kind),
  );
  const sums = (kind: (typeof kinds)[number]) => {
    const shares: Record<string, { got: number; of: number }> = {};
    for (const result of recent.filter((r) => r.kind === kind))
      for (const [skill, share] of Object.entries(result.shares)) {
        const { got, of } = shares[nameOf(skill)] ?? { got: 0, of: 0 };
        shares[nameOf(skill)] = { got: got + share.got, of: of + share.of };
      }
    return shares;
  };
  const saveCsv = (): void => {
    const head = {
      job: progressText.table,
      date: showTime(results.at(-1)?.at ?? ''),
      version: VERSION,
      practice: true,
    };
    saveFile('practice-results.csv', csvText(practiceResultsTable(results), head), 'text/csv');
  };
  return (
    <details>
      <summary>{progressText.title(results.length)}</summary>
      <div className="stack tight">
        {kinds.map((kind) => (
          <section key={kind} className="stack tight" aria-label={progressText.of(exerciseWords[kind])}>
            <h3>{exerciseWords[kind]}</h3>
            <Shares shares={sums(kind)} />
          </section>
        ))}
        <p className="small soft">{progressText.lead}</p>
        <p className="row">
          <button type="button" onClick={saveCsv}>
            {progressText.save}
          </button>
          <button type="button" onClick={forgetProgress}>
            {progressText.forget}
          </button>
        </p>
      </div>
    </details>
  );
};
