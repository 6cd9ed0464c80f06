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
const last = new Set<Step['kind']>(['protect', 'vents', 'weigh']);

/** Which part of the work a step belongs to, as a mechanic would head the card. */
const phaseOf = ({ kind, hold, scope, bay }: Step): string => {
  if (ready.has(kind) || (scope === 'job' && hold === 'beforeCutting'))
    return 'Make ready, look, measure as found';
  if (last.has(kind) || (scope === 'job' && hold !== undefined)) return 'As left, protect, weigh';
  return bay === undefined ? 'Whole truss' : `Bay ${bay}`;
};

export interface Phase {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** Steps in runs of one bay, in the order of the work. A bay that is come back to heads a run of its own. */
export const phasesOf = (steps: readonly Step[]): readonly Phase[] =>
  steps.reduce<readonly Phase[]>((runs, step) => {
    const title = phaseOf(step);
    const before = runs.at(-1);
    return before?.title === title
      ? [...runs.slice(0, -1), { title, steps: [...before.steps, step] }]
      : [...runs, { title, steps: [step] }];
  }, []);
