import { describe, expect, it } from 'vitest';
import type { Decision, Finding, RecordOf } from '../../../src/core/job/jobSchema.ts';
import { tubeSection } from '../../../src/core/straighten/bending.ts';
import type { Straighten, StraightenRow } from '../../../src/core/straighten/result.ts';
import { pressForSet } from '../../../src/core/straighten/springback.ts';
import { straighten } from '../../../src/core/straighten/straighten.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { expectNear } from '../../kit/near.ts';
import { frozen } from '../../kit/trusses.ts';
import { box, decision, finding, LONG, manual, mid, stamp } from '../disposition/shop.ts';

type Progress = RecordOf<'progress'>;
let count = 0;
const log = (more: Partial<Progress>): Progress => ({
  kind: 'progress',
  id: `p${++count}`,
  ...stamp,
  step: `straighten:${LONG}`,
  done: false,
  ...more,
});
const stations = [2, 8, 14, 20, 26, 32, 38];
/** Straight-edge gaps on four sides for a half-sine bow of the long member, crown at `clock`. */
const edges = (depth: number, clock: number, sides = [12, 3, 6, 9]): NonNullable<Progress['straightEdge']> =>
  sides.map((side) => ({
    stationsIn: stations,
    offsetsIn: stations.map(
      (x) => 0.5 - depth * Math.sin((Math.PI * (x - 2)) / 36) * Math.cos(((clock - side) * Math.PI) / 6),
    ),
    clock: side,
    stdIn: 0.002,
  }));
const push = (more: Partial<NonNullable<Progress['push']>> = {}): Progress =>
  log({ push: { atIn: 20, spanIn: 26, pressedIn: 0.6, leftIn: 0.1, clock: 3, ...more } });
const looked = (place: 'bend' | 'pressPoints' | 'endWelds', result: 'clear' | 'crack' = 'clear'): Progress =>
  log({ inspected: { method: 'magneticParticle', place, result } });
const round = (largestIn: number, smallestIn: number): Progress =>
  log({ roundness: { atIn: 20, largestIn, smallestIn } });
const allLooked = (): readonly Progress[] => [looked('bend'), looked('pressPoints'), looked('endWelds')];
const limits = [manual('limit:bow', { valueIn: 0.03 }), manual('limit:ovality', { value: 2, unit: '%' })];
const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.25, clock: 3 });

interface Given {
  readonly findings?: readonly Finding[];
  readonly own?: readonly RecordOf<'manual'>[];
  readonly decisions?: readonly Decision[];
}
const run = (
  progress: readonly Progress[],
  { findings = [bow], own = [], decisions = [] }: Given = {},
): Straighten => {
  const truss = frozen(expandTruss(box()));
  return straighten(
    truss,
    frozen(walkRound(truss, [], findings, decisions, [], [])),
    frozen(own),
    frozen(progress),
  );
};
const row = (progress: readonly Progress[], given: Given = {}): StraightenRow =>
  run(progress, given).members[0]!;

describe('members on the bench', () => {
  it('are those with a bow, kink or oval, those decided so, and those with shop records', () => {
    const ids = (given: Given, progress: readonly Progress[] = []) =>
      run(progress, given).members.map((m) => m.member);
    expect(ids({ findings: [bow] })).toEqual([LONG]);
    expect(ids({ findings: [{ ...bow, damage: 'dent' } as Finding] })).toEqual([]);
    expect(ids({ findings: [], decisions: [decision(LONG, 'roundOut')] })).toEqual([LONG]);
    expect(ids({ findings: [] }, [push()])).toEqual([LONG]);
  });

  it('have a first plan from the finding, and a better one from the straight edge', () => {
    const described = row([]);
    expect(described.fit).toMatchObject({ shape: 'smooth', clock: 3, bowIn: { value: 0.25 } });
    expect(described.setups[0]).toMatchObject({ atIn: 20, ramClock: 3 });
    expect(described.says).toBe('notStarted');
    const edged = row([log({ straightEdge: edges(0.2, 5) })]);
    expectNear(edged.fit!.bowIn.value, 0.2, { rel: 0.04, because: 'a cubic is not a sine' });
    expectNear(edged.fit!.clock!, 5, { abs: 1e-6, because: 'no noise' });
  });

  it('say why there is no axis yet', () => {
    const tag = finding('f1', { damage: 'bow' });
    expect(row([], { findings: [tag] }).noFit).toBe('no-readings');
    const few = log({ straightEdge: [{ stationsIn: [1, 20, 39], offsetsIn: [0, 0.1, 0], clock: 12 }] });
    expect(row([few], { findings: [tag] }).noFit).toBe('too-few-stations');
  });
});

