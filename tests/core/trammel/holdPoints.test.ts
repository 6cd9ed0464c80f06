import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess.ts';
import { type Decision, holds, type RecordOf } from '../../../src/core/job/jobSchema.ts';
import type { Frame } from '../../../src/core/statics/frame.ts';
import { heldNow } from '../../../src/core/statics/held.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { fitUpOf, gateOf, mayBeDone } from '../../../src/core/trammel/gate.ts';
import { holdPoints } from '../../../src/core/trammel/holdPoints.ts';
import { planOf } from '../../../src/core/trammel/plan.ts';
import type { AskedReading } from '../../../src/core/trammel/result.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { seededRandom } from '../../kit/trusses.ts';
import { axisReading, bowOn, box, manualOf } from './kit.ts';

const { model, truss } = box(6);
const support = heldNow(truss, model, []);
const frame = prepareFrame(truss, support) as Frame;
const stamp = { by: 'Ada', at: '2024-05-01T10:00:00Z', device: 'test' };
const step = (id: string, more: Partial<RecordOf<'progress'>>): RecordOf<'progress'> =>
  ({ kind: 'progress', id, ...stamp, done: true, ...more }) as RecordOf<'progress'>;
const splice = (of: string): Decision => ({
  kind: 'decision',
  id: `d-${of}`,
  ...stamp,
  of,
  choice: 'splice',
});

const run = (
  readings: Parameters<typeof trammel>[2],
  manual: readonly RecordOf<'manual'>[] = [],
  progress: readonly RecordOf<'progress'>[] = [],
  decisions: readonly Decision[] = [splice('U4L-U5L')],
) => {
  const found = [bowOn('f', 'U4L-U5L')];
  const planned = planOf(truss, found, manual);
  const got = trammel(truss, model, readings, found, manual, frame, planned);
  const stops = holdPoints(truss, got, planned, frame, found, decisions, manual, progress);
  return {
    ...stops,
    planned,
    targets: got.targets,
    at: (hold: (typeof holds)[number]) => stops.holds.find((h) => h.hold === hold)!,
  };
};

const ask = (verdict?: AskedReading['verdict'], taken = verdict ? 1 : 0): AskedReading => ({
  target: `${verdict}`,
  from: 'A',
  to: 'B',
  why: 'canMove',
  aimIn: { value: 1, unit: 'in', basis: { kind: 'computed', ref: '' }, assumed: [] },
  taken,
  ...(verdict ? { verdict } : {}),
});

