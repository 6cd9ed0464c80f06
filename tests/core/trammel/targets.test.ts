import { describe, expect, it } from 'vitest';
import { targetBetween } from '../../../src/core/trammel/targets.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { verdictOf } from '../../../src/core/trammel/verdict.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { axisReading, bowOn, box, boxModel, manualOf } from './kit.ts';

const exact = { abs: 1e-9, because: 'arithmetic in doubles' };

describe('verdict', () => {
  // needs.md N20: instrument ±1/32 (so one standard deviation is 1/64, or 1/32 read as the deviation itself), limit ±1/16.
  // The rest by hand from |d| + 2 s ≤ t and |d| − 2 s ≥ t.
  const s = 1 / 64;
  const t = 1 / 16;
  it.each([
    [3 / 64, s, t, 'cannotTell'],
    [0, s, t, 'inside'],
    [1 / 8, s, t, 'outside'],
    [3 / 64, 1 / 32, t, 'cannotTell'],
    [0, 1 / 32, t, 'inside'],
    [1 / 8, 1 / 32, t, 'outside'],
    [-3 / 64, s, t, 'cannotTell'],
    [-1 / 8, s, t, 'outside'],
    [1 / 32, s, t, 'inside'],
    [-1 / 32, s, t, 'inside'],
    [5 / 64, s, t, 'cannotTell'],
    [6 / 64, s, t, 'outside'],
    [1 / 16, 0, t, 'inside'],
    [1 / 16 + 1 / 64, 0, t, 'outside'],
    [1 / 16, s, t, 'cannotTell'],
    [0, 1 / 16, t, 'cannotTell'],
    [1, 1 / 2, t, 'cannotTell'],
    [2, 1 / 2, t, 'outside'],
    [0, 0, undefined, 'noLimit'],
    [3, s, undefined, 'noLimit'],
  ] as const)('difference %d, deviation %d, limit %d is %s', (d, std, tol, want) => {
    expect(verdictOf(d, std, tol)).toBe(want);
  });
});

