import { describe, expect, it, vi } from 'vitest';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import { inOrderOf } from '../../../src/core/plan/check.ts';
import { freezing } from '../../../src/core/plan/frozen.ts';
import { moveStep } from '../../../src/core/plan/moveStep.ts';
import { groundLoop, planJob, rec } from './planJob.ts';

// Every stage before the plan is worked again where a record changes it: seconds on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const job = groundLoop();
const made = planJob(job);
const on = { truss: made.truss, support: made.support, misfits: made.locked.misfits, stray: [] };
const ids = made.plan.steps.map((s) => s.id);
const withRecords = (...records: JobRecord[]): Job => ({ ...job, records: [...job.records, ...records] });
const order = (steps: readonly string[]): JobRecord =>
  rec({ kind: 'manual', topic: 'plan-order', words: steps.join('\n'), source: 'dragged' });

describe('a step that is moved', () => {
  it('may go wherever no rule and no state speaks against it, and the order comes back whole', () => {
    const moved = moveStep(made.plan, on, 'battery', 'defuel');
    expect(moved.ok && moved.order.slice(0, 3)).toEqual(['makeSafe', 'battery', 'defuel']);
    expect(moved.ok && moved.order.toSorted()).toEqual(ids.toSorted());
  });

  it('is refused before what it needs, with the rule and both steps', () => {
    expect(moveStep(made.plan, on, 'cut:L3R-L4R', 'hold:beforeCutting')).toEqual({
      ok: false,
      rule: 'baseline-first',
      step: 'cut:L3R-L4R',
      by: 'hold:beforeCutting',
    });
  });

  it('is refused where a second tube would be open at a cluster that nothing holds, naming the cut that is open', () => {
    // A brace of the job ends at L4R, where L4R-L5R is open; nothing holds L3R, where L3R-L4L is to be cut.
    expect(moveStep(made.plan, on, 'cut:L3R-L4R', 'cut:L3R-L4L')).toEqual({
      ok: false,
      rule: 'one-open-at-a-cluster',
      step: 'cut:L3R-L4L',
      by: 'cut:L3R-L4R',
    });
  });

  it('is refused when a step that needs it would be left behind', () => {
    expect(moveStep(made.plan, on, 'fire:bay 4', null)).toMatchObject({
      ok: false,
      rule: 'fire-before-torch',
    });
  });

  it('is not moved to where it stands already, and that is said', () => {
    const { steps } = made.plan;
    const next = steps[steps.findIndex((s) => s.id === 'photo') + 1]!.id;
    for (const before of [next, null] as const) {
      const id = before === null ? steps.at(-1)!.id : 'photo';
      expect(moveStep(made.plan, on, id, before)).toMatchObject({ ok: false, rule: 'stands-there' });
    }
  });

  it('builds on a move that is still being worked out', () => {
    const first = moveStep(made.plan, on, 'battery', 'defuel');
    const steps = inOrderOf(made.plan.steps, first.ok ? first.order : []);
    const second = moveStep({ ...made.plan, steps }, on, 'photo', 'hold:beforeCutting');
    expect(second.ok && second.order.slice(0, 3)).toEqual(['makeSafe', 'battery', 'defuel']);
    expect(second.ok && second.order.indexOf('photo') < second.order.indexOf('hold:beforeCutting')).toBe(
      true,
    );
  });

  it('that does not exist is refused by name', () => {
    expect(moveStep(made.plan, on, 'cut:NOWHERE', null)).toMatchObject({ ok: false, rule: 'no-such-step' });
  });
});

