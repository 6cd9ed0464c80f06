import type { Gate, Plan, Step } from '../../core/plan/result.ts';
import { heading } from '../record/heading.ts';
import type { Part, Section, TickRow } from '../record/sections.ts';
import { showFigure, showTime, type Units } from '../show.ts';
import type { Showing } from '../tables/showing.ts';
import { phasesOf } from '../words/phases.ts';
import { cautionsOf } from '../words/planCautions.ts';
import { evidenceWords, gateLine, secondWords } from '../words/planGates.ts';
import { solvedLine } from '../words/planOrder.ts';
import { stepLine } from '../words/planSteps.ts';
import { materialLine, toolsLine } from '../words/planTakes.ts';
import { measuredAt } from './blanks.ts';

const stampWords = ({ by, at }: { readonly by: string; readonly at: string }): string =>
  `${by}, ${showTime(at)}`;

const gateRow = (gate: Gate): TickRow => {
  const stamp = gate.opened ?? gate.done;
  return {
    text: `HOLD · ${gateLine(gate)}`,
    note: [
      gate.evidence.map(({ what }) => evidenceWords[what] ?? what).join('; '),
      secondWords[gate.secondPerson],
      ...(gate.opened ? [`opened by name: ${gate.opened.reason}`] : []),
    ].join('. '),
    strong: true,
    blanks: stamp ? [] : ['who looks too'],
    ...(stamp ? { done: stampWords(stamp) } : {}),
  };
};

const stepRow = (step: Step, place: number, units: Units): TickRow => ({
  text: `${place}. ${stepLine(step)}`,
  note: [
    ...(step.tools.length > 0 ? [toolsLine(step.tools)] : []),
    ...step.materials.map((m) => materialLine(m, units)),
    ...(step.solved ? [solvedLine(step.solved, units)] : []),
  ].join('. '),
  blanks: step.done ? [] : (measuredAt[step.kind] ?? []),
  ...(step.done ? { done: stampWords(step.done) } : {}),
});

/** Steps with the hold points that stand before and after them, each once a card. */
const rowsOf = (plan: Plan, steps: readonly Step[], units: Units): readonly TickRow[] => {
  const said = new Set<string>();
  const place = new Map(plan.steps.map(({ id }, k) => [id, k + 1]));
  const gates = (ids: readonly string[]): readonly TickRow[] =>
    ids.flatMap((id) => {
      const gate = plan.gates.find((g) => g.id === id);
      if (!gate || said.has(id)) return [];
      said.add(id);
      return [gateRow(gate)];
    });
  // a hold point that several steps lead to stands after the last of them
  const later = (k: number, id: string): boolean => steps.slice(k + 1).some((s) => s.gatesAfter.includes(id));
  return steps.flatMap((step, k) => [
    ...gates(step.gatesBefore),
    stepRow(step, place.get(step.id)!, units),
    ...gates(step.gatesAfter.filter((id) => !later(k, id))),
  ]);
};

/** Work cards: one for each run of work in a bay, to tick and to write measurements into. */
export const workCards = ({ assessment: { plan }, units }: Showing, side: string): readonly Part[] => {
  if (plan.steps.length === 0)
    return [
      {
        lie: 'upright',
        side,
        sections: [heading('Work cards'), { kind: 'lines', lines: ['Nothing is planned yet.'] }],
      },
    ];
  const place = new Map(plan.steps.map(({ id }, k) => [id, k + 1]));
  return phasesOf(plan.steps).map(({ title, steps }, k, all): Part => {
    const cautions = cautionsOf([...new Set(steps.flatMap((s) => s.cautions))]);
    const sections: readonly Section[] = [
      heading(
        `Card ${k + 1} of ${all.length} · ${title}`,
        `Steps ${place.get(steps[0]!.id)} to ${place.get(steps.at(-1)!.id)} of ${plan.steps.length}. Own-weight sag may grow by ${showFigure(plan.sagLimitIn, units)}. One item, one tick; a hold point is not ticked for others.`,
      ),
      ...(cautions.length > 0 ? [{ kind: 'cautions', cautions } as const] : []),
      { kind: 'ticks', rows: rowsOf(plan, steps, units) },
    ];
    return { lie: 'upright', side, sections, fresh: 'unlessFits' };
  });
};
