import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { openKeep, POINTS } from '../../../src/app/storage/keep.ts';
import { writeJob } from '../../../src/core/job/write.ts';
import { emptyJob } from '../kit.ts';

/** The app's own modules as a freshly loaded page has them; the shelf outlives them. */
const load = async (shelf: string) => {
  vi.resetModules();
  const jobs = await import('../../../src/app/jobs.ts');
  const opening = await import('../../../src/app/opening.ts');
  const { change, undo, useJob } = await import('../../../src/app/state/job.ts');
  const { useSaved } = await import('../../../src/app/state/saved.ts');
  await jobs.beginKeeping(async () => opening.openText(writeJob(emptyJob()), 'demo job'), shelf);
  const settled = () => vi.waitFor(() => expect(useSaved.getState().state).toBe('saved'));
  const bend = (id: string) => change({ kind: 'tag', of: [id], tag: 'bent' }, `Bent: ${id}`);
  return { jobs, useJob, useSaved, settled, bend, undo };
};
const quota = () => new DOMException('full', 'QuotaExceededError');
const minutes = (n: number) => new Date(Date.UTC(2031, 4, 4, 10, n)).toISOString();
afterEach(() => vi.restoreAllMocks());

describe('trouble with this device', () => {
  it('says that the storage is full, offers a file, and says so no more when there is room again', async () => {
    const page = await load('full');
    await page.settled();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw quota();
    });
    page.bend('U1L-U2L');
    await vi.waitFor(() => expect(page.useSaved.getState().state).toBe('failed'));
    expect(page.useSaved.getState().message).toMatch(/full.*Save a copy as a file/);
    put.mockRestore();
    page.bend('U2L-U3L');
    await page.settled();
    expect(page.useSaved.getState().message).toBeNull();
    expect(writeJob((await load('full')).useJob.getState().job!)).toContain('U1L-U2L');
  });

  it('gives up earlier states before what is entered now', async () => {
    const keep = await openKeep('points-give-way');
    const kept = (turn: number) => ({
      key: 'a',
      name: 'a',
      text: `${turn}`,
      turn,
      savedAt: minutes(turn * 6),
      copy: null,
    });
    await keep.save(kept(1));
    await keep.save(kept(2));
    expect(await keep.points('a')).toHaveLength(1);
    const real = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (this.name === 'points') throw quota();
      return real.apply(this, args);
    });
    expect((await keep.save(kept(3))).kind).toBe('saved');
    expect((await keep.load('a'))?.text).toBe('3');
    expect(await keep.points('a')).toEqual([]);
    keep.close();
  });

  it.each([
    ['switched off', new DOMException('denied', 'SecurityError')],
    ['refuses to keep', new Error('no storage')],
  ])('opens and goes on when storage is denied: %s', async (words, why) => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw why;
      },
    });
    const page = await load('denied');
    vi.unstubAllGlobals();
    expect(page.useSaved.getState().state).toBe('failed');
    expect(page.useSaved.getState().message).toContain(words);
    expect(page.useSaved.getState().message).toContain('Save a copy');
    expect(page.bend('U1L-U2L')).toBe(true);
  });

  it('opens the latest earlier state when what is kept cannot be read, and keeps the unreadable text', async () => {
    const page = await load('corrupt');
    await page.settled();
    const key = page.useJob.getState().key!;
    page.bend('U1L-U2L');
    await page.settled();
    page.jobs.takeState(page.useJob.getState().job!, 'nothing');
    const keep = await openKeep('corrupt');
    const now = await keep.load(key);
    await keep.save({ ...now!, text: '{"format":', turn: now!.turn + 1 }, 'now');
    keep.close();
    const again = await load('corrupt');
    expect(again.useSaved.getState().message).toMatch(/cannot be read.*What is open now is its state of/);
    expect(writeJob(again.useJob.getState().job!)).toContain('U1L-U2L');
    expect((await again.jobs.keptJobs()).some(({ text }) => text === '{"format":')).toBe(true);
  });

  it('opens the demo and lists the text when there is no earlier state either, however damaged the entry', async () => {
    const keep = await openKeep('worse');
    await keep.save({ key: 'a', name: 5, text: { odd: true }, turn: 'x', savedAt: null, copy: 'y' } as never);
    keep.close();
    const page = await load('worse');
    expect(page.useJob.getState().job?.name).toBe('Test job');
    expect(page.useSaved.getState().message).toContain('cannot be read');
    expect((await page.jobs.keptJobs()).some(({ text }) => text.includes('odd'))).toBe(true);
  });

  it(`keeps the last ${POINTS} earlier states, five minutes apart at least`, async () => {
    const keep = await openKeep('ring');
    for (let turn = 1; turn <= 100; turn++)
      await keep.save({ key: 'a', name: 'a', text: `${turn}`, turn, savedAt: minutes(turn * 2), copy: null });
    const points = await keep.points('a');
    expect(points).toHaveLength(POINTS);
    const times = points.map(({ savedAt }) => Date.parse(savedAt));
    // a point is the state before a save, two minutes older than it
    for (let k = 1; k < times.length; k++)
      expect(times[k - 1]! - times[k]!).toBeGreaterThanOrEqual(3 * 60_000);
    keep.close();
  });

  it('goes back to an earlier state as a change that undo takes back', async () => {
    const page = await load('restore');
    await page.settled();
    page.bend('U1L-U2L');
    await page.settled();
    const bent = writeJob(page.useJob.getState().job!);
    const [point] = await page.jobs.restorePoints();
    page.jobs.restore(point!);
    await page.settled();
    expect(writeJob(page.useJob.getState().job!)).not.toContain('"U1L-U2L","');
    expect(writeJob(page.useJob.getState().job!)).not.toBe(bent);
    page.undo();
    expect(writeJob(page.useJob.getState().job!)).toBe(bent);
  });
});
