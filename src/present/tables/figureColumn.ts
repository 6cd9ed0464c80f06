import type { Figure } from '../../core/base/figure.ts';
import { lengthUnit, showFigure, type Units } from '../show.ts';
import type { Column } from '../table.ts';
import { rawLength } from './showing.ts';

/** A column of figures: value and range for a reader, low and high apart in the CSV. Inches follow the reader's units. */
export const figureColumn = <Row>(
  id: string,
  title: string,
  unit: Figure['unit'],
  units: Units,
  of: (row: Row) => Figure | null | undefined,
  ranged = false,
): Column<Row> => {
  const raw = (value: number | undefined): number | null =>
    unit === 'in' ? rawLength(value, units) : (value ?? null);
  const named = unit === 'in' ? lengthUnit(units) : unit;
  return {
    id,
    title,
    align: 'right',
    text: (row) => {
      const figure = of(row);
      // two ends of a range are known too loosely for a fraction beside each
      const by = ranged && units === 'inFraction' ? 'inDecimal' : units;
      return figure ? showFigure(figure, by) : '';
    },
    raw: (row) => raw(of(row)?.value),
    csv: ranged
      ? [
          { title: `${title}, low`, unit: named, raw: (row) => raw(of(row)?.low ?? of(row)?.value) },
          { title: `${title}, high`, unit: named, raw: (row) => raw(of(row)?.high ?? of(row)?.value) },
        ]
      : [{ title, unit: named, raw: (row) => raw(of(row)?.value) }],
  };
};
