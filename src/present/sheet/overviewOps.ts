import { type State, states } from '../../core/walkRound/result.ts';
import { textWidth } from '../draw/helvetica.ts';
import { swatch } from '../draw/legend.ts';
import { box, ink, type Ops, segment, stroke, text } from '../draw/pen.ts';
import { tags } from '../tags.ts';
import type { Draw } from './draw.ts';
import { BODY_MM, gap, put, putLines } from './flow.ts';
import { ID_LEAD_MM, idLineOps, idLines, pairsOfLines } from './idLines.ts';

/** States with their swatches, counted, in two columns. */
export const drawCounts: Draw<'counts'> = (flow, section) => {
  const { members, clusters } = section.coverage;
  const [row, half] = [4.8, states.length / 2];
  const width = (flow.room.w - 8) / 2;
  const headings = (x: number, y: number): Ops => [
    text([x + width - 20, y + 3], 'Members', 2.5, { align: 'right', colour: ink.quiet }),
    text([x + width, y + 3], 'Clusters', 2.5, { align: 'right', colour: ink.quiet }),
  ];
  const count = (state: State, x: number, y: number): Ops => [
    ...swatch(state, x, y + row / 2),
    text([x + 21, y + 3.6], tags[state].chalk, 2.8, { weight: 'bold' }),
    text([x + 28, y + 3.6], tags[state].word, BODY_MM),
    text([x + width - 20, y + 3.6], String(members[state]), BODY_MM, { weight: 'bold', align: 'right' }),
    text([x + width, y + 3.6], String(clusters[state]), BODY_MM, { weight: 'bold', align: 'right' }),
    segment([x, y + row], [x + width, y + row], stroke(ink.faint, 0.15)),
  ];
  put(flow, 4, (x, y) => [...headings(x, y), ...headings(x + width + 8, y)]);
  for (let k = 0; k < half; k++)
    put(flow, row, (x, y) => [...count(states[k]!, x, y), ...count(states[k + half]!, x + width + 8, y)]);
  gap(flow, 1);
};

/** The box that says how much nobody has looked at, and every id of it. */
export const drawNotLookedAt: Draw<'notLookedAt'> = (flow, section) => {
  gap(flow, 2);
  put(flow, 13, (x, y) => [
    box(x, y, flow.room.w, 11, { fill: ink.wash, stroke: stroke(ink.line, 0.5) }),
    text([x + 3, y + 7.2], 'NOT LOOKED AT', 4.4, { weight: 'bold' }),
    text([x + flow.room.w - 3, y + 7.2], section.counts.join('  ·  '), 4.4, {
      weight: 'bold',
      align: 'right',
    }),
  ]);
  if (section.groups.length === 0) putLines(flow, 'Every member and cluster has been looked at.', BODY_MM);
  for (const lines of pairsOfLines(idLines(section.groups, (flow.room.w - 6) / 2)))
    put(flow, ID_LEAD_MM, (x, y) => [
      ...idLineOps(lines[0], x, y),
      ...(lines[1] ? idLineOps(lines[1], x + (flow.room.w + 6) / 2, y) : []),
    ]);
  gap(flow, 1);
};

const COLUMNS = 3;
const BETWEEN_MM = 6;

/** What stands where: titles with their sheet numbers, read down the left column first; the numbers are known when all sheets are laid. */
export const drawContents: Draw<'contents'> = (flow, { rows }) => {
  const width = (flow.room.w - (COLUMNS - 1) * BETWEEN_MM) / COLUMNS;
  const deep = Math.ceil(rows.length / COLUMNS);
  for (let k = 0; k < deep; k++) {
    const across = Array.from({ length: COLUMNS }, (_, n) => rows[k + n * deep]).filter(
      (r) => r !== undefined,
    );
    const left = (n: number): number => n * (width + BETWEEN_MM);
    put(
      flow,
      4.2,
      (x, y) =>
        across.flatMap(
          ({ title }, n): Ops => [
            text([x + left(n), y + 3], title, 2.6),
            segment(
              [x + left(n) + textWidth(title, 2.6) + 1.5, y + 3],
              [x + left(n) + width - 6, y + 3],
              stroke(ink.rule, 0.15, [0.3, 1]),
            ),
          ],
        ),
      0,
      (x, y) => (sheetOf) =>
        across.map(({ mark }, n) =>
          text([x + left(n) + width, y + 3], String(sheetOf(mark) ?? '–'), 2.6, { align: 'right' }),
        ),
    );
  }
  gap(flow, 1);
};
