import { describe, expect, it } from 'vitest';
import { cross, dot, length, sub, type Vec3 } from '../../../src/core/base/vec3.ts';
import type { Reading } from '../../../src/core/job/jobSchema.ts';
import { placesOf } from '../../../src/core/trammel/targets.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { expectNear } from '../../kit/near.ts';
import { axisReading, bowOn, box, manualOf } from './kit.ts';

const { model, truss } = box(5);
const hurt = [bowOn('f', 'U3L-U4L')];
const datum = [manualOf('d', 'datum', undefined, 'U1L U1R L1L L1R U2L U2R L2L L2R')];
const drawn = placesOf(truss);

const off = (
  id: string,
  cluster: string,
  line: 'centreLine' | 'level',
  offIn: number,
  more: Partial<Reading> = {},
): Reading => {
  const { lengthIn: _, ...rest } = axisReading(id, cluster, cluster, 1);
  return { ...rest, plane: { line, offIn }, stdIn: 1 / 32, ...more } as Reading;
};
const readAll = (
  at: ReadonlyMap<string, Vec3>,
  keep: (a: string, b: string) => boolean = () => true,
): Reading[] =>
  trammel(truss, model, [], [], datum)
    .targets.filter(
      (t) => keep(t.from, t.to) && Math.abs(Number(t.from.slice(1, -1)) - Number(t.to.slice(1, -1))) <= 1,
    )
    .map((t, k) => {
      const [p, q] = [at.get(t.from)!, at.get(t.to)!];
      return axisReading(`r${k}`, t.from, t.to, Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]), {
        stdIn: 1 / 32,
      });
    });
const shape = (readings: readonly Reading[]) =>
  trammel(truss, model, readings, hurt, datum).byHold.beforeCutting!;
const std = (readings: readonly Reading[], id: string, axis: 0 | 1 | 2): number =>
  Math.sqrt(shape(readings).clusters.find((c) => c.id === id)!.covariance[axis * 4]!);

describe('offsets from a string and heights above a level line', () => {
  it('read exactly give back the exact shape and no residual, wherever the line lies', () => {
    const at = new Map(drawn).set('U6L', [120.3, -8.2, 19.1]).set('L6L', [120.1, -6.9, 2.4]);
    const planes = ['U6L', 'L6L', 'L5R'].flatMap((id) => [
      off(`y${id}`, id, 'centreLine', at.get(id)![1]),
      off(`z${id}`, id, 'level', at.get(id)![2] + 30, {
        plane: { line: 'level', offIn: at.get(id)![2] + 30, lineAtIn: -30 },
      } as Partial<Reading>),
    ]);
    const got = shape([...readAll(at), ...planes]);
    for (const r of got.readings)
      expectNear(r.residualIn, 0, { abs: 1e-8, because: 'steps stop at 1e-10 in' });
    const c = got.clusters.find((k) => k.id === 'U6L')!;
    [120.3, -8.2, 19.1].forEach((v, k) => {
      expectNear(c.moveIn[k]!, v - drawn.get('U6L')![k]!, { abs: 1e-7, because: 'steps stop at 1e-10 in' });
    });
  });

  it('alone fix one direction of a cluster, with the standard deviation of the reading', () => {
    const got = shape([
      ...readAll(drawn, (a, b) => ![a, b].includes('U6L')),
      off('y', 'U6L', 'centreLine', drawn.get('U6L')![1] + 0.5),
    ]);
    const c = got.clusters.find((k) => k.id === 'U6L')!;
    expect(c.fixedBy).toBe('some');
    expect(c.free).toHaveLength(2);
    expectNear(c.moveIn[1], 0.5, { abs: 1e-6, because: 'one reading, nothing against it' });
    expectNear(Math.sqrt(c.covariance[4]!), 1 / 32, {
      rel: 1e-3,
      because: 'one reading; a weight of 1e-6 stands in for the rest',
    });
  });

  // methods.md 6: error grows aft; string and level readings of the lower clusters bring the tail's down.
  it('make the place of the tail surer than distances alone', () => {
    const alone = readAll(drawn);
    const more = ['L3L', 'L6L', 'L6R'].flatMap((id) => [
      off(`y${id}`, id, 'centreLine', drawn.get(id)![1]),
      off(`z${id}`, id, 'level', drawn.get(id)![2]),
    ]);
    for (const axis of [1, 2] as const)
      expect(std([...alone, ...more], 'L6L', axis)).toBeLessThan(0.7 * std(alone, 'L6L', axis));
  });

  it('are not distances: they make no target and stand in no comparison', () => {
    const got = trammel(truss, model, [off('y', 'U6L', 'centreLine', -8)], hurt, datum);
    expect(got.targets.some((t) => t.from === t.to)).toBe(false);
    expect(got.targets.flatMap((t) => t.compared)).toEqual([]);
    expect(got.issues.map((i) => i.code)).not.toContain('reading-to-itself');
  });
});

