import type { NextRow } from '../../core/loadPath/result.ts';
import { fixed } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { reasonsLine } from '../words/reasons.ts';
import { type Showing, wordsOf } from './showing.ts';

const evidence = (id: 'a' | 'b' | 'l' | 'w', title: string): Column<NextRow> => ({
  id,
  title,
  align: 'right',
  text: (row) => {
    const value = row[id];
    return value === null ? 'none' : fixed(value, 2);
  },
  raw: (row) => row[id],
});

const columns = (words: (id: string) => string): readonly Column<NextRow>[] => [
  {
    id: 'rank',
    title: 'Order',
    align: 'right',
    text: (row) => String(row.rank),
    raw: (row) => row.rank,
  },
  { id: 'id', title: 'Id', text: (row) => row.id },
  { id: 'words', title: 'In words', text: (row) => words(row.id) },
  { id: 'reasons', title: 'Why', text: (row) => reasonsLine(row, 3), raw: (row) => reasonsLine(row) },
  evidence('a', 'Cluster'),
  evidence('b', 'Load path'),
  evidence('l', 'Locked in'),
  evidence('w', 'Takes over'),
];

const note =
  'Each kind of evidence from 0 to 1. An order to look in, not a finding: it marks nothing as damaged and clears nothing.';

/** Where to look next, for the whole job, first row first. */
export const lookNextTable = (showing: Showing): Table =>
  tableOf(
    {
      name: 'look-next',
      title: 'Look here next',
      note,
      empty: 'Nothing is damaged yet as far as is recorded, so nothing points anywhere.',
      idOf: (row) => row.id,
      columns: columns(wordsOf(showing)),
    },
    showing.assessment.loadPath.next,
  );

/** Where to look next for one member alone. */
export const lookNextOf = (showing: Showing, member: string): Table =>
  tableOf(
    {
      name: `look-next-${member}`,
      title: `Look next because of ${member}`,
      note,
      empty: 'No other member shares its load path, its clusters or its bend.',
      idOf: (row) => row.id,
      columns: columns(wordsOf(showing)),
    },
    showing.assessment.loadPath.byMember[member] ?? [],
  );
