import { create } from 'zustand';
import type { Issue } from '../../core/base/issue.ts';

/** How the open job's keeping stands. */
export interface Saved {
  readonly state: 'nothing' | 'saving' | 'saved' | 'failed';
  readonly at: string | null;
  /** Last copy that left this device, and how many records it held. */
  readonly copy: { readonly at: string; readonly records: number } | null;
  /** Said to the person: failed saving, another tab's version, what could not be read. */
  readonly message: string | null;
  /** What was odd in the file or kept job that was read last. */
  readonly readIssues: readonly Issue[];
}

export const useSaved = create<Saved>(() => ({
  state: 'nothing',
  at: null,
  copy: null,
  message: null,
  readIssues: [],
}));
