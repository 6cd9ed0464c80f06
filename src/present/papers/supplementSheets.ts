import type { Standing } from '../../core/job/standing.ts';
import type { Photos } from '../backup.ts';
import { heading } from '../record/heading.ts';
import { shotOf } from '../record/photoShots.ts';
import type { Part, Section } from '../record/sections.ts';
import { supplementOf } from '../record/supplement.ts';
import { fixed } from '../show.ts';
import type { Showing } from '../tables/showing.ts';
import { supplementTable } from '../tables/supplement.ts';
import { lineOriginWords, unopenedNote } from '../words/estimate.ts';

const signed = (value: number, digits: number): string =>
  `${value < 0 ? '-' : '+'}${fixed(Math.abs(value), digits)}`;

/** The supplement: sums first, then every difference with its cause, then the pictures of the findings that caused them. */
export const supplementSheets = (
  showing: Showing,
  live: Standing,
  side: string,
  photos: Photos,
): readonly Part[] => {
  const table = supplementTable(showing);
  const { since } = showing;
  if (!since) return [{ lie: 'turned', side, sections: [heading('Supplement'), { kind: 'table', table }] }];
  const { rows, sums, currency, moneySum } = supplementOf(since, showing);
  const shown = new Map(rows.flatMap((row) => row.photos.map((photo) => [photo.id, photo] as const)));
  const pictures: readonly Section[] =
    shown.size === 0
      ? [{ kind: 'lines', lines: ['No photo is taken of what caused these differences.'] }]
      : [
          heading('What caused it'),
          { kind: 'photos', shots: [...shown.values()].map((photo) => shotOf(photo, showing, live, photos)) },
        ];
  return [
    {
      lie: 'turned',
      side,
      sections: [
        { kind: 'title', text: 'Supplement', under: `${showing.job.name}: since ${since.words}` },
        {
          kind: 'facts',
          rows: [
            ['Mean hours', `${signed(sums.meanH, 1)} h`],
            [
              'Cost',
              moneySum === null
                ? 'not priced: no rate for an hour is entered'
                : `${signed(moneySum, 2)} ${currency}, mean hours at your rate`,
            ],
            ['Weight added', `${signed(sums.addedLb, 2)} lb`],
            ...Object.entries(sums.byOrigin).map(
              ([origin, hours]) =>
                [
                  `Of it, ${lineOriginWords[origin as keyof typeof lineOriginWords]}`,
                  `${signed(hours, 1)} h`,
                ] as const,
            ),
          ],
        },
        { kind: 'lines', lines: [unopenedNote], strong: true },
        { kind: 'table', table },
        ...pictures,
        { kind: 'blanks', names: ['Told to the owner by, date', 'Agreed by, date'] },
      ],
    },
  ];
};
