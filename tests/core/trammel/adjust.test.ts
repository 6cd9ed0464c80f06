import { EigenvalueDecomposition, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/base/vec3.ts';
import type { Reading } from '../../../src/core/job/jobSchema.ts';
import { adjust, fullWeights, networkOf } from '../../../src/core/trammel/adjust.ts';
import { observe } from '../../../src/core/trammel/observations.ts';
import { redundancyOf } from '../../../src/core/trammel/reliability.ts';
import { squaredThrough } from '../../../src/core/trammel/sym3.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { seededRandom } from '../../kit/trusses.ts';
import { axisReading, bowOn, box, manualOf } from './kit.ts';

type Places = ReadonlyMap<string, Vec3>;

const placesOf = (truss: Truss): Places => new Map(truss.clusters.map((c) => [c.id, c.at]));
const between = (at: Places, a: string, b: string): number => {
  const [p, q] = [at.get(a)!, at.get(b)!];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
};
/** Standard normal numbers from a seed. Source: Box & Muller 1958. */
const normals = (random: () => number) => () =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const { truss, model } = box(3);
const hurt = [bowOn('f1', 'U3L-U4L')];
// By the rule of the datum: the forward group is larger; the bent tube's ends and all behind its bay are free.
const free = new Set(['U3L', 'U4L', 'U4R', 'L4L', 'L4R']);
const ownTargets = trammel(truss, model, [], [], []).targets.map((t) => [t.from, t.to] as const);
const readAll = (at: Places, noise: () => number = () => 0, pairs = ownTargets): Reading[] =>
  pairs.map(([a, b], k) => axisReading(`r${k}`, a, b, between(at, a, b) + noise()));
const asFound = (readings: readonly Reading[], t: Truss = truss) =>
  trammel(t, model, readings, hurt, []).byHold.beforeCutting!;

describe('an adjustment', () => {
  it('gives back the exact shape from exact readings', { timeout: 60_000 }, () => {
    for (let seed = 1; seed <= 10; seed++) {
      const random = seededRandom(seed);
      const shift = (id: string, p: Vec3): Vec3 =>
        free.has(id) ? [p[0] + random() - 0.5, p[1] + random() - 0.5, p[2] + random() - 0.5] : p;
      const at = new Map([...placesOf(truss)].map(([id, p]) => [id, shift(id, p)]));
      const found = asFound(readAll(at));
      expect(found.fits).toBe('fits');
      for (const c of found.clusters)
        for (let k = 0; k < 3; k++)
          expectNear(c.moveIn[k]!, at.get(c.id)![k]! - placesOf(truss).get(c.id)![k]!, {
            abs: 1e-8,
            because: 'steps stop at 1e-10 in; directions known to 0.2 in converge a hundredfold slower',
          });
      expect(
        found.clusters
          .filter((c) => !c.datum)
          .map((c) => c.id)
          .sort(),
      ).toEqual([...free].sort());
    }
  });

  it('models marks on surfaces: exact readings between them give back the exact shape', () => {
    const at = new Map(placesOf(truss));
    at.set('U4L', [72.4, -9.5, 20.1]);
    const moved = { ...truss, clusters: truss.clusters.map((c) => ({ ...c, at: at.get(c.id)! })) };
    const marked = (id: string, a: string, b: string): Reading =>
      axisReading(id, a, b, 1, {
        ends: [a, b].map((cluster) => ({
          cluster,
          mark: 'surface' as const,
          on: truss.members.find((m) => m.role === 'vertical' && [m.from, m.to].includes(cluster))!.id,
          clock: cluster.endsWith('L') ? 9 : 3,
          alongIn: 1,
        })) as unknown as Reading['ends'],
      });
    const readings = ownTargets.map(([a, b], k) => marked(`r${k}`, a, b));
    // The readings a trammel would give on the moved truss: those of the moved truss as if it were the drawing.
    const exact = observe(moved, readings, []).observations.map((o, k) => ({
      ...readings[k]!,
      lengthIn: between(at, ...ownTargets[k]!) + 1 - o.axisIn,
    }));
    const u4l = asFound(exact).clusters.find((c) => c.id === 'U4L')!;
    for (let k = 0; k < 3; k++)
      expectNear(u4l.moveIn[k]!, at.get('U4L')![k]! - placesOf(truss).get('U4L')![k]!, {
        abs: 1e-5,
        because: 'the turn of a tube about itself is left out of the slope, which slows the last steps',
      });
  });

  it('agrees with a general library on places, covariance and redundancy (seeds 1–3)', {
    timeout: 60_000,
  }, () => {
    for (let seed = 1; seed <= 3; seed++) {
      const random = seededRandom(seed);
      const noise = normals(random);
      const at = new Map(
        [...placesOf(truss)].map(([id, p]): [string, Vec3] => [
          id,
          free.has(id) ? [p[0] + noise() / 4, p[1] + noise() / 4, p[2] + noise() / 4] : p,
        ]),
      );
      const readings = readAll(at, () => noise() / 32);
      const { observations } = observe(truss, readings, []);
      const datum = new Set([...placesOf(truss).keys()].filter((id) => !free.has(id)));
      const net = networkOf(placesOf(truss), observations);
      const got = adjust(net, { weights: fullWeights(observations), datum });
      // Second opinion: Gauss–Newton by SVD of the whole weighted system, numeric slopes, ml-matrix.
      const ids = [...net.clusters];
      const x = ids.flatMap((id) => [...placesOf(truss).get(id)!]);
      const model_ = (v: readonly number[]): number[] => {
        const p = (id: string): number[] => v.slice(3 * ids.indexOf(id), 3 * ids.indexOf(id) + 3);
        const lengths = ownTargets.map(
          ([a, b], k) => (Math.hypot(...p(a).map((c, n) => c - p(b)[n]!)) - readings[k]!.lengthIn!) * 32,
        );
        const pulls = ids.flatMap((id) =>
          datum.has(id) ? p(id).map((c, n) => (c - placesOf(truss).get(id)![n]!) * 16) : [],
        );
        return [...lengths, ...pulls];
      };
      let jacobian = Matrix.zeros(1, 1);
      for (let round = 0; round < 12; round++) {
        const r = model_(x);
        jacobian = new Matrix(r.length, x.length);
        x.forEach((v, i) => {
          const up = model_(x.with(i, v + 1e-5));
          const down = model_(x.with(i, v - 1e-5));
          r.forEach((_, n) => {
            jacobian.set(n, i, (up[n]! - down[n]!) / 2e-5);
          });
        });
        const step = new SingularValueDecomposition(jacobian).solve(Matrix.columnVector(r)).to1DArray();
        step.forEach((d, i) => {
          x[i] = x[i]! - d;
        });
      }
      const tolerance = { abs: 1e-6, because: 'slopes by differences of 1e-5 in' };
      x.forEach((v, i) => {
        expectNear(got.places[i]!, v, tolerance);
      });
      const e = new EigenvalueDecomposition(jacobian.transpose().mmul(jacobian), { assumeSymmetric: true });
      const inverse = (i: number, j: number): number =>
        e.realEigenvalues.reduce(
          (sum, value, k) => sum + (e.eigenvectorMatrix.get(i, k) * e.eigenvectorMatrix.get(j, k)) / value,
          0,
        );
      for (let i = 0; i < x.length; i += 3)
        for (let j = i; j < i + 3; j++)
          expectNear(got.cofactor(i, j), inverse(i, j), {
            abs: 1e-7,
            because: 'variances are 1e-4 to 1e-2; the loose weight of 1e-6 changes them by 1e-10',
          });
      observations.forEach((_, n) => {
        const row = x.flatMap((_v, i) => (jacobian.get(n, i) === 0 ? [] : [i]));
        const hat = row.reduce(
          (sum, i) =>
            sum + row.reduce((t, j) => t + jacobian.get(n, i) * inverse(i, j) * jacobian.get(n, j), 0),
          0,
        );
        expectNear(redundancyOf(got, n), 1 - hat, { abs: 1e-5, because: 'slopes by differences' });
      });
    }
  });

  it('turns with the truss and does not care for names or order (seeds 1–5)', { timeout: 60_000 }, () => {
    for (let seed = 1; seed <= 5; seed++) {
      const random = seededRandom(seed);
      const noise = normals(random);
      const readings = readAll(placesOf(truss), () => noise() / 16);
      const plain = asFound(readings);
      const [c, s] = [Math.cos(seed), Math.sin(seed)];
      const turn = (p: Vec3): Vec3 => [c * p[0] - s * p[1] + 7, s * p[0] + c * p[1] - 3, p[2] + 11];
      const turned = asFound(readings, {
        ...truss,
        clusters: truss.clusters.map((k) => ({ ...k, at: turn(k.at) })),
      });
      const rename = (id: string): string => `Q${truss.clusters.findIndex((k) => k.id === id) * 7 + 3}`;
      const renamed: Truss = {
        ...truss,
        clusters: truss.clusters.map((k) => ({ ...k, id: rename(k.id) })).reverse(),
        members: truss.members.map((m) => ({ ...m, from: rename(m.from), to: rename(m.to) })).reverse(),
        bays: [],
        faces: [],
        pairs: [],
      };
      const other = trammel(
        renamed,
        model,
        readings.map((r) => ({
          ...r,
          ends: r.ends.map((e) => ({ ...e, cluster: rename(e.cluster) })) as unknown as Reading['ends'],
        })),
        hurt,
        [],
      ).byHold.beforeCutting!;
      const near = { abs: 1e-8, because: 'steps stop at 1e-10 in' };
      plain.readings.forEach((r, k) => {
        for (const again of [turned, other]) {
          expectNear(again.readings[k]!.residualIn, r.residualIn, near);
          expectNear(again.readings[k]!.redundancy, r.redundancy, near);
        }
      });
      for (const k of plain.clusters) {
        const m = turned.clusters.find((o) => o.id === k.id)!.moveIn;
        const n = other.clusters.find((o) => o.id === rename(k.id))!.moveIn;
        expectNear(m[0], c * k.moveIn[0] - s * k.moveIn[1], near);
        expectNear(m[1], s * k.moveIn[0] + c * k.moveIn[1], near);
        for (let axis = 0; axis < 3; axis++) expectNear(n[axis]!, k.moveIn[axis]!, near);
      }
    }
  });

  it('keeps holds apart', () => {
    const at = new Map(placesOf(truss)).set('U4L', [72.5, -9.25, 20.5]);
    const before = readAll(placesOf(truss));
    const after = readAll(at).map((r) => ({ ...r, id: `${r.id}b`, hold: 'afterCutting' as const }));
    const got = trammel(truss, model, [...before, ...after], hurt, []);
    const x = (hold: 'beforeCutting' | 'afterCutting') =>
      got.byHold[hold]!.clusters.find((c) => c.id === 'U4L')!.moveIn[0];
    const near = { abs: 1e-8, because: 'steps stop at 1e-10 in' };
    expectNear(x('beforeCutting'), 0, near);
    expectNear(x('afterCutting'), 0.5, near);
    expect(got.latest).toBe('afterCutting');
  });
});

describe('what the readings fix', () => {
  const sets = soak(300);

  it(`says every cluster or direction that any set of readings leaves loose (seeds 1–${sets})`, {
    timeout: 60_000,
  }, () => {
    for (let seed = 1; seed <= sets; seed++) {
      const random = seededRandom(seed);
      const pairs = ownTargets.filter(() => random() < 0.25 + 0.6 * random());
      if (pairs.length < 6) continue;
      const found = asFound(readAll(placesOf(truss), undefined, pairs));
      const ids = found.clusters.filter((c) => !c.datum).map((c) => c.id);
      if (ids.length === 0) continue;
      const jacobian = new Matrix(Math.max(pairs.length, 3 * ids.length), 3 * ids.length);
      pairs.forEach(([a, b], n) => {
        const [p, q] = [placesOf(truss).get(a)!, placesOf(truss).get(b)!];
        for (const [id, sign] of [
          [a, -1],
          [b, 1],
        ] as const)
          if (ids.includes(id))
            for (let k = 0; k < 3; k++)
              jacobian.set(
                n,
                3 * ids.indexOf(id) + k,
                (sign * (q[k]! - p[k]!)) / between(placesOf(truss), a, b),
              );
      });
      const svd = new SingularValueDecomposition(jacobian, { autoTranspose: true });
      // A direction with a singular value under 0.05 is known no better than 32⁻¹/0.05 = 0.6 in: either answer is right.
      const open = (id: string, below: number, share: number): number => {
        const loose = svd.diagonal.flatMap((s, k) => (s < below ? [k] : []));
        const block = new Matrix(3, Math.max(1, loose.length));
        loose.forEach((k, col) => {
          for (let c = 0; c < 3; c++)
            block.set(c, col, svd.rightSingularVectors.get(3 * ids.indexOf(id) + c, k));
        });
        return new SingularValueDecomposition(block, { autoTranspose: true }).diagonal.filter(
          (s) => s > share,
        ).length;
      };
      for (const id of ids) {
        const got = found.clusters.find((c) => c.id === id)!;
        const [surely, perhaps] = [open(id, 1e-9, 1e-2), open(id, 0.05, 1e-3)];
        expect(got.free.length).toBeGreaterThanOrEqual(surely);
        expect(got.free.length).toBeLessThanOrEqual(perhaps);
        expect(got.fixedBy).toBe(got.free.length === 0 ? 'all' : got.free.length === 3 ? 'none' : 'some');
      }
      const touched = new Set(pairs.flat());
      expect(found.notMeasured).toEqual(truss.clusters.map((c) => c.id).filter((id) => !touched.has(id)));
    }
  });

  it('asks for a datum when fewer than four undamaged clusters are read', () => {
    const pairs = ownTargets.filter(
      ([a, b]) => ['U3L', 'U3R', 'L3L', 'L3R'].includes(a) && ['U3L', 'U3R', 'L3L', 'L3R'].includes(b),
    );
    const codes = (manual: Parameters<typeof trammel>[4]) =>
      trammel(truss, model, readAll(placesOf(truss), undefined, pairs), hurt, manual).issues.map(
        (i) => i.code,
      );
    expect(codes([])).toContain('datum-cannot-be-cross-checked');
    expect(codes([manualOf('m', 'datum', undefined, 'U3R, L3R')])).toContain('datum-too-small');
  });
});

describe('readings that do not fit', () => {
  const standing = (seed: number, shift: number) => {
    const noise = normals(seededRandom(seed));
    const drawn = placesOf(truss).get('L2R')!;
    const at = new Map(placesOf(truss)).set('L2R', [drawn[0] + shift, drawn[1], drawn[2]]);
    return asFound(readAll(at, () => noise() / 64).map((r) => ({ ...r, stdIn: 1 / 64 })));
  };

  // needs.md N04: six or more in the datum, one moved 0.25 in.
  it('shows which datum cluster is pulled hardest when one has moved 0.25 in (seeds 1–20)', {
    timeout: 60_000,
  }, () => {
    for (let seed = 1; seed <= 20; seed++) {
      const pull = (c: { pull?: number }): number => c.pull ?? 0;
      const found = standing(seed, 0.25).clusters;
      const freed = found.find((c) => c.id === 'L2R' && !c.datum);
      const worst = [...found].sort((a, b) => pull(b) - pull(a))[0]!;
      expect(freed?.id ?? worst.id).toBe('L2R');
    }
  });

  // methods.md 6: a datum point moved 0.47 in is named and its move found within 0.09.
  it('names a datum cluster that has moved 0.47 in and finds its move (seeds 1–20)', {
    timeout: 60_000,
  }, () => {
    for (let seed = 1; seed <= 20; seed++) {
      const found = standing(seed, 0.47);
      expect(found.causes).toContainEqual({ kind: 'datumMoved', cluster: 'L2R' });
      const c = found.clusters.find((k) => k.id === 'L2R')!;
      expect(c).toMatchObject({ datum: false, moved: 'moved' });
      const std = Math.sqrt(c.covariance[0]!);
      expectNear(c.moveIn[0], 0.47, { abs: 4 * std, because: 'four of its stated standard deviations' });
      expect(std).toBeLessThan(0.05);
    }
  });

  it('names two misread readings at once', () => {
    const noise = normals(seededRandom(5));
    const readings = readAll(placesOf(truss), () => noise() / 32);
    const off = new Map([
      ['r20', 0.6],
      ['r41', -0.5],
    ]);
    const found = asFound(readings.map((r) => ({ ...r, lengthIn: r.lengthIn! + (off.get(r.id) ?? 0) })));
    expect(found.setAside).toEqual(['r20', 'r41']);
    for (const c of found.causes!)
      if (c.kind === 'misread')
        expectNear(c.shouldBeIn, readings.find((r) => r.id === c.reading)!.lengthIn!, {
          abs: 0.2,
          because: 'four standard deviations of a reading checked by its neighbours',
        });
  });

  it('says that it cannot tell which of two repeats is misread, and asks for that distance again', () => {
    const pairs = ownTargets.filter(([a, b]) => !free.has(a) && !free.has(b));
    const one = readAll(placesOf(truss), undefined, pairs);
    const d = between(placesOf(truss), 'U3L', 'U3R');
    const found = asFound([
      ...one,
      axisReading('x1', 'U3L', 'U3R', d),
      axisReading('x2', 'U3L', 'U3R', d + 0.5),
    ]);
    expect(found.fits).toBe('doesNotFit');
    expect(found.cause).toMatchObject({ kind: 'cannotTell', between: ['x1', 'x2'] });
    expect(found.cause?.kind === 'cannotTell' && found.cause.readAlso[0]).toBe('U3L–U3R');
  });
});

describe('simulated jobs', () => {
  const runs = soak(2000);
  const job = (seed: number) => {
    const random = seededRandom(seed * 7919 + 1);
    const noise = normals(random);
    const at = new Map(
      [...placesOf(truss)].map(([id, p]): [string, Vec3] => {
        const by = (): number => (free.has(id) ? random() - 0.5 : noise() / 16);
        return [id, [p[0] + by(), p[1] + by(), p[2] + by()]];
      }),
    );
    return { random, at, readings: readAll(at, () => noise() / 32) };
  };

  it(`recovers moved clusters within their 95 % in 95 ± 2 % of ${runs} jobs (seeds 1–${runs})`, {
    timeout: 240_000,
  }, () => {
    const ids = [...free];
    let inside = 0;
    for (let seed = 1; seed <= runs; seed++) {
      const { random, at, readings } = job(seed);
      const pick = ids[Math.floor(random() * ids.length)]!;
      const c = asFound(readings).clusters.find((k) => k.id === pick)!;
      const drawn = placesOf(truss).get(c.id)!;
      const off = c.moveIn.map((m, k) => m - (at.get(c.id)![k]! - drawn[k]!)) as unknown as Vec3;
      // χ²(0.95) with 3 degrees of freedom: 7.815 (any table).
      if (squaredThrough(c.covariance, off) <= 7.815) inside++;
    }
    expectNear(inside / runs, 0.95, {
      abs: Math.max(0.02, 3 * Math.sqrt((0.95 * 0.05) / runs)),
      because: '2 % as asked; with fewer runs three standard deviations of the count',
    });
  });
});
