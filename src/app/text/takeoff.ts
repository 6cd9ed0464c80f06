/** Captions of tube to buy and how it is cut. */
export const stockText = {
  fold: 'Tube to buy, and how it is cut',
  none: 'No decided repair takes tube.',
  howCut: (stock: string) => `How ${stock} is cut`,
  bought: 'Bought',
  waste: 'Waste',
  tooLong: (pieces: string) => `Longer than a bought length: ${pieces}.`,
  note: 'For ordering. Sections are cut to the opening measured after spreading.',
  /** `now`: the length as it stands, when tube is to be bought. */
  lengthBought: (now: string | null) => `Length you buy${now === null ? '' : ` (now ${now})`}`,
  kerf: 'Saw takes',
  use: 'Use it',
  source: 'shop',
} as const;

/** Captions of what each repair takes besides tube. */
export const takesText = {
  fold: 'Sleeves, rosettes, weld, rod and primer',
  none: 'No repair is decided that takes anything.',
  sleeves: 'Sleeves',
  sums: { rosettes: 'Rosettes', weldIn: 'Weld', rodLb: 'Rod', primerIn2: 'Primer' },
  sum: (what: string, value: string) => `${what.toLowerCase()} ${value}`,
  notDesigned: 'not designed yet',
  alsoNotDesigned: (value: string, missing: number) =>
    `${value}${missing > 0 ? `, ${missing} not designed yet` : ''}`,
} as const;

/** Captions of the weight that is added, and of its limits. */
export const weightText = {
  fold: 'Weight and moment',
  added: 'Added',
  moment: 'Moment',
  movesAft: 'Centre of gravity moves aft',
  moves: 'Centre of gravity moves',
  cannotSay: 'cannot say',
  atStation: (station: string) => `at station ${station}`,
  notKnown: (members: string) => `Not known yet: ${members}.`,
  against: (value: string | null, limit: string | null, says: string, missing: string) =>
    `${value ?? 'not told'} against ${limit ?? 'no limit loaded'}: ${says}${
      missing === '' ? '' : `; missing: ${missing}`
    }.`,
  note: 'Paint, fabric and primer usually outweigh sleeves and are not counted. Small changes add up over the years.',
  emptyCg: 'Station of the empty centre of gravity',
  chord: 'Mean chord',
  emptyWeightLb: 'Empty weight, lb',
  emptyWeight: 'Empty weight',
  source: 'weighing sheet, as entered',
  use: 'Use it',
} as const;
