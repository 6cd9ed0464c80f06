export const importKinds = ['stations', 'clusters', 'members'] as const;
export type ImportKind = (typeof importKinds)[number];

/** Titles of the columns, in the order in which a table without a heading row is read. */
export const importColumns = {
  stations: [
    'Label',
    'Station',
    'Upper water line',
    'Upper half-width',
    'Lower water line',
    'Lower half-width',
  ],
  clusters: ['Cluster', 'Station', 'Butt line', 'Water line', 'Fitting'],
  members: ['From', 'To', 'Outside diameter', 'Wall', 'Role', 'Member'],
} as const satisfies Record<ImportKind, readonly string[]>;

const plain = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[,(].*$/, '')
    .replace(/[^a-z]/g, '');

/** Other names a spreadsheet may have for a column. */
const alsoCalled: Readonly<Record<string, string>> = {
  wl: 'waterline',
  bl: 'buttline',
  fs: 'station',
  stationin: 'station',
  id: 'cluster',
  uwl: 'upperwaterline',
  lwl: 'lowerwaterline',
  uhw: 'upperhalfwidth',
  lhw: 'lowerhalfwidth',
  upperwl: 'upperwaterline',
  upperhw: 'upperhalfwidth',
  lowerhw: 'lowerhalfwidth',
  lowerwl: 'lowerwaterline',
  od: 'outsidediameter',
  tubeod: 'outsidediameter',
};

export interface Heading {
  /** Place of each of our columns in the table; −1 when it is not there. */
  readonly at: readonly number[];
  readonly units: readonly ('in' | 'mm' | undefined)[];
  readonly rows: number;
}

const unitOf = (title: string): 'in' | 'mm' | undefined => {
  const said = /[,(]\s*(in|inch|inches|mm)\.?\s*\)?\s*$/i.exec(title)?.[1]?.toLowerCase();
  return said === undefined ? undefined : said === 'mm' ? 'mm' : 'in';
};

/** The heading row, if the table has one: the first row in which two of our titles stand. */
export const headingOf = (kind: ImportKind, rows: readonly (readonly string[])[]): Heading => {
  const wanted = importColumns[kind].map(plain);
  for (const [k, row] of rows.entries()) {
    const names = row.map((cell) => alsoCalled[plain(cell)] ?? plain(cell));
    const at = wanted.map((title) => names.indexOf(title));
    if (at.filter((place) => place >= 0).length >= 2)
      return { at, units: at.map((place) => (place < 0 ? undefined : unitOf(row[place]!))), rows: k + 1 };
  }
  return { at: wanted.map((_, k) => k), units: wanted.map(() => undefined), rows: 0 };
};
