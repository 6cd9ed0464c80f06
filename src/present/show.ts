import type { Figure, Unit } from '../core/base/figure.ts';
import { nearestFraction } from '../core/base/lengthText.ts';
import { inToMm } from '../core/base/units.ts';

/** How a person wants lengths shown. Storing and reckoning stay in inches. */
export type Units = 'inFraction' | 'inDecimal' | 'mm';

/** Step of a shown fraction: 32 for what a tape reads, 64 for what a scale or caliper reads. */
export type Step = 32 | 64;

const MINUS = '-';

/** Lifts 19.049999999999997 (¾ in in mm) back over the half it was meant to be. */
const LIFT = 1 + 1e-12;

/** A number to a fixed count of decimals, halves away from zero, in the same digits everywhere; `-0` is `0`. */
export const fixed = (value: number, decimals: number): string => {
  if (!Number.isFinite(value)) return 'not known';
  const text = (Math.abs(value) * LIFT).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
};

/** A whole number with a comma at the thousands. */
export const whole = (value: number): string => fixed(value, 0).replace(/\B(?=(\d{3})+$)/g, ',');

/** The nearest fraction as a mechanic writes it: `23 5/16`, `3/32`, `0`. */
export const fraction = (valueIn: number, step: Step = 32): string => nearestFraction(valueIn, step).text;

/**
 * A length in the user's units: `23.313 in · 23 5/16`, `23.313 in` or `592.1 mm`.
 *
 * @param step  nearest 1/32 (default) or 1/64 of the fraction beside; the decimal is never hidden
 */
export const showLength = (valueIn: number, units: Units, step: Step = 32): string => {
  if (units === 'mm') return `${fixed(inToMm(valueIn), 1)} mm`;
  const decimal = `${fixed(valueIn, 3)} in`;
  return units === 'inDecimal' ? decimal : `${decimal} · ${fraction(valueIn, step)}`;
};

/** A length without its unit, for a column whose title carries the unit: `23.313 · 23 5/16`, `592.1`. */
export const showBareLength = (valueIn: number, units: Units, step: Step = 32): string => {
  if (units === 'mm') return fixed(inToMm(valueIn), 1);
  const decimal = fixed(valueIn, 3);
  return units === 'inDecimal' ? decimal : `${decimal} · ${fraction(valueIn, step)}`;
};

/** The unit a length column carries in its title. */
export const lengthUnit = (units: Units): string => (units === 'mm' ? 'mm' : 'in');

/** A length as work is given: `3/32`, `0.094 in`, `2.4 mm`. */
export const showWork = (valueIn: number, units: Units): string =>
  units === 'mm'
    ? `${fixed(inToMm(valueIn), 1)} mm`
    : units === 'inDecimal'
      ? `${fixed(valueIn, 3)} in`
      : fraction(valueIn, 32);

const finest = { inFraction: '1/32', inDecimal: '0.001 in', mm: '0.1 mm' } as const satisfies Record<
  Units,
  string
>;

/**
 * A signed difference with its word and, where there is work, the work: `found 3/32 short: spread 3/32`.
 *
 * @param differenceIn  found − target, inches; positive is long
 * @param work          say what to do about it; left out where nothing is to be done yet
 */
export const showDifference = (differenceIn: number, units: Units, work: boolean): string => {
  const amount = showWork(Math.abs(differenceIn), units);
  if (/^0(\.0+)?( |$)/.test(amount)) return `no difference to ${finest[units]}`;
  const [word, deed] = differenceIn < 0 ? ['short', 'spread'] : ['long', 'draw in'];
  return work ? `found ${amount} ${word}: ${deed} ${amount}` : `found ${amount} ${word}`;
};

/** A kerf that opens (+) or closes (−), decimal only: `opens 0.031 in`. */
export const showOpening = (valueIn: number, units: Units): string =>
  showOpenings({ low: valueIn, high: valueIn }, units);

/** How a kerf moves between two readings of the bows: `opens 0.007 to 0.022 in`, `closes 0.012 to opens 0.041 in`. */
export const showOpenings = (
  { low, high }: { readonly low: number; readonly high: number },
  units: Units,
): string => {
  const [a, b] = Math.abs(low) <= Math.abs(high) ? [low, high] : [high, low];
  const size = (v: number): string => fixed(Math.abs(units === 'mm' ? inToMm(v) : v), units === 'mm' ? 1 : 3);
  const way = (v: number): string => (v < 0 ? 'closes' : 'opens');
  if (Number(size(a)) === 0 && Number(size(b)) === 0) return 'does not move';
  if (size(a) === size(b) && way(a) === way(b)) return `${way(b)} ${size(b)} ${lengthUnit(units)}`;
  return Math.sign(a) === Math.sign(b) || Number(size(a)) === 0
    ? `${way(b)} ${size(a)} to ${size(b)} ${lengthUnit(units)}`
    : `${way(a)} ${size(a)} to ${way(b)} ${size(b)} ${lengthUnit(units)}`;
};

