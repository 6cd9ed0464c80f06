/** One list of columns serves screen, CSV and report. */

/** What a cell says to a reader, and what it is to a spreadsheet. */
export interface Cell {
  readonly text: string;
  /** Number or plain text in the column's unit; null where there is nothing. */
  readonly raw: string | number | null;
  /** One value for each of the column's `csv` heads, when it has them. */
  readonly csv?: readonly (string | number | null)[];
}

export interface ColumnHead {
  readonly id: string;
  readonly title: string;
  /** Unit of the raw value; shown with the title. */
  readonly unit?: string;
  readonly align: 'left' | 'right';
  /** What stands in the CSV in its place: both ends of a range, or a unit that the text carries itself. */
  readonly csv?: readonly { readonly title: string; readonly unit?: string }[];
}

export interface TableRow {
  /** Member, cluster or record this row is about; selecting the row selects it. */
  readonly id?: string;
  readonly cells: readonly Cell[];
}

/** A table ready to show: the same for screen, CSV and report. */
export interface Table {
  /** File name of its CSV, without ending. */
  readonly name: string;
  readonly title: string;
  /** What a reader must know before the rows. */
  readonly note?: string;
  /** What it says when it has no rows. */
  readonly empty: string;
  readonly columns: readonly ColumnHead[];
  readonly rows: readonly TableRow[];
}

/** A column of rows of one kind. `raw` left out: the text itself. */
export interface Column<Row> extends Omit<ColumnHead, 'align' | 'csv'> {
  readonly align?: 'left' | 'right';
  readonly text: (row: Row) => string;
  readonly raw?: (row: Row) => string | number | null;
  readonly csv?: readonly {
    readonly title: string;
    readonly unit?: string;
    readonly raw: (row: Row) => string | number | null;
  }[];
}

export interface TableSpec<Row> extends Omit<Table, 'columns' | 'rows'> {
  readonly columns: readonly Column<Row>[];
  readonly idOf?: (row: Row) => string;
}

/** Digits kept in a raw number: 1e-6 of its unit, so that sums leave no tail of noise. */
const tidy = (raw: string | number | null): string | number | null =>
  typeof raw !== 'number' ? raw : Number.isFinite(raw) ? Math.round(raw * 1e6) / 1e6 + 0 : null;

/** Rows laid out by their columns. */
export const tableOf = <Row>(spec: TableSpec<Row>, rows: readonly Row[]): Table => {
  const { columns, idOf, ...rest } = spec;
  return {
    ...rest,
    columns: columns.map(({ id, title, unit, align, csv }) => ({
      id,
      title,
      ...(unit === undefined ? {} : { unit }),
      align: align ?? 'left',
      ...(csv ? { csv: csv.map(({ raw: _, ...head }) => head) } : {}),
    })),
    rows: rows.map((row) => ({
      ...(idOf ? { id: idOf(row) } : {}),
      cells: columns.map((column) => {
        const text = column.text(row);
        return {
          text,
          raw: tidy(column.raw ? column.raw(row) : text),
          ...(column.csv ? { csv: column.csv.map(({ raw }) => tidy(raw(row))) } : {}),
        };
      }),
    })),
  };
};

/** A column title with its unit, as a heading shows it: `Length, in`. */
export const headText = (head: Pick<ColumnHead, 'title' | 'unit'>): string =>
  head.unit === undefined ? head.title : `${head.title}, ${head.unit}`;

/** The same table with some of its columns, where there is room for no more. */
export const withColumns = (table: Table, ids: readonly string[]): Table => {
  const kept = table.columns.flatMap(({ id }, k) => (ids.includes(id) ? [k] : []));
  return {
    ...table,
    columns: kept.map((k) => table.columns[k]!),
    rows: table.rows.map((row) => ({ ...row, cells: kept.map((k) => row.cells[k]!) })),
  };
};
