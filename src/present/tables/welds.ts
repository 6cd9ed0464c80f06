import type { Standing } from '../../core/job/standing.ts';
import { showFigure, showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { memberLine } from '../words/names.ts';
import { methodWords } from '../words/record.ts';
import { methodNames } from '../words/splice.ts';
import { byId, type Showing } from './showing.ts';

interface Row {
  readonly member: string;
  readonly words: string;
  readonly method: string;
  readonly weld: string;
  readonly looked: string;
  readonly result: string;
  readonly doer: string;
  readonly second: string;
}

/** Every repair that is welded, and what was seen of its welds. What nobody wrote down says so. */
export const weldsTable = ({ assessment, units }: Showing, live: Standing): Table => {
  const members = byId(assessment.truss.members);
  const planned = assessment.plan.steps.filter(({ kind }) => kind === 'inspectWelds');
  const rows = planned.map((step): Row => {
    const id = step.of ?? step.members[0] ?? step.id;
    const member = members.get(id);
    const last = live.progress.findLast((p) => p.step === step.id && p.done);
    const takes = assessment.takeoff.repairs.find((r) => r.member === id);
    return {
      member: id,
      words: member ? memberLine(member) : id,
      method: takes?.method ? methodNames[takes.method] : 'not designed yet',
      weld: takes?.weldIn ? showFigure(takes.weldIn, units) : 'not told',
      looked: last?.inspected ? methodWords[last.inspected.method] : 'not looked at yet',
      result: last?.inspected ? (last.inspected.result === 'clear' ? 'no crack seen' : 'crack') : '',
      doer: last ? `${last.by}, ${showTime(last.at)}` : '',
      second: last?.secondPerson ?? (last ? 'nobody named' : ''),
    };
  });
  return tableOf<Row>(
    {
      name: 'welds',
      title: 'Weld list',
      empty: 'No weld is planned.',
      idOf: ({ member }) => member,
      columns: [
        { id: 'where', title: 'Where', text: ({ words }) => words },
        { id: 'method', title: 'Repair', text: ({ method }) => method },
        { id: 'weld', title: 'Weld', text: ({ weld }) => weld },
        { id: 'looked', title: 'Looked at by', text: ({ looked }) => looked },
        { id: 'result', title: 'Result', text: ({ result }) => result },
        { id: 'doer', title: 'By', text: ({ doer }) => doer },
        { id: 'second', title: 'Qualified person', text: ({ second }) => second },
      ],
    },
    rows,
  );
};
