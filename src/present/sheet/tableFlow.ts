import { ink, text } from '../draw/pen.ts';
import { headText } from '../table.ts';
import type { Draw } from './draw.ts';
import { BODY_MM, gap, put, putLines, turnOver } from './flow.ts';
import { layTable, sameThroughout } from './tableOps.ts';

/** A table row by row; its head stands again on every sheet it runs on to. */
export const drawTable: Draw<'table'> = (flow, section) => {
  const { only, most = Number.POSITIVE_INFINITY } = section;
  const table = { ...section.table, rows: section.table.rows.slice(0, most) };
  const left = section.table.rows.length - table.rows.length;
  if (table.note) putLines(flow, table.note, 2.6, { colour: ink.quiet });
  if (table.rows.length === 0) {
    putLines(flow, table.empty, BODY_MM);
    return;
  }
  const same = sameThroughout(table, only);
  for (const head of same) {
    const text = table.rows[0]!.cells[table.columns.indexOf(head)]!.text;
    putLines(flow, `${headText(head)}, in every row: ${text}`, 2.6, { colour: ink.quiet });
  }
  gap(flow, 1.2);
  const shown = table.columns.filter((head) => !same.includes(head) && (only?.includes(head.id) ?? true));
  const laid = layTable(
    table,
    flow.room.w,
    shown.map((head) => head.id),
  );
  put(flow, laid.head.height, laid.head.ops, laid.rows[0]?.height ?? 0);
  for (const row of laid.rows) {
    if (flow.at + row.height > flow.room.h) {
      turnOver(flow);
      put(flow, 4.4, (x, y) => [text([x, y + 2.6], `${table.title}, continued`, 2.6, { colour: ink.quiet })]);
      put(flow, laid.head.height, laid.head.ops);
    }
    put(flow, row.height, row.ops);
  }
  if (left > 0) putLines(flow, `${left} more stand in ${table.name}.csv.`, 2.6, { colour: ink.quiet });
  gap(flow, 1.5);
};
