import { describe, expect, it } from 'vitest';
import { pressed } from '../../../src/app/parts/keypadText.ts';
import { nearestFraction, parseLength } from '../../../src/core/base/lengthText.ts';

const type = (...keys: readonly string[]): string => keys.reduce(pressed, '');

describe('the keypad', () => {
  // needs.md N30: 23 5/16 in takes 6 taps or fewer; the sixth records it.
  it('writes 23 5/16 in five presses', () => {
    expect(type('2', '3', 'and', '5', '/16')).toBe('23 5/16');
  });

  it('takes a bare half as one over two, another fraction in place of the first, and back one at a time', () => {
    expect(type('7', 'and', '/2')).toBe('7 1/2');
    expect(type('7', 'and', '3', '/16', '/32')).toBe('7 3/32');
    expect(type('7', 'and', '3', '/8', 'back', 'back')).toBe('7 3');
    expect(type('3', '/8')).toBe('3/8');
    expect(type('1', "'", '1', '1', 'and', '5', '/16', '"')).toBe(`1' 11 5/16"`);
    expect(type('sign', '3', '/32')).toBe('-3/32');
    expect(type('3', 'sign')).toBe('-3');
    expect(type('.', '5', '.')).toBe('0.5');
  });

  // needs.md N30: round trip from 0 to 300 in by 1/64, zero errors.
  it('writes every length from 0 to 300 in by 1/64 so that it reads back as it is', () => {
    for (let k = 0; k <= 300 * 64; k++) {
      const { text } = nearestFraction(k / 64, 64);
      const keys = [...text.replace(/\/\d+$/, '')].map((c) => (c === ' ' ? 'and' : c));
      const under = /\/\d+$/.exec(text)?.[0];
      const typed = type(...keys, ...(under ? [under] : []));
      const read = parseLength(typed, 'in');
      if (!read.ok || read.value.inches !== k / 64 || keys.length + (under ? 1 : 0) > 7)
        expect.fail(`${text} came out as ${typed}`);
    }
  });

  it('whatever is pressed, never grows without end and back empties it (seed 7)', () => {
    const keys = ['0', '5', '9', '.', 'and', 'sign', "'", '"', '/2', '/64'];
    let n = 7;
    for (let run = 0; run < 200; run++) {
      let text = '';
      for (let k = 0; k < 60; k++) {
        n = (n * 48271) % 2147483647;
        text = pressed(text, keys[n % keys.length]!);
      }
      expect(text.length).toBeLessThan(40);
      for (let k = 0; k < 60; k++) text = pressed(text, 'back');
      expect(text).toBe('');
    }
  });
});
