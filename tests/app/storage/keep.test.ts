import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it } from 'vitest';
import { type Keep, type Kept, openKeep } from '../../../src/app/storage/keep.ts';

let opened: Keep[] = [];
const shelf = async (name: string): Promise<Keep> => {
  const keep = await openKeep(name);
  opened.push(keep);
  return keep;
};
afterEach(() => {
  for (const keep of opened) keep.close();
  opened = [];
});

const kept = (key: string, turn: number, text: string, savedAt = '2031-05-04T10:00:00Z'): Kept => ({
  key,
  name: key,
  text,
  turn,
  savedAt,
  copy: null,
});

describe('keep', () => {
  it('gives back the text that was saved, also after the shelf was closed', async () => {
    const first = await shelf('reopen');
    await first.save(kept('a', 1, 'one'));
    await first.save(kept('a', 2, 'two'));
    first.close();
    const again = await shelf('reopen');
    expect((await again.load('a'))?.text).toBe('two');
  });

  it('brings back the job that was open last, and lists all, latest first', async () => {
    const keep = await shelf('several');
    await keep.save(kept('a', 1, 'x', '2031-05-04T10:00:00Z'));
    await keep.save(kept('b', 1, 'y', '2031-05-04T12:00:00Z'));
    await keep.save(kept('a', 2, 'z', '2031-05-04T11:00:00Z'));
    expect((await keep.latest())?.key).toBe('a');
    expect((await keep.list()).map(({ key }) => key)).toEqual(['b', 'a']);
  });

  it('never writes over a version it has not seen: the other one is given back', async () => {
    const [here, there] = [await shelf('tabs'), await shelf('tabs')];
    await here.save(kept('a', 1, 'one'));
    await there.save(kept('a', 2, 'theirs'));
    const outcome = await here.save(kept('a', 2, 'ours'));
    expect(outcome).toEqual({ kind: 'otherVersion', other: kept('a', 2, 'theirs') });
    expect((await here.load('a'))?.text).toBe('theirs');
  });

  it('removes one job and leaves the others', async () => {
    const keep = await shelf('remove');
    await keep.save(kept('a', 1, 'x'));
    await keep.save(kept('b', 1, 'y'));
    await keep.remove('b');
    expect((await keep.list()).map(({ key }) => key)).toEqual(['a']);
    expect(await keep.latest()).toBeUndefined();
  });
});
