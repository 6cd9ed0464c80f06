import type { Assessment } from '../../core/assessment.ts';
import type { DispositionRow } from '../../core/disposition/result.ts';
import { choiceWords } from '../../present/tags.ts';
import { answerWords, missingShort, missingWay } from '../../present/words/disposition.ts';
import { clusterWords, countWords, memberWords } from '../../present/words/names.ts';
import { Cautions } from '../parts/Caution.tsx';
import { Issues } from '../parts/Issues.tsx';
import { TagMark } from '../parts/TagMark.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { select, selectAll, useView } from '../state/view.ts';
import { decidePanelText } from '../text/decide.ts';
import { DecideOne } from './DecideOne.tsx';

/** What is to be done about each tube and cluster: the rules beside every way, and the person decides. */
export const DecidePanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!all || !now) return <Waiting />;
  const row = [...selected]
    .reverse()
    .map((id) => all.disposition.rows.find((one) => one.id === id))
    .find((one) => one !== undefined);
  return (
    <div className="stack">
      <Cautions step="generalRules" />
      {row ? (
        <>
          <DecideOne key={row.id} now={now} row={row} />
          <button type="button" className="link back" onClick={() => selectAll([])}>
            {decidePanelText.back}
          </button>
        </>
      ) : (
        <Whole now={now} all={all} />
      )}
      <Issues issues={all.disposition.issues} />
    </div>
  );
};

const nameOf = (now: AtOnce, { id, kind }: DispositionRow): string => {
  const member = now.members.get(id);
  return kind === 'member' && member ? memberWords(member) : clusterWords(id);
};

/** One line of what matters: the decision and the rules, or what is missing to decide. */
const lineOf = ({ decided, missing, options }: DispositionRow): string => {
  if (decided) {
    const against = decided.answer === 'applies' ? '' : decidePanelText.against(answerWords[decided.answer]);
    const reason = decided.reasonNeeded && !decided.reasonWritten ? decidePanelText.noReason : '';
    return `${choiceWords[decided.choice]}${against}${reason}`;
  }
  const open = options.filter((o) => o.answer === 'applies' && o.choice !== 'refer').length;
  // the maker's data are asked for beside each way; here stands what a person can go and measure
  const lacks = [...new Set(missing.filter((m) => missingWay(m) !== 'manual').map(missingShort))];
  return [
    open > 0 ? decidePanelText.waysOpen(countWords(open, 'way')) : decidePanelText.noWay,
    ...(lacks.length > 0 ? [decidePanelText.missing(lacks.slice(0, 3), lacks.length > 3)] : []),
  ].join('; ');
};

const Whole = ({ now, all }: { readonly now: AtOnce; readonly all: Assessment }) => {
  const { rows, groups } = all.disposition;
  if (rows.length === 0) return <p className="empty">{decidePanelText.nothing}</p>;
  return (
    <>
      {groups.map(({ state, members, clusters }) => {
        const these = rows.filter((row) => row.state === state);
        if (these.length === 0) return null;
        return (
          <section key={state} className="stack tight" aria-label={state}>
            <div className="group-head">
              <TagMark state={state} />
              <span className="small soft">
                {countWords(members.length, 'tube')}
                {clusters.length > 0 ? `, ${countWords(clusters.length, 'cluster')}` : ''}
              </span>
            </div>
            <ul className="entries">
              {these.map((row) => (
                <li key={row.id}>
                  <button type="button" className="entry-button" onClick={() => select(row.id)}>
                    <strong>{row.id}</strong>
                    <span className="small soft">{nameOf(now, row)}</span>
                    <span className="small entry-line">{lineOf(row)}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
};