describe('hold points', () => {
  it('stand in the order of the work; the whole truss at the baseline and as left, 4 to 8 readings between', () => {
    const { holds: made, planned } = run([]);
    expect(made.map((h) => h.hold)).toEqual([...holds]);
    expect(planned.plan.bays).not.toHaveLength(truss.bays.length);
    for (const h of made) {
      const whole = h.hold === 'beforeCutting' || h.hold === 'afterWelding';
      expect(h.covers).toBe(whole ? 'wholeTruss' : 'whatCanMove');
      if (whole) {
        const touched = new Set(h.asks.flatMap((a) => [a.from, a.to]));
        expect([...touched].sort()).toEqual(expect.arrayContaining(['U1L', 'L7R', 'U7L']));
      } else {
        expect(h.asks.length).toBeGreaterThanOrEqual(4);
        expect(h.asks.length).toBeLessThanOrEqual(8);
        expect(h.asks.map((a) => a.target)).toContain('U4L–U5L');
        // nothing forward of the neighbouring bay can have moved by a tube opened in bay 4
        for (const a of h.asks) expect(Number(a.from.slice(1, -1))).toBeGreaterThanOrEqual(3);
      }
    }
  });

  it('ask for 4 to 8 readings while up to six tubes are opened, and always for the length of each of them', () => {
    for (const name of ['practice-truss', 'high-wing-tandem', 'low-wing-side-by-side']) {
      const stored = JSON.parse(readFileSync(`models/${name}.json`, 'utf8')) as typeof model;
      const shape = expandTruss(stored);
      const stiff = prepareFrame(shape, heldNow(shape, stored, []));
      const planned = planOf(shape, [], []);
      const got = trammel(shape, stored, [], [], [], stiff, planned);
      const tubes = shape.members.filter((m) => m.bay !== undefined);
      for (const count of [1, 2, 4, 6, 9]) {
        const random = seededRandom(count);
        const opened = [...tubes].sort(() => random() - 0.5).slice(0, count);
        const stops = holdPoints(
          shape,
          got,
          planned,
          stiff,
          [],
          opened.map((m) => splice(m.id)),
          [],
          [],
        );
        const reach = planned.plan.reachIn.value;
        for (const h of stops.holds.filter((one) => one.covers === 'whatCanMove')) {
          expect(h.asks.length).toBeGreaterThanOrEqual(4);
          expect(h.asks.length).toBeLessThanOrEqual(Math.max(8, count + 2));
          const asked = new Set(h.asks.map((a) => [a.from, a.to].sort().join()));
          for (const m of opened)
            if (
              got.targets.some(
                (t) =>
                  [t.from, t.to].sort().join() === [m.from, m.to].sort().join() && t.targetIn.value <= reach,
              )
            )
              expect(asked).toContain([m.from, m.to].sort().join());
        }
      }
    }
  });

  it('of the demonstration job ask for eight at most, but for what was spread', () => {
    const job = JSON.parse(readFileSync('demo-data/ground-loop.json', 'utf8'));
    const result = assess(job).trammel;
    for (const h of result?.holds ?? [])
      if (h.covers === 'whatCanMove') {
        const spread = h.asks.filter((a) => a.why === 'wasSpread').length;
        expect(h.asks.length - spread).toBeLessThanOrEqual(8);
        expect(h.asks.length).toBeGreaterThanOrEqual(4);
      }
    expect(result?.holds).toHaveLength(holds.length);
  });

  it('every line of a plan has its target, so that what is read can be compared', () => {
    const { planned, targets, at } = run([]);
    const known = new Set(targets.map((t) => t.id));
    for (const r of [...planned.plan.readings, ...planned.whole]) expect(known.has(r.target)).toBe(true);
    expect(at('beforeCutting').asks).toHaveLength(planned.whole.length);
  });

  it('add the weld-shrinkage allowance before and after tacking only, the closest entry first', () => {
    const manual = [
      manualOf('a', 'shrink', 1 / 32),
      manualOf('b', 'shrink:longeron', 1 / 16),
      manualOf('c', 'shrink:U4L–U5L', 3 / 32),
    ];
    const { targets, at } = run([axisReading('r', 'U4L', 'U5L', 24, { hold: 'beforeTacking' })], manual);
    const target = (id: string): number => targets.find((t) => t.id === id)!.targetIn.value;
    const plus = (hold: (typeof holds)[number], id: string): number =>
      at(hold).asks.find((a) => a.target === id)!.aimIn.value - target(id);
    const near = { abs: 1e-12, because: 'arithmetic' };
    expectNear(plus('beforeTacking', 'U4L–U5L'), 3 / 32, near);
    expectNear(plus('afterTacking', 'U4L–U5L'), 3 / 32, near);
    expectNear(plus('afterCutting', 'U4L–U5L'), 0, near);
    for (const a of at('afterWelding').asks) expectNear(a.aimIn.value, target(a.target), near);
    const other = at('beforeTacking').asks.find((a) => a.target !== 'U4L–U5L')!;
    const kind = targets.find((t) => t.id === other.target)!.kind;
    expectNear(other.aimIn.value - target(other.target), kind === 'longeron' ? 1 / 16 : 1 / 32, near);
    const compared = targets.find((t) => t.id === 'U4L–U5L')!.compared[0]!;
    expectNear(compared.differenceIn.value, 24 - target('U4L–U5L') - 3 / 32, near);
    expect(compared.aimIn!.assumed).toContain('weld-shrinkage-added');
    expect(
      run([])
        .at('beforeTacking')
        .asks.every((a) => !a.aimIn.assumed.includes('weld-shrinkage-added')),
    ).toBe(true);
  });

  it('a hold marked done while its gate is closed is said, unless a reason is written', () => {
    const done = (more: object) => run([], [], [step('p', { step: 'hold:afterCutting', ...more })]);
    expect(done({}).issues.map((i) => i.code)).toEqual(['hold-done-with-gate-closed']);
    expect(done({ reason: '  ' }).issues).toHaveLength(1);
    const told = done({ reason: 'Access only after the floor is out' });
    expect(told.issues).toEqual([]);
    expect(told.at('afterCutting').done).toMatchObject({
      by: 'Ada',
      reason: 'Access only after the floor is out',
    });
    expect(done({ done: false }).at('afterCutting').done).toBeUndefined();
  });
});

describe('the gate of a hold', () => {
  it('closes on a reading outside or not taken, not on one with no limit or one that cannot be told', () => {
    const cases = [
      [[ask('inside')], true],
      [[ask('noLimit')], true],
      [[ask('cannotTell')], true],
      [[ask('outside')], false],
      [[ask('inside'), ask('outside')], false],
      [[ask()], false],
    ] as const;
    for (const [asks, opens] of cases) expect(gateOf(asks, []).opens).toBe(opens);
    expect(gateOf([ask('cannotTell')], []).repeat).toEqual(['cannotTell']);
    expect(gateOf([ask('cannotTell', 2)], []).repeat).toEqual([]);
  });

  it('opens with a written reason and with nothing less', () => {
    const closed = gateOf([ask('outside')], []);
    expect(mayBeDone(closed, undefined)).toBe(false);
    expect(mayBeDone(closed, ' \n')).toBe(false);
    expect(mayBeDone(closed, 'Maker accepts 1/8, letter of 3 May')).toBe(true);
    expect(mayBeDone(gateOf([ask('inside')], []), undefined)).toBe(true);
  });

  it('asks before tacking for gap, overlap, centred marks and a second person who is not the doer', () => {
    const fitUp = { gapIn: 0.03, overlapIn: 2.5, marksCentred: true, secondPerson: 'Ben' };
    const lacks = (more: object | undefined) =>
      fitUpOf('M', more === undefined ? [] : [step('p', { step: 'fitUp:M', fitUp: { ...fitUp, ...more } })])
        .lacks;
    expect(lacks(undefined)).toEqual(['gap', 'overlap', 'marks', 'secondPerson']);
    expect(lacks({})).toEqual([]);
    expect(lacks({ secondPerson: ' ada ' })).toEqual(['secondPersonIsDoer']);
    expect(lacks({ marksCentred: false })).toEqual(['marks']);
    expect(
      run([])
        .at('beforeTacking')
        .fitUps.map((f) => f.member),
    ).toEqual(['U4L-U5L']);
    expect(run([], [], [], []).at('beforeTacking').fitUps).toEqual([]);
  });
});
