import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../src/present/csv.ts';
import { type Table, tableOf } from '../../src/present/table.ts';
import { soak } from '../kit/soak.ts';

const head = { job: 'Job, with "quotes"', date: '2026-03-14 09:05 UTC', version: '0.1', practice: false };

const oneColumn = (rows: readonly (string | number)[]): Table =>
  tableOf<string | number>(
    {
      name: 't',
      title: 'A table',
      note: 'A note',
      empty: 'none',
      columns: [{ id: 'a', title: 'Length', unit: 'in', text: String, raw: (row) => row }],
    },
    rows,
  );

/** Rows after the one that holds the titles, read back with the library's own reader. */
const bodyOf = (csv: string): readonly string[][] => {
  const { data, errors } = Papa.parse<string[]>(csv.replace(/^\uFEFF/, ''), { skipEmptyLines: true });
  expect(errors.filter((error) => error.type !== 'Delimiter')).toEqual([]);
  return data.slice(data.findIndex((row) => row[0] === 'Length, in') + 1);
};

describe('a table as CSV', () => {
  it('says in its first rows what it is, which side is which, and the unit of each column', () => {
    const csv = csvText(oneColumn([1]), head);
    expect(csv.startsWith('\uFEFF')).toBe(true);
    const lines = Papa.parse<string[]>(csv.slice(1)).data.map((row) => row.join(' | '));
    expect(lines[0]).toBe('Tubewright | A table | Job, with "quotes"');
    expect(csv).toContain("Left and right are the pilot's");
    expect(csv).toContain('Working aid. It does not approve repairs and does not release aircraft.');
    expect(lines).toContain('Length, in');
  });

  it('keeps numbers as numbers, minus and all', () => {
    expect(bodyOf(csvText(oneColumn([-0.5, 23.3125, 1e-9]), head))).toEqual([['-0.5'], ['23.3125'], ['0']]);
  });

  it('never lets a text begin a formula', () => {
    const words = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1+1', '＠x', 'plain'];
    for (const [said] of bodyOf(csvText(oneColumn(words), head)))
      expect(said).not.toMatch(/^\s*[=+\-@＝＋－＠]/);
  });

  it('says of a practice file that it is one', () => {
    expect(csvText(oneColumn([]), { ...head, practice: true })).toContain('Not for work.');
  });

  // RFC 4180: any text comes back as it was written; ours only gain an apostrophe before a formula sign (seed 41)
  it('gives back every text it was given (seed 41)', () => {
    const word = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }).filter((s) => s.trim() !== '');
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 8 }), (words) => {
        const body = bodyOf(csvText(oneColumn(words), head)).map(([said]) => said);
        expect(body).toEqual(words.map((said) => (/^\s*[=+\-@\t\r＝＋－＠]/.test(said) ? `'${said}` : said)));
      }),
      { seed: 41, numRuns: soak(2000) },
    );
  });
});