describe('after a push', () => {
  it('the tube’s own strength is found and the next push uses it', () => {
    // The tube is in truth of 92 ksi; 1 × .035, blocks 26 in apart, left .05.
    const left = 0.05;
    const { travelIn } = pressForSet(
      tubeSection({ odIn: 1, wallIn: 0.035 }),
      { elasticPsi: 29e6, yieldPsi: 92_000 },
      26,
      left,
    );
    const r = row([
      log({ straightEdge: edges(0.3, 3) }),
      push({ pressedIn: travelIn, leftIn: left }),
      log({ straightEdge: edges(0.22, 3) }),
    ]);
    expectNear(r.yieldPsi.value, 92_000, { rel: 1e-3, because: 'root to 1 psi' });
    expect(r.yieldPsi.basis.kind).toBe('measured');
    expect(r.next!.no).toBe(2);
    expectNear(r.next!.ramClock!, 3, { abs: 1e-6, because: 'no noise' });
    expect(r.next!.takesOffIn.value).toBeLessThanOrEqual(0.115);
  });

  it('an elastic one only lifts the low end, and says nothing else', () => {
    const r = row([push({ pressedIn: 0.35, leftIn: 0 })]);
    expect(r.pushes[0]).toMatchObject({ says: 'elastic' });
    // F = 6 E D δ/S² (first yield under a central load).
    expectNear(r.yieldPsi.low!, (6 * 29e6 * 1 * 0.35) / 26 ** 2, { rel: 1e-12, because: 'arithmetic' });
    expect(r.yieldPsi.high!).toBeGreaterThan(r.yieldPsi.low!);
  });

  it('what is left is worked out until the straight edge is laid again, and said to be so', () => {
    const before = [log({ straightEdge: edges(0.3, 3) })];
    const r = row([...before, push({ leftIn: 0.05 })]);
    expect(r.cautions).toContain('not-read-since-push');
    // Independent: an angle 4 × .05/26 at mid-chord 36 in long takes 36/4 times that off the bow: .069; half the rest.
    const bowNow = r.fit!.bowIn.value - ((4 * 0.05) / 26) * 9;
    expectNear(r.next!.takesOffIn.value, bowNow / 2, {
      rel: 5e-3,
      because: 'place of the crown to a step of 1/120',
    });
  });

  it('past straight, the next one comes from the other side; reversals are counted and cautioned', () => {
    const over = [push(), log({ straightEdge: edges(0.1, 9) })];
    expectNear(row(over).next!.ramClock!, 9, { abs: 1e-6, because: 'no noise' });
    expect(row(over).reversals).toBe(0);
    const back = row([...over, push({ clock: 9 }), push({ clock: 9 }), push({ clock: 3 })]);
    expect(back.reversals).toBe(2);
    expect(back.cautions).toContain('reversed');
  });
});

describe('straight is said', () => {
  const done = (depth: number, more: readonly Progress[] = []): readonly Progress[] => [
    push(),
    log({ straightEdge: edges(depth, 3) }),
    round(1.004, 0.998),
    ...allLooked(),
    ...more,
  ];

  it('only when straight edge all round, roundness and all three looks hold since the last push', () => {
    expect(row(done(0.01), { own: limits }).says).toBe('straight');
    for (const drop of [1, 2, 3, 4, 5]) {
      const short = done(0.01).filter((_, i) => i !== drop);
      expect(row(short, { own: limits }).says).toBe('notChecked');
    }
  });

  it('no longer after one more push', () => {
    expect(row([...done(0.01), push()], { own: limits }).says).toBe('notChecked');
  });

  it('never without the user’s limits: then it is straightened and measured, and accepted by name', () => {
    const r = row(done(0.01, [log({ done: true })]));
    expect(r.says).toBe('straightenedNoLimit');
    expect(r.accepted).toMatchObject({ by: 'Ana' });
    expect(row(done(0.01), { own: [limits[0]!] }).says).toBe('straightenedNoLimit');
  });

  it('never from one side', () => {
    const one = [push(), log({ straightEdge: edges(0.01, 3, [3, 9]) }), round(1.004, 0.998), ...allLooked()];
    expect(row(one, { own: limits }).says).toBe('cannotTell');
  });

  it.each([
    [0.1, 1.004, 'outside'],
    [0.03, 1.004, 'cannotTell'],
    [0.01, 1.03, 'outside'],
    [0.01, 1.016, 'cannotTell'],
  ])('not of a bow of %s in and a largest diameter of %s', (depth, largest, says) => {
    const records = [push(), log({ straightEdge: edges(depth, 3) }), round(largest, 0.998), ...allLooked()];
    expect(row(records, { own: limits }).says).toBe(says);
  });

  it('not with a crack seen after the push', () => {
    const r = row([...done(0.01), looked('endWelds', 'crack')], { own: limits });
    expect(r.says).toBe('stop');
    expect(r.stops).toMatchObject([{ why: 'crack' }]);
  });
});

