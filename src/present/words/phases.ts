import type { Step } from '../../core/plan/result.ts';

const ready = new Set<Step['kind']>([
  'makeSafe',
  'defuel',
  'battery',
  'support',
  'strip',
  'inspect',
  'layOut',
  'photo',
]);
const closing = new Set<Step['kind']>(['protect', 'vents', 'weigh']);

/** Which part of the work a step belongs to, as a mechanic would head the card. */
const phaseOf = ({ kind, hold, scope, bay }: Step): string => {
  if (ready.has(kind) || (scope === 'job' && hold === 'beforeCutting'))
    return 'Make ready, look, measure as found';
  if (closing.has(kind) || (scope === 'job' && hold !== undefined)) return 'As left, protect, weigh';
  return bay === undefined ? 'Whole truss' : `Bay ${bay}`;
};

export interface Phase {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** Steps in runs of one bay, in the order of the work. A bay that is come back to heads a run of its own. */
export const phasesOf = (steps: readonly Step[]): readonly Phase[] => {
  const runs: { readonly title: string; readonly steps: Step[] }[] = [];
  for (const step of steps) {
    const title = phaseOf(step);
    const last = runs.at(-1);
    if (last?.title === title) last.steps.push(step);
    else runs.push({ title, steps: [step] });
  }
  return runs;
};
