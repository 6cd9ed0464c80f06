import { useState } from 'react';
import { isRight, type Question } from '../../core/practice/questions.ts';
import { showLength } from '../../present/show.ts';
import { clusterWords } from '../../present/words/names.ts';
import { askWords, choiceLabel, questionWords, whyWords } from '../../present/words/practice.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { practiceText } from '../text/practice.ts';
import { layoutText as text } from '../text/practiceLayout.ts';
import { answerWith, beginLayout, endRun, nextQuestion, touchCluster } from './layoutRun.ts';
import { Shares } from './Shares.tsx';
import type { LayoutRun } from './session.ts';

/** One drill: a question at a time, marked at once with its reason; an exam is marked at its end. */
export const LayoutDrill = ({ run }: { readonly run: LayoutRun }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const question = run.questions[run.at];
  if (!now) return null;
  return (
    <section className="stack" aria-label={text.region}>
      <div className="entry-head">
        <h2>{run.exam ? text.exam : text.drill}</h2>
        <button type="button" onClick={endRun}>
          {run.over ? practiceText.close : practiceText.leave}
        </button>
      </div>
      {question === undefined ? (
        <p className="empty">{text.noQuestion}</p>
      ) : run.over ? (
        <Ended run={run} now={now} />
      ) : (
        <>
          <Steps run={run} />
          <Ask key={question.id} run={run} question={question} now={now} />
        </>
      )}
    </section>
  );
};

const Steps = ({ run }: { readonly run: LayoutRun }) => (
  <ol className="steps" aria-label={text.steps(run.at + 1, run.questions.length)}>
    {run.questions.map((question, k) => {
      const answer = run.answers[k];
      const told = answer !== undefined && !run.exam;
      const state = told ? (isRight(question, answer) ? 'right' : 'wrong') : k < run.at ? 'given' : 'open';
      return (
        <li key={question.id} data-state={state} aria-current={k === run.at ? 'step' : undefined}>
          <span aria-hidden="true">{state === 'right' ? '✓' : state === 'wrong' ? '✗' : k + 1}</span>
          <span className="unseen">{text.step(k + 1, state)}</span>
        </li>
      );
    })}
  </ol>
);

const useCaseName = (id: string | undefined): string => {
  const model = useAnswer((answer) => answer.atOnce?.live.model ?? answer.atOnce?.job.model);
  return model?.loadCases.find((one) => one.id === id)?.name ?? id ?? '';
};

const Ask = ({
  run,
  question,
  now,
}: {
  readonly run: LayoutRun;
  readonly question: Question;
  readonly now: AtOnce;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const caseName = useCaseName(question.case);
  const given = run.shown ? run.answers[run.at] : undefined;
  return (
    <div className="stack">
      <p className="small soft">
        {text.kind(run.at + 1, run.questions.length, questionWords[question.kind])}
      </p>
      <p className="question">{askWords(question, now.truss, caseName, units)}</p>
      {question.by === 'choice' && (
        <div className="choices">
          {question.choices.map((choice) => (
            <button
              key={choice}
              type="button"
              disabled={run.shown}
              data-mark={
                given && 'said' in given
                  ? choice === question.right
                    ? 'right'
                    : choice === given.said
                      ? 'wrong'
                      : undefined
                  : undefined
              }
              onClick={() => answerWith({ said: choice })}
            >
              {choiceLabel(question, choice, now)}
            </button>
          ))}
        </div>
      )}
      {question.by === 'pair' && !run.shown && (
        <p className="small" role="status">
          {run.touched === null ? text.nothingDrawn : text.drawnFrom(clusterWords(run.touched), run.touched)}
        </p>
      )}
      {(question.by === 'cluster' || question.by === 'pair') && !run.shown && <ClusterField now={now} />}
      {question.by === 'length' && !run.shown && <Length />}
      {given && (
        <Verdict question={question} right={isRight(question, given)} now={now} caseName={caseName} />
      )}
      {given && (
        <p>
          <button type="button" className="main" onClick={nextQuestion}>
            {run.at + 1 < run.questions.length ? text.next : text.seeMarks}
          </button>
        </p>
      )}
    </div>
  );
};

/** The same as a touch, for those who work without the picture. */
const ClusterField = ({ now }: { readonly now: AtOnce }) => (
  <div className="field">
    <label htmlFor="practice-cluster">{text.place}</label>
    <select id="practice-cluster" value="" onChange={(e) => touchCluster(e.target.value)}>
      <option value="" disabled>
        {text.choosePlace}
      </option>
      {now.truss.clusters.map(({ id, at }) => (
        <option key={id} value={id}>
          {at.map((v) => v.toFixed(1)).join(', ')}
        </option>
      ))}
    </select>
  </div>
);

const Length = () => {
  const units = usePrefs((prefs) => prefs.units);
  const [typed, setTyped] = useState('');
  const entry = readEntry(typed, units, false);
  return (
    <form
      className="stack tight"
      onSubmit={(e) => {
        e.preventDefault();
        if (entry.kind === 'length') answerWith({ lengthIn: entry.valueIn });
      }}
    >
      <LengthField label={text.length} hint={text.lengthHint} typed={typed} onChange={setTyped} />
      <p>
        <button type="submit" className="main" disabled={entry.kind !== 'length'}>
          {text.answer}
        </button>
      </p>
    </form>
  );
};

const Verdict = ({
  question,
  right,
  now,
  caseName,
}: {
  readonly question: Question;
  readonly right: boolean;
  readonly now: AtOnce;
  readonly caseName: string;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const should =
    question.rightIn !== undefined
      ? showLength(question.rightIn, units)
      : question.by === 'cluster'
        ? clusterWords(question.right)
        : choiceLabel(question, question.right, now);
  return (
    <div className="notice" role="status" data-mark={right ? 'right' : 'wrong'}>
      <strong>{right ? text.right : text.wrong(should)}</strong>{' '}
      {whyWords(question.why, now, caseName, units)}
    </div>
  );
};

const Ended = ({ run, now }: { readonly run: LayoutRun; readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const model = now.live.model ?? now.job.model;
  const rows = run.questions.flatMap((question, k) => {
    const answer = run.answers[k];
    return answer ? [{ question, right: isRight(question, answer) }] : [];
  });
  const shares: Record<string, { got: number; of: number }> = {};
  for (const { question, right } of rows) {
    const { got, of } = shares[questionWords[question.kind]] ?? { got: 0, of: 0 };
    shares[questionWords[question.kind]] = { got: got + (right ? 1 : 0), of: of + 1 };
  }
  const wrong = rows.filter((row) => !row.right);
  return (
    <div className="stack">
      <Shares shares={shares} />
      {wrong.length > 0 && (
        <>
          <h3>{text.askedAgain}</h3>
          <ul className="entries">
            {wrong.map(({ question }) => (
              <li key={question.id}>
                <span>{questionWords[question.kind]}</span>
                <span className="small soft">
                  {whyWords(
                    question.why,
                    now,
                    model.loadCases.find((one) => one.id === question.case)?.name ?? '',
                    units,
                  )}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        <button type="button" className="main" onClick={() => beginLayout(run.exam)}>
          {text.again}
        </button>
      </p>
    </div>
  );
};
