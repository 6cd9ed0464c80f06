import { describe, expect, it } from 'vitest';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { JobRecord } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { readModel } from '../../../src/core/job/read.ts';
import { crash } from '../../../src/core/practice/crash.ts';
import { exerciseJob } from '../../../src/core/practice/exerciseFile.ts';
import { drill } from '../../../src/core/practice/layoutDrill.ts';
import { checkOrder, type PlanGround, planDrill, planShare } from '../../../src/core/practice/planDrill.ts';
import { planJob } from '../../../src/core/practice/planJob.ts';
import { isRight, pairSaid, questionBank, questionKinds } from '../../../src/core/practice/questions.ts';
import { answered, type Card, dueOn } from '../../../src/core/practice/schedule.ts';
import {
  AIM_IN,
  askedLines,
  pushTo,
  readGap,
  scoreTrammel,
  span,
  truePlaces,
} from '../../../src/core/practice/trammelDrill.ts';
import { heldNow } from '../../../src/core/statics/held.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { assessed, modelNames, modelOf, withRecords } from './kit.ts';

const LONG = 300_000;
const solvedOf = (name: string) => assessed(jobFromModel(modelOf(name), 'x'));

describe('layout questions', () => {
  it.each(modelNames)('of %s have their answers from geometry worked here, and among the choices', (name) => {
    const model = modelOf(name);
    const { truss, statics } = solvedOf(name);
    const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
    const bank = questionBank(truss, statics);
    for (const kind of questionKinds)
      for (const { make } of bank[kind]) {
        const q = make('seed');
        expect(isRight(q, q.by === 'length' ? { lengthIn: q.rightIn! } : { said: q.right }), q.id).toBe(true);
        if (q.by !== 'choice') continue;
        expect(q.choices, q.id).toContain(q.right);
        expect(new Set(q.choices).size, q.id).toBe(q.choices.length);
        for (const other of q.choices.filter((c) => c !== q.right))
          expect(isRight(q, { said: other }), q.id).toBe(false);
      }
    for (const { make } of bank.layOutBay) {
      const q = make('seed');
      const m = truss.members.find((one) => one.id === q.subject)!;
      const [a, b] = [at.get(m.from)!, at.get(m.to)!];
      // Pythagoras twice: across the floor, then up
      const floor = Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
      expectNear(q.rightIn!, Math.sqrt(floor ** 2 + (a[2] - b[2]) ** 2), { abs: 1e-9, because: 'rounding' });
      expect(isRight(q, { lengthIn: q.rightIn! + 0.07 })).toBe(false);
    }
    for (const { make } of bank.whichBay) {
      const q = make('seed');
      const m = truss.members.find((one) => one.id === q.subject)!;
      const forward = Math.min(at.get(m.from)![0], at.get(m.to)![0]);
      const row = model.stations.find((s) => s.label === q.right)!;
      expectNear(row.stationIn, forward, {
        abs: 3,
        because: 'clusters moved from their station by the model',
      });
    }
    for (const { make } of bank.tensionDiagonal) {
      const q = make('seed');
      const one = statics.kind === 'stands' ? statics.cases.find((c) => c.id === q.case)! : null;
      // work of a tube in tension: its ends move apart (own weight of a short tube aside)
      for (const id of q.choices) {
        const m = truss.members.find((x) => x.id === id)!;
        const move = (c: string) => one!.clusters.find((x) => x.id === c)!.moveIn;
        const [a, b] = [at.get(m.from)!, at.get(m.to)!];
        const along = [0, 1, 2].map((d) => (b[d]! - a[d]!) / m.lengthIn);
        const stretch = along.reduce((s, e, d) => s + e * (move(m.to)[d]! - move(m.from)[d]!), 0);
        expect(stretch > 0, `${q.id} ${id}`).toBe(id === q.right);
      }
    }
    for (const { make } of bank.missingDiagonal) {
      const q = make('seed');
      const [from, to] = q.right.split('–');
      // touched in the other order it is the same tube; drawn along the other diagonal it is another
      expect(isRight(q, { said: pairSaid(to!, from!) })).toBe(true);
      const face = truss.faces.find((f) => q.why.kind === 'twin' && f.id === q.why.face)!;
      const [a, b] = face.corners.filter((c) => c !== from && c !== to);
      expect(isRight(q, { said: pairSaid(a!, b!) })).toBe(false);
      const mirror = (id: string) => id.replace(/R$/, 'L');
      expect(
        truss.members.some(
          (m) => [m.from, m.to].toSorted().join() === [mirror(from!), mirror(to!)].toSorted().join(),
        ),
        q.id,
      ).toBe(true);
    }
  });

  // signs by inspection of a cantilever; sides only, where the height changes along the tube
  it('call the diagonal that a hanging tip pulls: the one whose top end is held', () => {
    const model = { ...modelOf('practice-truss') };
    const read = readModel(JSON.stringify(model));
    expect(read.ok).toBe(true);
    const { truss, statics } = assessed(jobFromModel(model, 'x'));
    const bank = questionBank(truss, statics);
    const tip = bank.tensionDiagonal
      .map(({ make }) => make('s'))
      .filter((q) => q.case === 'tip-down' && q.right[0] !== q.right[4]);
    // held forward, weighed down aft: a diagonal falling aft (upper end forward) hangs, one rising aft is pressed
    for (const q of tip) expect(q.right, q.id).toMatch(/^U\d[LR]-L\d[LR]$/);
    expect(tip.length).toBeGreaterThan(0);
  });

  it('come by seed: the same seed asks the same, kinds in turn, none twice', () => {
    const { truss, statics } = solvedOf('practice-truss');
    const ask = { seed: 'a', kinds: questionKinds, count: 12 };
    const one = drill(truss, statics, ask);
    expect(drill(truss, statics, ask)).toEqual(one);
    expect(drill(truss, statics, { ...ask, seed: 'b' })).not.toEqual(one);
    expect(new Set(one.map((q) => q.id)).size).toBe(12);
    expect(new Set(one.map((q) => q.kind)).size).toBe(questionKinds.length);
  });

  it('that went wrong come first when they are due, half of a drill at most', () => {
    const { truss, statics } = solvedOf('practice-truss');
    let cards: readonly Card[] = [];
    for (const id of ['nameTube:U1L-U2L', 'findCluster:U3R', 'whichBay:U2L-U3L'])
      cards = answered(cards, id, false, 10);
    cards = answered(cards, 'nameTube:U2L-U3L', true, 10);
    const ids = drill(truss, statics, { seed: 'a', kinds: questionKinds, count: 4 }, cards, 10).map(
      (q) => q.id,
    );
    expect(ids.slice(0, 2)).toEqual(['findCluster:U3R', 'nameTube:U1L-U2L']);
    expect(ids).not.toContain('nameTube:U2L-U3L');
  });
});

