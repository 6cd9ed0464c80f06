import { create } from 'zustand';
import type { LoadPath } from '../../core/loadPath/result.ts';
import type { Exercise } from '../../core/practice/exercise.ts';
import type { Round } from '../../core/practice/hiddenDamage.ts';
import type { Broken, PlanDrill } from '../../core/practice/planDrill.ts';
import type { Answer, Question } from '../../core/practice/questions.ts';
import type { TrammelScore } from '../../core/practice/trammelDrill.ts';

export interface LayoutRun {
  readonly kind: 'layout';
  /** The job it stands on; with another one open it is over. */
  readonly key: string | null;
  readonly seed: string;
  readonly exam: boolean;
  readonly questions: readonly Question[];
  readonly at: number;
  /** Given to each question so far; in an exam they are shown at the end. */
  readonly answers: readonly Answer[];
  /** The answer stands and its reason is shown; the next question waits. */
  readonly shown: boolean;
  /** First of two clusters touched. */
  readonly touched: string | null;
  readonly over: boolean;
}

export interface PlanRun {
  readonly kind: 'plan';
  readonly key: string | null;
  readonly seed: string;
  readonly drill: PlanDrill;
  /** The open job has this plan; else that of a truss broken by the seed. */
  readonly own: boolean;
  readonly order: readonly string[];
  readonly broken: readonly Broken[] | null;
}

/** A round of hidden damage that was handed in: the marks, and the truth that may be shown from then on. */
export interface HandedIn {
  readonly key: string;
  readonly exercise: Exercise;
  readonly round: Round;
  readonly path: LoadPath;
}

/** What is being practised. Rounds on a broken truss live in their job; only what is not of a job stands here. */
export interface Session {
  readonly run: LayoutRun | PlanRun | null;
  readonly marking: boolean;
  /** An exercise being worked out beside the screen, and how to stop it. */
  readonly making: (() => void) | null;
  readonly handedIn: HandedIn | null;
  readonly trammel: {
    readonly key: string | null;
    readonly exercise: Exercise;
    readonly score: TrammelScore;
  } | null;
  /** The pair the virtual trammel spans. */
  readonly pair: readonly [string, string] | null;
  /** Show the truth in the picture, or the trainee's own map. */
  readonly truthShown: boolean;
}

export const useSession = create<Session>(() => ({
  run: null,
  marking: false,
  making: null,
  handedIn: null,
  trammel: null,
  pair: null,
  truthShown: true,
}));

export const setSession = (change: Partial<Session>): void => useSession.setState(change);

/** A seed a person can say: four letters and digits. */
export const freshSeed = (): string => {
  const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';
  return Array.from(crypto.getRandomValues(new Uint8Array(4)), (b) => letters[b % letters.length]).join('');
};