describe('an order of the user’s own', () => {
  const moved = moveStep(made.plan, on, 'battery', 'defuel');

  it('is kept when it breaks nothing', () => {
    const { plan } = planJob(withRecords(order(moved.ok ? moved.order : [])));
    expect(plan.order.kind).toBe('own');
    expect(plan.steps.map((s) => s.id).slice(0, 3)).toEqual(['makeSafe', 'battery', 'defuel']);
  });

  it('is refused with the reason when it breaks a rule, and the plan stays as worked out', () => {
    const wrong = ['weld:L3R-L4R', ...ids.filter((id) => id !== 'weld:L3R-L4R')];
    const { plan } = planJob(withRecords(order(wrong)));
    expect(plan.steps.map((s) => s.id)).toEqual(ids);
    expect(plan.issues.find((i) => i.code === 'plan-order-refused')?.facts).toMatchObject({
      rule: 'cool-between-ends',
      step: 'weld:L3R-L4R',
    });
  });

  it('takes in a step that came later, behind the one it stood behind', () => {
    const old = ids.filter((id) => id !== 'dress' && !id.startsWith('protect:L1R'));
    const { plan } = planJob(withRecords(order(old)));
    expect(plan.order.kind).toBe('own');
    expect(plan.steps.map((s) => s.id)).toEqual(ids);
  });

  it('names steps that are not in the plan', () => {
    const { plan } = planJob(withRecords(order(['cut:GONE', ...ids])));
    expect(plan.issues.find((i) => i.code === 'plan-order-names-no-step')?.facts.ids).toEqual(['cut:GONE']);
  });
});

describe('a frozen plan', () => {
  const frozen = rec({
    kind: 'manual',
    topic: 'plan-frozen',
    words: freezing(made.plan.steps),
    source: 'agreed',
  });

  it('shows no difference while nothing changes, whatever progress is made', () => {
    const done = rec({ kind: 'progress', step: 'makeSafe', done: true });
    const { plan } = planJob(withRecords(frozen, done));
    expect(plan.frozen).toMatchObject({
      added: [],
      removed: [],
      altered: [],
      reordered: false,
      digest: made.plan.digest,
    });
  });

  it('shows the steps a later decision adds, and those it takes away', () => {
    const stands = made.live.decisions.find((d) => d.of === 'L9R-L10R')!;
    const other = rec({ kind: 'decision', of: 'L9R-L10R', choice: 'splice', replaces: stands.id });
    const { plan } = planJob(withRecords(frozen, other));
    expect(plan.frozen?.added).toContain('cut:L9R-L10R');
    expect(plan.frozen?.removed).toEqual([]);
    expect(plan.frozen?.altered).toContain('sleeves:L9R-L10R');
    const back = rec({ kind: 'decision', of: 'L9R-L10R', choice: 'refer', replaces: stands.id });
    expect(planJob(withRecords(frozen, back)).plan.frozen?.removed).toContain('weld:L9R-L10R');
  });

  it('shows another order as such', () => {
    const moved = moveStep(made.plan, on, 'battery', 'defuel');
    const { plan } = planJob(withRecords(frozen, order(moved.ok ? moved.order : [])));
    expect(plan.frozen).toMatchObject({ added: [], removed: [], altered: [], reordered: true });
  });
});

