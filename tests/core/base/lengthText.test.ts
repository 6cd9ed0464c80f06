import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestFraction, parseLength } from '../../../src/core/base/lengthText.ts';
import { inToMm } from '../../../src/core/base/units.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';

const inches = (text: string, unit: 'in' | 'mm' = 'in', negative = false): number => {
  const read = parseLength(text, unit, { negative });
  if (!read.ok) throw new Error(`${text}: ${read.issues[0]?.code}`);
  return read.value.inches;
};
const code = (text: string, unit: 'in' | 'mm' = 'in'): string | undefined => {
  const read = parseLength(text, unit);
  return read.ok ? undefined : read.issues[0]?.code;
};

describe('parseLength', { timeout: 60_000 }, () => {
  // 23 5/16 = 23.3125, 5/16 in binary exactly: no tolerance.
  it.each([
    ['23 5/16', 23.3125],
    ['23-5/16"', 23.3125],
    ['23 5/16 in', 23.3125],
    ['23 5/16″', 23.3125],
    ['1\' 11 5/16"', 23.3125],
    ['1\'-11 5/16"', 23.3125],
    ['1′ 11 5/16″', 23.3125],
    ['1’ 11 5/16”', 23.3125],
    ["1' 11 5/16''", 23.3125],
    ['1 ft 11 5/16 in', 23.3125],
    ["2'", 24],
    ["1.5'", 18],
    ['23.3125', 23.3125],
    ['  23.3125 inches ', 23.3125],
    ['5/16', 0.3125],
    ['17/16', 1.0625],
    ['½', 0.5],
    ['23⅜', 23.375],
    ['23 ⅜"', 23.375],
    ['23-⅜', 23.375],
    ['23 5⁄16', 23.3125],
    ['23\u00a05/16', 23.3125],
    ['23‑5/16', 23.3125],
    ['.035', 0.035],
    ['+1/32', 0.03125],
    ['0', 0],
    ['1200', 1200],
  ])('reads %s as %d in', (text, want) => {
    expect(inches(text)).toBe(want);
  });

  it('reads millimetres by their mark or by the unit of the field', () => {
    // 592.1/25.4 by definition of the inch (25.4 mm).
    expectNear(inches('592.1 mm'), 592.1 / 25.4, { because: 'one division' });
    expectNear(inches('592.1', 'mm'), 592.1 / 25.4, { because: 'one division' });
    expect(inches('23.3125 in', 'mm')).toBe(23.3125);
    expect(inches('23 5/16"', 'mm')).toBe(23.3125);
  });

  it('takes a sign only where a sign has a meaning', () => {
    expect(inches('-1/32', 'in', true)).toBe(-0.03125);
    expect(inches('−23 5/16', 'in', true)).toBe(-23.3125);
    expect(Object.is(inches('-0', 'in', true), 0)).toBe(true);
    expect(code('-1/32')).toBe('negative-length');
  });

  it.each([
    ['23,5', 'decimal-comma'],
    ['1,200.5', 'decimal-comma'],
    ['', 'no-length'],
    ['   ', 'no-length'],
    ['23 17/16', 'fraction-not-below-one'],
    ['23 16/16', 'fraction-not-below-one'],
    ['1/3', 'not-a-tape-fraction'],
    ['1/0', 'not-a-tape-fraction'],
    ['1\' 12"', 'inches-not-below-foot'],
    ['1.5\' 3"', 'feet-with-part'],
    ['59.21 cm', 'unknown-unit'],
    ['23 - 5/16', 'not-a-length'],
    ['1.5 5/16', 'not-a-length'],
    ['5/16 mm', 'unknown-unit'],
    ['1e3', 'not-a-length'],
    ['0x10', 'not-a-length'],
    ['NaN', 'unknown-unit'],
    ['23 5/16 7', 'not-a-length'],
    ['1201', 'too-long'],
    ['30480.1 mm', 'too-long'],
    ['9'.repeat(40), 'too-long'],
    ['9'.repeat(41), 'not-a-length'],
    ['5/16/2', 'not-a-length'],
  ])('refuses %s as %s and says what to write', (text, want) => {
    const read = parseLength(text, 'in');
    expect(read.ok).toBe(false);
    expect(read.issues[0]).toMatchObject({ code: want, mend: expect.stringMatching(/^[a-z0-9-]+$/) });
  });

  it('does not guess the unit of a fraction in a field of millimetres', () => {
    expect(code('23 5/16', 'mm')).toBe('fraction-without-inch-mark');
  });

  it('keeps what the person typed', () => {
    const read = parseLength(' 23-5/16" ', 'in');
    expect(read.ok && read.value.typed).toBe('23-5/16"');
  });

  it('never throws and never gives a number that is not one (seed 411)', () => {
    const pieces = fc.constantFrom(
      '1',
      '23',
      '5/16',
      ' ',
      '-',
      "'",
      '"',
      '½',
      '.',
      ',',
      'mm',
      'in',
      'ft',
      '/',
      '⁄',
      '\u0000',
      '0',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces, { maxLength: 8 }).map((list) => list.join('')),
        ),
        fc.constantFrom('in' as const, 'mm' as const),
        (text, unit) => {
          const read = parseLength(text, unit, { negative: true });
          if (read.ok) expect(Math.abs(read.value.inches) <= 1200).toBe(true);
          else expect(read.issues.length).toBe(1);
        },
      ),
      { seed: 411, numRuns: soak(20_000) },
    );
  });
});