/** Tension and compression in words: `120 lbf tension`. */
export const showAxial = (forceLbf: number): string =>
  Math.abs(forceLbf) < 0.5
    ? '0 lbf'
    : `${whole(Math.abs(forceLbf))} lbf ${forceLbf > 0 ? 'tension' : 'compression'}`;

/** A stress, shown in ksi. */
export const showStress = (stressPsi: number): string => `${fixed(stressPsi / 1000, 1)} ksi`;

/** A share 0…1 as a percentage. */
export const showShare = (share: number): string => `${fixed(100 * share, 0)} %`;

/** A tube as the shop writes it: `3/4 × .035`, `19.1 × 0.89 mm`; a solid rod says so. */
export const showTube = (tube: { readonly odIn: number; readonly wallIn: number }, units: Units): string => {
  const rod = tube.wallIn >= tube.odIn / 2 - 1e-9;
  if (units === 'mm') {
    const od = fixed(inToMm(tube.odIn), 1);
    return rod ? `${od} mm rod` : `${od} × ${fixed(inToMm(tube.wallIn), 2)} mm`;
  }
  const exact = Math.abs(tube.odIn * 64 - Math.round(tube.odIn * 64)) < 1e-6;
  const od = units === 'inDecimal' || !exact ? fixed(tube.odIn, 3) : fraction(tube.odIn, 64);
  return rod ? `${od} rod` : `${od} × ${fixed(tube.wallIn, 3).replace(/^0/, '')}`;
};

const plain = (value: number, unit: Unit, units: Units): string => {
  switch (unit) {
    case 'in':
      return showLength(value, units, Math.abs(value) < 2 ? 64 : 32);
    case 'psi':
      return showStress(value);
    case 'lbf':
    case 'in-lbf':
      return `${whole(value)} ${unit}`;
    case 'in2':
      return `${fixed(value, 1)} in²`;
    case 'lb':
      return `${fixed(value, value !== 0 && Math.abs(value) < 0.1 ? 4 : 2)} lb`;
    case 'lb-in':
      return `${fixed(value, 1)} lb-in`;
    case 'h':
      return `${fixed(value, 1)} h`;
    case 'deg':
      return `${fixed(value, 1)}°`;
    case 'rad':
      return `${fixed((value * 180) / Math.PI, 2)}°`;
    case '%':
      return `${fixed(value, value !== 0 && Math.abs(value) < 1 ? 2 : 0)} %`;
    case '1':
      return fixed(value, 2);
    case 'count':
      return whole(value);
    default: {
      const never: never = unit;
      return never;
    }
  }
};

/** A figure with its unit, its range when it has one, and its uncertainty when it is known. */
export const showFigure = (figure: Figure, units: Units): string => {
  const { value, unit, low, high, std } = figure;
  if (low !== undefined && high !== undefined && low !== high) return showRange({ low, high }, unit, units);
  const shown = plain(value, unit, units);
  return std === undefined || std === 0 ? shown : `${shown} ± ${showUncertainty(std, unit, units)}`;
};

/** One standard deviation, shown decimal only: a fraction would claim to know it too well. */
export const showUncertainty = (std: number, unit: Unit, units: Units): string =>
  unit !== 'in'
    ? plain(std, unit, units)
    : units === 'mm'
      ? `${fixed(inToMm(std), 1)} mm`
      : `${fixed(std, 3)} in`;

/** A range of plain numbers in one unit, which is said once: `12 to 480 in-lbf`; one number when both ends show alike. */
export const showRange = (
  range: { readonly low: number; readonly high: number },
  unit: Unit,
  units: Units,
): string => {
  const [a, b] = [plain(range.low, unit, units), plain(range.high, unit, units)];
  if (a === b) return a;
  const [said, same] = [/ [a-z-]+$|%$|°$/i.exec(a)?.[0], / [a-z-]+$|%$|°$/i.exec(b)?.[0]];
  return said !== undefined && said === same
    ? `${a.slice(0, -said.length).trimEnd()} to ${b}`
    : `${a} to ${b}`;
};

/** The day and time of an ISO 8601 stamp, as written in the record: never the reader's own clock. */
export const showTime = (at: string): string => {
  const m = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/.exec(at);
  return m ? `${m[1]} ${m[2]} ${m[3] === 'Z' ? 'UTC' : m[3]}` : at;
};
