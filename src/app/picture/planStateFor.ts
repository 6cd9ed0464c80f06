import type { Assessment } from '../../core/assessment.ts';
import type { PlanBrace } from '../../core/plan/result.ts';
import type { Units } from '../../present/show.ts';
import { solvedLine } from '../../present/words/planOrder.ts';
import { stepDeed, stepLine } from '../../present/words/planSteps.ts';
import type { SceneCut, SceneLine } from '../scene/sceneProps.ts';
import type { Strip } from './laid.ts';

/** The truss as it stands after the step in hand: open tubes faded, braces as lines, the step's tubes named. */
export interface PlanState {
  readonly open: ReadonlySet<string>;
  readonly lines: readonly SceneLine[];
  readonly numbers: ReadonlyMap<string, string>;
  readonly cutMarks: readonly SceneCut[];
  readonly strip: Strip;
}

const nothing: PlanState['open'] = new Set();

/** What is open and what is braced after a step; the state before the first opening is the whole truss. */
export const standingAfter = (
  { plan }: Pick<Assessment, 'plan'>,
  stepId: string,
): { readonly open: readonly string[]; readonly braces: readonly PlanBrace[] } => {
  const at = plan.steps.findIndex(({ id }) => id === stepId);
  const until = plan.steps.slice(0, at + 1);
  const braces = until.reduce<readonly PlanBrace[]>((placed, step) => {
    if (step.kind === 'brace' && step.brace) return [...placed, step.brace];
    return step.kind === 'unbrace' ? placed.filter(({ id }) => step.id !== `un${id}`) : placed;
  }, []);
  return { open: until.findLast(({ solved }) => solved)?.solved?.open ?? [], braces };
};

/** The state after one step; null when the plan has no such step. */
export const planStateFor = (all: Assessment, stepId: string, units: Units): PlanState | null => {
  const { plan, truss } = all;
  const at = plan.steps.findIndex(({ id }) => id === stepId);
  const step = plan.steps[at];
  if (!step) return null;
  const { open, braces } = standingAfter(all, stepId);
  const lengths = new Map(truss.members.map((m) => [m.id, m.lengthIn]));
  const places = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const solved = plan.steps.slice(0, at + 1).findLast((s) => s.solved)?.solved;
  return {
    open: open.length > 0 ? new Set(open) : nothing,
    lines: braces.flatMap((brace): SceneLine[] => {
      const [from, to] = [places.get(brace.from), places.get(brace.to)];
      return from && to ? [{ id: brace.id, from, to, label: 'brace', strong: true }] : [];
    }),
    cutMarks: open.map((member) => {
      const middle = (lengths.get(member) ?? 0) / 2;
      return { member, fromIn: middle, toIn: middle, label: `open: ${member}` };
    }),
    numbers: new Map(step.members.map((id) => [id, stepDeed(step)])),
    strip: {
      title: `Step ${at + 1} of ${plan.steps.length}: ${stepLine(step)}`,
      unit: '',
      notes: [solved ? `${solvedLine(solved, units)}. Open tubes are faded.` : 'No tube is open yet.'],
    },
  };
};
