import { create } from 'zustand';
import type { Hold, Reading } from '../../core/job/jobSchema.ts';

/** How the next reading is taken. Kept nowhere: what was recorded last stays until it is changed. */
export interface Entry {
  readonly hold: Hold;
  readonly instrument: Reading['instrument'];
  readonly by: 'length' | 'setAndMiss';
  /** The line in hand when it was chosen by hand; none: the next of the list that is not read. */
  readonly line: string | null;
  /** The two points of the line in hand, lit in the picture. */
  readonly lit: readonly string[];
  /** Text on the keypad. */
  readonly text: string;
  /** Readings recorded here, latest last: undone one by one. */
  readonly recorded: readonly string[];
  /** Spreader left in until tacked, or pushed and let go. */
  readonly job: 'hold' | 'set';
}

export const startEntry: Entry = {
  hold: 'beforeCutting',
  instrument: 'trammel',
  by: 'length',
  line: null,
  lit: [],
  text: '',
  recorded: [],
  job: 'hold',
};

export const useEntry = create<Entry>(() => startEntry);

export const setEntry = (change: Partial<Entry>): void => useEntry.setState(change);