describe('stops', () => {
  it.each([
    ['kink', finding('f2', { damage: 'kink', place: mid })],
    ['crack', finding('f2', { damage: 'crack', place: mid })],
    ['break', finding('f2', { damage: 'break', place: mid })],
    ['hole', finding('f2', { damage: 'hole', place: mid })],
    ['wall', finding('f2', { damage: 'thinned', place: mid, wallLeftIn: 0.02 })],
    // Source: oracle 36, a chord of .720 on 1 in is more than a quarter.
    ['dent', finding('f2', { damage: 'dent', place: mid, widthIn: 0.72, widthBy: 'across' })],
  ])('a %s ends straightening, with no set-ups', (why, f) => {
    const r = row([], { findings: [bow, f] });
    expect(r.says).toBe('stop');
    expect(r.stops).toEqual([{ why, record: 'f2' }]);
    expect(r.setups).toEqual([]);
  });

  it('wall loss and a dent inside the user’s own limit do not', () => {
    const own = [
      manual('limit:wallLoss', { value: 60, unit: '%' }),
      manual('limit:dentDepth', { valueIn: 0.2 }),
    ];
    const findings = [
      bow,
      finding('f2', { damage: 'thinned', place: mid, wallLeftIn: 0.02 }),
      finding('f3', { damage: 'dent', place: mid, depthIn: 0.15 }),
    ];
    expect(row([], { findings, own }).stops).toEqual([]);
    expect(row([], { findings }).stops.map((s) => s.why)).toEqual(['wall', 'dent']);
  });

  it('a shallow dent does not', () => {
    const f = finding('f2', {
      damage: 'dent',
      place: mid,
      depthIn: 0.05,
      widthIn: 0.3,
      widthBy: 'across',
      alongIn: 0.4,
    });
    expect(row([], { findings: [bow, f] }).stops).toEqual([]);
  });
});

describe('records of the bench', () => {
  it('that name no member or whose lists differ are issues', () => {
    const { issues } = run([
      log({ step: 'straighten:U9R-U10R' }),
      log({ straightEdge: [{ stationsIn: [1, 2, 3, 4], offsetsIn: [0, 0], clock: 12 }] }),
    ]);
    expect(issues.map((i) => i.code)).toEqual(['unknown-member', 'lists-differ-in-length']);
  });

  it('give the bore of the blocks and how far past round to squeeze, as a range', () => {
    const r = row([round(1.05, 0.95)]).roundness[0]!;
    expect(r).toMatchObject({ verdict: 'noLimit', boreIn: { value: 1, basis: { kind: 'practice' } } });
    expectNear(r.ovality.value, 10, { rel: 1e-9, because: '100 (Dmax − Dmin)/D' });
    expect(r.overSqueezeIn.high!).toBeGreaterThan(r.overSqueezeIn.low!);
  });

  it('let the user say the yield strength and the block spacing', () => {
    const own = [manual('yield', { value: 88_000, unit: 'psi' }), manual(`blocks:${LONG}`, { valueIn: 18 })];
    const r = row([], { own });
    expect(r.yieldPsi).toMatchObject({ value: 88_000, basis: { kind: 'manual' } });
    expect(r.setups[0]!.press.spanIn).toBe(18);
  });

  it('give equal answers twice', () => {
    const records = [log({ straightEdge: edges(0.2, 3) }), push()];
    expect(JSON.stringify(run(records))).toBe(JSON.stringify(run(records)));
  });
});
