import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess.ts';
import { gateNames } from '../../../src/core/plan/result.ts';
import { damageReport } from '../../../src/present/record.ts';
import { sheets } from '../../../src/present/sheet/layout.ts';
import { phasesOf } from '../../../src/present/words/phases.ts';
import { cautionsOf } from '../../../src/present/words/planCautions.ts';
import { evidenceWords, gatesTogether } from '../../../src/present/words/planGates.ts';
import { refusedMoveLine } from '../../../src/present/words/planOrder.ts';
import { stepLine } from '../../../src/present/words/planSteps.ts';
import { toolWords } from '../../../src/present/words/planTakes.ts';
import { demoJob, options } from '../made.ts';

const job = demoJob();
const { plan } = assess(job);

describe('words of the plan', () => {
  it('have a line, tools, cautions and evidence for every step and hold point of the demo job', () => {
    for (const step of plan.steps) {
      expect(stepLine(step)).toMatch(/^[A-Z].* · \S/);
      for (const tool of step.tools) expect(Object.keys(toolWords), step.id).toContain(tool);
      expect(
        cautionsOf(step.cautions)
          .map(({ id }) => id)
          .sort(),
        step.id,
      ).toEqual([...new Set(step.cautions)].sort());
    }
    for (const gate of plan.gates)
      for (const { what } of gate.evidence) expect(Object.keys(evidenceWords), gate.id).toContain(what);
    expect(new Set(plan.gates.map(({ name }) => name))).toEqual(new Set(gateNames));
  });

  it('keep every step once and in its place when they are put under heads', () => {
    expect(phasesOf(plan.steps).flatMap(({ steps }) => steps)).toEqual(plan.steps);
  });

  it('say people before structure before information', () => {
    const levels = cautionsOf(['measure-the-kerf', 'baseline-first', 'stored-strain']).map(
      ({ level }) => level,
    );
    expect(levels).toEqual(['warning', 'caution', 'note']);
  });

  it('name the rule and both steps when a step may not be moved', () => {
    const cut = plan.steps.find(({ kind }) => kind === 'cut')!;
    const words = refusedMoveLine(
      { ok: false, rule: 'baseline-first', step: cut.id, by: 'hold:beforeCutting' },
      plan,
    );
    expect(words).toContain('Not moved.');
    expect(words).toContain(
      `"${stepLine(cut)}" comes after "Trammel as found, before cutting · whole truss"`,
    );
  });

  it('gather hold points of one name', () => {
    expect(gatesTogether(['H3', 'H4:a', 'H4:b'])).toEqual([
      'H3 Plan agreed',
      'H4 Held, and baseline taken: a, b',
    ]);
  });

  it('repeat on page one a hold point of the work that was opened, with name and reason', () => {
    const opened = {
      kind: 'progress',
      id: 'open-1',
      by: 'Odell Farrow',
      at: '2026-06-09T10:00:00Z',
      device: 'tablet-a',
      step: 'H2',
      done: true,
      opened: 'Tail stays covered until the sling comes',
    } as const;
    const with1 = { ...job, records: [...job.records, opened] };
    const after = assess(with1);
    expect(after.plan.gates.find(({ id }) => id === 'H2')!.state).toBe('openedByName');
    const [first] = sheets(damageReport(with1, after, options));
    const text = first!.ops.flatMap((op) => (op.kind === 'text' ? [op.text] : [])).join(' ');
    expect(text.replace(/\s+/g, ' ')).toContain(
      'H2 Damage map complete, by Odell Farrow 2026-06-09 10:00 UTC: Tail stays covered until the sling comes',
    );
  });
});
