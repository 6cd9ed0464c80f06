import { temporal } from 'zundo';
import { create, useStore } from 'zustand';
import type { Issue } from '../../core/base/issue.ts';
import type { Change, Stamp } from '../../core/job/change.ts';
import { edit } from '../../core/job/edit.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { freshId } from '../freshId.ts';
import { usePrefs } from './prefs.ts';
import { reach } from './reach.ts';

/** The open job. It changes only through `core/job/edit.ts`; every change has a name that undo shows. */
export interface JobState {
  /** Its key on this device; null while none is open. */
  readonly key: string | null;
  readonly job: Job | null;
  /** What the latest change is called; null right after opening. */
  readonly change: string | null;
  /** Why the latest change was refused. */
  readonly refused: readonly Issue[];
  /** Records that were in the last copy that left this device: undo withdraws them, it cannot call them back. */
  readonly copied: ReadonlySet<string>;
}

type Undoable = Pick<JobState, 'job' | 'change'>;

/** Where each key is kept; typed over all of them. */
export const keptIn = {
  key: 'device',
  job: 'device',
  change: 'nowhere',
  refused: 'nowhere',
  copied: 'nowhere',
} as const satisfies Record<keyof JobState, 'device' | 'nowhere'>;

const closed: JobState = { key: null, job: null, change: null, refused: [], copied: new Set() };

export const useJob = create<JobState>()(
  temporal(() => closed, {
    limit: 500,
    partialize: ({ job, change }): Undoable => ({ job, change }),
    equality: (a, b) => a.job === b.job,
  }),
);

const past = useJob.temporal;

/** Re-renders when there is something else to undo or redo. */
export const useUndo = (): number =>
  useStore(past, (state) => state.pastStates.length * 1000 + state.futureStates.length);

export const newStamp = (): Stamp => {
  const { who, device } = usePrefs.getState();
  return {
    by: who.trim() === '' ? 'name not given' : who.trim(),
    at: new Date().toISOString(),
    device,
    newId: freshId,
  };
};

/** Puts a job on the screen, with nothing to undo. */
export const openJob = (key: string, job: Job, copied: ReadonlySet<string> = new Set()): void => {
  past.getState().pause();
  useJob.setState({ key, job, change: null, refused: [], copied });
  past.getState().clear();
  past.getState().resume();
};

export const closeJob = (): void => {
  past.getState().pause();
  useJob.setState(closed);
  past.getState().clear();
  past.getState().resume();
};

/** Makes a change under a name; gives false when it was refused, with the reasons kept for the screen. */
export const change = (what: Change, name: string): boolean => {
  const { job } = useJob.getState();
  if (!job) return false;
  const edited = edit(job, what, newStamp());
  if (!edited.ok) {
    quietly({ refused: edited.issues });
    return false;
  }
  useJob.setState({ job: edited.value.job, change: name, refused: [] });
  return true;
};

/** Puts another state of the job in place of the open one, as one change under a name. */
export const replaceJob = (job: Job, name: string): void => {
  const { job: from, copied } = useJob.getState();
  if (from) useJob.setState({ job: reach(from, job, copied, newStamp()), change: name, refused: [] });
};

const quietly = (state: Partial<JobState>): void => {
  past.getState().pause();
  useJob.setState(state);
  past.getState().resume();
};

/** Says why something asked for cannot be done; the job stays as it is. */
export const refuse = (why: Issue): void => quietly({ refused: [why] });

export const forgetRefused = (): void => quietly({ refused: [] });

/** Notes which records a copy that left the device holds. */
export const noteCopied = (ids: readonly string[]): void => quietly({ copied: new Set(ids) });

/** Name of the change that undo would take back; null when there is none. */
export const undoName = (): string | null =>
  past.getState().pastStates.length > 0 ? (useJob.getState().change ?? 'the last change') : null;

export const redoName = (): string | null => past.getState().futureStates.at(-1)?.change ?? null;

const step = (go: () => void): void => {
  const { job: from } = useJob.getState();
  go();
  const { job: to, copied } = useJob.getState();
  if (from && to) quietly({ job: reach(from, to, copied, newStamp()), refused: [] });
};

export const undo = (): void => step(() => past.getState().undo());

export const redo = (): void => step(() => past.getState().redo());
