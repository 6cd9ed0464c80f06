import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { writeJob } from '../../src/core/job/write.ts';
import { emptyJob } from './kit.ts';

/** The app's own modules as a freshly loaded page has them; the shelf outlives them. */
const load = async (shelf: string) => {
  vi.resetModules();
  const jobs = { ...(await import('../../src/app/jobs.ts')), ...(await import('../../src/app/opening.ts')) };
  const { change, useJob } = await import('../../src/app/state/job.ts');
  const { useSaved } = await import('../../src/app/state/saved.ts');
  await jobs.beginKeeping(async () => jobs.openText(writeJob(emptyJob()), 'demo job'), shelf);
  return { jobs, change, useJob, useSaved };
};
type Page = Awaited<ReturnType<typeof load>>;

const settled = async (page: Page): Promise<void> => {
  await vi.waitFor(() => expect(page.useSaved.getState().state).toBe('saved'));
};
const bend = (page: Page, id: string): boolean =>
  page.change({ kind: 'tag', of: [id], tag: 'bent' }, `Bent: ${id}`);

describe('keeping the open job', () => {
  let shelf = '';
  let count = 0;
  beforeEach(() => {
    count += 1;
    shelf = `page-${count}`;
  });

  it('opens the demo on a first visit and keeps it at once', async () => {
    const page = await load(shelf);
    await settled(page);
    expect(page.useJob.getState().job?.name).toBe('Test job');
    expect(await page.jobs.keptJobs()).toHaveLength(1);
  });

  it('saves each change as it is entered, says when, and brings all of it back', async () => {
    const page = await load(shelf);
    bend(page, 'U1L-U2L');
    bend(page, 'U2L-U3L');
    await settled(page);
    expect(page.useSaved.getState().at).not.toBeNull();
    const text = writeJob(page.useJob.getState().job!);
    const again = await load(shelf);
    expect(writeJob(again.useJob.getState().job!)).toBe(text);
    expect(again.useSaved.getState().readIssues).toEqual([]);
  });

  it('keeps several jobs, and opens again the one that was open last', async () => {
    const page = await load(shelf);
    await settled(page);
    page.jobs.startJob({ ...emptyJob(), name: 'Second' });
    await settled(page);
    expect((await page.jobs.keptJobs()).map(({ name }) => name).sort()).toEqual(['Second', 'Test job']);
    const again = await load(shelf);
    expect(again.useJob.getState().job?.name).toBe('Second');
  });

  it('keeps both when two tabs change the same job, and says so', async () => {
    const one = await load(shelf);
    await settled(one);
    const two = await load(shelf);
    bend(two, 'U1R-U2R');
    await settled(two);
    bend(one, 'U1L-U2L');
    await vi.waitFor(async () => expect(await one.jobs.keptJobs()).toHaveLength(2));
    expect(one.useSaved.getState().message).toContain('Another tab');
    const texts = (await one.jobs.keptJobs()).map(({ text }) => text);
    expect(texts.some((text) => text.includes('U1L-U2L'))).toBe(true);
    expect(texts.some((text) => text.includes('U1R-U2R'))).toBe(true);
  });

  it('leaves the open job alone when a text is no job, and says what is wrong', async () => {
    const page = await load(shelf);
    await settled(page);
    const { job } = page.useJob.getState();
    for (const text of ['', 'not json', '[]', '{"format":"tubewright-job","version":999}', '{"a":1e999}']) {
      expect(await page.jobs.openText(text, 'bad.json')).toBe(false);
      expect(page.useJob.getState().job).toBe(job);
      expect(page.useSaved.getState().message).toContain('bad.json');
    }
  });

  it('says so and goes on when this device refuses to keep anything', async () => {
    const held = globalThis.indexedDB;
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new Error('storage is shut');
      },
    });
    const page = await load(shelf);
    expect(page.useSaved.getState().state).toBe('failed');
    expect(page.useSaved.getState().message).toContain('Save a copy');
    expect(page.useJob.getState().job?.name).toBe('Test job');
    expect(bend(page, 'U1L-U2L')).toBe(true);
    vi.stubGlobal('indexedDB', held);
  });
});
