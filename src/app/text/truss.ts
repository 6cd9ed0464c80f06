import type { SortBy } from '../state/view.ts';

/** Captions of the table beside the picture, and of the question about twins. */
export const tableText = {
  region: 'Truss as a table',
  search: 'Search the table',
  hint: 'Search: U4R, upper left longeron, bay 4, brace …',
  shown: (rows: number, all: number, selected: number) => `${rows} of ${all} shown, ${selected} selected`,
  caption:
    'Members and clusters. Arrow keys move, Enter selects, Space adds to the selection, Shift extends it.',
  nothing: "Nothing matches. Clear the search or the legend's filter.",
  columns: {
    id: 'Id',
    place: 'In words',
    state: 'State',
    tube: 'Tube',
    length: 'Length true',
  } satisfies Record<SortBy, string>,
} as const;

export const twinsText = {
  title: 'Same side?',
  asks: (bay: string, left: string, right: string) =>
    `In bay ${bay} damage stands on ${left} (left) and on its twin ${right} (right). Left and right are the pilot's.`,
  both: 'Both sides are hurt',
  look: (id: string) => `Look at ${id}`,
} as const;
