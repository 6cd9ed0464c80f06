import { textWidth, wrap } from '../draw/helvetica.ts';
import { ink, segment, shift, stroke, text } from '../draw/pen.ts';
import type { Section } from '../record/sections.ts';
import { levelWords } from '../words/cautions.ts';
import { blankStrip, tickStrip } from './cardOps.ts';
import type { Draw } from './draw.ts';
import { BODY_MM, gap, LEAD_MM, put, putLines, turnOver } from './flow.ts';
import { measureHead, measureStrip } from './measureOps.ts';
import { drawContents, drawCounts, drawNotLookedAt } from './overviewOps.ts';
import { photoRows } from './photoOps.ts';
import { drawTable } from './tableFlow.ts';
import { tagStrip } from './tagOps.ts';

/** How each kind of section is put down; maps take sheets of their own (`layout.ts`). */
export const draws: { readonly [K in Exclude<Section['kind'], 'map' | 'closeUps' | 'stations'>]: Draw<K> } = {
  mark: (flow, { name }) => {
    flow.waiting.push(name);
  },
  contents: drawContents,
  counts: drawCounts,
  notLookedAt: drawNotLookedAt,
  table: drawTable,
  title: (flow, section) => {
    put(flow, 12, (x, y) => [
      text([x, y + 8], section.text, 9, { weight: 'bold' }),
      text([x + flow.room.w, y + 8], 'Tubewright', 3, { align: 'right', colour: ink.quiet }),
    ]);
    putLines(flow, section.under, 4.6);
    gap(flow, 2);
  },
  heading: (flow, section) => {
    gap(flow, 6);
    put(
      flow,
      8,
      (x, y) => [
        text([x, y + 4.6], section.text, 4.8, { weight: 'bold' }),
        segment([x, y + 6.6], [x + flow.room.w, y + 6.6], stroke(ink.line, 0.35)),
      ],
      26,
    );
    if (section.note) putLines(flow, section.note, 2.7, { colour: ink.quiet });
  },
  subheading: (flow, section) => {
    gap(flow, 4);
    put(
      flow,
      5.6,
      (x, y) => [text([x, y + 3.6], section.text, 3.6, { weight: 'bold' })],
      section.keepMm ?? 18,
    );
    if (section.note) putLines(flow, section.note, 2.7, { colour: ink.quiet });
  },
  facts: (flow, section) => {
    gap(flow, 1.5);
    const nameWidth = Math.max(0, ...section.rows.map(([name]) => textWidth(name, 2.7))) + 5;
    for (const [name, value] of section.rows) {
      const lines = wrap(value, flow.room.w - nameWidth, BODY_MM);
      lines.forEach((line, n) => {
        put(flow, LEAD_MM, (x, y) => [
          ...(n === 0 ? [text([x, y + BODY_MM], name, 2.7, { colour: ink.quiet })] : []),
          text([x + nameWidth, y + BODY_MM], line, BODY_MM),
        ]);
      });
    }
    gap(flow, 1.5);
  },
  lines: (flow, section) => {
    for (const line of section.lines) putLines(flow, line, BODY_MM, section.strong ? { bold: true } : {});
    gap(flow, 1);
  },
  drawing: (flow, { title, drawing }) => {
    gap(flow, 3);
    put(flow, drawing.heightMm + 6, (x, y) => [
      text([x, y + 3.6], title, 3.6, { weight: 'bold' }),
      ...shift(drawing.ops, x, y + 6),
    ]);
    gap(flow, 2);
  },
  ticks: (flow, section) => {
    for (const row of section.rows) {
      const strip = tickStrip(row, flow.room.w);
      put(flow, strip.height, strip.ops);
    }
    gap(flow, 1.5);
  },
  measures: (flow, { unit, rows }) => {
    const head = measureHead(flow.room.w, unit);
    put(flow, head.height, head.ops, 8);
    for (const row of rows) {
      const strip = measureStrip(row, flow.room.w);
      if (flow.at + strip.height > flow.room.h) {
        turnOver(flow);
        put(flow, head.height, head.ops);
      }
      put(flow, strip.height, strip.ops);
    }
    gap(flow, 1.5);
  },
  blanks: (flow, section) => {
    for (const name of section.names) {
      const strip = blankStrip(name, flow.room.w);
      put(flow, strip.height, strip.ops);
    }
    gap(flow, 1.5);
  },
  tags: (flow, { tags: labels }) => {
    for (let k = 0; k < labels.length; k += 2) {
      const strip = tagStrip([labels[k]!, labels[k + 1]], flow.room.w);
      put(flow, strip.height, strip.ops);
    }
  },
  photos: (flow, section) => {
    for (const { height, ops } of photoRows(section.shots, flow.room.w, flow.turned)) put(flow, height, ops);
  },
  cautions: (flow, section) => {
    gap(flow, 1);
    const indent = 19;
    for (const caution of section.cautions) {
      const lines = wrap(caution.text, flow.room.w - indent, 2.8);
      put(flow, lines.length * 3.8 + 0.6, (x, y) => [
        text([x, y + 2.8], levelWords[caution.level], 2.6, { weight: 'bold' }),
        ...lines.map((line, n) => text([x + indent, y + 2.8 + n * 3.8], line, 2.8)),
      ]);
    }
    gap(flow, 1.5);
  },
};
