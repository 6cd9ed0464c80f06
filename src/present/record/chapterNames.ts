/** Chapters of the damage report in their order; page one always stands before them. */
export const chapterTitles = {
  maps: 'Damage maps',
  'close-ups': 'Hurt bays close to',
  findings: 'Findings and decisions',
  photos: 'Photos',
  'look-next': 'Look here next, areas',
  strain: 'Locked in, bent tubes',
  relief: 'Relief cuts, the first of each',
  'relief-cuts': 'Relief cuts in full',
  repairs: 'Dispositions, straightening, splices',
  ways: 'Ways to go on, each with its reasons',
  readings: 'Readings, shape, hold points',
  targets: 'Trammel targets, measuring plan',
  loads: 'Load cases, redundancy',
  sources: 'Sources and assumptions',
  questions: 'Work log, open questions, notes',
} as const;
export type ChapterName = keyof typeof chapterTitles;
export const chapterNames = Object.keys(chapterTitles) as readonly ChapterName[];

/** Long ones that a reader asks for: their tables stand in CSV files of their own, the targets on the trammel sheet. */
const onDemand: readonly ChapterName[] = ['relief-cuts', 'ways', 'targets'];

/** What the damage report holds when nobody chooses. */
export const usualChapters: readonly ChapterName[] = chapterNames.filter((name) => !onDemand.includes(name));
