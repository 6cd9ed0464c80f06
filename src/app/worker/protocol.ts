import type { Ask, Assessment } from '../../core/assessment.ts';
import type { SideBySide } from '../../core/estimate/compare.ts';
import type { Supplement } from '../../core/estimate/supplement.ts';
import type { Finding, Job } from '../../core/job/jobSchema.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import type { CrashAsk, exerciseFrom } from '../../core/practice/crash.ts';
import type { Design, Piece } from '../../core/splice/result.ts';
import type { Photos } from '../../present/backup.ts';
import type { CouponOptions } from '../../present/coupon.ts';
import type { PaperName } from '../../present/papers/titles.ts';
import type { ReportChoice } from '../../present/report.ts';
import type { Units } from '../../present/show.ts';
import type { TemplateFileOptions } from '../../present/templates.ts';

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

/** What a paper is drawn on, and in which units. */
export interface PaperChoice {
  readonly paper: 'a4' | 'letter';
  readonly units: Units;
}

/** A paper somebody wants. */
export type PaperRequest =
  | { readonly kind: 'report'; readonly job: Job; readonly choice: ReportChoice; readonly photos: Photos }
  /** The supplement, as paper and CSV. */
  | { readonly kind: 'supplement'; readonly job: Job; readonly choice: ReportChoice; readonly photos: Photos }
  /** One paper of the work, or the tagged truss. */
  | {
      readonly kind: 'paper';
      readonly job: Job;
      readonly choice: PaperChoice;
      readonly name: PaperName | 'truss';
      readonly photos: Photos;
    }
  | {
      readonly kind: 'trammelSheet';
      readonly job: Job;
      readonly choice: PaperChoice;
      readonly trammel: Assessment['trammel'];
    }
  | {
      readonly kind: 'templates';
      readonly job: Job;
      readonly member: string;
      readonly options: TemplateFileOptions;
    }
  | {
      readonly kind: 'benchTemplates';
      readonly piece: Piece;
      readonly design: Design;
      readonly options: TemplateFileOptions;
    }
  | { readonly kind: 'coupon'; readonly options: CouponOptions };

/** An exercise somebody wants: broken by a seed, or from findings; or a broken truss with its plan worked out. */
export type TrainRequest =
  | { readonly kind: 'crash'; readonly model: Model; readonly ask: CrashAsk }
  | {
      readonly kind: 'findings';
      readonly model: Model;
      readonly ask: CrashAsk;
      readonly findings: readonly Finding[];
      readonly blow?: Parameters<typeof exerciseFrom>[3];
    }
  | { readonly kind: 'plan'; readonly model: Model; readonly seed: string };

export type Trained =
  | ReturnType<typeof exerciseFrom>
  | { readonly kind: 'planned'; readonly job: Job; readonly assessment: Assessment };

/** A paper: a name without folder, and its bytes. */
export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** All that is worked out or drawn beside the screen. One worker's program, so that what they share is kept once. */
export interface Workshop extends Assessor {
  draw(request: PaperRequest): Promise<readonly PaperFile[]>;
  assessed(job: Job): Assessment;
  bayRoutes(job: Job, bay: string): SideBySide;
  changedSince(before: Job, after: Job): Supplement;
  /** What practice needs worked out: a truss broken, damage hidden again, a plan to be put in order. */
  train(request: TrainRequest): Promise<Trained>;
}
