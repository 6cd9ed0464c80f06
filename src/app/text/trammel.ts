import type { Adjustment } from '../../core/trammel/adjustment.ts';

/** Captions of the targets, each with what was read of it. */
export const targetsText = {
  region: 'Trammel targets',
  measured: 'Distances measured',
  round: (id: string) => `Distances round ${id}`,
  nothingMeasured: 'Nothing measured yet: take the first reading above.',
  noTarget: 'No target here. Take a reading above.',
  count: (count: number) => `${count} distances, left and right together`,
  each: 'Basis, limits and readings of each',
  twin: 'Less its twin',
  /** A difference in the step a tape reads, and in millimetres. */
  off: (thirtySeconds: string, mm: string, short: boolean) =>
    `${thirtySeconds}/32 in · ${mm} mm ${short ? 'short' : 'long'}`,
} as const;

export const targetText = {
  named: (id: string) => `Target ${id}`,
  notMeasured: 'not measured',
  place: (kind: string, from: string, to: string) => `${kind}, ${from} to ${to}`,
  target: 'Target, true',
  tolerance: 'Tolerance',
  noLimit: 'no limit loaded',
  found: (hold: string) => `Found, ${hold}`,
  difference: 'Difference',
  enter: (id: string) => `Enter a reading ${id}`,
  setAndMiss: 'set and miss',
  removeNamed: (from: string, to: string) => `Remove reading ${from} to ${to}`,
  removed: 'Reading removed',
  remove: 'Remove',
} as const;

/** Captions of whether the readings agree, and of what explains them when they do not. */
export const fitsText = {
  region: 'Do the readings agree',
  title: 'Do the readings agree?',
  fits: {
    fits: 'the readings agree with one another',
    doesNotFit: 'the readings do not agree with one another',
    cannotTell: 'cannot tell whether the readings agree: too few cross each other',
  } satisfies Record<Adjustment['fits'], string>,
  // stands after the name of the hold
  said: (fits: string, readings: number) => `: ${fits}, ${readings} readings.`,
  line: (from: string, to: string) => `${from} to ${to}`,
  readAs: (line: string, length: string) => `${line}, read as ${length}`,
  misread: (line: string, length: string) =>
    `Take again: ${line}. The others say it should be ${length}; the shape does not lean on it.`,
  show: 'Show it',
  datumMoved: (cluster: string) => `The cluster ${cluster} has moved itself: measure from sound ones.`,
  cannotTell: (named: readonly string[]) => `Cannot tell which is wrong: ${named.join('; or ')}. `,
  readAlso: (lines: string) => `To tell, read also ${lines}.`,
  readMore: 'To tell, read more distances.',
} as const;

export const sheetText = {
  save: 'Trammel sheet (PDF)',
  beingDrawn: 'Being drawn …',
  saved: 'Saved.',
  file: (job: string) => `${job} trammel sheet`,
} as const;
