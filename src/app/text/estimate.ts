import type { SideBySide } from '../../core/estimate/compare.ts';

/** Captions of what the job takes: the sum and its lines. */
export const estimateText = {
  counts: 'Counts',
  tubes: 'Tubes',
  rates: 'Rates: hours for an operation, money for an hour',
  none: 'Nothing is planned yet: decide a tube or cluster, and the hours follow from the plan.',
  best: 'Best',
  likely: 'Likely',
  worst: 'Worst',
  sumNamed: 'Sum',
  sum: 'What it takes',
  allAtOnce: (best: string, worst: string) =>
    `All lines at their best: ${best} h; all at their worst: ${worst} h.`,
  leftOut: (what: string) => `Left out: ${what}.`,
  lines: 'Lines',
  byOrigin: 'By origin of the damage',
  setUp: ', set-up',
} as const;

/** Captions of the tubes nobody has looked at. */
export const hiddenText = {
  region: 'What nobody has looked at',
  title: (tubes: string, priced: boolean) =>
    `Not looked at: ${tubes}${priced ? '' : ', counted and not priced'}`,
  note: 'Give your chance that one tube of a band turns out damaged, and it enters the sum. None is shipped.',
  nextHour: (tubes: string) => `The next hour of looking: ${tubes}`,
  show: 'show them',
  takes: (before: string, after: string, finds: string) =>
    `takes the spread of the sum from ${before} to ${after} h and finds ${finds} on average.`,
  source: 'shop assumption',
  entered: (band: string) => `Chance of damage, ${band}`,
  chance: (band: string) => `Chance in percent, ${band}`,
  notPriced: 'not priced',
} as const;

/** Captions of the rate table, and of money for an hour. */
export const ratesText = {
  note: 'Hours in light type are invented by us and yours to change; rows in heavy type are yours.',
  operation: 'Operation, h',
  heads: { best: 'Best', likely: 'Likely', worst: 'Worst', setUp: 'Set-up a bay' },
  field: (operation: string, head: string) => `${operation}, ${head}`,
  entered: (operation: string) => `Rate: ${operation}`,
  money: 'Money for an hour',
  currency: 'In what',
  use: 'Use it',
} as const;

/** Captions of one plan beside another, and of this job beside an older copy. */
export const compareText = {
  bays: 'Compare: splice each tube of a bay, or replace the bay',
  exchange: 'Repair or exchange the frame, side by side',
  since: 'Supplement: what changed since an older copy',
  noBay: 'No bay has a tube with damage on it.',
  bay: 'Bay',
  bayNamed: (bay: string) => `Bay ${bay}`,
  work: 'Work them out',
  working: 'Being worked out …',
  failed: (why: string) => `By our own fault this failed: ${why}`,
  table: 'Side by side',
  what: 'What',
  rows: {
    bestH: 'Best, h',
    likelyH: 'Likely, h',
    worstH: 'Worst, h',
    boughtIn: 'Tube bought',
    bars: 'Lengths',
    weldIn: 'Weld',
    rodLb: 'Rod, lb',
    addedLb: 'Weight added, lb',
    momentLbIn: 'Moment, lb-in',
  } satisfies Record<SideBySide['rows'][number]['what'], string>,
  groupMean: (group: string) => `${group}, mean h`,
  leavesOut: 'Leaves out',
  leftOut: (noDesign: number, notPriced: number) =>
    `${noDesign} without a design, ${notPriced} not looked at and not priced`,
  olderCopy: 'An older copy of this job',
  unreadable: 'the file is no job that can be read here.',
  notCompared: (why: string) => `Not compared: ${why}`,
} as const;

/** Captions of repair and exchange side by side. */
export const exchangeText = {
  group: 'Group',
  repair: 'Repair, h',
  exchange: 'Exchange, h',
  source: 'as entered',
  entered: (group: string) => `Exchange: ${group}`,
  hours: (group: string) => `Hours of the exchange, ${group}`,
} as const;
