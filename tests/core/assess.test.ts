import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess, rememberingStages } from '../../src/core/assess.ts';
import { type Seeded, seeded } from '../../src/core/base/seeded.ts';
import type { Change } from '../../src/core/job/change.ts';
import { edit } from '../../src/core/job/edit.ts';
import { jobFromModel } from '../../src/core/job/jobFromModel.ts';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { readModel } from '../../src/core/job/read.ts';
import { soak } from '../kit/soak.ts';
import { frozen } from '../kit/trusses.ts';

const opened = readModel(readFileSync('models/practice-truss.json', 'utf8'));
if (!opened.ok) throw new Error('The practice model does not open.');
const fresh: Job = frozen(jobFromModel(opened.value, 'Practice', 'practice'));
const { members, clusters } = assess(fresh).truss;

/** One thing a person might do next. */
const someChange = (chance: Seeded): Change => {
  const member = chance.pick(members);
  const [a, b] = [chance.pick(clusters).id, chance.pick(clusters).id];
  const kinds: readonly (() => Change)[] = [
    () => ({
      kind: 'tag',
      of: [member.id],
      tag: chance.pick(['bent', 'cracked', 'forReplacement'] as const),
    }),
    () => ({
      kind: 'tag',
      of: [member.id],
      tag: 'lookedAt',
      method: 'eye',
      finishRemoved: chance.share() < 0.5,
    }),
    () => ({
      kind: 'decide',
      of: [member.id],
      choice: chance.pick(['straighten', 'splice', 'refer'] as const),
    }),
    () => ({
      kind: 'addFinding',
      finding: {
        damage: 'bow',
        of: member.id,
        origin: 'unknown',
        place: { from: member.from, atIn: member.lengthIn / 2 },
        depthIn: chance.whole(1, 16) / 32,
        clock: chance.whole(1, 12),
      },
    }),
    () => ({
      kind: 'addReading',
      reading: {
        ends: [
          { cluster: a, mark: 'axis' },
          { cluster: b, mark: 'axis' },
        ],
        lengthIn: chance.whole(320, 1600) / 32,
        instrument: 'trammel',
        hold: chance.pick(['beforeCutting', 'afterCutting'] as const),
      },
    }),
    () => ({ kind: 'note', note: { words: 'a note' } }),
    () => ({ kind: 'setHeld', held: { setup: chance.pick(fresh.model.setups).id } }),
  ];
  return chance.pick(kinds)();
};

describe('assess', () => {
  it.each([1, 2, 3])(
    'gives after hundreds of edits, each worked from the last, what a fresh assess gives (seed %i)',
    (seed) => {
      const chance = seeded(`edits ${seed}`);
      const stages = rememberingStages();
      let job = fresh;
      for (let step = 0; step < soak(300); step++) {
        const stamp = {
          by: 'tester',
          device: 'bench',
          at: new Date(Date.UTC(2026, 4, 1) + step * 60_000).toISOString(),
          newId: () => `r${seed}-${step}-${chance.whole(0, 1e9)}`,
        };
        const changed = edit(job, someChange(chance), stamp);
        if (!changed.ok) continue;
        job = frozen(changed.value.job);
        const kept = assess(job, {}, stages);
        expect(kept).toEqual(assess(job));
        expect(assess(job, {}, stages).statics).toBe(kept.statics);
      }
      expect(job.records.length).toBeGreaterThan(5);
    },
    240_000,
  );

  it('reworks nothing before the trammel when only a reading is added', () => {
    const stages = rememberingStages();
    const before = assess(fresh, {}, stages);
    const added = edit(
      fresh,
      {
        kind: 'addReading',
        reading: {
          ends: [
            { cluster: 'U1L', mark: 'axis' },
            { cluster: 'L2L', mark: 'axis' },
          ],
          lengthIn: 30,
          instrument: 'trammel',
          hold: 'beforeCutting',
        },
      },
      { by: 'tester', device: 'bench', at: '2026-05-01T08:00:00Z', newId: () => 'r1' },
    );
    if (!added.ok) return expect.fail('the reading was refused');
    const after = assess(added.value.job, {}, stages);
    expect(after.truss).toBe(before.truss);
    expect(after.coverage).toBe(before.coverage);
    expect(after.statics).toBe(before.statics);
    expect(after.trammel).not.toBe(before.trammel);
  });

  it('answers the same whatever the order of the records in the file', () => {
    const chance = seeded('order');
    let job = fresh;
    for (let step = 0; step < 12; step++) {
      const changed = edit(job, someChange(chance), {
        by: 'tester',
        device: 'bench',
        at: `2026-05-01T08:00:${String(step).padStart(2, '0')}Z`,
        newId: () => `r${step}-${chance.whole(0, 1e9)}`,
      });
      if (changed.ok) job = changed.value.job;
    }
    const turned: Job = { ...job, records: [...job.records].reverse() };
    expect(JSON.stringify(assess(turned))).toBe(JSON.stringify(assess(job)));
  });
});