describe('the schedule', () => {
  it('asks again after 1, 3, 7 and 21 days while the answer is right, and at once when it is not', () => {
    let cards: readonly Card[] = [];
    let day = 100;
    for (const days of [1, 3, 7, 21, 21]) {
      cards = answered(cards, 'q', true, day);
      expect(dueOn(cards, day + days - 1)).toEqual([]);
      expect(dueOn(cards, day + days).map((c) => c.id)).toEqual(['q']);
      day += days;
    }
    cards = answered(cards, 'q', false, day);
    expect(dueOn(cards, day)).toEqual([{ id: 'q', box: 0, dueDay: day, asked: 6, right: 5 }]);
  });
});

const at = (n: number): string => new Date(Date.UTC(2024, 0, 1, 8, 0, n)).toISOString();
const stamp = (n: number) => ({ id: `r${String(n).padStart(4, '0')}`, by: 'p', at: at(n), device: 't' });

describe('the virtual trammel', () => {
  const seeds = [0, 1, 2, 3, 4, 5] as const;
  it.each(seeds)(
    'seed %i: a player who reads, spreads to the spring and reads again has full marks',
    (seed) => {
      const model = modelOf(modelNames[seed % 3]!);
      const made = crash(model, { seed: `${seed}`, level: 2, task: 'trammel' });
      if (made.kind !== 'made') return expect.fail(made.kind);
      const { exercise } = made;
      const job = exerciseJob(model, exercise, 'x');
      const truss = expandTruss(model);
      const frame = prepareFrame(truss, heldNow(truss, model, []));
      const { targets, plan } = assessed(job).trammel;
      const lines = askedLines(exercise, truss, plan!.readings);
      const records: JobRecord[] = [...job.records];
      let n = 0;
      const read = (from: string, to: string): void => {
        const places = truePlaces(exercise, truss, frame, records);
        const gap = readGap(exercise, places, from, to, 30, n);
        // scatter of a 64th, read to a 64th: five deviations and the rounding
        expectNear(gap.setIn - gap.missIn, span(places, from, to), {
          abs: 5 / 64 + 1 / 128,
          because: '5 σ and rounding',
        });
        records.push({
          kind: 'reading',
          ...stamp(n++),
          ends: [
            { cluster: from, mark: 'axis' },
            { cluster: to, mark: 'axis' },
          ],
          setAndMiss: gap,
          instrument: 'trammel',
          hold: 'beforeCutting',
        });
      };
      for (const line of lines) read(line.from, line.to);
      const before = truePlaces(exercise, truss, frame, records);
      const off = (t: (typeof targets)[number]) => span(before, t.from, t.to) - t.targetIn.value;
      const bad = (records: readonly JobRecord[]): number => {
        const places = truePlaces(exercise, truss, frame, records);
        return targets.reduce((s, t) => s + (span(places, t.from, t.to) - t.targetIn.value) ** 2, 0);
      };
      let done = false;
      for (const t of targets.toSorted((a, b) => Math.abs(off(b)) - Math.abs(off(a)))) {
        const probe = pushTo(exercise, truss, frame, before, t, t.targetIn.value);
        if (!probe) continue;
        const pushedIn = t.targetIn.value - Math.sign(off(t)) * probe.springIn;
        const given = pushTo(exercise, truss, frame, before, t, pushedIn)!;
        expectNear(given.leftIn, t.targetIn.value, { abs: 1e-9, because: 'the spring taken off exactly' });
        const push: JobRecord = {
          kind: 'progress',
          ...stamp(n++),
          step: 'spread',
          done: true,
          spread: { from: t.from, to: t.to, beforeIn: given.beforeIn, pushedIn, leftIn: given.leftIn },
        };
        if (bad([...records, push]) >= bad(records)) continue;
        records.push(push);
        read(t.from, t.to);
        done = true;
        break;
      }
      expect(done).toBe(true);
      const score = scoreTrammel(exercise, truss, frame, records, targets, lines);
      for (const [skill, { got, of }] of Object.entries(score.shares))
        expect(got, `${skill} of ${of}`).toBe(of);
      expect(Math.abs(score.pairs[0]!.isIn)).toBeLessThan(AIM_IN);
      const careless = scoreTrammel(
        exercise,
        truss,
        frame,
        records.filter((r) => r.kind === 'progress'),
        targets,
        lines,
      );
      expect(careless.shares.baseline.got).toBe(0);
      expect(careless.shares.spreads.got).toBe(0);
      // the exercise must have something to measure
      expect(Math.max(...exercise.truth.moves.map((m) => Math.hypot(...m.moveIn)))).toBeGreaterThan(1 / 16);
    },
    LONG,
  );

  it('springs all the way back below first yield', () => {
    const model = modelOf('practice-truss');
    const made = crash(model, { seed: 'a', level: 1, task: 'trammel' });
    if (made.kind !== 'made') return expect.fail(made.kind);
    const truss = expandTruss(model);
    const frame = prepareFrame(truss, heldNow(truss, model, []));
    const places = truePlaces(made.exercise, truss, frame, []);
    const pair = { from: 'U2L', to: 'L2R' };
    const one = pushTo(made.exercise, truss, frame, places, pair, span(places, 'U2L', 'L2R') + 0.01)!;
    expectNear(one.leftIn, one.beforeIn, { abs: 1e-12, because: 'elastic' });
    const two = pushTo(made.exercise, truss, frame, places, pair, span(places, 'U2L', 'L2R') + 0.02)!;
    // Hooke
    expectNear(two.forceLbf / one.forceLbf, 2, { rel: 1e-9, because: 'linear' });
  });
});

