import { describe, expect, it, vi } from 'vitest';
import { planStateFor } from '../../../src/app/picture/planStateFor.ts';
import { assess } from '../../../src/core/assess.ts';
import { groundLoop, jobWith, rec } from '../../core/plan/planJob.ts';
import { box } from '../../core/truss/box.ts';

// Whole assessments: seconds on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

/** A pinned box that just stands, with one longeron to be replaced: it is braced before the cut. */
const braced = () => {
  const crossed = {
    left: 'rising',
    right: 'rising',
    top: 'toRight',
    bottom: 'toRight',
    ring: 'toRight',
  } as const;
  const model = box(
    [
      { at: '1', ...crossed },
      { at: '2', ...crossed },
      { at: '3', ring: 'toRight' },
    ],
    { joints: 'pinned' },
  );
  return jobWith(model, [
    rec({
      kind: 'held',
      held: ['U1L', 'U1R', 'L1L', 'L1R'].map((cluster) => ({ cluster, fixed: ['x', 'y', 'z'] })),
    }),
    rec({ kind: 'decision', of: 'L2L-L3L', choice: 'replace' }),
  ]);
};

describe('the truss in the picture at a step of the plan', () => {
  const job = braced();
  const all = assess(job);
  const { steps } = all.plan;
  const at = (stepId: string | null) => planStateFor(all, job.model, stepId, 'inDecimal')!;
  const fact = (stepId: string | null, name: string) =>
    at(stepId).strip.stages!.facts.find((f) => f.name === name)?.words;

  it('has every step in one stage, and the stages in the order of the work', () => {
    const { stages, ids } = at(null).strip.stages!;
    expect(ids).toEqual(steps.map((s) => s.id));
    let next = 0;
    for (const { first, count } of stages) {
      expect(first).toBe(next);
      next += count;
    }
    expect(next).toBe(steps.length);
  });

  it('is whole and held before any step, not yet held until it is stood on its supports', () => {
    expect([...at(null).open]).toEqual([]);
    expect(fact(null, 'Held')).toBe('at the clusters entered');
    expect(fact('makeSafe', 'Held')).toBe('not yet');
    expect(fact('support', 'Held')).toBe('at the clusters entered');
  });

  it('has the tube open from its cut to its tack, and the brace in from its step to the one that takes it out', () => {
    let [open, brace] = [false, false];
    for (const step of steps) {
      if (step.kind === 'brace') brace = true;
      if (step.kind === 'unbrace') brace = false;
      if (step.kind === 'cut') open = true;
      if (step.kind === 'tack') open = false;
      const state = at(step.id);
      expect([...state.open], step.id).toEqual(open ? ['L2L-L3L'] : []);
      expect(state.lines.length, step.id).toBe(brace ? 1 : 0);
      expect(fact(step.id, 'Open'), step.id).toBe(open ? 'L2L-L3L' : 'no tube');
      expect(fact(step.id, 'Braced'), step.id).toBe(brace ? 'L2L to L3L' : 'no brace of the plan');
    }
    expect(steps.some((s) => s.kind === 'brace')).toBe(true);
  });

  it('says how the truss stands, with its sag beside the limit', () => {
    expect(fact('cut:L2L-L3L', 'Stands')).toBe('stands under the sag limit');
    expect(fact('cut:L2L-L3L', 'Sag')).toMatch(/^grows by .*; limit 0\.031 in/);
    expect(at('cut:L2L-L3L').strip.stages!.wrong).toBe(false);
  });

  it('shows nothing where nothing is planned', () => {
    const bare = jobWith(job.model, []);
    expect(planStateFor(assess(bare), bare.model, null, 'inDecimal')).toBeNull();
  });

  it('counts the steps ticked of each stage', () => {
    const demo = groundLoop();
    const ticked = {
      ...demo,
      records: [...demo.records, rec({ kind: 'progress', step: 'makeSafe', done: true })],
    };
    const { stages } = planStateFor(assess(ticked), demo.model, null, 'inDecimal')!.strip.stages!;
    expect(stages.map((s) => s.done)).toEqual(stages.map((_, k) => (k === 0 ? 1 : 0)));
  });
});
