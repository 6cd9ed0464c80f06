import { type Fact, type Issue, issue, ok, type Result, refused } from './issue.ts';
import { MM_PER_IN, mmToIn } from './units.ts';

/** A length as a number, and as the person typed it. */
export interface TypedLength {
  readonly inches: number;
  readonly typed: string;
}

/** No distance on a light aircraft reaches 100 ft; beyond that the unit is wrong. */
const MOST_IN = 1200;
const MOST_CHARACTERS = 40;

const oneCharacterFractions: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for the signs that keyboards, phones and copied drawings write differently. */
const plainSigns = (text: string): string =>
  text
    .replace(/[\u00a0\u2000-\u200a\u202f\t]/g, ' ')
    .replace(/[−–‐‑]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${oneCharacterFractions[sign]}`)
    .replace(/[″”“]|''|′′|’’/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/ +/g, ' ')
    .trim()
    .toLowerCase();

const decimal = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)';
const feet = `(?:(?<feet>${decimal}) ?(?:'|feet|foot|ft\\.?)(?: ?- ?| ?))`;
const mixed = '(?:(?<whole>\\d+)(?: |- ?))?(?<top>\\d+) ?/ ?(?<under>\\d+)';
const inches = `(?:(?:${mixed}|(?<plain>${decimal})) ?(?<mark>"|inches|inch|in\\.?)?)`;
const inchForm = new RegExp(`^(?:${feet})?${inches}$`);
const feetForm = new RegExp(`^(?<feet>${decimal}) ?(?:'|feet|foot|ft\\.?)$`);
const mmForm = new RegExp(`^(?<mm>${decimal}) ?mm\\.?$`);
const bareForm = new RegExp(`^${decimal}$`);

type Parts = Readonly<Record<string, string | undefined>>;
type Refusal = (code: string, mend: string, facts?: Readonly<Record<string, Fact>>) => Issue;

/** Inches of feet, whole inches and a fraction; or what is wrong with them. */
const fromParts = (parts: Parts, no: Refusal): number | Issue => {
  const { feet: ft, whole, top, under, plain } = parts;
  if (ft?.includes('.')) return no('feet-with-part', 'write-whole-feet-then-inches');
  const [over, below] = [Number(top ?? 0), Number(under ?? 1)];
  if (under !== undefined && ![2, 4, 8, 16, 32, 64, 128].includes(below))
    return no('not-a-tape-fraction', 'use-halves-to-128ths', { under: below });
  if (whole !== undefined && over >= below) return no('fraction-not-below-one', 'carry-into-the-whole');
  const length = Number(whole ?? plain ?? 0) + over / below;
  if (ft !== undefined && length >= 12) return no('inches-not-below-foot', 'carry-into-the-feet');
  return Number(ft ?? 0) * 12 + length;
};

const measure = (text: string, unit: 'in' | 'mm', no: Refusal): number | Issue => {
  if (/\d,\d|^,\d/.test(text)) return no('decimal-comma', 'use-a-point');
  const mm = mmForm.exec(text)?.groups?.mm ?? (unit === 'mm' && bareForm.test(text) ? text : undefined);
  if (mm !== undefined) return mmToIn(Number(mm));
  const onlyFeet = feetForm.exec(text)?.groups?.feet;
  if (onlyFeet !== undefined) return Number(onlyFeet) * 12;
  const parts = inchForm.exec(text)?.groups;
  if (!parts) return no(/[a-z]$/.test(text) ? 'unknown-unit' : 'not-a-length', 'write-like-the-examples');
  if (unit === 'mm' && parts.mark === undefined && parts.feet === undefined)
    return no('fraction-without-inch-mark', 'add-inch-mark');
  return fromParts(parts, no);
};

/**
 * A length as a mechanic writes it, in inches.
 *
 * `23 5/16`, `23-5/16"`, `1' 11 5/16"`, `23.3125`, `23⅜`, `.035 in`, `592.1 mm`. A bare number is in `unit`; a fraction
 * in a field of millimetres needs its inch mark. Fractions are halves to 128ths and come out exact.
 *
 * @param allow  `negative`: a sign may stand before it (a miss, a difference)
 * @returns refused with what to write instead for a decimal comma, an unknown unit, or what could mean two things
 */
export const parseLength = (
  text: string,
  unit: 'in' | 'mm',
  allow: { readonly negative?: boolean } = {},
): Result<TypedLength> => {
  const typed = text.trim();
  const no: Refusal = (code, mend, facts = {}) =>
    issue(code, '', { got: typed.slice(0, MOST_CHARACTERS), ...facts }, mend);
  if (typed === '') return refused([no('no-length', 'write-like-the-examples')]);
  if (typed.length > MOST_CHARACTERS) return refused([no('not-a-length', 'write-like-the-examples')]);
  const plain = plainSigns(typed);
  const negative = plain.startsWith('-');
  if (negative && !allow.negative) return refused([no('negative-length', 'write-without-sign')]);
  const size = measure(plain.replace(/^[+-] ?/, ''), unit, no);
  if (typeof size !== 'number') return refused([size]);
  if (size > MOST_IN)
    return refused([
      no('too-long', 'check-value-and-unit', { mostIn: MOST_IN, mostMm: MOST_IN * MM_PER_IN }),
    ]);
  return ok({ inches: negative && size > 0 ? -size : size, typed });
};

/** A length to the nearest mark of a tape, and what that leaves out. */
export interface TapeFraction {
  /** `23 5/16`, `-1/32`, `0`. */
  readonly text: string;
  /** What the text says. */
  readonly inches: number;
  /** The length less what the text says, inches; 0 when the text says all. */
  readonly restIn: number;
}

/** The nearest 1/16, 1/32 or 1/64 inch, reduced. Halfway goes away from zero. */
export const nearestFraction = (lengthIn: number, step: 16 | 32 | 64): TapeFraction => {
  const steps = Math.floor(Math.abs(lengthIn) * step + 0.5);
  const whole = Math.floor(steps / step);
  let [top, under] = [steps % step, step as number];
  while (top > 0 && top % 2 === 0) [top, under] = [top / 2, under / 2];
  const sign = lengthIn < 0 && steps > 0 ? '-' : '';
  const fraction = top > 0 ? `${top}/${under}` : '';
  const said = whole > 0 || top === 0 ? `${whole}${fraction && ` ${fraction}`}` : fraction;
  const inches = sign ? -steps / step : steps / step;
  return { text: `${sign}${said}`, inches, restIn: lengthIn - inches };
};
