/** Captions of the form that measures a finding, and of the list of what was found. */
export const findingText = {
  add: (id: string) => `Add a finding on ${id}`,
  addTitle: 'Measure a finding',
  correct: (id: string) => `Correct a finding on ${id}`,
  correctTitle: 'Correct it',
  kinds: 'Kind of damage',
  on: (word: string, id: string) => `${word} on ${id}`,
  what: 'What it is',
  notSaid: 'not said',
  where: 'Where on the tube',
  from: 'Measured from cluster',
  distance: (from: string) => `Distance from ${from}`,
  asTouched: (length: string, from: string) => `As touched: ${length} from ${from}`,
  clock: 'Which way, by the clock',
  atClock: (hour: number) => `At ${hour} o'clock`,
  bulges: 'It bulges towards',
  isAt: 'It is at',
  origin: 'From',
  note: 'Note',
  refused: 'Not recorded',
  record: (word: string) => `Record the ${word.toLowerCase()}`,
  recordCorrection: 'Record the correction',
} as const;

export const foundText = {
  section: (id: string) => `Found on ${id}`,
  title: 'Found here',
  correct: 'Correct',
  correctNamed: (word: string, id: string) => `Correct ${word.toLowerCase()} on ${id}`,
  remove: 'Remove',
  removeNamed: (word: string, id: string) => `Remove ${word.toLowerCase()} on ${id}`,
  removed: (word: string, id: string) => `${word} on ${id} removed`,
  decided: (choice: string) => `Decided: ${choice}`,
  decisionRemoved: (id: string) => `Decision on ${id} removed`,
  noReason: 'no reason given',
} as const;

/** Sizes a finding is measured by. */
export const sizeText = {
  bowDepth: 'Depth of the bow',
  kinkDepth: 'Depth of the kink',
  span: 'Over a span of',
  spanHint: 'empty: cluster to cluster',
  sure: 'Sure to about',
  sureHint: 'one standard deviation',
  depth: 'Depth',
  along: 'Length along the tube',
  width: 'Width',
  crack: 'Length of the crack',
  largest: 'Largest diameter',
  smallest: 'Smallest diameter',
  templateGap: 'Or gap under a template',
  wallLeft: 'Wall left',
  gap: 'Gap',
} as const;

/** Choices a finding asks for, with the words of each answer. */
export const choiceText = {
  shape: { label: 'Shape', options: { smooth: 'smooth', kinked: 'kinked' } },
  widthBy: { label: 'Width taken', options: { across: 'across, by caliper', around: 'around, by tape' } },
  where: { label: 'Where' },
  cause: { label: 'By', options: { rust: 'rust', chafe: 'chafe', unknown: 'not known' } },
} as const;
