import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess.ts';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import { readModel } from '../../../src/core/job/read.ts';
import { writeModel } from '../../../src/core/job/write.ts';
import { type RoughSizes, roughModel } from '../../../src/core/truss/rough.ts';

const sizes: RoughSizes = {
  name: 'Old biplane',
  drawnIn: 'in',
  stations: 8,
  lengthIn: 160,
  forwardHeightIn: 40,
  aftHeightIn: 10,
  forwardWidthIn: 26,
  aftWidthIn: 4,
  tailPost: true,
};

describe('a rough truss', () => {
  const made = roughModel(sizes);
  const model = made.ok ? made.value : expect.fail('refused');

  // Counted by hand: 7 full rings of 4 clusters and a tail post of 2.
  it('has every cluster marked assumed, its length and its ends as given, and reads as a file', () => {
    expect(readModel(writeModel(model)).ok).toBe(true);
    const { truss, coverage } = assess(jobFromModel(model, 'Rough'));
    expect(truss.clusters).toHaveLength(7 * 4 + 2);
    expect(truss.clusters.every((c) => c.assumed)).toBe(true);
    expect(truss.issues).toEqual([]);
    const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
    expect(at.get('U1L')).toEqual([0, -13, 40]);
    expect(at.get('U8C')![2] - at.get('L8C')![2]).toBe(10);
    expect(at.get('U8C')![0]).toBe(160);
    expect(coverage.notLookedAt.members).toHaveLength(truss.members.length);
  });

  it('gives no distance to work to: each is a guess and says so', () => {
    const { trammel } = assess(jobFromModel(model, 'Rough'));
    expect(trammel.targets.length).toBeGreaterThan(100);
    expect(new Set(trammel.targets.map((t) => t.targetIn.basis.kind))).toEqual(new Set(['assumed']));
    expect(trammel.targets.every((t) => t.targetIn.assumed.includes('cluster-place-guessed'))).toBe(true);
  });

  it('judges nothing and spreads nothing against a guess, even with a tolerance loaded', () => {
    const job = {
      ...jobFromModel(model, 'Rough'),
      records: [
        {
          ...{ kind: 'manual', id: 'm1', by: 'A', at: '2026-01-01T00:00:00Z', device: 'd' },
          ...{ topic: 'tolerance:longeron', valueIn: 0.03, source: 'shop' },
        } as const,
        {
          ...{ kind: 'reading', id: 'r1', by: 'A', at: '2026-01-01T00:00:00Z', device: 'd' },
          ends: [
            { cluster: 'U1L', mark: 'axis' },
            { cluster: 'U2L', mark: 'axis' },
          ],
          ...{ lengthIn: 30, instrument: 'tape', hold: 'beforeCutting' },
        } as const,
      ],
    };
    const { trammel } = assess(job as never);
    const read = trammel.targets.flatMap((t) => t.compared);
    expect(read).toHaveLength(1);
    expect(read[0]!.verdict).toBe('noLimit');
    expect(trammel.spread ?? []).toEqual([]);
  });

  it.each([
    [{ stations: 1 }, 'stations'],
    [{ stations: 7.5 }, 'stations'],
    [{ lengthIn: 0 }, 'lengthIn'],
    [{ forwardHeightIn: Number.NaN }, 'forwardHeightIn'],
  ])('is refused for %o', (part, at) => {
    const refusal = roughModel({ ...sizes, ...part });
    expect(refusal.ok).toBe(false);
    expect(refusal.issues.map((i) => i.at)).toEqual([at]);
  });
});
