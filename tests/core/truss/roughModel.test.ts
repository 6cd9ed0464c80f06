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

  // Every figure a saw, a press or a file would follow; the walk-round, counts and price do not need one.
  describe('with repairs decided on it', () => {
    const stamp = (n: number) => ({ id: `r${n}`, by: 'A', at: `2026-01-01T00:00:0${n}Z`, device: 'd' });
    const jobOn = (on: typeof model) => ({
      ...jobFromModel(on, 'Rough'),
      records: [
        {
          ...{ kind: 'finding', damage: 'bow', of: 'U2L-U3L', origin: 'mishap', depthIn: 0.5, alongIn: 4 },
          ...{ place: { from: 'U2L', atIn: 11 }, clock: 12, ...stamp(1) },
        },
        {
          ...{
            kind: 'finding',
            damage: 'dent',
            of: 'L3R-L4R',
            origin: 'mishap',
            depthIn: 0.06,
            alongIn: 0.5,
          },
          ...{ place: { from: 'L3R', atIn: 11 }, ...stamp(2) },
        },
        {
          ...{ kind: 'finding', damage: 'break', of: 'U4R-L4R', origin: 'mishap', gapIn: 0.1 },
          ...{ place: { from: 'U4R', atIn: 10 }, ...stamp(3) },
        },
        { kind: 'decision', of: 'U2L-U3L', choice: 'splice', reason: 'x', ...stamp(4) },
        { kind: 'decision', of: 'L3R-L4R', choice: 'splitSleeve', reason: 'x', ...stamp(5) },
        { kind: 'decision', of: 'U4R-L4R', choice: 'replace', reason: 'x', ...stamp(6) },
      ],
    });
    const at = (on: typeof model) => assess(jobOn(on) as never);
    const measured = {
      ...model,
      stations: model.stations.map((row) => ({ ...row, origin: 'measured' as const })),
    };
    const [rough, known] = [at(model), at(measured)];

    it('closes splice, template, cut list, saw and press lengths, each with its reason', () => {
      expect(rough.splice.members.map((row) => row.member)).toEqual(['U2L-U3L', 'L3R-L4R', 'U4R-L4R']);
      for (const { member, designs, piece } of rough.splice.members) {
        expect(piece.guessed).toEqual(member.split('-'));
        for (const design of designs) {
          expect(design.plan, `${member} ${design.method}`).toBe(null);
          if (design.fits === 'cannotSay')
            expect(design.missing.filter((name) => name.startsWith('place-guessed'))).toHaveLength(2);
        }
      }
      expect(rough.splice.issues.map((one) => one.code)).toEqual(Array(3).fill('length-rests-on-a-guess'));
      expect(rough.takeoff.stock).toEqual([]);
      expect(rough.plan.steps.flatMap((s) => s.materials.flatMap((m) => m.lengthIn ?? []))).toEqual([]);
      expect(rough.straighten.members.flatMap((row) => row.setups)).toEqual([]);
      expect(rough.straighten.members.flatMap((row) => row.cautions)).toContain('length-guessed');
      expect(rough.disposition.rows.flatMap((row) => row.room ?? [])).toEqual([]);
      const saws = rough.relief.targets.flatMap((t) => [...t.candidates, ...t.soundTubes]);
      expect(saws.length).toBeGreaterThan(0);
      for (const { whereToSaw } of saws)
        expect([whereToSaw.fromIn, whereToSaw.why]).toEqual([null, 'place-of-a-cluster-guessed']);
      expect(rough.trammel.plan!.readings.every((r) => r.guessed)).toBe(true);
    });

    it('leaves walk-round, counts, order of work and price range as they are with every place measured', () => {
      expect(rough.coverage).toEqual(known.coverage);
      expect(rough.estimate.known.likelyH.value).toBeGreaterThan(0);
      expect(rough.estimate.known).toEqual(known.estimate.known);
      expect(rough.plan.steps.map((s) => s.id)).toEqual(known.plan.steps.map((s) => s.id));
    });

    it('opens them again once the clusters are measured', () => {
      expect(known.splice.members.flatMap((row) => row.designs.filter((d) => d.plan)).length).toBeGreaterThan(
        2,
      );
      expect(known.takeoff.stock.length).toBeGreaterThan(0);
      expect(known.splice.issues).toEqual([]);
    });
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
