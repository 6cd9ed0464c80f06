import * as z from 'zod/mini';
import { jobFromModel } from '../job/jobFromModel.ts';
import { findingSchema, type Job, type RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { standing } from '../job/standing.ts';
import { fromBase64, toBase64 } from './base64.ts';
import { type Exercise, tasks } from './exercise.ts';

/**
 * An exercise travels as a practice job: the model, a record of where it was struck, and the hidden truth in the field
 * `exercise`, base64 of JSON, so that it cannot be read at a glance. It is no lock: who wants to decode it can.
 */

const triple = z.tuple([z.number(), z.number(), z.number()]);
const text = z.string().check(z.minLength(1), z.maxLength(200));
const exerciseSchema = z.object({
  version: z.literal(1),
  task: z.enum(tasks),
  seed: text,
  level: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  hintsLocked: z.boolean(),
  truth: z.object({
    blow: z.optional(
      z.object({ cluster: text, direction: triple, forceLbf: z.number(), energyInLbf: z.number() }),
    ),
    findings: z.array(findingSchema).check(z.minLength(1), z.maxLength(500)),
    moves: z.array(z.object({ id: text, moveIn: triple })).check(z.maxLength(2000)),
    underFinish: z.array(text),
  }),
});

type WithExercise = Job & { readonly exercise?: unknown };

/** JSON in ASCII letters alone. */
const asciiJson = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[\u0080-\uffff]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** A practice job that hides this exercise: nothing looked at yet, or, for the trammel, with the damage told. */
export const exerciseJob = (model: Model, exercise: Exercise, name: string): Job => {
  const { blow } = exercise.truth;
  const struck: RecordOf<'mishap'> | undefined = blow && {
    kind: 'mishap',
    id: 'exercise-blow',
    by: 'exercise',
    at: '2000-01-01T00:00:00Z',
    device: 'exercise',
    blow: { cluster: blow.cluster, direction: [...blow.direction] },
    cases: [],
  };
  const job: WithExercise = {
    ...jobFromModel(model, name, 'practice'),
    records: [...(struck ? [struck] : []), ...(exercise.task === 'trammel' ? exercise.truth.findings : [])],
    exercise: toBase64(asciiJson(exercise)),
  };
  return job;
};

/** The exercise that a practice job hides; null when it hides none, or none that can be read. */
export const exerciseOf = (job: Job): Exercise | null => {
  const { exercise } = job as WithExercise;
  if (job.purpose !== 'practice' || typeof exercise !== 'string') return null;
  const json = fromBase64(exercise);
  if (json === null) return null;
  try {
    const parsed = z.safeParse(exerciseSchema, JSON.parse(json));
    return parsed.success ? (parsed.data as Exercise) : null;
  } catch {
    return null;
  }
};

/** The job a trainee who saw everything would have: `assess` of it is what the trainee's own is marked against. */
export const truthJob = (job: Job, exercise: Exercise): Job => ({
  ...jobFromModel(standing(job.records).model ?? job.model, job.name, 'practice'),
  records: [...job.records.filter((r) => r.id === 'exercise-blow'), ...exercise.truth.findings],
});
