import type { Compared, Target } from '../../core/trammel/result.ts';
import { lengthUnit, showBareLength, showDifference, showFigure } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { verdictWords } from '../words/record.ts';
import { rawLength, type Showing } from './showing.ts';

interface Row {
  readonly target: Target;
  readonly before: Compared | undefined;
  readonly after: Compared | undefined;
}

/** Every distance read as found or as left: before, target, after. A blank is one nobody has taken. */
export const asLeftTable = ({ assessment: { trammel }, units }: Showing): Table => {
  const found = (id: string, title: string, of: (r: Row) => Compared | undefined): Column<Row> => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right',
    text: (r) => {
      const one = of(r);
      return one ? showBareLength(one.foundIn.value, units) : 'not read';
    },
    raw: (r) => rawLength(of(r)?.foundIn.value, units),
  });
  const rows = trammel.targets.map(
    (target): Row => ({
      target,
      before: target.compared.find(({ hold }) => hold === 'beforeCutting'),
      after: target.compared.find(({ hold }) => hold === 'afterWelding'),
    }),
  );
  return tableOf<Row>(
    {
      name: 'as-left',
      title: 'As found and as left',
      empty: 'No distance is read as found or as left.',
      idOf: ({ target }) => target.id,
      columns: [
        { id: 'distance', title: 'Distance', text: ({ target }) => target.id },
        found('before', 'As found', (r) => r.before),
        {
          id: 'target',
          title: 'Target',
          unit: lengthUnit(units),
          align: 'right',
          text: ({ target }) => showBareLength(target.targetIn.value, units),
          raw: ({ target }) => rawLength(target.targetIn.value, units),
        },
        { id: 'basis', title: 'Target rests on', text: ({ target }) => restsOn(target.targetIn) },
        {
          id: 'limit',
          title: 'Limit',
          text: ({ target }) =>
            target.toleranceIn ? `± ${showFigure(target.toleranceIn, units)}` : 'no limit loaded',
        },
        found('after', 'As left', (r) => r.after),
        {
          id: 'difference',
          title: 'Left off the target',
          text: ({ after }) => (after ? showDifference(after.differenceIn.value, units, false) : 'not read'),
        },
        {
          id: 'verdict',
          title: 'Answer',
          text: ({ after }) => (after ? verdictWords[after.verdict] : 'not read'),
        },
      ],
    },
    rows.filter(({ before, after }) => before || after),
  );
};
