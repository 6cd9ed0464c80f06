import { type State, states } from '../../core/walkRound/result.ts';
import { textWidth, wrap } from '../draw/helvetica.ts';
import { legend, legendHeight, swatch } from '../draw/legend.ts';
import { box, ink, type Op, type Ops, segment, shift, stroke, text } from '../draw/pen.ts';
import type { Part, Report, Section } from '../record/sections.ts';
import { headText } from '../table.ts';
import { tags } from '../tags.ts';
import { levelWords } from '../words/cautions.ts';
import { blankStrip, tagStrip, tickStrip } from './cardOps.ts';
import { framed } from './frame.ts';
import { ID_LEAD_MM, idLineOps, idLines, pairsOfLines } from './idLines.ts';
import { mapBody, stationBodies } from './maps.ts';
import { type Body, type Paper, type Room, roomOf, type Sheet } from './paper.ts';
import { photoRows } from './photoOps.ts';
import { layTable, sameThroughout } from './tableOps.ts';

const BODY_MM = 3;
const LEAD_MM = 4.1;

/** A growing run of bodies: where the next thing goes, and a new sheet when it does not fit. */
interface Flow {
  readonly room: Room;
  readonly bodies: Body[];
  /** Distance from the top of the room to the next thing. */
  at: number;
  ops: Op[];
}

const turnOver = (flow: Flow, part: Part): void => {
  if (flow.ops.length > 0)
    flow.bodies.push({ turned: part.lie === 'turned', side: part.side, scale: 'none', ops: flow.ops });
  flow.ops = [];
  flow.at = 0;
};

/** Puts a thing of known height, on the next sheet when it does not fit here. `keep`: room wanted below it too. */
const put = (flow: Flow, part: Part, height: number, draw: (x: number, y: number) => Ops, keep = 0): void => {
  if (flow.at > 0 && flow.at + height + keep > flow.room.h) turnOver(flow, part);
  flow.ops.push(...draw(flow.room.x, flow.room.y + flow.at));
  flow.at += height;
};

const gap = (flow: Flow, height: number): void => {
  if (flow.at > 0) flow.at += height;
};

const putLines = (
  flow: Flow,
  part: Part,
  words: string,
  sizeMm: number,
  more: { bold?: boolean; indent?: number; colour?: string } = {},
): void => {
  const indent = more.indent ?? 0;
  const lead = sizeMm * 1.36;
  for (const line of wrap(words, flow.room.w - indent, sizeMm, more.bold ? 'bold' : 'regular'))
    put(flow, part, lead, (x, y) => [
      text([x + indent, y + sizeMm], line, sizeMm, {
        weight: more.bold ? 'bold' : 'regular',
        ...(more.colour ? { colour: more.colour } : {}),
      }),
    ]);
};

type Draw<K extends Section['kind']> = (
  flow: Flow,
  part: Part,
  section: Extract<Section, { kind: K }>,
) => void;

