/** Papers besides the damage report and the trammel sheet: the name of the file, and the title. */
export const paperTitles = {
  'start-card': 'Start card',
  'work-cards': 'Work cards',
  'hold-sheets': 'Trammel sheets of the hold points',
  materials: 'Materials',
  estimate: 'Estimate',
  supplement: 'Supplement',
  'hand-over': 'Hand-over',
  'weld-list': 'Weld list',
  'as-left': 'As-left record',
  'entry-draft': 'Draft entry',
  'owner-page': "Owner's page",
  tags: 'Chalk key and tags',
} as const;
export type PaperName = keyof typeof paperTitles;
export const paperNames = Object.keys(paperTitles) as readonly PaperName[];