describe('nearestFraction', { timeout: 60_000 }, () => {
  it('shows and reads every 1/64 from 0 to 300 in without a change', () => {
    for (let n = 0; n <= 300 * 64; n++) {
      const shown = nearestFraction(n / 64, 64);
      if (shown.restIn !== 0 || inches(shown.text) !== n / 64) expect.fail(`${n}/64 shown as ${shown.text}`);
    }
  });

  it('gives back every tenth of a millimetre from 0 to 7620 mm', () => {
    for (let tenths = 0; tenths <= 76_200; tenths++) {
      const text = (tenths / 10).toFixed(1);
      const back = inToMm(inches(`${text} mm`)).toFixed(1);
      if (back !== text) expect.fail(`${text} mm came back as ${back}`);
    }
  });

  it('reduces, carries a full inch, and says what it left out', () => {
    expect(nearestFraction(23.3125, 32)).toEqual({ text: '23 5/16', inches: 23.3125, restIn: 0 });
    expect(nearestFraction(11.9999, 16).text).toBe('12');
    expect(nearestFraction(0.01, 16)).toEqual({ text: '0', inches: 0, restIn: 0.01 });
    expect(nearestFraction(-0.03125, 32).text).toBe('-1/32');
    expect(nearestFraction(-23.3125, 64).text).toBe('-23 5/16');
    expect(nearestFraction(-0.001, 16).text).toBe('0');
    // 592.1 mm is 23.31102 in; the nearest 1/32 is 23 5/16, 0.00148 in more.
    const rest = nearestFraction(592.1 / 25.4, 32);
    expect(rest.text).toBe('23 5/16');
    expectNear(rest.restIn, -0.001476378, { abs: 1e-9, because: 'worked by hand to nine places' });
  });

  it('is never further off than half a step, and reads back as it says (seed 412)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1200, max: 1200, noNaN: true }),
        fc.constantFrom(16 as const, 32 as const, 64 as const),
        (length, step) => {
          const shown = nearestFraction(length, step);
          expect(Math.abs(shown.restIn) <= 0.5 / step).toBe(true);
          expect(inches(shown.text, 'in', true)).toBe(shown.inches === 0 ? 0 : shown.inches);
        },
      ),
      { seed: 412, numRuns: soak(20_000) },
    );
  });
});
