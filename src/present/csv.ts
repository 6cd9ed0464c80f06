import Papa from 'papaparse';
import { headText, type Table } from './table.ts';
import { pageFoot, sideConvention } from './words/cautions.ts';

/** Facts that every export carries in its first rows. */
export interface CsvHead {
  readonly job: string;
  /** Time of the latest record, as it stands there. */
  readonly date: string;
  readonly version: string;
  /** Mark of a practice file, which is never to be taken for a job. */
  readonly practice: boolean;
}

/** How a cell begins that a spreadsheet could take for a formula; the wide signs of East Asian keyboards are taken so too. */
export const formulaBegins = /^\s*[=+\-@\t\r＝＋－＠]/;

/**
 * A table as CSV (RFC 4180, UTF-8 with its mark, CRLF): what it is, sides and units first, then titles with units, then raw values.
 * Text that a spreadsheet could take for a formula (leading = + - @, tab or return) gets an apostrophe in front; numbers stay numbers.
 */
export const csvText = (table: Table, head: CsvHead): string => {
  const lines: (string | number)[][] = [
    ['Tubewright', table.title, head.job],
    ['Date', head.date, `version ${head.version}`],
    ...(head.practice ? [['Training file. Invented aircraft. Not for work.']] : []),
    ['Sides and axes', sideConvention],
    ['Note', pageFoot],
    ...(table.note === undefined ? [] : [['Table', table.note]]),
    table.columns.flatMap((head) => head.csv ?? [head]).map(headText),
    ...table.rows.map((row) => row.cells.flatMap((cell) => cell.csv ?? [cell.raw]).map((raw) => raw ?? '')),
  ];
  // papaparse guards every field it is told to; numbers are handed over as numbers so that -0.5 stays one
  return `\uFEFF${Papa.unparse(lines, { newline: '\r\n', escapeFormulae: formulaBegins })}\r\n`;
};
