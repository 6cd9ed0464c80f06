import type { BaySwing } from '../../core/trammel/result.ts';
import { fixed, showWork, type Units } from '../show.ts';

type Shown = BaySwing['shown'][number];

/** A swing as the trade says it, by its sign: `sags 3/16`, `swept 1/8 to the left`. */
const say: { readonly [K in Shown]: (value: number, amount: string) => string } = {
  sag: (v, amount) => `aft end ${amount} ${v > 0 ? 'low (sag)' : 'high'}`,
  sweep: (v, amount) => `aft end swept ${amount} to the ${v > 0 ? 'right' : 'left'}`,
  twist: (v, amount) => `twisted ${amount}, ${v > 0 ? 'right' : 'left'} side up`,
  narrowed: (v, amount) => `${amount} ${v > 0 ? 'narrower' : 'wider'}`,
  shortened: (v, amount) => `${amount} ${v > 0 ? 'shorter' : 'longer'}`,
};

export const swingFields = {
  sag: 'sagIn',
  sweep: 'sweepIn',
  twist: 'twistRad',
  narrowed: 'narrowedIn',
  shortened: 'shortenedIn',
} as const satisfies Record<Shown, string>;

/** One kind of swing of a bay in words. */
export const swingPart = (swing: BaySwing, kind: Shown, units: Units): string => {
  const value = swing.figures?.[swingFields[kind]]?.value ?? 0;
  const amount =
    kind === 'twist' ? `${fixed((Math.abs(value) * 180) / Math.PI, 2)}°` : showWork(Math.abs(value), units);
  return say[kind](value, amount);
};

/** How a bay sits against the drawing, in the trade's words; what the readings do not fix is said. */
export const swingWords = (swing: BaySwing, units: Units): string =>
  swing.unknown.length > 0
    ? `not fixed by the readings: ${swing.unknown.join(', ')}`
    : swing.shown.length === 0
      ? 'as drawn, as far as the readings show'
      : swing.shown.map((kind) => swingPart(swing, kind, units)).join('; ');
