import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/core/base/lengthText.ts';
import { showLength, type Units } from '../../src/present/show.ts';
import { soak } from '../kit/soak.ts';

const allUnits: readonly Units[] = ['inFraction', 'inDecimal', 'mm'];
const unitArb = fc.constantFrom(...allUnits);

/** What is shown, without the fraction that stands beside the decimal. */
const typedAgain = (shown: string): string => shown.split(' · ')[0]!;
const parsed = (text: string, units: Units): number => {
  const read = parseLength(text, units === 'mm' ? 'mm' : 'in', { negative: true });
  if (!read.ok) throw new Error(`"${text}" was not read`);
  return read.value.inches;
};

describe('units', () => {
  const runs = soak(20_000);
  it(`show, typed again and shown again, give the same text: ${runs} lengths (seed 40)`, () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 300, noNaN: true }), unitArb, (lengthIn, units) => {
        const shown = showLength(lengthIn, units);
        expect(showLength(parsed(typedAgain(shown), units), units)).toBe(shown);
      }),
      { seed: 40, numRuns: runs },
    );
  });

  it('give back every 64th from 0 to 300 in exactly when its fraction is typed', () => {
    for (let k = 0; k <= 300 * 64; k++) {
      const lengthIn = k / 64;
      const fraction = showLength(lengthIn, 'inFraction', 64).split(' · ')[1] ?? '';
      // a 64th is a binary fraction: no rounding at all
      expect(parsed(fraction, 'inFraction')).toBe(lengthIn);
    }
  });

  it(`switched a thousand times drift nothing: only the showing changes (seed 41)`, () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.array(unitArb, { minLength: 1000, maxLength: 1000 }),
        (lengthIn, switches) => {
          const first = allUnits.map((units) => showLength(lengthIn, units));
          for (const units of switches)
            expect(showLength(lengthIn, units)).toBe(first[allUnits.indexOf(units)]);
          // and even typed over after each switch it stays within its roundings: two of half of 0.1 mm and one of half of 0.001 in
          let typed = lengthIn;
          for (const units of switches) typed = parsed(typedAgain(showLength(typed, units)), units);
          expect(Math.abs(typed - lengthIn)).toBeLessThanOrEqual(0.1 / 25.4 + 0.0005);
        },
      ),
      { seed: 41, numRuns: soak(100) },
    );
  });
});
