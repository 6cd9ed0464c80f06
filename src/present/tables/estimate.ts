import type { EstimateLine, HiddenBand, Origin, Rate, Total } from '../../core/estimate/result.ts';
import { origins } from '../../core/estimate/result.ts';
import { fixed, showFigure } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import {
  bandWords,
  groupWords,
  hoursText,
  inventedNote,
  lineBasisWords,
  lineOriginWords,
  lineWhere,
  operationWords,
  rangeNote,
  unopenedNote,
} from '../words/estimate.ts';
import type { Showing } from './showing.ts';

const hours = <Row>(id: string, title: string, of: (row: Row) => number | null): Column<Row> => ({
  id,
  title,
  unit: 'h',
  align: 'right',
  text: (row) => {
    const value = of(row);
    return value === null ? '' : fixed(value, 2);
  },
  raw: of,
});

/** Every line of the estimate, tied to a tube, a bay or the job. */
export const estimateLinesTable = ({ assessment: { estimate } }: Showing): Table =>
  tableOf<EstimateLine>(
    {
      name: 'estimate-lines',
      title: 'Estimate, line by line',
      note: inventedNote,
      empty: 'Nothing is planned, so there is no line.',
      idOf: (line) => line.of ?? line.id,
      columns: [
        { id: 'group', title: 'Group', text: ({ group }) => groupWords[group] },
        {
          id: 'operation',
          title: 'Operation',
          text: ({ operation, kind }) => `${operationWords(operation)}${kind === 'setUp' ? ', set-up' : ''}`,
        },
        { id: 'where', title: 'For', text: lineWhere },
        {
          id: 'count',
          title: 'Count',
          align: 'right',
          text: ({ count }) => String(count),
          raw: ({ count }) => count,
        },
        hours<EstimateLine>('best', 'Best', (l) => l.hours.best),
        hours<EstimateLine>('likely', 'Likely', (l) => l.hours.likely),
        hours<EstimateLine>('worst', 'Worst', (l) => l.hours.worst),
        {
          id: 'basis',
          title: 'Rests on',
          text: ({ basis, record }) => `${lineBasisWords[basis]}${record ? ` (record ${record})` : ''}`,
        },
        { id: 'origin', title: 'Origin', text: ({ origin }) => lineOriginWords[origin] },
      ],
    },
    estimate.lines,
  );

interface TotalRow {
  readonly name: string;
  readonly total: Total;
}

/** The sums: of the lines, and with the priced part of what nobody has looked at. */
export const totalsTable = ({ assessment: { estimate }, units }: Showing): Table => {
  const drawn = (id: string, title: string, of: (t: Total) => Total['bestH']): Column<TotalRow> => ({
    id,
    title,
    unit: 'h',
    align: 'right',
    text: ({ total }) => showFigure(of(total), units),
    raw: ({ total }) => of(total).value,
  });
  return tableOf<TotalRow>(
    {
      name: 'estimate-totals',
      title: 'Sums',
      note: `${unopenedNote} ${rangeNote(estimate.known)}`,
      empty: 'none',
      columns: [
        { id: 'name', title: 'Sum', text: ({ name }) => name },
        drawn('best', 'Best', (t) => t.bestH),
        drawn('likely', 'Likely', (t) => t.likelyH),
        drawn('worst', 'Worst', (t) => t.worstH),
        drawn('mean', 'Mean', (t) => t.meanH),
        hours<TotalRow>('std', 'Spread, a rate holds for all its lines', ({ total }) => total.stdH),
        hours<TotalRow>('apart', 'Spread, each line by itself', ({ total }) => total.stdApartH),
        hours<TotalRow>('together', 'Spread, all go wrong together', ({ total }) => total.stdTogetherH),
      ],
    },
    [
      { name: 'Lines', total: estimate.known },
      { name: 'Lines and what nobody has looked at, as far as priced', total: estimate.withHidden },
    ],
  );
};

/** What nobody has looked at, in bands by rank: counted, and priced when the user gives a chance. */
export const hiddenTable = ({ assessment: { estimate } }: Showing): Table =>
  tableOf<HiddenBand>(
    {
      name: 'not-looked-at-priced',
      title: 'What nobody has looked at',
      note: 'No chance is shipped: without yours they are counted and not priced.',
      empty: 'none',
      columns: [
        { id: 'band', title: 'Band', text: ({ band }) => bandWords[band] },
        {
          id: 'members',
          title: 'Members',
          align: 'right',
          text: ({ members }) => String(members.length),
          raw: ({ members }) => members.length,
        },
        {
          id: 'chance',
          title: 'Your chance',
          unit: '%',
          align: 'right',
          text: ({ chance }) => (chance ? fixed(100 * chance.value, 0) : 'none given'),
          raw: ({ chance }) => (chance ? 100 * chance.value : null),
        },
        hours<HiddenBand>('mean', 'Mean', (b) => b.meanH),
        hours<HiddenBand>('std', 'Spread', (b) => b.stdH),
        {
          id: 'says',
          title: 'Stands',
          text: ({ chance }) => (chance ? 'priced by your chance' : 'counted, not priced'),
        },
        { id: 'ids', title: 'Which', text: ({ members }) => members.join(', ') },
      ],
    },
    estimate.hidden,
  );

/** The rate table as it counts. */
export const ratesTable = ({ assessment: { estimate } }: Showing): Table =>
  tableOf<Rate>(
    {
      name: 'rates',
      title: 'Rates',
      note: 'Hours. Rows that are not yours are invented by us: yours to change.',
      empty: 'none',
      columns: [
        { id: 'operation', title: 'Operation', text: ({ operation }) => operationWords(operation) },
        hours<Rate>('best', 'Best', (r) => r.each.best),
        hours<Rate>('likely', 'Likely', (r) => r.each.likely),
        hours<Rate>('worst', 'Worst', (r) => r.each.worst),
        hours<Rate>('setUp', 'Set-up a bay, likely', (r) => r.setUp.likely),
        {
          id: 'basis',
          title: 'Rests on',
          text: ({ record }) => (record ? `your rate (record ${record})` : lineBasisWords.invented),
        },
      ],
    },
    estimate.rates,
  );

/** Lines and hours by whose damage they are for. */
export const originsTable = ({ assessment: { estimate } }: Showing): Table =>
  tableOf<Origin>(
    {
      name: 'estimate-by-origin',
      title: 'By origin of the damage',
      empty: 'none',
      columns: [
        { id: 'origin', title: 'Origin', text: (o) => lineOriginWords[o] },
        {
          id: 'lines',
          title: 'Lines',
          align: 'right',
          text: (o) => String(estimate.byOrigin[o].lines),
          raw: (o) => estimate.byOrigin[o].lines,
        },
        {
          ...hours<Origin>('mean', 'Mean', (o) => estimate.byOrigin[o].meanH),
          text: (o) => hoursText(estimate.byOrigin[o].meanH),
        },
      ],
    },
    origins,
  );
