import type { Gate, NotPlanned, Step } from '../../core/plan/result.ts';
import { showFigure, showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { cautionsOf } from '../words/planCautions.ts';
import { evidenceLine, gateLine, gateNamed, gateStateWords, secondWords } from '../words/planGates.ts';
import { notPlannedWords, orderRuleWords, solvedWords } from '../words/planOrder.ts';
import { stepDeed, stepNamed, stepWhere } from '../words/planSteps.ts';
import { materialLine, toolsLine } from '../words/planTakes.ts';
import { rawLength, type Showing } from './showing.ts';

interface Row {
  readonly step: Step;
  readonly place: number;
}

/** The order of work, step by step: what it needs, what it takes, what to beware of, who ticked it. */
export const planStepsTable = ({ assessment: { plan }, units }: Showing): Table => {
  const named = stepNamed(plan);
  return tableOf<Row>(
    {
      name: 'plan-steps',
      title: 'Plan',
      note:
        plan.order.kind === 'own'
          ? 'In your own order, held against every rule and solved again.'
          : 'In the order worked out: straightening before replacing, relief before straightening, no cut before its brace.',
      empty: 'Nothing is decided that can be planned.',
      idOf: ({ step }) => step.id,
      columns: [
        {
          id: 'place',
          title: 'No.',
          align: 'right',
          text: ({ place }) => String(place),
          raw: ({ place }) => place,
        },
        { id: 'deed', title: 'Step', text: ({ step }) => stepDeed(step) },
        { id: 'where', title: 'Where', text: ({ step }) => stepWhere(step) },
        { id: 'bay', title: 'Bay', text: ({ step }) => step.bay ?? '' },
        {
          id: 'before',
          title: 'Hold points before',
          text: ({ step }) => step.gatesBefore.join(', '),
        },
        {
          id: 'after',
          title: 'Hold points after',
          text: ({ step }) => step.gatesAfter.map(gateNamed).join(', '),
        },
        { id: 'tools', title: 'Tools', text: ({ step }) => toolsLine(step.tools) },
        {
          id: 'materials',
          title: 'Materials',
          text: ({ step }) => step.materials.map((m) => materialLine(m, units)).join('; '),
        },
        {
          id: 'cautions',
          title: 'Beware',
          text: ({ step }) =>
            cautionsOf(step.cautions)
              .map(({ text }) => text)
              .join(' '),
        },
        {
          id: 'follows',
          title: 'Comes after, because',
          text: ({ step }) => [...new Set(step.needs.map(({ rule }) => rule))].map(orderRuleWords).join(' '),
        },
        {
          id: 'needs',
          title: 'Comes after',
          text: ({ step }) => step.needs.map((n) => named(n.step)).join('; '),
        },
        {
          id: 'done',
          title: 'Ticked',
          text: ({ step }) => (step.done ? `${step.done.by}, ${showTime(step.done.at)}` : ''),
        },
        { id: 'id', title: 'Id', text: ({ step }) => step.id },
      ],
    },
    plan.steps.map((step, k) => ({ step, place: k + 1 })),
  );
};

const sagText = ({ sagIn }: NonNullable<Step['solved']>, units: Showing['units']): string =>
  !sagIn
    ? 'not told'
    : Math.abs(sagIn.value) < 0.0005
      ? sagIn.value === 0
        ? '0'
        : 'under 0.001 in'
      : showFigure(sagIn, units);

/** Every state of the truss on the way, solved. */
export const planStatesTable = ({ assessment: { plan }, units }: Showing): Table => {
  const named = stepNamed(plan);
  return tableOf<Step & { readonly solved: NonNullable<Step['solved']> }>(
    {
      name: 'plan-states',
      title: 'States on the way',
      note: `Each time tubes open or close, the truss is solved with the open ones out and the braces in. Growth of own-weight sag allowed: ${showFigure(plan.sagLimitIn, units)}.`,
      empty: 'No step opens a tube.',
      idOf: (step) => step.id,
      columns: [
        { id: 'after', title: 'After', text: (step) => named(step.id) },
        { id: 'open', title: 'Open', text: ({ solved }) => solved.open.join(', ') || 'nothing' },
        {
          id: 'braces',
          title: 'Braces in',
          text: ({ solved }) => solved.braces.map(named).join('; ') || 'none',
        },
        { id: 'says', title: 'Solved', text: ({ solved }) => solvedWords[solved.says] },
        {
          id: 'sag',
          title: 'Sag grows by',
          unit: units === 'mm' ? 'mm' : 'in',
          align: 'right',
          text: ({ solved }) => sagText(solved, units),
          raw: ({ solved }) => rawLength(solved.sagIn?.value, units),
        },
        { id: 'clusters', title: 'Moves most', text: ({ solved }) => solved.clusters.join(', ') },
      ],
    },
    plan.steps.flatMap((step) => (step.solved ? [{ ...step, solved: step.solved }] : [])),
  );
};

/** Hold points of the work, one item and one tick each, with what each wants to see. */
export const gatesTable = ({ assessment: { plan } }: Showing): Table =>
  tableOf<Gate>(
    {
      name: 'plan-hold-points',
      title: 'Hold points of the work',
      note: 'One item, one tick. Who has to look too is our proposal, yours to change; no source.',
      empty: 'The plan has no hold point.',
      ...{ idOf: (gate: Gate) => gate.of ?? gate.id },
      columns: [
        { id: 'gate', title: 'Hold point', text: gateLine },
        { id: 'state', title: 'Stands', text: ({ state }) => gateStateWords[state] },
        {
          id: 'evidence',
          title: 'Wants to see',
          text: ({ evidence }) => evidence.map(evidenceLine).join('; '),
        },
        { id: 'second', title: 'Who looks too', text: ({ secondPerson }) => secondWords[secondPerson] },
        {
          id: 'by',
          title: 'By',
          text: ({ done, opened }) => {
            const stamp = opened ?? done;
            return stamp ? `${stamp.by}, ${showTime(stamp.at)}` : '';
          },
        },
        { id: 'reason', title: 'Opened because', text: ({ opened }) => opened?.reason ?? '' },
      ],
    },
    plan.gates,
  );

/** What is decided or waits and is not in the plan. */
export const notPlannedTable = ({ assessment: { plan } }: Showing): Table =>
  tableOf<NotPlanned>(
    {
      name: 'not-planned',
      title: 'Not in the plan',
      empty: 'Everything decided is in the plan.',
      idOf: ({ id }) => id,
      columns: [
        { id: 'id', title: 'Tube or cluster', text: ({ id }) => id },
        { id: 'why', title: 'Because', text: ({ why }) => notPlannedWords[why] },
        { id: 'clusters', title: 'At', text: ({ clusters }) => clusters.join(', ') },
      ],
    },
    plan.notPlanned,
  );

interface Change {
  readonly what: 'added' | 'removed' | 'altered';
  readonly id: string;
}

/** What is different from the plan as it was agreed. */
export const frozenTable = ({ assessment: { plan } }: Showing): Table => {
  const { frozen } = plan;
  const named = stepNamed(plan);
  const rows: readonly Change[] = frozen
    ? (['added', 'removed', 'altered'] as const).flatMap((what) => frozen[what].map((id) => ({ what, id })))
    : [];
  return tableOf<Change>(
    {
      name: 'plan-changes',
      title: 'Changes since the plan was frozen',
      ...(frozen
        ? {
            note: `Frozen by ${frozen.by}, ${showTime(frozen.at)}; digest ${frozen.digest}; now ${plan.digest}.${frozen.reordered ? ' The steps stand in another order.' : ''}`,
          }
        : {}),
      empty: frozen ? 'No step was added, removed or altered.' : 'No plan is frozen.',
      columns: [
        { id: 'what', title: 'Change', text: ({ what }) => what },
        { id: 'step', title: 'Step', text: ({ id }) => named(id) },
        { id: 'id', title: 'Id', text: ({ id }) => id },
      ],
    },
    rows,
  );
};
