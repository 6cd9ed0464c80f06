import type { Ask, Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { Photos } from '../../present/backup.ts';
import type { PaperName } from '../../present/papers/papers.ts';
import type { Units } from '../../present/show.ts';

/** To the worker: one shape, every field always there. */
export interface Question {
  /** Which job this is about: its key on this device. */
  readonly key: string;
  readonly job: Job;
  readonly ask: Ask;
}

/** From the worker: the answer and which job it is for, or our own fault in words. */
export type Answer =
  | { readonly kind: 'assessment'; readonly key: string; readonly assessment: Assessment }
  | { readonly kind: 'fault'; readonly key: string; readonly fault: string };

/** Called at the start of each stage. */
export type OnStage = (stage: string) => void;

/** What both sides of the worker agree on. */
export interface Assessor {
  answer(question: Question, onStage: OnStage): Answer | Promise<Answer>;
}

/** A file of the report: a name without folder, and its bytes. */
export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What the report's worker does. */
export interface Draughtsman {
  draw(job: Job, choice: PaperChoice, photos: Photos): Promise<readonly PaperFile[]>;
  /** One paper of the work, or the tagged truss. */
  paper(job: Job, choice: PaperChoice, name: PaperName | 'truss'): Promise<PaperFile>;
}

export interface PaperChoice {
  readonly paper: 'a4' | 'letter';
  readonly units: Units;
}
