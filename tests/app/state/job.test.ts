import { beforeEach, describe, expect, it } from 'vitest';
import {
  change,
  noteCopied,
  openJob,
  redo,
  redoName,
  undo,
  undoName,
  useJob,
} from '../../../src/app/state/job.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { emptyJob } from '../kit.ts';

const records = () => useJob.getState().job?.records ?? [];
const findings = () =>
  standing(records())
    .findings.map(({ of, damage }) => `${of} ${damage}`)
    .sort();
const bend = (id: string): boolean => change({ kind: 'tag', of: [id], tag: 'bent' }, `Bent: ${id}`);

describe('the open job', () => {
  beforeEach(() => openJob('key', emptyJob()));

  it('has nothing to undo right after opening', () => {
    expect(undoName()).toBeNull();
    expect(redoName()).toBeNull();
  });

  it('names the change that undo and redo would take', () => {
    bend('U1L-U2L');
    bend('U2L-U3L');
    expect(undoName()).toBe('Bent: U2L-U3L');
    undo();
    expect(undoName()).toBe('Bent: U1L-U2L');
    expect(redoName()).toBe('Bent: U2L-U3L');
    undo();
    expect(undoName()).toBeNull();
  });

  it('undoes and redoes a hundred changes to the very same jobs', () => {
    const seen = [useJob.getState().job];
    for (let k = 0; k < 100; k++) {
      change({ kind: 'note', note: { words: `note ${k}` } }, `Note ${k}`);
      seen.push(useJob.getState().job);
    }
    for (let k = 99; k >= 0; k--) {
      undo();
      expect(useJob.getState().job).toBe(seen[k]);
    }
    for (let k = 1; k <= 100; k++) {
      redo();
      expect(useJob.getState().job).toBe(seen[k]);
    }
  });

  it('forgets what could be redone when something else is changed', () => {
    bend('U1L-U2L');
    undo();
    bend('U2L-U3L');
    expect(redoName()).toBeNull();
    expect(findings()).toEqual(['U2L-U3L bow']);
  });

  it('refuses a change that changes nothing, keeps the job and says why', () => {
    bend('U1L-U2L');
    const before = useJob.getState().job;
    expect(bend('U1L-U2L')).toBe(false);
    expect(useJob.getState().job).toBe(before);
    expect(useJob.getState().refused.map(({ code }) => code)).toEqual(['nothing-to-change']);
    expect(undoName()).toBe('Bent: U1L-U2L');
  });

  it('takes a record out on undo while no copy has left the device', () => {
    bend('U1L-U2L');
    undo();
    expect(records()).toHaveLength(0);
  });

  it('withdraws on undo what a copy has carried off, and keeps it to be read', () => {
    bend('U1L-U2L');
    noteCopied(records().map(({ id }) => id));
    undo();
    expect(findings()).toEqual([]);
    expect(records().map(({ kind }) => kind)).toEqual(['finding', 'note']);
  });

  it('goes on undoing and redoing past a withdrawal without bringing anything back by itself', () => {
    bend('U1L-U2L');
    bend('U2L-U3L');
    noteCopied(records().map(({ id }) => id));
    undo();
    expect(findings()).toEqual(['U1L-U2L bow']);
    undo();
    expect(findings()).toEqual([]);
    redo();
    expect(findings()).toEqual(['U1L-U2L bow']);
    redo();
    expect(findings()).toEqual(['U1L-U2L bow', 'U2L-U3L bow']);
  });

  it('keeps a withdrawal that a later copy carried off, and stands by what redo asks for', () => {
    bend('U1L-U2L');
    noteCopied(records().map(({ id }) => id));
    undo();
    noteCopied(records().map(({ id }) => id));
    redo();
    expect(findings()).toEqual(['U1L-U2L bow']);
  });
});
