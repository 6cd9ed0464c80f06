import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../../src/core/base/vec3.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { modelFromReadings, type SideReading } from '../../../src/core/trammel/fromReadings.ts';
import { sidePairs } from '../../../src/core/trammel/sidePairs.ts';
import { roughModel } from '../../../src/core/truss/rough.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { seededRandom } from '../../kit/trusses.ts';

const rough = (stations: number, tailPost: boolean): Model => {
  const made = roughModel({
    ...{ name: 'Rough', drawnIn: 'in', stations, tailPost, lengthIn: 24 * (stations - 1) },
    ...{ forwardHeightIn: 24, aftHeightIn: 12, forwardWidthIn: 22, aftWidthIn: 12 },
  } as const);
  return made.ok ? made.value : expect.fail('refused');
};

/** The same truss with every pair of twins moved together by up to an inch and a half: what stands in the hangar. */
const hangar = (model: Model, seed: number): ReadonlyMap<string, readonly [number, number, number]> => {
  const random = seededRandom(seed);
  const move = (): number => 3 * random() - 1.5;
  const at = new Map<string, readonly [number, number, number]>();
  for (const c of expandTruss(model).clusters) {
    if (c.side === 'R') continue;
    const [x, y, z] = [c.at[0] + move(), c.side === 'C' ? 0 : c.at[1] + move(), c.at[2] + move()];
    at.set(c.id, [x, y, z]);
    if (c.side === 'L') at.set(c.id.replace(/L$/, 'R'), [x, -y, z]);
  }
  return at;
};

/** Every side and both diagonals of the left face, the cross distance at each cluster, and both crossing ones. */
const tape = (model: Model, at: ReadonlyMap<string, readonly [number, number, number]>): SideReading[] => {
  const labels = model.stations.map((s) => s.label);
  const id = (height: string, label: string, side: 'L' | 'R'): string =>
    at.has(`${height}${label}${side}`) ? `${height}${label}${side}` : `${height}${label}C`;
  const pairs: [string, string][] = [];
  for (const [k, label] of labels.entries()) {
    pairs.push([id('U', label, 'L'), id('L', label, 'L')]);
    for (const h of ['U', 'L']) pairs.push([id(h, label, 'L'), id(h, label, 'R')]);
    pairs.push([id('U', label, 'L'), id('L', label, 'R')]);
    const aft = labels[k + 1];
    if (aft === undefined) continue;
    for (const [a, b] of ['UU', 'LL', 'UL', 'LU']) pairs.push([id(a!, label, 'L'), id(b!, aft, 'L')]);
    for (const h of ['U', 'L']) pairs.push([id(h, label, 'L'), id(h, aft, 'R')]);
  }
  return pairs
    .filter(([a, b]) => a !== b)
    .map(([from, to]) => ({ from, to, lengthIn: distance(at.get(from)!, at.get(to)!), stdIn: 1 / 64 }));
};

describe('a model from distances of the sound side', () => {
  // Invariant: distances without error fix the shape they were taken from; the rest of the distances follow.
  it(`is the truss they were taken from, mirrored (seed 91, ${soak(60)} trusses)`, () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.boolean(), (seed, tailPost) => {
        const topology = rough(3 + (seed % 5), tailPost);
        const at = hangar(topology, seed);
        const built = modelFromReadings(topology, tape(topology, at), 'L');
        if (!built.ok) return expect.fail('refused');
        expect(built.value.loose).toEqual([]);
        const found = expandTruss(built.value.model).clusters;
        for (const a of found)
          for (const b of found)
            if (a.id < b.id)
              expectNear(distance(a.at, b.at), distance(at.get(a.id)!, at.get(b.id)!), {
                abs: 1e-6,
                because: 'the adjustment stops at steps of 1e-10 in; errors add along the bays',
              });
        for (const r of built.value.residualsIn)
          expectNear(r, 0, { abs: 1e-7, because: 'readings without error' });
      }),
      { seed: 91, numRuns: soak(60) },
    );
  });

  it('is fixed by the distances that the list asks for, on either side, with or without a tail post', () => {
    for (const tailPost of [true, false])
      for (const side of ['L', 'R'] as const) {
        const topology = rough(5, tailPost);
        const at = hangar(topology, 3);
        const readings = sidePairs(topology, side).map(([from, to]) => ({
          ...{ from, to, lengthIn: distance(at.get(from)!, at.get(to)!) },
        }));
        const built = modelFromReadings(topology, readings, side);
        expect(built.ok && built.value.loose).toEqual([]);
      }
  });

  it('says of every cluster where its place comes from', () => {
    const topology = rough(4, true);
    const built = modelFromReadings(topology, tape(topology, hangar(topology, 7)), 'L');
    if (!built.ok) return expect.fail('refused');
    const origin = new Map(expandTruss(built.value.model).clusters.map((c) => [c.id, c.origin]));
    expect(origin.get('U2L')).toBe('measured');
    expect(origin.get('U2R')).toBe('mirrored');
    expect(origin.get('U4C')).toBe('measured');
  });

  it('leaves what the distances do not fix assumed, and names it', () => {
    const topology = rough(4, false);
    const all = tape(topology, hangar(topology, 9));
    const without = all.filter((r) => !/4[LR]/.test(r.from + r.to));
    const built = modelFromReadings(topology, without, 'L');
    if (!built.ok) return expect.fail('refused');
    expect(built.value.loose).toEqual(['L4L', 'U4L']);
    const truss = expandTruss(built.value.model);
    expect(truss.clusters.filter((c) => c.assumed).map((c) => c.id)).toEqual(['L4L', 'L4R', 'U4L', 'U4R']);
    // One distance to the last ring is too little: it still swings.
    const one = modelFromReadings(topology, [...without, all.find((r) => r.to === 'U4L')!], 'L');
    expect(one.ok && one.value.loose).toEqual(['L4L', 'U4L']);
  });

  it('leaves out a reading that names no cluster, and refuses when none is left', () => {
    const topology = rough(3, false);
    const stray = modelFromReadings(topology, [{ from: 'U9L', to: 'L9L', lengthIn: 10 }], 'L');
    expect(stray.ok).toBe(false);
    expect(stray.issues.map((i) => i.code)).toEqual(['unknown-cluster', 'no-readings']);
  });
});
