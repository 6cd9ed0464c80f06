import type { Hold } from '../../core/job/jobSchema.ts';
import type { StepKind } from '../../core/plan/kinds.ts';
import type { Plan, Step } from '../../core/plan/result.ts';
import { holdWords } from './record.ts';

/** Words of the steps of the plan: what is done, and where. */

export const stepKindWords = {
  makeSafe: 'Wait for release of the wreck, keep people off',
  defuel: 'Drain fuel and oil, purge tanks and lines',
  battery: 'Take the battery out, electronics off',
  support: 'Hold the truss on sound clusters, level it',
  strip: 'Strip the finish',
  inspect: 'Look again with the finish off',
  layOut: 'Lay out station points and centre lines',
  photo: 'Photograph as found',
  trammel: 'Trammel',
  release: 'Let go without a saw',
  brace: 'Brace',
  cut: 'Cut',
  straighten: 'Straighten',
  roundOut: 'Round out',
  inspectBend: 'Look again for cracks after bending',
  cutOut: 'Cut out, dress, check the angle',
  spread: 'Spread the opening',
  opening: 'Measure the opening',
  section: 'Make the section',
  sleeves: 'Make the sleeves',
  drill: 'Drill the rosettes and deburr',
  trialFit: 'Trial fit, dry',
  fire: 'Stand the fire watch, open vents, return clamp beside the weld',
  fitUp: 'Look over the fit-up',
  tack: 'Tack',
  spreaderOut: 'Take the spreader out if it is in the way',
  weldFirst: 'Weld the first end, let it cool',
  weld: 'Weld the other end, let it cool',
  clean: 'Clean the welds',
  inspectWelds: 'Look over the welds, far side too',
  unbrace: 'Take the brace out',
  refit: 'Put back what was let go',
  protect: 'Protect inside and outside',
  vents: 'Close the vents',
  weigh: 'Decide weight and balance',
} as const satisfies Record<StepKind, string>;

const releaseParts = { weight: 'take the weight off', bolted: 'unbolt' } as const;

/** What a step is about, in words: a tube, a bay, the whole truss. */
export const stepWhere = ({
  of,
  bay,
  scope,
  members,
}: Pick<Step, 'of' | 'bay' | 'scope' | 'members'>): string =>
  scope === 'job'
    ? 'whole truss'
    : scope === 'bay'
      ? `bay ${bay ?? ''}${members.length > 0 ? `: ${members.join(', ')}` : ''}`
      : (of ?? members.join(', '));

/** Distances asked a second time at one hold: what was done between. */
const trammelDeed = (id: string, hold: Hold): string => {
  if (id.startsWith('hold:beforeCutting:')) return 'Trammel, braced: must read as found';
  const words = `Trammel ${holdWords[hold]}`;
  if (id.endsWith(':cutOut')) return `${words}, ends dressed`;
  return id.endsWith(':spreaderOut') ? `${words}, spreader out` : words;
};

/** The deed of a step without its place: "Trammel after cutting", "Unbolt". */
export const stepDeed = (step: Pick<Step, 'kind' | 'id' | 'hold'>): string => {
  if (step.hold) return trammelDeed(step.id, step.hold);
  if (step.kind === 'release' || step.kind === 'refit') {
    const how = step.id.split(':')[1] as keyof typeof releaseParts;
    if (Object.hasOwn(releaseParts, how)) {
      const words = releaseParts[how];
      return step.kind === 'refit'
        ? how === 'bolted'
          ? 'Bolt back in'
          : 'Put the weight back'
        : words.charAt(0).toUpperCase() + words.slice(1);
    }
  }
  return stepKindWords[step.kind];
};

/** A step in one line: "Cut · L3R-L4R". */
export const stepLine = (step: Step): string => {
  const place = step.brace ? `${step.brace.from} to ${step.brace.to}` : stepWhere(step);
  return `${stepDeed(step)} · ${place}`;
};

/** A step by its id, as issues and needs name it; the id itself when the plan has it not. */
export const stepNamed =
  (plan: Pick<Plan, 'steps'>) =>
  (id: string): string => {
    const step = plan.steps.find((s) => s.id === id);
    return step ? stepLine(step) : id;
  };
