import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { textWidth, wrap } from '../../../src/present/draw/helvetica.ts';
import { expectNear } from '../../kit/near.ts';

describe('text measured without a font file', () => {
  // Outside source: the AFM tables inside pdf-lib, read one character at a time (a pair would add kerning, which we do not set)
  it('gives the advance width of every printable character, regular and bold', async () => {
    const pdf = await PDFDocument.create();
    for (const [weight, name] of [
      ['regular', StandardFonts.Helvetica],
      ['bold', StandardFonts.HelveticaBold],
    ] as const) {
      const font = await pdf.embedFont(name);
      for (const c of [
        ...Array.from({ length: 95 }, (_, k) => String.fromCharCode(32 + k)),
        ...'–—…·×°±Ø½¼¾²‘’“”•µéÄñ',
      ])
        expectNear(textWidth(c, 1000, weight), font.widthOfTextAtSize(c, 1000), {
          abs: 1e-9,
          because: 'both are the same whole number of thousandths',
        });
    }
  });

  it('cuts a text into lines that fit and loses nothing but the spaces at the ends', () => {
    const words = 'Stored strain can move tubes suddenly when cut; keep hands and face clear, brace first.';
    for (const width of [12, 20, 35, 200]) {
      const lines = wrap(words, width, 3);
      for (const line of lines) expect(textWidth(line, 3)).toBeLessThanOrEqual(width);
      expect(lines.join(' ').replace(/\s+/g, '')).toBe(words.replace(/\s+/g, ''));
    }
  });

  it('never cuts an id or a fraction while the line can hold it', () => {
    const lines = wrap('U10L-U11C and U9R-U10R at 13/16 end-to-end', 18, 3);
    for (const whole of ['U10L-U11C', 'U9R-U10R', '13/16'])
      expect(lines.some((line) => line.includes(whole))).toBe(true);
  });
});
