import type { Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';

/** 1: what shows to the eye. 2: with cracks to be sought. 3: more tubes, cracks under the finish, old rust among them. */
export const levels = [1, 2, 3] as const;
export type Level = (typeof levels)[number];

/** What is hidden: the damage, or, with the damage told, where the clusters went. */
export const tasks = ['hidden', 'trammel'] as const;
export type Task = (typeof tasks)[number];

/** A blow at a cluster: unit vector it pushes along, and the work the truss takes up until the force is reached. */
export interface Blow {
  readonly cluster: string;
  readonly direction: Vec3;
  readonly forceLbf: number;
  readonly energyInLbf: number;
}

/** What is wrong with the truss of an exercise, in the shapes a trainee enters. */
export interface Truth {
  /** Absent when an instructor hid the findings of a job that names no blow. */
  readonly blow?: Blow;
  /** By station, then id. */
  readonly findings: readonly Finding[];
  /** Where clusters went, inches from the drawing; those that went 1/64 in or more. */
  readonly moves: readonly { readonly id: string; readonly moveIn: Vec3 }[];
  /** Findings that the finish covers: nothing shows until it is off. */
  readonly underFinish: readonly string[];
}

/** One exercise: the same seed, level and model give the same one. */
export interface Exercise {
  readonly version: 1;
  readonly task: Task;
  readonly seed: string;
  readonly level: Level;
  /** Exam: no hints, no reasons until it is handed in. */
  readonly hintsLocked: boolean;
  readonly truth: Truth;
}
