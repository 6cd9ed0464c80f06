import type { PaperName } from '../../present/papers/titles.ts';

/** Captions of how the job stands on the record. */
export const recordText = {
  counts: 'Counts',
  stands: 'How the job stands',
  findings: 'Findings recorded',
  readings: 'Readings recorded',
  countsNote: 'Tubes + clusters.',
  notLookedAtNamed: 'Not looked at',
  notLookedAt: (tubes: number, clusters: number) => `Not looked at: ${tubes} tubes, ${clusters} clusters`,
  allLookedAt: 'Every tube and cluster has been looked at.',
  tubesNotLookedAt: 'Tubes not looked at',
  clustersNotLookedAt: 'Clusters not looked at',
} as const;

/** Captions of the report, its tables, what it holds, and a copy of the job. */
export const reportText = {
  title: 'Papers and copies',
  paper: 'Paper',
  sizes: { a4: 'A4', letter: 'Letter' },
  pdf: 'Download the report (PDF)',
  csv: 'Download the tables (CSV)',
  copy: 'Save a copy of the job',
  report: 'Report',
  stop: 'Stop',
  practice: 'Practice file: every page carries the mark.',
  working: 'The report is being worked out and drawn …',
  saved: { pdf: 'The report is saved as report.pdf.', csv: 'The tables are saved, a CSV each.' },
  stopped: 'Stopped. Nothing was saved.',
  failed: (why: string) => `The report could not be made, by our own fault: ${why} The job is saved.`,
  holds: (chosen: number | null) =>
    `What is in the report: ${chosen === null ? 'the usual chapters' : `${chosen} chosen`}`,
  holdsNote: 'Page one always stands first. Every page says what nobody has looked at.',
  chapters: 'Chapters',
  papers: 'Papers bound in',
  usualAgain: 'The usual chapters again',
} as const;

/** Captions of the papers of the work, each saved on its own. */
export const papersText = {
  title: 'Papers of the work',
  says: {
    'start-card': 'released, data in hand, how held, what is unknown',
    'work-cards': 'a card a bay, boxes to tick, fields to measure into',
    'hold-sheets': 'target, limit, found and left at each hold',
    materials: 'tube to buy, how it is cut, rosettes, weld, rod',
    estimate: 'range, lines, rates, weight and moment',
    supplement: 'what changed since the plan was frozen; other states below',
    'hand-over': 'what the next shift must know',
    'weld-list': 'process, filler, far side, method, qualified person',
    'as-left': 'distances, tags and pictures before and after',
    'entry-draft': 'what is entered and what is missing; unsigned',
    'owner-page': 'plain words, no verdict',
    tags: 'chalk key, and tags to tie on, with a code to scan',
  },
  pdf: 'PDF',
  pdfOf: (paper: string) => `${paper} (PDF)`,
  truss: 'Tagged truss',
  trussSays: '3D for other programs, every tube with its tag and size',
  gltf: 'glTF',
  gltfOf: (paper: string) => `${paper} (glTF)`,
  paper: 'Paper',
  working: (paper: string) => `${paper}: being worked out and drawn …`,
  saved: (paper: string, file: string) => `${paper}: saved as ${file}.`,
  failed: (paper: string, why: string) => `${paper} could not be made, by our own fault: ${why}`,
} as const satisfies { readonly says: Record<PaperName, string>; readonly [caption: string]: unknown };

/** Captions of the supplement: what changed since an older state of the job. */
export const supplementText = {
  title: 'Supplement',
  note: 'Each line: what changed, the finding that caused it, its photo, hours, tube and cost.',
  against: 'Against',
  frozen: (at: string) => `the plan as frozen, ${at}`,
  time: 'the job as it stood at a time',
  copy: 'an older copy in a file',
  timeOf: 'Time of a record',
  olderCopy: 'Older copy',
  save: 'Supplement (PDF and CSV)',
  working: 'The supplement is being worked out and drawn …',
  unreadable: 'That file is no job that can be read here.',
  chooseFirst: 'Choose the older copy first.',
  saved: 'Saved as supplement.pdf and supplement.csv.',
  failed: (why: string) => `The supplement could not be made, by our own fault: ${why}`,
} as const;

/** Captions of the welds, and of what was seen of each. */
export const weldsText = {
  title: 'Welds',
  names: { process: 'Welding process', filler: 'Filler rod' },
  ofTheJob: 'Process and filler of the whole job',
  nowEntered: (name: string, words: string) => `${name}: ${words}`,
  enter: 'Enter them',
  none: 'No weld is planned.',
  count: (welds: number, missing: number) => `${welds} welds, ${missing} with something not entered`,
  list: 'Welds of the plan',
  weld: (of: string, joint: string) => `${of}, ${joint}`,
  write: 'Write down',
  writeOf: (weld: string) => `Write down: ${weld}`,
  written: (weld: string) => `Weld written down: ${weld}`,
  close: 'Close',
  noProcess: 'process not entered',
  noFiller: 'filler not entered',
  farSideIs: (words: string) => `far side ${words}`,
  notEntered: 'not entered',
  notLookedAt: 'not looked at yet',
  nobody: 'nobody named',
  asEntered: 'as entered',
  farSide: 'Far side',
  method: 'Method',
  result: 'Result',
  qualified: 'Person qualified for the method',
  writeIt: 'Write it down',
} as const;
