import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/base/vec3.ts';
import type { RecordOf } from '../../../src/core/job/jobSchema.ts';
import type { Frame } from '../../../src/core/statics/frame.ts';
import { heldNow } from '../../../src/core/statics/held.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { lengthens, openFrame, pushApart } from '../../../src/core/trammel/flexibility.ts';
import { openTubes } from '../../../src/core/trammel/openTubes.ts';
import { planOf } from '../../../src/core/trammel/plan.ts';
import { withJobs } from '../../../src/core/trammel/pushes.ts';
import { placesOf } from '../../../src/core/trammel/targets.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { frozen } from '../../kit/trusses.ts';
import { axisReading, bowOn, boxModel } from './kit.ts';

const made = (joints: 'welded' | 'pinned') => {
  const model = { ...boxModel(3), joints };
  // both diagonals in every side, so that a tube may be missing and the truss still stands pinned
  const braced = {
    ...model,
    bracing: model.bracing.map((b) => ({ ...b, left: 'crossed' as const, right: 'crossed' as const })),
  };
  const truss = expandTruss(braced);
  const support = heldNow(truss, braced, []);
  const frame = prepareFrame(truss, support) as Frame;
  expect(isFrame(frame)).toBe(true);
  const places = placesOf(truss);
  return { model: braced, truss, support, frame, at: (id: string): Vec3 => places.get(id)! };
};

const step = (id: string, more: Partial<RecordOf<'progress'>>): RecordOf<'progress'> =>
  ({
    kind: 'progress',
    id,
    by: 'Ada',
    at: '2024-05-01T10:00:00Z',
    device: 'test',
    done: true,
    ...more,
  }) as RecordOf<'progress'>;

describe('a push between two clusters', () => {
  const welded = made('welded');
  const tube = welded.truss.members.find((m) => m.role === 'sideDiagonal' && m.bay === '2')!.id;

  it('moves a frame with a tube open as it moves the frame factored anew without that tube', () => {
    const { truss, support, frame, at } = welded;
    const without = { ...truss, members: truss.members.filter((m) => m.id !== tube) };
    const anew = openFrame(prepareFrame(without, support) as Frame, [])!;
    const open = openFrame(frame, [tube])!;
    for (const [a, b] of [
      ['U2L', 'L3L'],
      ['U3L', 'U3R'],
      ['L2R', 'U3R'],
    ] as const) {
      const [got, want] = [pushApart(open, at, a, b), pushApart(anew, at, a, b)];
      for (const t of truss.members)
        expectNear(lengthens(frame, got, at, t.from, t.to), lengthens(frame, want, at, t.from, t.to), {
          rel: 1e-6,
          abs: 1e-12,
          because: 'two routes through stiffnesses of condition 1e6 or so',
        });
    }
  });

  // Maxwell 1864, Betti 1872: work of one push on the moves of another is the same both ways.
  it('lengthens a second distance as a push there lengthens the first', () => {
    const { truss, frame, at } = welded;
    const open = openFrame(frame, [tube])!;
    const pairs = truss.members.slice(4, 14).map((m) => [m.from, m.to] as const);
    for (const [a, b] of pairs)
      for (const [c, d] of pairs)
        expectNear(
          lengthens(frame, pushApart(open, at, a, b), at, c, d),
          lengthens(frame, pushApart(open, at, c, d), at, a, b),
          { rel: 1e-6, abs: 1e-13, because: 'one step of refinement' },
        );
  });

  it('is not worked where the truss moves freely without the tubes', () => {
    const { truss, frame } = made('pinned');
    const ring = truss.members.filter((m) => m.from === 'U4L' || m.to === 'U4L').map((m) => m.id);
    expect(openFrame(frame, ring.slice(0, -2))).toBeUndefined();
  });
});

