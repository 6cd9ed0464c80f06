import type { Standing } from '../../core/job/standing.ts';
import { heading } from '../record/heading.ts';
import type { Part } from '../record/sections.ts';
import type { Showing } from '../tables/showing.ts';
import { jointWords, type WeldRow, weldRows, weldsTable } from '../tables/welds.ts';

/** What is still to be written down of a weld. */
const open = (weld: WeldRow): readonly string[] => [
  ...(weld.process === null ? ['process'] : []),
  ...(weld.filler === null ? ['filler'] : []),
  ...(weld.farSide === null ? ['far side seen'] : []),
  ...(weld.method === null ? ['method'] : []),
  ...(weld.result === null ? ['result'] : []),
  ...(weld.qualified === null ? ['qualified person'] : []),
];

/** Weld list: every weld, process and filler, how looked at and by whom; what nobody entered is left to be written in. */
export const weldSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const rows = weldRows(showing, live).filter((weld) => open(weld).length > 0);
  return [
    {
      lie: 'turned',
      side,
      sections: [
        heading('Weld list', 'Most misses lie on the far side: write down which side could not be seen.'),
        { kind: 'table', table: weldsTable(showing, live) },
        ...(rows.length > 0
          ? ([
              { kind: 'subheading', text: 'To write in' },
              {
                kind: 'ticks',
                rows: rows.map((weld) => ({
                  text: `${weld.of}, ${jointWords(weld)}`,
                  note: weld.words,
                  blanks: open(weld),
                })),
              },
            ] as const)
          : []),
      ],
    },
  ];
};
