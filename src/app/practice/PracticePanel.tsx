import { type ReactNode, useState } from 'react';
import type { ExerciseKind } from '../../core/practice/areas.ts';
import type { Task } from '../../core/practice/exercise.ts';
import { dueOn } from '../../core/practice/schedule.ts';
import { areaNote, areaWords, exerciseAbout, exerciseWords } from '../../present/words/practice.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { practiceText as text } from '../text/practice.ts';
import { type Asked, AskFields } from './AskFields.tsx';
import { Coupon } from './Coupon.tsx';
import { HiddenRound } from './HiddenRound.tsx';
import { beginRound, useExercise } from './hiddenRun.ts';
import { Instructor } from './Instructor.tsx';
import { LayoutDrill } from './LayoutDrill.tsx';
import { beginLayout } from './layoutRun.ts';
import { PlanOrder } from './PlanOrder.tsx';
import { ProgressList } from './ProgressList.tsx';
import { beginPlan } from './planRun.ts';
import { today, useProgress } from './progress.ts';
import { freshSeed, useSession } from './session.ts';
import { TrammelRound } from './TrammelRound.tsx';

/** Practice: the exercises with level and seed, the one in hand, progress by skill, and what an instructor does. */
export const PracticePanel = () => {
  const key = useJob((job) => job.key);
  const kept = useSession((session) => session.run);
  const run = kept?.key === key ? kept : null;
  const making = useSession((session) => session.making);
  const open = useExercise();
  if (run?.kind === 'layout') return <LayoutDrill run={run} />;
  if (run?.kind === 'plan') return <PlanOrder run={run} />;
  return (
    <div className="stack practice">
      {making && (
        <p className="notice row" role="status">
          {text.making}
          <button type="button" onClick={making}>
            {text.cancel}
          </button>
        </p>
      )}
      {open?.exercise.task === 'trammel' && <TrammelRound key={key} exercise={open.exercise} />}
      {open?.exercise.task === 'hidden' && key !== null && (
        <HiddenRound key={key} jobKey={key} exercise={open.exercise} />
      )}
      {open ? (
        <details>
          <summary>{text.others}</summary>
          <Exercises />
        </details>
      ) : (
        <Exercises />
      )}
      <ProgressList />
      <Instructor />
      <p className="small soft">{areaNote}</p>
    </div>
  );
};

const Exercise = ({ kind, children }: { readonly kind: ExerciseKind; readonly children: ReactNode }) => (
  <li>
    <h3>{exerciseWords[kind]}</h3>
    <p>{exerciseAbout[kind]}</p>
    <p className="small soft">{areaWords(kind)}</p>
    {children}
  </li>
);

const Exercises = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const cards = useProgress((progress) => progress.cards);
  const [asked, setAsked] = useState<Asked>(() => ({ level: 1, seed: freshSeed(), locked: false }));
  const { level, seed, locked: exam } = asked;
  if (!now) return <p className="empty">{text.noTruss}</p>;
  const model = now.live.model ?? now.job.model;
  const due = dueOn(cards, today()).length;
  const round = (task: Task, words: string) => (
    <p className="row">
      <button type="button" className="main" onClick={() => void beginRound(model, level, exam, seed, task)}>
        {words}
      </button>
    </p>
  );
  return (
    <section className="stack tight" aria-label={text.region}>
      <h2>{text.title(model.name)}</h2>
      <p className="small soft">{text.lead}</p>
      <div className="fields">
        <AskFields ask={asked} lockedWords={text.locked} onAsk={setAsked} />
      </div>
      <ul className="entries exercises">
        <Exercise kind="layout">
          <p className="row">
            <button type="button" className="main" onClick={() => beginLayout(exam, seed)}>
              {text.layout}
            </button>
            {due > 0 && <span className="small">{text.due(due)}</span>}
          </p>
        </Exercise>
        <Exercise kind="hidden">{round('hidden', text.hidden)}</Exercise>
        <Exercise kind="trammel">{round('trammel', text.trammel)}</Exercise>
        <Exercise kind="plan">
          <p className="row">
            <button type="button" className="main" onClick={() => void beginPlan(seed)}>
              {text.plan}
            </button>
          </p>
        </Exercise>
        <Exercise kind="coupon">
          <Coupon />
        </Exercise>
      </ul>
    </section>
  );
};