describe('progress', () => {
  const did = (step: string, more: Readonly<Record<string, unknown>> = {}): JobRecord =>
    rec({ kind: 'progress', step, done: true, ...more });

  it('ticks a step with who and when, and a later record takes the tick away', () => {
    const first = did('makeSafe', { by: 'Bo Invented' });
    const { plan } = planJob(withRecords(first));
    expect(plan.steps[0]?.done).toEqual({ record: first.id, by: 'Bo Invented', at: first.at });
    const undone = rec({ kind: 'progress', step: 'makeSafe', done: false });
    expect(planJob(withRecords(first, undone)).plan.steps[0]?.done).toBeUndefined();
  });

  it('hands over what is cut and not closed, tacked and not welded, and what can come next', () => {
    const { plan } = planJob(
      withRecords(
        did('cut:L4R-L5R'),
        did('sleeves:L4R-L5R'),
        did('spread:L4R-L5R'),
        did('cut:L3R-L4L'),
        did('tack:L3R-L4L'),
      ),
    );
    expect(plan.handOver).toMatchObject({
      cutNotClosed: ['L4R-L5R'],
      tackedNotWelded: ['L3R-L4L'],
      loose: ['L4R-L5R'],
      inPlace: ['spread:L4R-L5R'],
      heldAs: 'jig',
      who: ['Ana Invented'],
    });
    expect(plan.handOver.next).toContain('makeSafe');
    expect(plan.issues.some((i) => i.code === 'plan-cut-before-its-needs')).toBe(true);
  });

  it('counts distances about one tube as taken when their hold was marked done after its cut', () => {
    const step = (...records: JobRecord[]) =>
      planJob(withRecords(...records)).plan.steps.find((s) => s.id === 'hold:afterCutting:L4R-L5R')?.done;
    const early = did('hold:afterCutting');
    const cut = did('cut:L4R-L5R');
    const late = did('hold:afterCutting');
    expect(step(early, cut)).toBeUndefined();
    expect(step(cut, late)?.record).toBe(late.id);
  });

  it('starts the baseline anew when marks are laid out again after it', () => {
    const bay = made.plan.steps.find((s) => s.kind === 'layOut')!.id;
    const first = did(bay);
    const read = rec({
      kind: 'reading',
      ends: [
        { cluster: 'L3R', mark: 'axis' },
        { cluster: 'L4R', mark: 'axis' },
      ],
      lengthIn: 25,
      instrument: 'trammel',
      hold: 'beforeCutting',
    });
    const baseline = did('hold:beforeCutting');
    const again = did(bay);
    const stands = (...records: JobRecord[]) => {
      const { plan } = planJob(withRecords(...records));
      return {
        ticked: plan.steps.find((s) => s.id === 'hold:beforeCutting')?.done !== undefined,
        said: plan.issues.some((i) => i.code === 'plan-marks-laid-again'),
        gate: plan.gates.find((g) => g.id === 'H1')!.evidence.some((e) => e.what === 'marksStand'),
      };
    };
    expect(stands(first, read, baseline)).toEqual({ ticked: true, said: false, gate: false });
    expect(stands(first, read, baseline, again)).toEqual({ ticked: false, said: true, gate: true });
    const anew = rec({ ...read, id: undefined, by: undefined, at: undefined } as never);
    const later = { ...anew, id: 'anew', by: 'Ana Invented', at: '2027-01-01T10:00:00Z' } as JobRecord;
    const ticked = { ...did('hold:beforeCutting'), id: 'anew-tick', at: '2027-01-01T10:05:00Z' } as JobRecord;
    expect(stands(first, read, baseline, again, later, ticked)).toEqual({
      ticked: true,
      said: false,
      gate: false,
    });
  });

  it('shows a gate open by name only with a reason, and says when there is none', () => {
    const bare = did('H4:L4R-L5R');
    const named = did('H4:L4R-L5R', { opened: 'Photo taken on paper.' });
    const gate = (record: JobRecord) => {
      const { plan } = planJob(withRecords(record));
      return { gate: plan.gates.find((g) => g.id === 'H4:L4R-L5R'), plan };
    };
    expect(gate(bare).gate?.state).toBe('waits');
    expect(gate(bare).plan.issues.map((i) => i.code)).toContain('gate-done-with-evidence-missing');
    expect(gate(named).gate).toMatchObject({
      state: 'openedByName',
      opened: { by: 'Ana Invented', reason: 'Photo taken on paper.' },
    });
  });

  it('does not take the doer for the second person', () => {
    const inspected = { method: 'penetrant', place: 'endWelds', result: 'clear' };
    const second = (secondPerson: string) =>
      planJob(withRecords(did('inspectWelds:L4R-L5R', { inspected, secondPerson })))
        .plan.gates.find((g) => g.id === 'H7:L4R-L5R')
        ?.evidence.map((e) => e.there);
    expect(second(' ana invented ')).toEqual([true, false]);
    expect(second('Cy Invented')).toEqual([true, true]);
  });

  it('plans round a tube that was cut without a decision, and asks for one', () => {
    const { plan } = planJob(withRecords(did('cut:U8L-U9L')));
    expect(plan.issues.find((i) => i.code === 'plan-stray-open')?.facts.id).toBe('U8L-U9L');
    for (const s of plan.steps) if (s.solved) expect(s.solved.open).toContain('U8L-U9L');
  });
});