describe('a mirrored fold', () => {
  const at = new Map(drawn);
  const [x, y, z] = drawn.get('U6L')!;
  at.set('U6L', [x, y - 1.5, z]);
  const base = readAll(at, (a, b) => ![a, b].includes('U6L'));
  const d = (a: string, b: string): number =>
    Math.hypot(...[0, 1, 2].map((k) => at.get(a)![k]! - at.get(b)![k]!));
  const three = ['U5L', 'L5L', 'L6L'].map((id) =>
    axisReading(`t${id}`, id, 'U6L', d(id, 'U6L'), { stdIn: 1 / 32 }),
  );

  it('is said of a cluster read from three neighbours only, and where it would stand', () => {
    const got = trammel(truss, model, [...base, ...three], hurt, datum);
    const fold = got.byHold.beforeCutting!.folds!.find((f) => f.cluster === 'U6L')!;
    // three distances fit both sides alike
    expectNear(fold.omegaMore, 0, { abs: 0.1, because: 'mirrored exactly, but for the datum of 1/16 in' });
    const side = got.byHold.beforeCutting!.clusters.find((c) => c.id === 'U6L')!;
    expect(Math.abs(fold.moveIn[1] - side.moveIn[1])).toBeGreaterThan(1);
    expect(got.issues.map((i) => i.code)).toContain('fold-fits-too');
  });

  it('is gone when a reading crosses the plane', () => {
    const across = axisReading('x', 'U6L', 'U6R', d('U6L', 'U6R'), { stdIn: 1 / 32 });
    const got = trammel(truss, model, [...base, ...three, across], hurt, datum);
    expect(got.byHold.beforeCutting!.folds?.some((f) => f.cluster === 'U6L') ?? false).toBe(false);
  });

  it('is said too when it lies far off, where eyes tell: of all such clusters in one sentence', () => {
    const far = ['U5L', 'L5L', 'L6R'].map((id) =>
      axisReading(
        `t${id}`,
        id,
        'L6L',
        Math.hypot(...[0, 1, 2].map((k) => at.get(id)![k]! - at.get('L6L')![k]!)),
      ),
    );
    const without = readAll(at, (a, b) => ![a, b].includes('L6L') && ![a, b].includes('U6L'));
    const got = trammel(truss, model, [...without, ...far], hurt, datum);
    const fold = got.byHold.beforeCutting!.folds!.find((f) => f.cluster === 'L6L')!;
    expectNear(fold.omegaMore, 0, { abs: 0.1, because: 'three distances fit both sides alike' });
    // Twice its height over the plane of the three, by the general formula of a plane's distance.
    const [p, q, r] = ['U5L', 'L5L', 'L6R'].map((id) => at.get(id)!);
    const normal = cross(sub(q!, p!), sub(r!, p!));
    const want = (2 * Math.abs(dot(normal, sub(at.get('L6L')!, p!)))) / length(normal);
    expectNear(length(fold.moveIn), want, { abs: 0.2, because: 'the datum gives by a sixteenth' });
    expect(want).toBeGreaterThan(6);
    expect(got.issues.filter((i) => i.code === 'folds-fit-far-off').map((i) => i.facts)).toEqual([
      { hold: 'beforeCutting', clusters: ['L6L'] },
    ]);
  });
});
