import type { ImportKind } from '../../core/truss/importColumns.ts';

/** Captions of tables in and out of a model. */
export const tablesText = {
  kinds: { stations: 'Stations', clusters: 'Clusters', members: 'Tubes' },
  preview: 'Preview',
  columnsMissing: (missing: readonly string[], needed: readonly string[]) =>
    `The table has no column ${missing.join(', ')}. It needs: ${needed.join(', ')}.`,
  counted: (rows: string, bad: number, same: number) =>
    `${rows} to take, ${bad} with something wrong, ${same} as it is already.`,
  row: 'Row',
  wrong: 'What is wrong',
  same: 'as it is already',
  taken: (kind: string) => `${kind.toLowerCase()} from a table`,
  take: (rows: string) => `Take ${rows}`,
  goodRow: 'good row',
  throwAway: 'Throw the table away',
  in: 'Table in',
  holds: 'The table holds',
  fromFile: 'From a CSV file',
  notRead: (file: string, why: string) => `"${file}" was not read: ${why} The bench is untouched.`,
  tooLarge: 'it is far too large for a table.',
  unreadable: 'the browser cannot read it as text.',
  paste: 'Paste a table here',
  pasteHint: 'Paste here from a spreadsheet, with or without a row of titles.',
  out: 'Tables out',
  asCsv: (kind: string) => `${kind} as CSV`,
  axes: (unit: string) =>
    `x is station, aft; butt line is positive to the pilot’s right; water line is up. Lengths in ${unit}. Reading a table back changes nothing.`,
} as const satisfies { readonly kinds: Record<ImportKind, string>; readonly [caption: string]: unknown };
