import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/base/vec3.ts';
import { changedFrame } from '../../../src/core/lockedIn/changedFrame.ts';
import { lockedIn } from '../../../src/core/lockedIn/lockedIn.ts';
import { bowChanges } from '../../../src/core/lockedIn/lockedState.ts';
import { misfits } from '../../../src/core/lockedIn/misfit.ts';
import { chi2At999, withMovedClusters } from '../../../src/core/lockedIn/movedClusters.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import type { Trammel } from '../../../src/core/trammel/result.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { noReadings } from '../relief/job.ts';
import { naive } from '../relief/oracle.ts';
import { freeEnds } from '../relief/softTube.ts';
import { bow, boxTruss, fixedOf, heldAt, seeded } from '../relief/trusses.ts';

const truss = boxTruss({ bays: 3, sides: ['crossed'] });
const support = heldAt(
  new Map([
    ['L1L', ['x', 'y', 'z']],
    ['L1R', ['x', 'z']],
    ['L4L', ['z']],
  ] as const),
);
const frame = prepareFrame(truss, support);
if (!isFrame(frame)) throw new Error('the box stands');
// The second opinion leaves the bows' own softness out, and so does the frame handed in here.
const findings = [
  bow('L2L-L3L', 0.3, { shape: 'smooth', stdIn: 0.3 }),
  bow('U2L-L3L', 0.3, { shape: 'smooth', stdIn: 0.3 }),
];
const made = misfits(truss, findings).misfits;

/** Readings that show given moves, each cluster known to a standard deviation. */
const shown = (moves: readonly Vec3[], std: number): Trammel => ({
  ...noReadings,
  byHold: {
    beforeCutting: {
      hold: 'beforeCutting',
      readings: [],
      clusters: truss.clusters.map((c, k) => ({
        id: c.id,
        moveIn: moves[k]!,
        covariance: [std ** 2, 0, 0, 0, std ** 2, 0, 0, 0, std ** 2],
        fixedBy: 'all' as const,
        free: [],
        moved: 'notShown' as const,
        datum: false,
      })),
      degreesOfFreedom: 30,
      varianceFactor: 1,
      fits: 'fits',
    },
  },
});

/** Moves of a frame solved by another library for true shortenings, a rigid motion on top. */
const moved = (shortIn: readonly number[]): Vec3[] => {
  const free = new Map(
    made.map((m, k) => [m.member, freeEnds(truss, { ...m, shortIn: shortIn[k]! }, false)]),
  );
  const { moves } = naive({ truss, fixed: fixedOf(support), free });
  return truss.clusters.map(({ at }, c) => {
    const turn: Vec3 = [0.001, -0.002, 0.0015];
    return [0, 1, 2].map((d) => {
      const [p, q] = [(d + 1) % 3, (d + 2) % 3];
      return moves[c * 6 + d]! + 0.1 * (d + 1) + turn[p]! * at[q]! - turn[q]! * at[p]!;
    }) as unknown as Vec3;
  });
};

const changed = changedFrame(frame, [])!;

describe('moved clusters', () => {
  it('give back the shortenings that moved them, whatever rigid motion the readings stand in', () => {
    const r = withMovedClusters(truss, changed, made, shown(moved([0.04, 0.015]), 1e-6));
    expect(r.kind).toBe('taken');
    const near = {
      abs: 1e-5,
      because: 'readings known to a millionth; the prior is a thousandth wide at least',
    };
    expectNear(r.misfits[0]!.shortIn, 0.04, near);
    expectNear(r.misfits[1]!.shortIn, 0.015, near);
  });

  it('leave the bow in charge when the readings know less than the bow', () => {
    const r = withMovedClusters(truss, changed, made, shown(moved([0.04, 0.015]), 10));
    expect(r.kind).toBe('taken');
    r.misfits.forEach((m, k) => {
      expectNear(m.shortIn, made[k]!.shortIn, { abs: 1e-6, because: 'readings known to 10 in' });
    });
  });

  it('are refused, with the bay that fits worst, when the recorded damage does not explain them', () => {
    const moves = moved([0.0001, 0.0001]);
    const odd = truss.clusters.findIndex((c) => c.id === 'U4R');
    moves[odd] = [moves[odd]![0], moves[odd]![1] + 0.5, moves[odd]![2]];
    const r = withMovedClusters(truss, changed, made, shown(moves, 1 / 32));
    expect(r.kind).toBe('doesNotExplain');
    expect(r.misfits).toEqual(made);
    expect(r.issues[0]?.code).toBe('damage-does-not-explain-shape');
    expect(r.issues[0]?.facts.bay).toBe('3');
  });

  it('are refused about as often as the test says when only reading errors move them', () => {
    // Independent normal errors: 0.1 % of adjustments exceed; none or one in these.
    const runs = soak(400);
    let refused = 0;
    for (let seed = 1; seed <= runs; seed++) {
      const next = seeded(seed);
      const normal = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
      const moves = truss.clusters.map((): Vec3 => [normal() / 32, normal() / 32, normal() / 32]);
      if (withMovedClusters(truss, changed, [], shown(moves, 1 / 32)).kind === 'doesNotExplain') refused++;
    }
    expect(refused).toBeLessThanOrEqual(3);
  });

  it('take part in the stage, which says which it used', () => {
    const deep = [bow('L2L-L3L', 0.3, { shape: 'smooth' })];
    const plain = lockedIn(truss, frame, deep, noReadings);
    const free = changedFrame(frame, bowChanges(truss, frame, misfits(truss, deep).misfits))!;
    expect(free.changes.length).toBe(1);
    const still = truss.clusters.map((): Vec3 => [0, 0, 0]);
    const held = lockedIn(truss, frame, deep, shown(still, 1e-4));
    const force = (r: typeof plain): number =>
      Math.abs(r.members.find((m) => m.id === 'L2L-L3L')!.axialLbf.value);
    expect(plain.members[0]!.axialLbf.assumed).toContain('bows-alone');
    expect(held.members[0]!.axialLbf.assumed).toContain('bows-and-moved-clusters');
    // Clusters that did not move say that the tube lost less chord than its bow alone would make it.
    expect(force(held)).toBeLessThan(force(plain));
  });
});

describe('the limit of χ²', () => {
  // Table values at 0.1 %: any statistics text, e.g. Ghilani, Adjustment Computations, table D.2.
  for (const [freedoms, table] of [
    [3, 16.266],
    [10, 29.588],
    [30, 59.703],
    [100, 149.449],
  ] as const)
    it(`is that of the tables at ${freedoms} degrees of freedom`, () => {
      expectNear(chi2At999(freedoms), table, { rel: 0.02, because: 'Wilson and Hilferty’s approximation' });
    });
});
