import { describe, expect, it } from 'vitest';
import { trainFor } from '../../../src/app/worker/trainer.ts';
import { crash } from '../../../src/core/practice/crash.ts';
import { planDrill } from '../../../src/core/practice/planDrill.ts';
import { heldNow } from '../../../src/core/statics/held.ts';
import { modelOf } from '../../core/practice/kit.ts';

const model = modelOf('practice-truss');

describe('what practice has worked out beside the screen', () => {
  it('is a crash as the core makes it, the same for the same seed', () => {
    const ask = { seed: 'a', level: 2 } as const;
    expect(trainFor({ kind: 'crash', model, ask })).toEqual(crash(model, ask));
  });

  it('is a refusal where nothing was found to hide', () => {
    const ask = { seed: 'a', level: 2 } as const;
    expect(trainFor({ kind: 'findings', model, ask, findings: [] })).toEqual({ kind: 'nothingFound' });
  });

  it('is a plan that opens a tube, from which a drill can be made', () => {
    const made = trainFor({ kind: 'plan', model, seed: 'a' });
    if (made.kind !== 'planned') return expect.fail(made.kind);
    const { truss, plan, relief, lockedIn } = made.assessment;
    const ground = { truss, plan, relief, misfits: lockedIn.misfits, stray: [] };
    expect(made.job.purpose).toBe('practice');
    expect(planDrill({ ...ground, support: heldNow(truss, model, []) }, 'a')?.needs.length).toBeGreaterThan(
      10,
    );
  });
});