const draws: { readonly [K in Exclude<Section['kind'], 'map' | 'stations'>]: Draw<K> } = {
  title: (flow, part, section) => {
    put(flow, part, 12, (x, y) => [
      text([x, y + 8], section.text, 9, { weight: 'bold' }),
      text([x + flow.room.w, y + 8], 'Tubewright', 3, { align: 'right', colour: ink.quiet }),
    ]);
    putLines(flow, part, section.under, 4.6);
    gap(flow, 2);
  },
  heading: (flow, part, section) => {
    gap(flow, 6);
    put(
      flow,
      part,
      8,
      (x, y) => [
        text([x, y + 4.6], section.text, 4.8, { weight: 'bold' }),
        segment([x, y + 6.6], [x + flow.room.w, y + 6.6], stroke(ink.line, 0.35)),
      ],
      26,
    );
    if (section.note) putLines(flow, part, section.note, 2.7, { colour: ink.quiet });
  },
  subheading: (flow, part, section) => {
    gap(flow, 4);
    put(flow, part, 5.6, (x, y) => [text([x, y + 3.6], section.text, 3.6, { weight: 'bold' })], 18);
    if (section.note) putLines(flow, part, section.note, 2.7, { colour: ink.quiet });
  },
  facts: (flow, part, section) => {
    const nameWidth = Math.max(0, ...section.rows.map(([name]) => textWidth(name, 2.7))) + 5;
    for (const [name, value] of section.rows) {
      const lines = wrap(value, flow.room.w - nameWidth, BODY_MM);
      lines.forEach((line, n) => {
        put(flow, part, LEAD_MM, (x, y) => [
          ...(n === 0 ? [text([x, y + BODY_MM], name, 2.7, { colour: ink.quiet })] : []),
          text([x + nameWidth, y + BODY_MM], line, BODY_MM),
        ]);
      });
    }
    gap(flow, 1.5);
  },
  lines: (flow, part, section) => {
    for (const line of section.lines)
      putLines(flow, part, line, BODY_MM, section.strong ? { bold: true } : {});
    gap(flow, 1);
  },
  counts: (flow, part, section) => {
    const { members, clusters } = section.coverage;
    const [row, half] = [5.2, states.length / 2];
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
    put(flow, part, 4, (x, y) => [...headings(x, y), ...headings(x + width + 8, y)]);
    for (let k = 0; k < half; k++)
      put(flow, part, row, (x, y) => [
        ...count(states[k]!, x, y),
        ...count(states[k + half]!, x + width + 8, y),
      ]);
    gap(flow, 1);
  },
  notLookedAt: (flow, part, section) => {
    gap(flow, 2);
    put(flow, part, 13, (x, y) => [
      box(x, y, flow.room.w, 11, { fill: ink.wash, stroke: stroke(ink.line, 0.5) }),
      text([x + 3, y + 7.2], 'NOT LOOKED AT', 4.4, { weight: 'bold' }),
      text([x + flow.room.w - 3, y + 7.2], section.counts.join('  ·  '), 4.4, {
        weight: 'bold',
        align: 'right',
      }),
    ]);
    if (section.groups.length === 0)
      putLines(flow, part, 'Every member and cluster has been looked at.', BODY_MM);
    for (const lines of pairsOfLines(idLines(section.groups, (flow.room.w - 6) / 2)))
      put(flow, part, ID_LEAD_MM, (x, y) => [
        ...idLineOps(lines[0], x, y),
        ...(lines[1] ? idLineOps(lines[1], x + (flow.room.w + 6) / 2, y) : []),
      ]);
    gap(flow, 1);
  },
  table: (flow, part, section) => {
    const { only, most = Number.POSITIVE_INFINITY } = section;
    const table = { ...section.table, rows: section.table.rows.slice(0, most) };
    const left = section.table.rows.length - table.rows.length;
    if (table.note) putLines(flow, part, table.note, 2.6, { colour: ink.quiet });
    if (table.rows.length === 0) {
      putLines(flow, part, table.empty, BODY_MM);
      return;
    }
    const same = sameThroughout(table, only);
    for (const head of same) {
      const text = table.rows[0]!.cells[table.columns.indexOf(head)]!.text;
      putLines(flow, part, `${headText(head)}, in every row: ${text}`, 2.6, { colour: ink.quiet });
    }
    gap(flow, 1.2);
    const shown = table.columns.filter((head) => !same.includes(head) && (only?.includes(head.id) ?? true));
    const laid = layTable(
      table,
      flow.room.w,
      shown.map((head) => head.id),
    );
    put(flow, part, laid.head.height, laid.head.ops, laid.rows[0]?.height ?? 0);
    for (const row of laid.rows) {
      if (flow.at + row.height > flow.room.h) {
        turnOver(flow, part);
        put(flow, part, 4.4, (x, y) => [
          text([x, y + 2.6], `${table.title}, continued`, 2.6, { colour: ink.quiet }),
        ]);
        put(flow, part, laid.head.height, laid.head.ops);
      }
      put(flow, part, row.height, row.ops);
    }
    if (left > 0)
      putLines(flow, part, `${left} more stand in ${table.name}.csv.`, 2.6, { colour: ink.quiet });
    gap(flow, 1.5);
  },
  drawing: (flow, part, { title, drawing }) => {
    gap(flow, 3);
    put(flow, part, drawing.heightMm + 6, (x, y) => [
      text([x, y + 3.6], title, 3.6, { weight: 'bold' }),
      ...shift(drawing.ops, x, y + 6),
    ]);
    gap(flow, 2);
  },
  ticks: (flow, part, section) => {
    for (const row of section.rows) {
      const strip = tickStrip(row, flow.room.w);
      put(flow, part, strip.height, strip.ops);
    }
    gap(flow, 1.5);
  },
  blanks: (flow, part, section) => {
    for (const name of section.names) {
      const strip = blankStrip(name, flow.room.w);
      put(flow, part, strip.height, strip.ops);
    }
    gap(flow, 1.5);
  },
  tags: (flow, part, { tags: labels }) => {
    for (let k = 0; k < labels.length; k += 2) {
      const strip = tagStrip([labels[k]!, labels[k + 1]], flow.room.w);
      put(flow, part, strip.height, strip.ops);
    }
  },
  photos: (flow, part, section) => {
    for (const { height, ops } of photoRows(section.shots, flow.room.w)) put(flow, part, height, ops);
  },
  cautions: (flow, part, section) => {
    gap(flow, 1);
    const indent = 19;
    for (const caution of section.cautions) {
      const lines = wrap(caution.text, flow.room.w - indent, 2.8);
      put(flow, part, lines.length * 3.8 + 0.6, (x, y) => [
        text([x, y + 2.8], levelWords[caution.level], 2.6, { weight: 'bold' }),
        ...lines.map((line, n) => text([x + indent, y + 2.8 + n * 3.8], line, 2.8)),
      ]);
    }
    gap(flow, 1.5);
  },
};

const partBodies = (part: Part, paper: Paper): readonly Body[] => {
  const turned = part.lie === 'turned';
  const flow: Flow = { room: roomOf(paper, turned), bodies: [], at: 0, ops: [] };
  for (const section of part.sections) {
    if (section.kind === 'map' || section.kind === 'stations') {
      turnOver(flow, part);
      const legendAt = legendHeight(4) + 3;
      const drawn =
        section.kind === 'map'
          ? [mapBody(section, flow.room, legendAt)]
          : stationBodies(section, flow.room, legendAt);
      for (const { ops, scale } of drawn)
        flow.bodies.push({
          turned,
          side: part.side,
          scale,
          ops: [
            ...shift(ops, flow.room.x, flow.room.y),
            ...legend(
              flow.room.x + 2,
              flow.room.y + flow.room.h - legendAt + 2,
              flow.room.w - 4,
              4,
              section.coverage,
            ),
          ],
        });
      continue;
    }
    (draws[section.kind] as Draw<typeof section.kind>)(flow, part, section as never);
  }
  turnOver(flow, part);
  return flow.bodies;
};

/** A report laid out: every sheet as a drawing, framed, with its number among all. */
export const sheets = (report: Report): readonly Sheet[] => {
  const bodies = report.parts.flatMap((part) => partBodies(part, report.head.paper));
  return bodies.map((body, k) => framed(report.head, body, k + 1, bodies.length));
};
