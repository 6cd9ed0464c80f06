import { planAssumptions } from './planAssumptions.ts';
import { shopAssumptions } from './shopAssumptions.ts';

/** What the sums assumed, by the names core gives them. A test reads the sources of core and fails on one without a row here. */
const assumptions: Readonly<Record<string, string>> = {
  'all-tacks-rigid': 'every tack holds as if it were whole',
  'bows-alone': 'from the bows alone, no moved clusters',
  'bows-and-moved-clusters': 'from the bows and the moved clusters',
  'capped-elastic-estimate': 'capped: elastic estimate, yielded',
  'cluster-place-guessed': 'the place of the cluster in the model is a guess',
  'half-sine-no-shape-given': 'smooth half-sine bow, no shape given',
  'kink-at-its-place-no-shape-given': 'kink at its place, no shape given',
  'kink-at-the-middle-no-place-given': 'kink in the middle, no place given',
  'marks-at-drawing-positions': 'marks stand at their drawing positions',
  'no-friction': 'no friction',
  'nothing-locked-in': 'nothing locked in before the push',
  'opposite-hand-equal': 'the two sides are alike, so the sound side gives the distance',
  'push-alone-yields': 'the push alone brings a tube to yield',
  'several-bends-add-up': 'several bends of one tube add up',
  'shortening-only-no-clock': 'shortening only, no clock position given',
  'small-moves': 'moves small against the bay',
  'springs-back-as-before': 'springs back as much as at the last push',
  'starting-value-of-near': 'starting value of what counts as near, yours to change',
  'std-1/32': 'one standard deviation of 1/32 in, starting value, yours to change',
  'straight-legs-beyond-the-chord': 'straight legs beyond the chord measured',
  'trammel-reach-120': 'trammel reach 120 in, starting value, yours to change',
  'uniform-arc-beyond-the-chord': 'same curve beyond the chord measured',
  'weld-shrinkage-added': 'weld shrinkage added, as entered',
  ...shopAssumptions,
  ...planAssumptions,
};

/** Names of assumptions that have words. */
export const assumptionNames: readonly string[] = Object.keys(assumptions);

/** An assumption in words: a name of core's by its row, another name spelled, a sentence as it is. */
export const assumedWords = (assumed: string): string =>
  Object.hasOwn(assumptions, assumed)
    ? assumptions[assumed]!
    : /^density-[\d.]+-lb\/in3$/.test(assumed)
      ? `density ${assumed.split('-')[1]} lb/in³`
      : /^[a-z0-9]+(-[a-z0-9]+)+$/.test(assumed)
        ? assumed.replace(/-/g, ' ')
        : assumed;
