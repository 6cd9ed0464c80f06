import { distance } from '../base/vec3.ts';
import type { Model, Station } from '../job/modelSchema.ts';
import {
  type Cells,
  type ClusterRow,
  clusterFrom,
  type Fault,
  type MemberRow,
  memberFrom,
  reader,
  stationFrom,
} from './importCells.ts';
import { headingOf, type ImportKind, importColumns } from './importColumns.ts';
import type { Cluster, Truss } from './result.ts';

/** A row of a pasted table, what it was read as, and what is wrong with it. */
export interface ImportedRow {
  /** Counted from the top of what was pasted, the heading row included. */
  readonly row: number;
  readonly cells: readonly string[];
  readonly faults: readonly Fault[];
  /** What the model has already, just so. */
  readonly same: boolean;
}

interface Read<T> extends ImportedRow {
  readonly value?: T;
}

export type Imported = {
  readonly columns: readonly string[];
  /** Titles that the table lacks; nothing is read then. */
  readonly missing: readonly string[];
  readonly rows: readonly ImportedRow[];
} & (
  | { readonly kind: 'stations'; readonly good: readonly Station[] }
  | { readonly kind: 'clusters'; readonly good: readonly ClusterRow[] }
  | { readonly kind: 'members'; readonly good: readonly MemberRow[] }
);

/** How many of the columns a table must have, from the first on. */
const needed = { stations: 6, clusters: 4, members: 2 } as const satisfies Record<ImportKind, number>;

/** What an export rounds off: six decimals of an inch or a millimetre. */
const SAME_IN = 1e-5;
const near = (a: number | undefined, b: number | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && Math.abs(a - b) < SAME_IN);

const sameStation = (row: Station, model: Model): boolean => {
  const old = model.stations.find((s) => s.label === row.label);
  return (
    old !== undefined &&
    near(old.stationIn, row.stationIn) &&
    (['upper', 'lower'] as const).every(
      (h) => near(old[h]?.waterLineIn, row[h]?.waterLineIn) && near(old[h]?.halfWidthIn, row[h]?.halfWidthIn),
    )
  );
};

const sameCluster = (row: ClusterRow, clusters: ReadonlyMap<string, Cluster>): boolean => {
  const old = clusters.get(row.id);
  return (
    old !== undefined && distance(old.at, row.at) < SAME_IN && (old.fitting ?? '') === (row.fitting ?? '')
  );
};

const sameMember = (row: MemberRow, truss: Truss): boolean =>
  truss.members.some(
    (m) =>
      m.id === (row.id ?? `${row.from}-${row.to}`) &&
      m.from === row.from &&
      m.to === row.to &&
      (row.role === undefined || row.role === m.role) &&
      (row.tube === undefined ||
        (near(m.section.odIn, row.tube.odIn) && near(m.section.wallIn, row.tube.wallIn))),
  );

/**
 * A pasted table read against the model: every bad row with its columns and mends, every good one kept. Columns are
 * found by their titles in any order, or by place when no row has titles; a title may carry its unit (`Wall, mm`), else
 * the model's drawing unit counts. Rows that say what the model has already are marked so and change nothing.
 *
 * @param table  cells as text; empty rows are passed over
 */
export const importRows = (
  kind: ImportKind,
  table: readonly (readonly string[])[],
  model: Model,
  truss: Truss,
): Imported => {
  const heading = headingOf(kind, table);
  const columns = importColumns[kind];
  const missing = columns.filter((_, k) => k < needed[kind] && heading.at[k]! < 0);
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const taken = new Set<string>();
  const read = <T>(
    of: (cells: Cells) => T | undefined,
    keyOf: (value: T) => string,
    isSame: (value: T) => boolean,
  ) =>
    table.flatMap((cells, k): Read<T>[] => {
      if (k < heading.rows || missing.length > 0 || cells.every((c) => c.trim() === '')) return [];
      const faults: Fault[] = [];
      const value = of(reader(kind, heading, cells, model.drawnIn, faults));
      const good = value !== undefined && faults.length === 0;
      if (good) taken.add(keyOf(value));
      const shown = columns.map((_, c) => cells[heading.at[c]!] ?? '');
      return [{ row: k + 1, cells: shown, faults, same: good && isSame(value), ...(good ? { value } : {}) }];
    });
  const fresh = <T>(rows: readonly Read<T>[]): T[] =>
    rows.flatMap((r) => (r.value !== undefined && !r.same ? [r.value] : []));
  switch (kind) {
    case 'stations': {
      const rows = read(
        (c) => stationFrom(c, taken),
        (s) => s.label,
        (s) => sameStation(s, model),
      );
      return { kind, columns, missing, rows, good: fresh(rows) };
    }
    case 'clusters': {
      const rows = read(
        (c) => clusterFrom(c, taken),
        (c) => c.id,
        (c) => sameCluster(c, clusters),
      );
      return { kind, columns, missing, rows, good: fresh(rows) };
    }
    case 'members': {
      const rows = read(
        (c) => memberFrom(c, clusters, taken),
        (m) => m.id ?? `${m.from}-${m.to}`,
        (m) => sameMember(m, truss),
      );
      return { kind, columns, missing, rows, good: fresh(rows) };
    }
  }
};
