import { drill } from '../../core/practice/layoutDrill.ts';
import {
  type Answer,
  isRight,
  pairSaid,
  type QuestionKind,
  questionKinds,
} from '../../core/practice/questions.ts';
import { answered } from '../../core/practice/schedule.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll } from '../state/view.ts';
import { practiceText } from '../text/practice.ts';
import { keepResult, today, useProgress } from './progress.ts';
import { freshSeed, type LayoutRun, setSession, useSession } from './session.ts';

const QUESTIONS = 8;

/** Begins a drill on the open truss; the same seed and progress ask the same. */
export const beginLayout = (
  exam: boolean,
  seed = freshSeed(),
  kinds: readonly QuestionKind[] = questionKinds,
): void => {
  const { atOnce, assessment } = useAnswer.getState();
  if (!atOnce) return;
  const { cards } = useProgress.getState();
  const ask = { seed, kinds, count: QUESTIONS };
  const questions = drill(atOnce.truss, assessment?.statics ?? null, ask, cards, today());
  selectAll([]);
  setSession({
    run: {
      kind: 'layout',
      key: useJob.getState().key,
      seed,
      exam,
      questions,
      at: 0,
      answers: [],
      shown: false,
      touched: null,
      over: false,
    },
  });
};

const kinds = (run: LayoutRun) => {
  const shares: Record<string, { got: number; of: number }> = {};
  run.questions.forEach((question, k) => {
    const answer = run.answers[k];
    if (!answer) return;
    const { got, of } = shares[question.kind] ?? { got: 0, of: 0 };
    shares[question.kind] = { got: got + (isRight(question, answer) ? 1 : 0), of: of + 1 };
  });
  return shares;
};

/** Marks an answer at once; in an exam the next question comes without a word. */
export const answerWith = (answer: Answer): void => {
  const { run } = useSession.getState();
  if (run?.kind !== 'layout' || run.shown || run.over) return;
  const question = run.questions[run.at];
  if (!question) return;
  const right = isRight(question, answer);
  useProgress.setState(({ cards }) => ({ cards: answered(cards, question.id, right, today()) }));
  setSession({ run: { ...run, answers: [...run.answers, answer], shown: true, touched: null } });
  if (run.exam) nextQuestion();
};

/** A cluster touched, in the picture or by its place; two of them draw a tube. */
export const touchCluster = (id: string): void => {
  const { run } = useSession.getState();
  if (run?.kind !== 'layout' || run.shown || run.over) return;
  if (run.questions[run.at]?.by === 'cluster') answerWith({ said: id });
  else if (run.touched === null || run.touched === id)
    setSession({ run: { ...run, touched: run.touched === id ? null : id } });
  else answerWith({ said: pairSaid(run.touched, id) });
};

export const nextQuestion = (): void => {
  const { run } = useSession.getState();
  if (run?.kind !== 'layout') return;
  const over = run.at + 1 >= run.questions.length;
  setSession({ run: { ...run, at: over ? run.at : run.at + 1, shown: false, over } });
  if (!over) return;
  keepResult({
    at: new Date().toISOString(),
    who: usePrefs.getState().who,
    kind: 'layout',
    what: practiceText.what(useJob.getState().job?.model.name ?? '', run.seed),
    level: null,
    exam: run.exam,
    shares: kinds(run),
  });
};

export const endRun = (): void => setSession({ run: null });
