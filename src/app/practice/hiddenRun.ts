import type { Change } from '../../core/job/change.ts';
import type { Finding, Job } from '../../core/job/jobSchema.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import { standing } from '../../core/job/standing.ts';
import type { Exercise, Level, Task } from '../../core/practice/exercise.ts';
import { exerciseJob, exerciseOf, truthJob } from '../../core/practice/exerciseFile.ts';
import { scoreRound } from '../../core/practice/hiddenDamage.ts';
import type { LookWay } from '../../core/practice/look.ts';
import { lookWords, roundSkillWords } from '../../present/words/practice.ts';
import { saveFinding } from '../deeds.ts';
import { say, startJob } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { change, useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll, setView } from '../state/view.ts';
import { practiceText } from '../text/practice.ts';
import { hiddenText } from '../text/practiceHidden.ts';
import { assessed, trained } from '../worker/asked.ts';
import { keepHandedIn, keepResult, useProgress } from './progress.ts';
import { freshSeed, type HandedIn, setSession, useSession } from './session.ts';
import { workedOut } from './working.ts';

/** Rounds on a broken truss: each is a practice job, so that scene, panels, undo and saving are those of real work. */

export const roundName = (model: Model, seed: string): string => practiceText.jobName(model.name, seed);

/** Breaks a copy of the model and opens it as a practice job. */
export const beginRound = async (
  model: Model,
  level: Level,
  hintsLocked: boolean,
  seed = freshSeed(),
  task: Task = 'hidden',
): Promise<void> => {
  const { key } = useJob.getState();
  const made = await workedOut(trained({ kind: 'crash', model, ask: { seed, level, hintsLocked, task } }));
  if (!made || useJob.getState().key !== key) return;
  if (made.kind !== 'made') {
    say(practiceText.movesFreely);
    return;
  }
  startJob(exerciseJob(model, made.exercise, roundName(model, seed)));
  setSession({ run: null, handedIn: null, trammel: null, truthShown: true });
  selectAll([]);
  setView({ route: 'practice' });
};

/** One look at the thing in hand, as the walk-round records it. */
export const lookAt = (way: LookWay): void => {
  const what: Change = {
    kind: 'tag',
    of: [way.of],
    tag: 'lookedAt',
    method: way.method,
    finishRemoved: way.finishRemoved,
  };
  change(what, hiddenText.lookedAt(lookWords[way.method], way.of));
};

/** Writes down what a look showed, as a finding of the trainee's own. */
export const writeDown = (seen: Finding): void => {
  const { kind: _, id: __, by: ___, at: ____, device: _____, ...draft } = seen;
  saveFinding({ ...draft, origin: 'unknown' } as Parameters<typeof saveFinding>[0]);
};

/** The marks of a job, both through the same `assess`; records entered after it was handed in do not count. */
const marksOf = async (job: Job, key: string, exercise: Exercise, handedAt: string): Promise<HandedIn> => {
  const records = job.records.filter((r) => r.at <= handedAt);
  const [trainee, truth] = await Promise.all([
    assessed({ ...job, records }),
    assessed(truthJob(job, exercise)),
  ]);
  const round = scoreRound(exercise, trainee.truss, records, trainee, truth);
  return { key, exercise, round, path: truth.loadPath };
};

/** Marks the open round, and keeps that it was handed in. */
export const handIn = async (): Promise<void> => {
  const { job, key } = useJob.getState();
  const exercise = job && exerciseOf(job);
  if (!job || key === null || !exercise || useSession.getState().marking) return;
  setSession({ marking: true });
  try {
    const at = new Date().toISOString();
    const handedIn = await marksOf(job, key, exercise, at);
    setSession({ handedIn, truthShown: true });
    keepHandedIn(key, at);
    keepResult({
      at,
      who: usePrefs.getState().who,
      kind: 'hidden',
      what: practiceText.what(job.model.name, exercise.seed),
      level: exercise.level,
      exam: exercise.hintsLocked,
      shares: Object.fromEntries(
        Object.entries(handedIn.round.shares).map(([skill, share]) => [
          roundSkillWords[skill as keyof typeof roundSkillWords],
          share,
        ]),
      ),
    });
  } finally {
    setSession({ marking: false });
  }
};

/** A round handed in before the page was opened afresh: the same records give the same marks. */
export const markAgain = async (): Promise<void> => {
  const { job, key } = useJob.getState();
  const exercise = job && exerciseOf(job);
  const at = key === null ? undefined : useProgress.getState().handedIn[key];
  if (!job || key === null || !exercise || at === undefined || useSession.getState().marking) return;
  setSession({ marking: true });
  try {
    const handedIn = await marksOf(job, key, exercise, at);
    if (useJob.getState().key === key) setSession({ handedIn });
  } finally {
    setSession({ marking: false });
  }
};

/** The exercise of the open job, and the model it stands on. */
export const useExercise = (): {
  readonly job: Job;
  readonly exercise: Exercise;
  readonly model: Model;
} | null => {
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live);
  const exercise = job ? exerciseOf(job) : null;
  if (!job || !exercise) return null;
  return { job, exercise, model: live?.model ?? standing(job.records).model ?? job.model };
};
