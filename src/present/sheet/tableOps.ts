import { textWidth, wrap } from '../draw/helvetica.ts';
import { ink, type Ops, segment, stroke, text } from '../draw/pen.ts';
import { type ColumnHead, headText, type Table } from '../table.ts';

export const TABLE_MM = 2.5;
const LEAD_MM = 3.15;
const PAD_MM = 1.1;
/** No column asks for more than this share of the width before it wraps. */
const MOST = 0.7;
/** A row of more lines than this is cut, so that it can run on to the next sheet. */
const MOST_LINES = 24;

/** A table measured for a width: its columns, and its rows as lines that know their height. */
export interface LaidTable {
  readonly head: { readonly ops: (x: number, y: number) => Ops; readonly height: number };
  readonly rows: readonly { readonly ops: (x: number, y: number) => Ops; readonly height: number }[];
}

interface Laid {
  readonly head: ColumnHead;
  readonly at: number;
  readonly width: number;
}

const longestPiece = (words: string, weight: 'regular' | 'bold'): number =>
  Math.max(0, ...words.split(/\s+/).map((piece) => textWidth(piece, TABLE_MM, weight)));

/** Column widths as browsers lay a table out: each at least its longest word, the rest shared by what the cells would like. */
const columnWidths = (
  heads: readonly ColumnHead[],
  cells: readonly (readonly string[])[],
  width: number,
): readonly number[] => {
  const inner = width - 2 * PAD_MM * heads.length;
  const most = inner * MOST;
  const least = heads.map((head, c) =>
    Math.min(
      most,
      Math.max(
        longestPiece(headText(head), 'bold'),
        ...cells.map((row) =>
          head.align === 'right' ? textWidth(row[c]!, TABLE_MM) : longestPiece(row[c]!, 'regular'),
        ),
      ),
    ),
  );
  const liked = heads.map((head, c) =>
    Math.max(
      least[c]!,
      Math.min(textWidth(headText(head), TABLE_MM, 'bold'), least[c]! + 14),
      Math.min(most, Math.max(0, ...cells.map((row) => textWidth(row[c]!, TABLE_MM)))),
    ),
  );
  const [leastSum, likedSum] = [least, liked].map((all) => all.reduce((sum, w) => sum + w, 0)) as [
    number,
    number,
  ];
  if (likedSum <= inner) {
    const spare = Math.min((inner - likedSum) / heads.length, 9);
    return liked.map((w) => w + spare + 2 * PAD_MM);
  }
  if (leastSum >= inner) return least.map((w) => (w * inner) / leastSum + 2 * PAD_MM);
  const k = (inner - leastSum) / (likedSum - leastSum);
  return least.map((w, c) => w + (liked[c]! - w) * k + 2 * PAD_MM);
};

const cellOps = (
  lines: readonly string[],
  { head, at, width }: Laid,
  x: number,
  y: number,
  bold: boolean,
): Ops =>
  lines.map((line, n) =>
    text(
      [head.align === 'right' ? x + at + width - PAD_MM : x + at + PAD_MM, y + 2.45 + n * LEAD_MM],
      line,
      TABLE_MM,
      {
        align: head.align,
        weight: bold ? 'bold' : 'regular',
      },
    ),
  );

/** Columns that say the same in every row, when it is a sentence: said once over the table in place of a column. */
export const sameThroughout = (table: Table, only?: readonly string[]): readonly ColumnHead[] =>
  table.rows.length < 3
    ? []
    : table.columns.filter((head, c) => {
        const text = table.rows[0]!.cells[c]!.text;
        return (
          (only?.includes(head.id) ?? true) &&
          text.length > 16 &&
          table.rows.every((row) => row.cells[c]!.text === text)
        );
      });

/** A table laid out for a width; columns that say nothing in any row are left out on paper. */
export const layTable = (table: Table, width: number, only?: readonly string[]): LaidTable => {
  const shown = table.columns
    .map((head, c) => ({ head, c }))
    .filter(
      ({ head, c }) =>
        (only ? only.includes(head.id) : true) && table.rows.some((row) => row.cells[c]!.text !== ''),
    );
  const cells = table.rows.map((row) => shown.map(({ c }) => row.cells[c]!.text));
  const widths = columnWidths(
    shown.map(({ head }) => head),
    cells,
    width,
  );
  const columns: Laid[] = [];
  let at = 0;
  for (const [k, { head }] of shown.entries()) {
    columns.push({ head, at, width: widths[k]! });
    at += widths[k]!;
  }
  const right = at;
  const fold = (words: string, k: number, bold: boolean): readonly string[] =>
    words === ''
      ? []
      : wrap(words, columns[k]!.width - 2 * PAD_MM + 0.01, TABLE_MM, bold ? 'bold' : 'regular');
  const heads = columns.map(({ head }, k) => fold(headText(head), k, true));
  const headLines = Math.max(1, ...heads.map((lines) => lines.length));
  const headHeight = headLines * LEAD_MM + 1.4;
  return {
    head: {
      height: headHeight,
      ops: (x, y) => [
        ...columns.flatMap((column, k) =>
          cellOps(heads[k]!, column, x, y + (headLines - heads[k]!.length) * LEAD_MM, true),
        ),
        segment([x, y + headHeight - 0.4], [x + right, y + headHeight - 0.4], stroke(ink.line, 0.3)),
      ],
    },
    rows: cells.flatMap((row) => {
      const folded = row.map((words, k) => fold(words, k, false));
      const lines = Math.max(1, ...folded.map((all) => all.length));
      const parts = Math.ceil(lines / MOST_LINES);
      return Array.from({ length: parts }, (_, part) => {
        const slice = folded.map((all) => all.slice(part * MOST_LINES, (part + 1) * MOST_LINES));
        const height = Math.max(1, ...slice.map((all) => all.length)) * LEAD_MM + 1.1;
        const last = part === parts - 1;
        return {
          height,
          ops: (x: number, y: number) => [
            ...columns.flatMap((column, k) => cellOps(slice[k]!, column, x, y, false)),
            ...(last
              ? [segment([x, y + height - 0.3], [x + right, y + height - 0.3], stroke(ink.faint, 0.15))]
              : []),
          ],
        };
      });
    }),
  };
};
