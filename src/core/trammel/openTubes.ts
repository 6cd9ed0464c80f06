import type { RecordOf } from '../job/jobSchema.ts';

type Progress = RecordOf<'progress'>;

/** What the progress so far says of the frame: tubes cut and not yet closed again, and every spreading done. */
export interface OpenNow {
  readonly members: readonly string[];
  readonly pushes: readonly Progress[];
}

/**
 * Tubes that are open: the latest of `cut:ID`, `tack:ID`, `weld:ID` done is the cut. And the records of spreading.
 *
 * @param progress  standing records, earliest first
 */
export const openTubes = (progress: readonly Progress[]): OpenNow => {
  const open = new Map<string, boolean>();
  for (const { step, done } of progress) {
    const [what, ...rest] = step.split(':');
    const id = rest.join(':');
    if (what === 'cut') open.set(id, done);
    else if (done && (what === 'tack' || what === 'weld')) open.set(id, false);
  }
  return {
    members: [...open].flatMap(([id, isOpen]) => (isOpen ? [id] : [])).sort(),
    pushes: progress.filter((p) => p.spread !== undefined),
  };
};
