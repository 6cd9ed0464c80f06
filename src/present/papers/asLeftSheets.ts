import type { Standing } from '../../core/job/standing.ts';
import type { Photos } from '../backup.ts';
import { heading } from '../record/heading.ts';
import { beforeAfterParts } from '../record/mapParts.ts';
import { decidedIds, pairSections } from '../record/photoShots.ts';
import type { Part } from '../record/sections.ts';
import { asLeftTable } from '../tables/asLeft.ts';
import { decisionsTable } from '../tables/findings.ts';
import type { Showing } from '../tables/showing.ts';
import { weldsTable } from '../tables/welds.ts';
import { listWords } from '../words/names.ts';

/** As-left record: tags, distances and pictures before and after, the welds, and who saw the whole truss. */
export const asLeftSheets = (
  showing: Showing,
  live: Standing,
  side: string,
  photos: Photos,
): readonly Part[] => {
  const decided = decidedIds(showing);
  const bare = decided.filter((id) => !live.photos.some(({ of }) => of === id));
  return [
    {
      lie: 'turned',
      side,
      sections: [
        heading(
          'As found and as left',
          'As left is the last hold, after welding, of the whole truss. A distance nobody has read says so.',
        ),
        { kind: 'table', table: asLeftTable(showing) },
        { kind: 'subheading', text: 'Decisions' },
        { kind: 'table', table: decisionsTable(showing) },
        heading('Welds', 'Most misses lie on the far side: write down which side could not be seen.'),
        { kind: 'table', table: weldsTable(showing, live) },
        ...pairSections(decided, showing, live, photos),
        ...(bare.length > 0
          ? ([{ kind: 'lines', lines: [`No picture is taken of: ${listWords(bare)}.`] }] as const)
          : []),
        { kind: 'blanks', names: ['As-left distances taken by', 'Seen by a second person', 'Date'] },
      ],
    },
    ...beforeAfterParts(showing),
  ];
};
