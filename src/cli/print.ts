import type { Issue } from '../core/base/issue.ts';
import { headText, type Table } from '../present/table.ts';
import { issueSentence, mendSentence } from '../present/words/issues.ts';

/** Rows under titles, every column as wide as its widest cell, for a terminal. */
const columns = (titles: readonly string[], rows: readonly (readonly string[])[]): string => {
  const widths = titles.map((title, c) =>
    Math.max(title.length, ...rows.map((row) => (row[c] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, c) => cell.padEnd(widths[c] ?? 0))
      .join('  ')
      .trimEnd();
  return [line(titles), line(widths.map((w) => '-'.repeat(w))), ...rows.map(line)].join('\n');
};

/** A table as terminal text: title, note, rows, or what it says when it is empty. */
export const printTable = (table: Table): string =>
  [
    table.title.toUpperCase(),
    ...(table.note === undefined ? [] : [table.note]),
    table.rows.length === 0
      ? table.empty
      : columns(
          table.columns.map(headText),
          table.rows.map((row) => row.cells.map((cell) => cell.text.replaceAll('\n', ' '))),
        ),
  ].join('\n');

/** An issue on one line: file, place in it, what is wrong, what to do. */
export const issueLine = (i: Issue): string =>
  [[i.file, i.at].filter((part) => part).join(': '), issueSentence(i), mendSentence(i)]
    .filter((part) => part)
    .join(' — ');
