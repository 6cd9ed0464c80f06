import type { Assessment } from '../../core/assessment.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import type { Plan, PlanBrace } from '../../core/plan/result.ts';
import type { Units } from '../../present/show.ts';
import { setupWords } from '../../present/words/held.ts';
import { phasesOf } from '../../present/words/phases.ts';
import { type Standing, standingLines } from '../../present/words/planOrder.ts';
import { stepDeed, stepLine } from '../../present/words/planSteps.ts';
import type { SceneCut, SceneLine } from '../scene/sceneProps.ts';
import { planBarText as text } from '../text/planBar.ts';
import type { Strip } from './laid.ts';

/** The truss as it stands after the step in hand: open tubes faded, braces as lines, the step's tubes named. */
export interface PlanState {
  readonly open: ReadonlySet<string>;
  readonly lines: readonly SceneLine[];
  readonly numbers: ReadonlyMap<string, string>;
  readonly cutMarks: readonly SceneCut[];
  readonly strip: Strip;
}

/** One stage of the work in the bar: steps from `first` on, and how many are ticked. */
export interface Stage {
  readonly title: string;
  readonly first: number;
  readonly count: number;
  readonly done: number;
}

/** What the bar over the picture shows: the stages, the step in hand (−1: none), and how the truss stands at it. */
export interface Stages {
  readonly stages: readonly Stage[];
  readonly at: number;
  readonly ids: readonly string[];
  readonly title: string;
  readonly wrong: boolean;
  readonly facts: ReturnType<typeof standingLines>;
}

/** Braces of the plan in place after a step. */
const bracesAfter = (until: Plan['steps']): readonly PlanBrace[] => {
  const placed = new Map<string, PlanBrace>();
  for (const step of until)
    if (step.kind === 'brace' && step.brace) placed.set(`un${step.id}`, step.brace);
    else if (step.kind === 'unbrace') placed.delete(step.id);
  return [...placed.values()];
};

/** What is open, braced and held after a step; before the first opening the truss is whole. */
export const standingAfter = ({ plan }: Pick<Assessment, 'plan'>, model: Model, at: number): Standing => {
  const until = plan.steps.slice(0, at + 1);
  const solved = until.findLast((step) => step.solved)?.solved ?? null;
  const stood = at < 0 || until.some(({ kind }) => kind === 'support');
  return {
    open: solved?.open ?? [],
    braces: bracesAfter(until),
    solved,
    heldAs: stood ? setupWords(model, plan.handOver.heldAs) : null,
  };
};

const stagesOf = (steps: Plan['steps']): readonly Stage[] => {
  let first = 0;
  return phasesOf(steps).map((phase) => {
    const stage = {
      title: phase.title,
      first,
      count: phase.steps.length,
      done: phase.steps.filter((s) => s.done).length,
    };
    first += stage.count;
    return stage;
  });
};

/** The state after one step (null: the whole truss, before any); null when there is no plan. */
export const planStateFor = (
  all: Assessment,
  model: Model,
  stepId: string | null,
  units: Units,
): PlanState | null => {
  const { plan, truss } = all;
  if (plan.steps.length === 0) return null;
  const at = plan.steps.findIndex(({ id }) => id === stepId);
  const step = plan.steps[at];
  const standing = standingAfter(all, model, at);
  const lengths = new Map(truss.members.map((m) => [m.id, m.lengthIn]));
  const places = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const title = step ? text.step(at + 1, plan.steps.length, stepLine(step)) : text.whole(plan.steps.length);
  const stages: Stages = {
    stages: stagesOf(plan.steps),
    at,
    ids: plan.steps.map(({ id }) => id),
    title,
    wrong: standing.solved?.says === 'sags' || standing.solved?.says === 'mechanism',
    facts: standingLines(standing, plan.sagLimitIn, units),
  };
  return {
    open: new Set(standing.open),
    lines: standing.braces.flatMap((brace): SceneLine[] => {
      const [from, to] = [places.get(brace.from), places.get(brace.to)];
      return from && to ? [{ id: brace.id, from, to, label: text.brace, strong: true }] : [];
    }),
    cutMarks: standing.open.map((member) => {
      const middle = (lengths.get(member) ?? 0) / 2;
      return { member, fromIn: middle, toIn: middle, label: text.open(member) };
    }),
    numbers: new Map(step?.members.map((id) => [id, stepDeed(step)])),
    strip: { title, unit: '', notes: [], stages },
  };
};
