import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { winAnsi } from '../../src/present/winAnsi.ts';
import { soak } from '../kit/soak.ts';

describe('text in the standard fonts', () => {
  it('writes what they lack another way, and lists what it gave up', () => {
    expect(winAnsi('⌀ 3/4 ≤ 1 − 2 → 3')).toEqual({ text: 'Ø 3/4 <= 1 - 2 to 3', lost: [] });
    expect(winAnsi('Łódź, Čapek')).toEqual({ text: '?ódz, Capek', lost: ['Ł'] });
    expect(winAnsi('seen 🔧 by')).toEqual({ text: 'seen ? by', lost: ['🔧'] });
    expect(winAnsi('a\tb\u00A0c\nd').text).toBe('a b c d');
  });

  // Outside source: pdf-lib's own WinAnsi encoder; what it cannot encode it turns into "?" (3f), so any other 3f is a gap (seed 43)
  it('is encodable whatever a person typed (seed 43)', async () => {
    const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
    const asked = (hex: string): number =>
      (hex.match(/../g) ?? []).filter((byte) => byte.toLowerCase() === '3f').length;
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (typed) => {
        const { text } = winAnsi(typed);
        const hex = font.encodeText(text).asString();
        expect(asked(hex)).toBe([...text].filter((c) => c === '?').length);
      }),
      { seed: 43, numRuns: soak(4000) },
    );
  });
});
