/** Captions of the user's own data. */
export const ownDataText = {
  title: 'Enter the maker’s or your own data',
  changed: (label: string) => `Your data: ${label.toLowerCase()}`,
  what: 'What it says',
  notChosen: 'not chosen',
  value: 'Value',
  share: 'Per cent',
  psi: 'Strength, ksi',
  clock: 'Clock position',
  tube: 'Tube',
  tubeLike: '7/8 x .035',
  length: 'Length, if it says one',
  words: 'Its words',
  source: 'Source: document, page, date',
  sourceWanted: 'Say where it stands.',
  record: 'Record it as your data',
} as const;