describe('targets', () => {
  it('gives both diagonals of every face and ring, and the distance between the clusters', () => {
    const { truss, model } = box(2);
    const { targets, plan } = trammel(truss, model, [], [], []);
    const byId = new Map(targets.map((t) => [t.id, t]));
    for (const id of ['U1L–L2L', 'L1L–U2L', 'U1L–U2R', 'U1R–U2L', 'L1L–L2R', 'L1R–L2L', 'U1L–L1R', 'U1R–L1L'])
      expect(byId.get(id)?.kind).toMatch(/iagonal/);
    expect(byId.get('U1L–U2L')?.kind).toBe('longeron');
    expect(byId.get('U2L–L2L')?.kind).toBe('vertical');
    expect(byId.get('U2L–U2R')?.kind).toBe('crossMember');
    // Three rings of 6 and two bays of 4 longerons and 8 diagonals.
    expect(targets.filter((t) => t.kind !== 'long')).toHaveLength(3 * 6 + 2 * 12);
    // Besides them only what the measuring plan asks for.
    const planned = new Set(plan!.readings.map((r) => r.target));
    for (const t of targets) if (t.kind === 'long') expect(planned.has(t.id)).toBe(true);
    for (const t of targets) {
      const [a, b] = [t.from, t.to].map((id) => truss.clusters.find((c) => c.id === id)!.at);
      const want = Math.sqrt((a![0] - b![0]) ** 2 + (a![1] - b![1]) ** 2 + (a![2] - b![2]) ** 2);
      expectNear(t.targetIn.value, want, exact);
      expect(t.targetIn.basis.kind).toBe('computed');
    }
  });

  it('lets a drawing distance outrank the station table, for its own pair only, with its tolerance', () => {
    const model = boxModel(1, [
      { from: 'L2L', to: 'U1L', lengthIn: 33, toleranceIn: 0.0625, source: 'Sheet 4' },
    ]);
    const truss = expandTruss(model);
    const drawn = targetBetween(truss, model, 'U1L', 'L2L')!;
    expect(drawn.targetIn).toMatchObject({ value: 33, basis: { kind: 'drawing', ref: 'Sheet 4' } });
    expect(drawn.toleranceIn?.value).toBe(0.0625);
    const twin = targetBetween(truss, model, 'U1R', 'L2R')!;
    expect(twin.targetIn.basis.kind).toBe('computed');
    expect(twin.toleranceIn).toBeUndefined();
  });

  it("takes the user's tolerance for a kind of distance, and gives no verdict without any", () => {
    const { truss, model } = box(1);
    const d = targetBetween(truss, model, 'U1L', 'L2L')!.targetIn.value;
    const readings = [axisReading('r1', 'U1L', 'L2L', d + 0.25), axisReading('r2', 'U1L', 'U2L', 24)];
    const { targets } = trammel(truss, model, readings, [], [manualOf('m1', 'tolerance:diagonal', 0.0625)]);
    const compared = (id: string) => targets.find((t) => t.id === id)!.compared[0]!;
    expect(compared('U1L–L2L').verdict).toBe('outside');
    expectNear(compared('U1L–L2L').differenceIn.value, 0.25, exact);
    expect(compared('U1L–U2L').verdict).toBe('noLimit');
    expect(compared('U1L–L2L').foundIn.assumed).toContain('std-1/32');
  });

  it('averages repeats of one hold, tells their scatter, and keeps holds apart', () => {
    const { truss, model } = box(1);
    const std = { stdIn: 0.03 };
    const readings = [
      axisReading('r1', 'U1L', 'L2L', 32.1, std),
      axisReading('r2', 'L2L', 'U1L', 32.2, std),
      axisReading('r3', 'U1L', 'L2L', 32.3, std),
      axisReading('r4', 'U1L', 'L2L', 31, { ...std, hold: 'afterCutting' }),
    ];
    const { compared } = trammel(truss, model, readings, [], []).targets.find((t) => t.id === 'U1L–L2L')!;
    expect(compared.map((c) => c.hold)).toEqual(['beforeCutting', 'afterCutting']);
    expectNear(compared[0]!.foundIn.value, 32.2, exact);
    expectNear(compared[0]!.foundIn.std!, 0.03 / Math.sqrt(3), exact);
    expectNear(compared[0]!.scatterIn!, 0.1, exact);
    expect(compared[1]!.scatterIn).toBeUndefined();
  });

  it('reads set-and-miss as the length set less how far the point stood beyond the mark', () => {
    const { truss, model } = box(1);
    const { lengthIn: _, ...r } = axisReading('r1', 'U1L', 'U2L', 1);
    const { targets } = trammel(truss, model, [{ ...r, setAndMiss: { setIn: 24, missIn: 0.125 } }], [], []);
    expectNear(targets.find((t) => t.id === 'U1L–U2L')!.compared[0]!.foundIn.value, 23.875, exact);
  });

  it('takes the opposite-hand reading for a guessed cluster, and says so', () => {
    const plain = boxModel(1);
    const at = expandTruss(plain).clusters.find((c) => c.id === 'U2R')!.at;
    const model = {
      ...plain,
      clusters: [{ id: 'U2R', at: [...at] as [number, number, number], assumed: true }],
    };
    const truss = expandTruss(model);
    const readings = [axisReading('r1', 'L1L', 'U2L', 30.5)];
    const found = (hurt: string[]) =>
      trammel(
        truss,
        model,
        readings,
        hurt.map((h) => bowOn(`f${h}`, h)),
        [],
      ).targets.find((t) => t.id === 'L1R–U2R')!.targetIn;
    expect(found([])).toMatchObject({
      value: 30.5,
      basis: { kind: 'measured' },
      assumed: ['opposite-hand-equal'],
    });
    expect(found(['U2L'])).toMatchObject({ basis: { kind: 'assumed' }, assumed: ['cluster-place-guessed'] });
  });

  it('leaves out a reading that lacks a fact and says which', () => {
    const { truss, model } = box(1);
    const mark = { cluster: 'U1L', mark: 'surface' as const };
    const readings = [
      axisReading('r1', 'U1L', 'U1L', 3),
      axisReading('r2', 'U1L', 'U9L', 3),
      axisReading('r3', 'U1L', 'U2L', 24, { ends: [mark, { cluster: 'U2L', mark: 'axis' }] }),
    ];
    const got = trammel(truss, model, readings, [], []);
    expect(got.issues.map((i) => i.code)).toEqual([
      'reading-to-itself',
      'reading-cluster-unknown',
      'reading-mark-incomplete',
      'reading-marks-mixed',
    ]);
    expect(got.targets.every((t) => t.compared.length === 0)).toBe(true);
  });
});
