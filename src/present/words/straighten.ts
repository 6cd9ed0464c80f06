import type { AxisFit, Check, Push, Stop, StraightenRow } from '../../core/straighten/result.ts';
import { showLength, type Units } from '../show.ts';

/** What may be said of a member on the bench, never more than its weakest check. */
export const saysWords = {
  stop: 'stop: cut it out, do not go on',
  straight: 'straight: every check since the last push is inside your limits',
  straightenedNoLimit: 'straightened, no limit loaded',
  outside: 'outside your limit',
  cannotTell: 'cannot tell yet',
  notChecked: 'not checked since the last push',
  notStarted: 'not started',
} as const satisfies Record<StraightenRow['says'], string>;

/** With no limit loaded the size is said: "straightened, measured 1/64, no limit loaded". */
export const saysLine = ({ says, fit }: Pick<StraightenRow, 'says' | 'fit'>, units: Units): string =>
  says === 'straightenedNoLimit' && fit
    ? `straightened, measured ${showLength(fit.bowIn.value, units, 64)} over ${showLength(fit.chordIn, units)}, no limit loaded`
    : saysWords[says];

export const checkWords = {
  straightEdge: 'Straight edge all round',
  roundness: 'Roundness',
  bend: 'Looked at for cracks: the bend',
  pressPoints: 'Looked at for cracks: where it was pressed',
  endWelds: 'Looked at for cracks: the welds at both ends',
} as const satisfies Record<Check['of'], string>;

export const checkVerdictWords = {
  inside: 'inside your limit',
  outside: 'outside your limit',
  cannotTell: 'cannot tell',
  noLimit: 'measured, no limit loaded',
  notDone: 'not done since the last push',
  clear: 'no crack seen',
  crack: 'crack seen',
} as const satisfies Record<Check['verdict'], string>;

export const stopWords = {
  kink: 'it has a kink',
  crack: 'it has a crack',
  wall: 'its wall is thinned',
  dent: 'it has a dent past what a patch may cover',
  break: 'it is parted',
  hole: 'it has a hole',
} as const satisfies Record<Stop['why'], string>;

export const shapeWords = {
  smooth: 'smooth bow',
  kinked: 'bent at one place',
  cannotTell: 'shape cannot be told',
} as const satisfies Record<AxisFit['shape'], string>;

export const pushSaysWords = {
  informs: 'tells the strength of this tube',
  elastic: 'sprang all the way back: press further',
  doesNotFit: 'does not fit the model: check the readings',
} as const satisfies Record<Push['says'], string>;

/** What a press is warned of, and what the log of a member is cautioned for. */
export const straightenCautions: Readonly<Record<string, string>> = {
  'past-hinge':
    'More set than this span gives before the tube hinges under the ram: move the blocks along the bend.',
  'grooved-blocks': 'Flat blocks would start to flatten the tube: use blocks grooved to the tube.',
  'longer-span': 'The clamp force is high for this tube: set the blocks further apart.',
  reversed: 'It has been pushed back the other way: each reversal uses up the steel. Look for cracks again.',
  'not-read-since-push': 'Not read since the last push: read the straight edge before you push again.',
  'one-side-read': 'Read from one side only: read a quarter turn round as well.',
  'ram-side-not-noted': 'A push is logged without the side the ram stood on: reversals cannot be counted.',
  'length-guessed':
    'No set-up is given: an end of the tube stands where it was guessed. Measure the chord of the bow, or the clusters.',
  'no-set-up-fits': 'No set-up takes this bow out without a hinge: it wants another way.',
};

export const noFitWords = {
  'no-readings': 'No straight-edge reading and no measured bow yet.',
  'too-few-stations': 'A straight-edge reading wants four stations or more.',
} as const satisfies Record<NonNullable<StraightenRow['noFit']>, string>;

/** Shown beside the steps of straightening, before the step. */
export const stepCautions = {
  press: 'Stand clear of the line of the ram: a block that slips, or a tube that breaks, flies.',
  heat: 'Cold. Heat only where the maker’s data give it.',
  look: 'Look at the bend for cracks with the finish off before the first push, and again after the last.',
} as const;
