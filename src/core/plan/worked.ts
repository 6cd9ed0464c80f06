import type { Relief } from '../relief/result.ts';
import type { Design } from '../splice/result.ts';
import type { HeldNow } from '../statics/held.ts';
import { type Broken, walk } from './check.ts';
import type { Draft } from './draft.ts';
import { reliefFirst } from './reliefFirst.ts';
import type { NotPlanned } from './result.ts';
import { type Sequence, sequenceOf } from './sequence.ts';
import type { Solver } from './state.ts';
import { stepsOf } from './steps.ts';
import type { WorkUnit } from './units.ts';

/** The order worked out, which leads through no state that does not stand. */
export interface Worked {
  readonly steps: readonly Draft[];
  readonly notPlanned: readonly NotPlanned[];
  readonly issues: Sequence['issues'];
}

/** The repair whose opening comes last before the step that breaks. */
const lastOpened = (steps: readonly Draft[], broken: Broken): Draft | undefined =>
  steps
    .slice(0, steps.findIndex((s) => s.id === broken.step) + 1)
    .findLast((s) => s.kind === 'cut' || (s.kind === 'release' && s.id === `release:bolted:${s.of}`));

/**
 * The steps of all repairs in an order that holds. Each opening is solved when it is placed; should a state on the way back
 * still not stand (sag at one point may grow while the truss gets stiffer), the last repair opened is left out and said.
 */
export const workedOrder = (
  solver: Solver,
  support: HeldNow,
  relief: Relief,
  units: readonly WorkUnit[],
  stray: readonly string[],
  undecided: ReadonlySet<string>,
  design: (id: string) => Design | null,
): Worked => {
  let left: readonly NotPlanned[] = [];
  for (;;) {
    const out = new Set(left.map((n) => n.id));
    const kept = units.filter((u) => !out.has(u.id));
    const first = reliefFirst(solver.truss, relief, kept, undecided);
    const sequence = sequenceOf(solver, support, relief, kept, first, stray);
    const steps = stepsOf(solver.truss, kept, sequence, first.cuts, design);
    const { broken, states } = walk(steps, solver, support, stray);
    if (!broken)
      return {
        steps,
        notPlanned: [...left, ...sequence.notPlanned],
        issues: [...first.issues, ...sequence.issues],
      };
    const opened = broken.rule === 'state-stands' ? lastOpened(steps, broken) : undefined;
    if (!opened?.of)
      throw new Error(`plan: the order worked out breaks ${broken.rule} at ${broken.step} by ${broken.by}`);
    left = [
      ...left,
      { id: opened.of, why: 'noBraceHolds', clusters: states.get(broken.step)?.clusters ?? [] },
    ];
  }
};
