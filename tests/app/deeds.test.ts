import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { tag } from '../../src/app/deeds.ts';
import { followJob } from '../../src/app/state/answer.ts';
import { openJob, useJob } from '../../src/app/state/job.ts';
import { readJob } from '../../src/core/job/read.ts';

it('a tag that rests on a measured finding is not taken off by a press; the reason is shown', () => {
  const read = readJob(readFileSync('demo-data/ground-loop.json', 'utf8'));
  if (!read.ok) throw new Error('the demo job does not open');
  openJob('key', read.value);
  const leave = followJob();
  const before = useJob.getState().job;
  tag(['L3R-L4R'], 'bent');
  expect(useJob.getState().job).toBe(before);
  expect(useJob.getState().refused.map(({ code }) => code)).toEqual(['tag-rests-on-a-finding']);
  tag(['L3R-L4R'], 'cracked');
  expect(useJob.getState().refused).toEqual([]);
  expect(useJob.getState().job).not.toBe(before);
  leave();
});