describe('plan practice', () => {
  const groundOn = (model: Model, seed: string): PlanGround => {
    const job = planJob(model, seed) ?? expect.fail('no plan');
    const { truss, plan, relief, lockedIn } = assessed(job);
    return { truss, plan, relief, misfits: lockedIn.misfits, stray: [], support: heldNow(truss, model, []) };
  };
  const ground = groundOn(modelOf('high-wing-tandem'), 'a');
  const one = planDrill(ground, 'a')!;
  const swapped = (drill: typeof one, a: string, b: string) =>
    drill.right.map((id) => (id === a ? b : id === b ? a : id));

  it('takes its steps from the plan of the job, and each arrow from the arrows there', () => {
    const steps = new Map(ground.plan.steps.map((s) => [s.id, s]));
    for (const card of one.cards) expect(steps.get(card.id)).toBe(card);
    // every arrow follows from the plan's own arrows, one after another
    const leads = (first: string, later: string): boolean =>
      steps.get(later)!.needs.some((n) => n.step === first || leads(first, n.step));
    for (const { first, later } of one.needs) expect(leads(first, later), `${first} ${later}`).toBe(true);
    // and what the plan wants between two of these steps is wanted here, by one arrow or through others
    const here = (first: string, later: string): boolean =>
      one.needs.some((n) => n.later === later && (n.first === first || here(first, n.first)));
    for (const a of one.right)
      for (const b of one.right) if (a !== b && leads(a, b)) expect(here(a, b), `${a} ${b}`).toBe(true);
  });

  it('keeps every rule in the order of the plan, and breaks some in the mix and all in reverse', () => {
    expect(checkOrder(one.right, one)).toEqual([]);
    const broken = checkOrder(
      one.cards.map((c) => c.id),
      one,
    );
    expect(broken.length).toBeGreaterThan(0);
    const { got, of } = planShare(one, broken);
    expect(got + broken.length).toBe(of);
    expect(checkOrder(one.right.toReversed(), one)).toHaveLength(of);
  });

  // pinned, one diagonal a face, rings at both ends (42 tubes, 16 clusters, 3 · 16 − 6 = 42): without any one tube it is a mechanism, by Maxwell's count
  it('shows that a truss that cannot spare a tube folds when it is cut before its brace', () => {
    const base = modelOf('practice-truss');
    const model: Model = {
      ...base,
      joints: 'pinned',
      bracing: base.stations.map(({ label }, k) => ({
        at: label,
        ...(k === 0 || k === base.stations.length - 1 ? { ring: 'toRight' as const } : {}),
        ...(k === base.stations.length - 1
          ? {}
          : { left: 'rising', right: 'rising', top: 'toRight', bottom: 'toRight' }),
      })),
      setups: [],
    };
    const seeds = ['a', 'b', 'c', 'd', 'e', 'f'];
    const drill = seeds
      .flatMap((seed) => planDrill(groundOn(model, seed), seed) ?? [])
      .find((d) => d.cards.some((c) => c.kind === 'brace'));
    if (!drill) return expect.fail('no plan with a brace');
    const brace = drill.cards.find((c) => c.kind === 'brace')!;
    const cut = drill.cards.find((c) => c.kind === 'cut')!;
    const broken = checkOrder(swapped(drill, brace.id, cut.id), drill);
    const folded = broken.find((b) => b.first === brace.id && b.later === cut.id)!;
    expect(folded.rule).toBe('brace-before-cut');
    expect(folded.would.kind === 'sags' && folded.would.state.says).toBe('mechanism');
    const { truss, support } = drill.ground;
    const without = { ...truss, members: truss.members.filter((m) => m.id !== drill.of) };
    expect('solve' in prepareFrame(without, support)).toBe(false);
  });

  it('tells what is locked in, as the relief stage has it, when a tube is bent back first', () => {
    const rule = (d: typeof one) => d.needs.find((n) => n.rule === 'relief-before-straightening');
    const drill = ['a', 'b', 'c', 'd', '4', '5']
      .flatMap((seed) => planDrill(groundOn(modelOf('high-wing-tandem'), seed), seed) ?? [])
      .find(rule);
    if (!drill) return expect.fail('no plan that lets go before it bends');
    const { first, later } = rule(drill)!;
    const bent = drill.cards.find((c) => c.id === later)!.of;
    const told = checkOrder(swapped(drill, first, later), drill).find(
      (b) => b.rule === 'relief-before-straightening',
    )!.would;
    const { low, high } = drill.ground.relief.targets.find((t) => t.member === bent)!.now.axialLbf;
    expect(told).toEqual({ kind: 'locked', member: bent, lowLbf: low, highLbf: high });
  });

  it('is mixed by its seed, and there is none where the plan opens nothing', () => {
    expect(planDrill(ground, 'a')).toEqual(one);
    expect(planDrill(ground, 'b')).not.toEqual(one);
    const model = modelOf('practice-truss');
    const { truss, plan, relief } = assessed(jobFromModel(model, 'x'));
    const nothing = { truss, plan, relief, misfits: [], stray: [], support: heldNow(truss, model, []) };
    expect(planDrill(nothing, 'a')).toBe(null);
  });
});

describe('marks', () => {
  it('stay with the job: an exercise with nothing entered has found nothing', () => {
    const model = modelOf('practice-truss');
    const made = crash(model, { seed: 'm', level: 1 });
    if (made.kind !== 'made') return expect.fail(made.kind);
    const job = withRecords(exerciseJob(model, made.exercise, 'x'), []);
    expect(assessed(job).coverage.findings).toEqual([]);
  });
});
