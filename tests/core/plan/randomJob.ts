import type { Seeded } from '../../../src/core/base/seeded.ts';
import { seeded } from '../../../src/core/base/seeded.ts';
import { choices, type Job, type JobRecord } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { box } from '../truss/box.ts';
import { jobWith, modelNamed, rec } from './planJob.ts';

const sides = ['rising', 'falling', 'crossed', 'none'] as const;
const flats = ['toRight', 'toLeft', 'crossed', 'none'] as const;

/** A box of a few bays with any bracing, welded or pinned; some of them mechanisms. */
export const randomBox = (chance: Seeded): Model => {
  const bays = chance.whole(2, 4);
  return box(
    Array.from({ length: bays + 1 }, (_, k) => ({
      at: `${k + 1}`,
      ring: chance.pick(flats),
      ...(k < bays
        ? {
            left: chance.pick(sides),
            right: chance.pick(sides),
            top: chance.pick(flats),
            bottom: chance.pick(flats),
          }
        : {}),
    })),
    { joints: chance.share() < 0.8 ? 'welded' : 'pinned' },
    bays,
  );
};

const models = ['practice-truss', 'high-wing-tandem', 'low-wing-side-by-side'] as const;

/** A job with random findings, decisions, ways of being held, and progress in no sensible order. */
export const randomJob = (seed: string): Job => {
  const chance = seeded(seed);
  const model = chance.share() < 0.8 ? randomBox(chance) : modelNamed(chance.pick(models));
  const truss = expandTruss(model);
  const records: JobRecord[] = [];
  const some = truss.clusters.filter(() => chance.share() < 0.3).map((c) => c.id);
  if (chance.share() < 0.7)
    records.push(
      rec({
        kind: 'held',
        held: some.map((cluster) => ({ cluster, fixed: ['x', 'y', 'z'] })),
        braces:
          chance.share() < 0.3
            ? [
                {
                  from: chance.pick(truss.clusters).id,
                  to: chance.pick(truss.clusters).id,
                  odIn: 1,
                  wallIn: 0.049,
                },
              ]
            : [],
      }),
    );
  const hurt = chance.whole(1, 9);
  for (let k = 0; k < hurt; k++) {
    const member = chance.pick(truss.members);
    const of = chance.share() < 0.12 ? chance.pick(truss.clusters).id : member.id;
    const damage = chance.pick(['bow', 'kink', 'dent', 'crack', 'oval', 'hole'] as const);
    if (chance.share() < 0.8)
      records.push(
        rec({
          kind: 'finding',
          damage,
          of,
          origin: chance.pick(['thisAccident', 'older', 'unknown'] as const),
          ...(of === member.id
            ? { place: { from: member.from, atIn: member.lengthIn * chance.share() } }
            : {}),
          ...(damage === 'bow' ? { depthIn: chance.whole(1, 24) / 32, clock: chance.whole(1, 12) } : {}),
        }),
      );
    if (chance.share() < 0.85) records.push(rec({ kind: 'decision', of, choice: chance.pick(choices) }));
    if (chance.share() < 0.15) records.push(rec({ kind: 'progress', step: `cut:${of}`, done: true }));
  }
  if (chance.share() < 0.2)
    records.push(rec({ kind: 'progress', step: `cut:${chance.pick(truss.members).id}`, done: true }));
  if (chance.share() < 0.2)
    records.push(
      rec({ kind: 'manual', topic: 'limit:sag', valueIn: chance.share() / 50, source: 'invented' }),
    );
  return jobWith(model, records);
};
