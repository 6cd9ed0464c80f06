import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { misfits } from '../../../src/core/lockedIn/misfit.ts';
import { expectNear } from '../../kit/near.ts';
import { bareTruss, bow, cluster, tubeMember } from '../relief/trusses.ts';

const a = cluster('A', 0, 0, 0);
const b = cluster('B', 24, 0, 0);
const truss = bareTruss([a, b], [tubeMember('A-B', a, b, 0.75, 0.035)]);
const one = (...findings: Finding[]) => misfits(truss, findings).misfits[0]!;
const exact = { abs: 1e-12, rel: 1e-12, because: 'the table of methods section 3' };

describe('the shape of a bow', () => {
  it('is a half-sine when its place is in the middle third, a kink there when it is not', () => {
    const at = (atIn: number, from = 'A') => one(bow('A-B', 0.4, { place: { from, atIn } }));
    expectNear(at(12).shortIn, (Math.PI * 0.4) ** 2 / 96, exact);
    expectNear(at(15.9).shortIn, (Math.PI * 0.4) ** 2 / 96, exact);
    expectNear(at(6).shortIn, (0.16 * 24) / (2 * 6 * 18), exact);
    expectNear(at(6, 'B').atIn, 18, exact);
  });
  it('is what was said when a shape was given', () => {
    const place = { from: 'A', atIn: 12 };
    expectNear(one(bow('A-B', 0.4, { place, shape: 'kinked' })).shortIn, (0.16 * 24) / 288, exact);
    expectNear(
      one(bow('A-B', 0.4, { place: { from: 'A', atIn: 4 }, shape: 'smooth' })).shortIn,
      (Math.PI * 0.4) ** 2 / 96,
      exact,
    );
  });
});

describe('the free turn of the ends', () => {
  it('follows the bow: bowed up, the forward end of a tube that runs aft turns nose up', () => {
    const m = one(bow('A-B', 0.4, { clock: 12, shape: 'smooth' }));
    // Up-bowed along +x: slope dz/dx > 0 at the forward end is a right-hand turn about −y.
    expectNear(m.turnFrom[1], (-Math.PI * 0.4) / 24, exact);
    expectNear(m.turnTo[1], (Math.PI * 0.4) / 24, exact);
    expectNear(m.turnFrom[2], 0, exact);
  });
  it('is left out, and said so, when no clock position was given', () => {
    const { clock: _, ...without } = bow('A-B', 0.4, { shape: 'smooth' });
    const m = one(without as Finding);
    expect(m.turnFrom).toEqual([0, 0, 0]);
    expect(m.assumed).toContain('shortening-only-no-clock');
  });
});

describe('several bends in one tube', () => {
  it('shorten it at most as much as both together in one plane would, never less than both apart', () => {
    const kink: Finding = {
      ...bow('A-B', 0.2, { clock: 12 }),
      id: 'k',
      damage: 'kink',
      place: { from: 'A', atIn: 8 },
    } as Finding;
    const both = one(bow('A-B', 0.4, { clock: 12, shape: 'smooth' }), kink);
    const [s1, s2] = [one(bow('A-B', 0.4, { shape: 'smooth' })).shortIn, one(kink).shortIn];
    // Exact for one plane: ½∫(y₁' + y₂')² = δ₁ + δ₂ + ∫y₁'y₂'; by parts ∫y₁'y₂' = y₁(8)·(1/8 + 1/16)·0.2.
    const cross = 0.4 * Math.sin(Math.PI / 3) * 0.2 * (1 / 8 + 1 / 16);
    expect(both.shortIn).toBeGreaterThanOrEqual(s1 + s2 + cross);
    expectNear(both.shortIn, s1 + s2 + cross, { rel: 0.1, because: 'the bound is close for like shapes' });
    expect(both.assumed).toContain('several-bends-add-up');
    expect(both.findings).toEqual(['f-A-B', 'k']);
  });
});

describe('what cannot be used', () => {
  it('is listed as not measured: a bow without a depth', () => {
    const tag = { ...bow('A-B', 1) } as Record<string, unknown>;
    delete tag.depthIn;
    const r = misfits(truss, [tag as Finding]);
    expect(r.misfits).toEqual([]);
    expect(r.unmeasured).toEqual(['A-B']);
  });
  it('is an issue with its mend: a kink in the cluster, a chord longer than the tube, a depth no tube has', () => {
    const codes = (f: Finding) => misfits(truss, [f]).issues.map((i) => `${i.code} ${i.mend}`);
    expect(codes(bow('A-B', 0.2, { shape: 'kinked', place: { from: 'A', atIn: 0.1 } }))).toEqual([
      'kink-at-cluster give-place-along-tube',
    ]);
    expect(codes(bow('A-B', 0.2, { chordIn: 40 }))).toEqual(['chord-longer-than-tube give-chord-along-tube']);
    expect(codes(bow('A-B', 9))).toEqual(['bend-too-deep check-depth-of-bend']);
  });
  it('is no bend: dents and cracks make no misfit', () => {
    const dent = { ...bow('A-B', 0.1), damage: 'dent' } as Finding;
    expect(misfits(truss, [dent])).toEqual({ misfits: [], unmeasured: [], issues: [] });
  });
});
