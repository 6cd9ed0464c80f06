import type { Change } from '../../core/job/change.ts';
import type { Finding, Job } from '../../core/job/jobSchema.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import { standing } from '../../core/job/standing.ts';
import { crash } from '../../core/practice/crash.ts';
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
import { assessed } from '../worker/asked.ts';
import { keepResult } from './progress.ts';
import { freshSeed, setSession, useSession } from './session.ts';

/** Rounds on a broken truss: each is a practice job, so that scene, panels, undo and saving are those of real work. */

export const roundName = (model: Model, seed: string): string => `Practice: ${model.name}, ${seed}`;

/** Breaks a copy of the model and opens it as a practice job. */
export const beginRound = (
  model: Model,
  level: Level,
  hintsLocked: boolean,
  seed = freshSeed(),
  task: Task = 'hidden',
): void => {
  const made = crash(model, { seed, level, hintsLocked, task });
  if (made.kind === 'movesFreely') {
    say(
      'No exercise was made: loads cannot be followed through this truss, it can move without straining a tube.',
    );
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
  change(what, `${lookWords[way.method]}: ${way.of}`);
};

/** Writes down what a look showed, as a finding of the trainee's own. */
export const writeDown = (seen: Finding): void => {
  const { kind: _, id: __, by: ___, at: ____, device: _____, ...draft } = seen;
  saveFinding({ ...draft, origin: 'unknown' } as Parameters<typeof saveFinding>[0]);
};

/** Marks the open round: both jobs go through the same `assess`. */
export const handIn = async (): Promise<void> => {
  const { job, key } = useJob.getState();
  const exercise = job && exerciseOf(job);
  if (!job || key === null || !exercise || useSession.getState().marking) return;
  setSession({ marking: true });
  try {
    const [trainee, truth] = await Promise.all([assessed(job), assessed(truthJob(job, exercise))]);
    const round = scoreRound(exercise, trainee.truss, job.records, trainee, truth);
    setSession({ handedIn: { key, exercise, round, path: truth.loadPath }, truthShown: true });
    keepResult({
      at: new Date().toISOString(),
      who: usePrefs.getState().who,
      kind: 'hidden',
      what: `${job.model.name}, seed ${exercise.seed}`,
      level: exercise.level,
      exam: exercise.hintsLocked,
      shares: Object.fromEntries(
        Object.entries(round.shares).map(([skill, share]) => [
          roundSkillWords[skill as keyof typeof roundSkillWords],
          share,
        ]),
      ),
    });
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
