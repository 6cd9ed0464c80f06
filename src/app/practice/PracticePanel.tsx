import { type ReactNode, useState } from 'react';
import type { ExerciseKind } from '../../core/practice/areas.ts';
import { type Level, levels, type Task } from '../../core/practice/exercise.ts';
import { dueOn } from '../../core/practice/schedule.ts';
import {
  areaNote,
  areaWords,
  exerciseAbout,
  exerciseWords,
  levelWords,
} from '../../present/words/practice.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { Coupon } from './Coupon.tsx';
import { HiddenRound } from './HiddenRound.tsx';
import { beginRound, useExercise } from './hiddenRun.ts';
import { Instructor } from './Instructor.tsx';
import { LayoutDrill } from './LayoutDrill.tsx';
import { beginLayout } from './layoutRun.ts';
import { beginPlan, PlanOrder } from './PlanOrder.tsx';
import { ProgressList } from './ProgressList.tsx';
import { today, useProgress } from './progress.ts';
import { freshSeed, useSession } from './session.ts';
import { TrammelRound } from './TrammelRound.tsx';

/** Practice: the exercises with level and seed, the one in hand, progress by skill, and what an instructor does. */
export const PracticePanel = () => {
  const key = useJob((job) => job.key);
  const kept = useSession((session) => session.run);
  const run = kept?.key === key ? kept : null;
  const open = useExercise();
  if (run?.kind === 'layout') return <LayoutDrill run={run} />;
  if (run?.kind === 'plan') return <PlanOrder run={run} />;
  return (
    <div className="stack practice">
      {open?.exercise.task === 'trammel' && <TrammelRound key={key} exercise={open.exercise} />}
      {open?.exercise.task === 'hidden' && key !== null && (
        <HiddenRound key={key} jobKey={key} exercise={open.exercise} />
      )}
      {open ? (
        <details>
          <summary>Other exercises</summary>
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
  const [exam, setExam] = useState(false);
  const [level, setLevel] = useState<Level>(1);
  const [seed, setSeed] = useState(freshSeed);
  if (!now) return <p className="empty">Open a truss first.</p>;
  const model = now.live.model ?? now.job.model;
  const due = dueOn(cards, today()).length;
  const round = (task: Task, words: string) => (
    <p className="row">
      <button type="button" className="main" onClick={() => beginRound(model, level, exam, seed, task)}>
        {words}
      </button>
    </p>
  );
  return (
    <section className="stack tight" aria-label="Exercises">
      <h2>Practice on: {model.name}</h2>
      <p className="small soft">
        Rounds open a practice job of their own; the job that is open stays as it is.
      </p>
      <div className="fields">
        <div className="field wide">
          <label htmlFor="practice-level">Level</label>
          <select
            id="practice-level"
            value={level}
            onChange={(e) => setLevel(Number(e.target.value) as Level)}
          >
            {levels.map((one) => (
              <option key={one} value={one}>
                {levelWords[one]}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="practice-seed">Seed</label>
          <input
            id="practice-seed"
            type="text"
            maxLength={40}
            value={seed}
            autoComplete="off"
            onChange={(e) => setSeed(e.target.value)}
            onBlur={() => seed.trim() === '' && setSeed(freshSeed())}
          />
        </div>
        <label className="check">
          <input type="checkbox" checked={exam} onChange={(e) => setExam(e.target.checked)} />
          Exam, no hints
        </label>
      </div>
      <ul className="entries exercises">
        <Exercise kind="layout">
          <p className="row">
            <button type="button" className="main" onClick={() => beginLayout(exam, seed)}>
              Begin the drill
            </button>
            {due > 0 && <span className="small">{due} due again today</span>}
          </p>
        </Exercise>
        <Exercise kind="hidden">{round('hidden', 'Break the truss')}</Exercise>
        <Exercise kind="trammel">{round('trammel', 'Break and measure')}</Exercise>
        <Exercise kind="plan">
          <p className="row">
            <button type="button" className="main" onClick={() => beginPlan(seed)}>
              Mix the steps
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
