import { type SupplementRow, supplementOf } from '../record/supplement.ts';
import { newSince } from '../record/supplementCause.ts';
import { fixed, lengthUnit, showBareLength } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { rawLength, type Showing } from './showing.ts';

const signed = (value: number | null, words: (size: number) => string): string =>
  value === null ? '' : `${value < 0 ? '-' : '+'}${words(Math.abs(value))}`;

/** What is different from an older state of the job, line by line, with the finding that caused it, its photo and what it takes. */
export const supplementTable = (showing: Showing): Table => {
  const { since, units } = showing;
  const of = since && supplementOf(since, showing);
  return tableOf<SupplementRow>(
    {
      name: 'supplement',
      title: 'Supplement',
      ...(since
        ? {
            note: `Held against ${since.words}. New since then: ${newSince(since, showing.job.records)}. Likely hours; a blank is a difference nobody can price.`,
          }
        : {}),
      empty: since
        ? 'Nothing is different.'
        : 'Nothing to hold this state against: the plan was never frozen, and no older copy or time is named.',
      idOf: (row) => row.of,
      columns: [
        { id: 'of', title: 'Id', text: (row) => row.of },
        { id: 'what', title: 'What changed', text: (row) => row.what },
        { id: 'cause', title: 'Because of', text: (row) => row.cause },
        {
          id: 'photo',
          title: 'Photo',
          text: ({ photos }) => photos.map(({ hash }) => hash.slice(0, 12)).join(', '),
          raw: ({ photos }) => photos.map(({ hash }) => hash).join(' '),
        },
        {
          id: 'hours',
          title: 'Hours',
          unit: 'h',
          align: 'right',
          text: ({ hoursH }) => signed(hoursH, (h) => fixed(h, 2)),
          raw: ({ hoursH }) => hoursH,
        },
        {
          id: 'tube',
          title: 'Tube',
          unit: lengthUnit(units),
          align: 'right',
          text: ({ tubeIn }) => signed(tubeIn, (length) => showBareLength(length, units)),
          raw: ({ tubeIn }) => rawLength(tubeIn, units),
        },
        {
          id: 'money',
          title: 'Cost',
          unit: of?.currency ?? 'no rate entered',
          align: 'right',
          text: ({ money }) => signed(money, (amount) => fixed(amount, 2)),
          raw: ({ money }) => money,
        },
      ],
    },
    of?.rows ?? [],
  );
};
