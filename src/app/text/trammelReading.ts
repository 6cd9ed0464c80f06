/** Captions of one reading after another on the hangar floor. */
export const entryText = {
  region: 'Take a reading',
  none: 'No distance to read: the truss has none within reach.',
  before: 'Line before',
  next: 'Next line',
  notAsked: 'not asked for by this hold',
  place: (place: number, all: number, left: number) => `${place} of ${all}, ${left} left`,
  readAlready: ' · read already: another is averaged with it',
  how: 'How it is taken',
  length: 'Length',
  setAndMiss: 'Set, and the miss',
  // the setting stands between these two
  setTo: 'Set the trammel to ',
  whereOther: ', one point in one mark. Where does the other point stand?',
  typeMiss: 'Type the miss, then say which side. Inside: the distance is longer than the setting.',
  pooled: (readings: number, length: string, scatter: string | null) =>
    `${readings === 1 ? 'One reading' : `${readings} readings, mean`} ${length}${
      scatter === null ? '' : `; they scatter by ${scatter}`
    }`,
  inside: 'Inside by it',
  onMark: 'On the mark',
  outside: 'Outside by it',
  record: 'Record',
  undo: (line: string | undefined) => (line ? `Undo ${line}` : 'Undo last'),
  notRecorded: 'Not recorded',
  points: (marks: string) => `Where the points stand: ${marks}`,
  strike: 'Cannot be reached: strike it and plan anew',
} as const;

export const keptText = {
  both: (hold: string, instrument: string) => `Hold and instrument: ${hold}, ${instrument}`,
  hold: 'Hold',
  instrument: 'Instrument',
} as const;

export const aimText = {
  target: 'Target, true',
  withShrinkage: 'Target and weld shrinkage',
  inMm: (length: string) => `In millimetres ${length}`,
  limit: (length: string, basis: string) => `Limit: ± ${length}, ${basis}`,
  noLimit: 'Limit: none loaded; the difference is recorded',
} as const;

export const readoutText = {
  typeFirst: 'Type a length first.',
  miss: 'Miss',
  length: 'Length read',
  onTarget: 'On the target',
  shorter: (amount: string) => `${amount} shorter: spread ${amount}`,
  longer: (amount: string) => `${amount} longer: draw in ${amount}`,
} as const;

/** Captions of a reading entered with all that can be said of it. */
export const readingText = {
  named: (from: string, to: string) => `Reading ${from} to ${to}`,
  enterLength: 'Enter a length',
  how: 'How it was taken',
  by: { length: 'Length read', setAndMiss: 'Trammel set, and the miss' },
  length: 'Length',
  setTo: 'Set to',
  missedBy: 'Missed by (beyond +, inside −)',
  instrument: 'Instrument',
  hold: 'When',
  sure: 'Sure to about',
  sureHint: 'empty: 1/32 in, assumed',
  points: (marks: string) => `Where the points stood: ${marks}`,
  notRecorded: 'Not recorded',
  record: 'Record the reading',
  point: (cluster: string) => `Point at ${cluster}`,
  mark: 'On the',
  tube: 'Of tube',
  choose: 'Choose …',
  clock: 'Point stands at',
} as const;
