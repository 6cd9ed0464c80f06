import { textWidth } from '../draw/helvetica.ts';
import { ink, type Ops, text } from '../draw/pen.ts';

/** One line of ids, with the name of its place where the place begins. */
export interface IdLine {
  readonly title: string | null;
  readonly ids: readonly { readonly id: string; readonly at: number }[];
}

const SIZE_MM = 2.5;
const GAP_MM = 2.6;
const TITLE_MM = 27;
export const ID_LEAD_MM = 3.5;

/** Ids set in lines no wider than `width`; every id stands whole, and none is left out. */
export const idLines = (
  groups: readonly { readonly title: string; readonly ids: readonly string[] }[],
  width: number,
): readonly IdLine[] =>
  groups.flatMap(({ title, ids }) => {
    const lines: { title: string | null; ids: { id: string; at: number }[] }[] = [{ title, ids: [] }];
    let at = TITLE_MM;
    for (const id of ids) {
      const w = textWidth(id, SIZE_MM);
      if (at + w > width && at > TITLE_MM) {
        lines.push({ title: null, ids: [] });
        at = TITLE_MM;
      }
      lines[lines.length - 1]!.ids.push({ id, at });
      at += w + GAP_MM;
    }
    return lines;
  });

/** Lines in two columns, read down the left one first. */
export const pairsOfLines = (
  lines: readonly IdLine[],
): readonly (readonly [IdLine, IdLine | undefined])[] => {
  const half = Math.ceil(lines.length / 2);
  return lines.slice(0, half).map((line, k) => [line, lines[half + k]] as const);
};

export const idLineOps = ({ title, ids }: IdLine, x: number, y: number): Ops => [
  ...(title === null ? [] : [text([x, y + SIZE_MM], title, SIZE_MM, { colour: ink.quiet })]),
  ...ids.map(({ id, at }) => text([x + at, y + SIZE_MM], id, SIZE_MM)),
];
