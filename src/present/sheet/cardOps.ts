import { textWidth, wrap } from '../draw/helvetica.ts';
import { box, ink, type Ops, segment, stroke, text } from '../draw/pen.ts';
import type { TickRow } from '../record/sections.ts';

/** A strip of a card: how high it is, and how it is drawn. */
export interface Strip {
  readonly height: number;
  readonly ops: (x: number, y: number) => Ops;
}

const SIGN_MM = 52;
const line = stroke(ink.rule, 0.25);

/** A ruled blank behind its name, `width` in all. */
const blank = (name: string, x: number, y: number, width: number): Ops => {
  const at = x + textWidth(name, 2.4) + 1;
  return [
    text([x, y], name, 2.4, { colour: ink.quiet }),
    segment([at, y + 0.4], [x + width - 2, y + 0.4], line),
  ];
};

/** A step to tick: box, words, who and when, and blanks for what is measured. */
export const tickStrip = (row: TickRow, width: number): Strip => {
  const words = wrap(row.text, width - 8 - SIGN_MM, 3, row.strong ? 'bold' : 'regular');
  const notes = row.note ? wrap(row.note, width - 8 - SIGN_MM, 2.5) : [];
  const perLine = Math.max(1, Math.floor((width - 8) / 46));
  const lines = Math.ceil(row.blanks.length / perLine);
  const top = Math.max(words.length * 4 + notes.length * 3.3, 5);
  const height = top + lines * 6 + 2;
  return {
    height,
    ops: (x, y) => [
      box(x, y + 0.6, 4, 4, { stroke: stroke(ink.line, 0.4) }),
      ...(row.done
        ? [
            segment([x + 0.8, y + 2.8], [x + 1.8, y + 3.9], stroke(ink.line, 0.6)),
            segment([x + 1.8, y + 3.9], [x + 3.4, y + 1.2], stroke(ink.line, 0.6)),
          ]
        : []),
      ...words.map((one, k) =>
        text([x + 7, y + 3.6 + k * 4], one, 3, { weight: row.strong ? 'bold' : 'regular' }),
      ),
      ...notes.map((one, k) =>
        text([x + 7, y + 3 + words.length * 4 + k * 3.3], one, 2.5, { colour: ink.quiet }),
      ),
      ...(row.done
        ? [text([x + width - SIGN_MM, y + 3.6], row.done, 2.4)]
        : [
            ...blank('by', x + width - SIGN_MM, y + 3.6, 30),
            ...blank('date', x + width - SIGN_MM + 30, y + 3.6, SIGN_MM - 30),
          ]),
      ...row.blanks.flatMap((name, k) =>
        blank(name, x + 7 + (k % perLine) * 46, y + top + 4 + Math.floor(k / perLine) * 6, 44),
      ),
      segment([x, y + height - 0.6], [x + width, y + height - 0.6], stroke(ink.faint, 0.15)),
    ],
  };
};

/** Names with a ruled line each, for what a person writes in. */
export const blankStrip = (name: string, width: number): Strip => {
  const words = wrap(name, 62, 2.8);
  const height = Math.max(8, words.length * 3.8 + 3.4);
  return {
    height,
    ops: (x, y) => [
      ...words.map((one, k) => text([x, y + 5 + k * 3.8], one, 2.8, { colour: ink.quiet })),
      segment([x + 66, y + 6], [x + width, y + 6], line),
    ],
  };
};