describe('the two jobs of a spread', () => {
  const { model, truss, frame, at } = made('pinned');
  const tube = truss.members.find((m) => m.role === 'sideDiagonal' && m.bay === '2' && m.side === 'L')!;
  const shape = new Map(placesOf(truss)).set('U3L', [47.6, -9.4, 21.2] as Vec3);
  const read = trammel(truss, model, [], [], []).targets.map((t, k) => {
    const [p, q] = [shape.get(t.from)!, shape.get(t.to)!];
    return axisReading(`r${k}`, t.from, t.to, Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]), {
      stdIn: 1 / 64,
    });
  });
  const found = [bowOn('f', tube.id)];
  const planned = planOf(truss, found, []);
  const run = (open: readonly string[], pushes: readonly RecordOf<'progress'>[] = []) =>
    trammel(frozen(truss), frozen(model), read, found, [], frame, planned, open, pushes).spread!;
  const own = (list: ReturnType<typeof run>) =>
    list.find((s) => [s.from, s.to].sort().join() === [tube.from, tube.to].sort().join())!;

  it('hold: all of it comes back while no tube is open', () => {
    for (const s of run([]))
      expectNear(s.hold!.comesBackIn.value, Math.abs(s.amountIn.value), {
        rel: 1e-6,
        because: 'the same frame',
      });
  });

  // Two springs side by side: f = 1/(1/f_open + EA/L); the tube takes its share EA/L · f of the force let go.
  it('hold: a pinned tube closed in the spread shares the force as a spring beside the frame', () => {
    const s = own(run([tube.id]));
    const fOpen = s.amountIn.value / s.forceLbf!.value;
    const k = (tube.section.elasticPsi * tube.section.areaIn2) / tube.lengthIn;
    const back = s.forceLbf!.value / (1 / fOpen + k);
    expectNear(s.hold!.comesBackIn.value, Math.abs(back), { rel: 1e-6, because: 'springs side by side' });
    expectNear(s.hold!.tacks[0]!.axialLbf.value, -back * k, { rel: 1e-6, because: 'springs side by side' });
    expect(s.hold!.tacks.map((t) => t.member)).toEqual([tube.id]);
  });

  it('set: pushes past the target by what sprang back last time, and else by the spring up to first yield', () => {
    const s = own(run([]));
    const target = s.foundIn.value + s.amountIn.value;
    expect(s.set!.springIn.basis.kind).toBe('computed');
    const flex = s.amountIn.value / s.forceLbf!.value;
    expectNear(s.set!.springIn.value, Math.abs(s.set!.yields!.forceLbf.value * flex), {
      rel: 1e-9,
      because: 'linear',
    });
    const seen = step('p', {
      step: 'spread',
      spread: { from: s.to, to: s.from, beforeIn: s.foundIn.value, pushedIn: target, leftIn: target - 0.07 },
    });
    const next = own(run([], [seen]));
    expect(next.set!.springIn.basis).toEqual({ kind: 'measured', ref: 'p' });
    expectNear(next.set!.pushToIn.value, target + Math.sign(s.amountIn.value) * 0.07, {
      abs: 1e-9,
      because: 'arithmetic',
    });
  });

  it('first yield falls with the yield stress and not with how much is asked for', () => {
    const soft = {
      ...truss,
      members: truss.members.map((m) => ({
        ...m,
        section: { ...m.section, yieldPsi: m.section.yieldPsi / 2 },
      })),
    };
    const whole = { now: openFrame(frame, [])!, whole: openFrame(frame, [])! };
    const [a, b] = [own(withJobs(truss, whole, run([]), [])), own(withJobs(soft, whole, run([]), []))];
    expectNear(b.set!.yields!.forceLbf.value, a.set!.yields!.forceLbf.value / 2, {
      rel: 1e-12,
      because: 'linear',
    });
    expect(b.set!.yields!.member).toBe(a.set!.yields!.member);
  });

  it('order: first the one that leaves least of all, each number once, and what is settled names an earlier one', () => {
    const list = run([]);
    expect(list.map((s) => s.order)).toEqual(list.map((_, k) => k + 1));
    const open = openFrame(frame, [])!;
    const rest = (i: number): number => {
      const p = list[i]!;
      const moves = pushApart(open, at, p.from, p.to);
      const own = lengthens(frame, moves, at, p.from, p.to);
      return list.reduce((sum, q) => {
        const left = q.amountIn.value - (p.amountIn.value * lengthens(frame, moves, at, q.from, q.to)) / own;
        return sum + (left / q.amountIn.std!) ** 2;
      }, 0);
    };
    const all = list.map((_, i) => rest(i));
    expect(all[0]).toBe(Math.min(...all));
    for (const s of list)
      if (s.settledBy) expect(list.find((o) => o.target === s.settledBy)!.order).toBeLessThan(s.order!);
  });
});

describe('open tubes', () => {
  it('are those whose cut is the last thing done to them', () => {
    const steps = ['cut:A-B', 'cut:C-D', 'tack:C-D', 'cut:E-F', 'weld:E-F', 'cut:E-F', 'straighten:X-Y'];
    expect(openTubes(steps.map((s, k) => step(`p${k}`, { step: s }))).members).toEqual(['A-B', 'E-F']);
    expect(
      openTubes([step('p', { step: 'cut:A-B' }), step('q', { step: 'cut:A-B', done: false })]).members,
    ).toEqual([]);
  });
});
