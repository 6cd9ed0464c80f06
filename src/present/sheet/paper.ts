import type { Ops } from '../draw/pen.ts';

/** Exact paper sizes, mm, upright. ISO 216 A4; letter 8 1/2 × 11 in (ANSI A). */
export const papers = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

export type Paper = keyof typeof papers;

/** One sheet as it is read: a turned one lies on its long side. */
export interface Sheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turned: boolean;
  readonly ops: Ops;
}

/** What a sheet is before it knows how many there are: its body, and what its title block says of it. */
export interface Body {
  readonly turned: boolean;
  readonly side: string;
  readonly scale: string;
  readonly ops: Ops;
}

/** What can be drawn only when all sheets are laid: the sheet on which a mark stands. */
export type Late = (sheetOf: (mark: string) => number | null) => Ops;

/** A body in a run of sheets: with the marks that stand on it, and what is drawn last. */
export interface Laid extends Body {
  readonly late: readonly Late[];
  readonly marks: readonly string[];
}

export const EDGE_MM = 10;
export const FOOT_MM = 16;
export const BLOCK_MM = 11.5;
const PAD_MM = 4;

/** The space a body may fill, mm from the sheet's top left. */
export interface Room {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export const sizeOf = (paper: Paper, turned: boolean): { readonly w: number; readonly h: number } => {
  const { widthMm, heightMm } = papers[paper];
  return turned ? { w: heightMm, h: widthMm } : { w: widthMm, h: heightMm };
};

export const roomOf = (paper: Paper, turned: boolean): Room => {
  const { w, h } = sizeOf(paper, turned);
  return {
    x: EDGE_MM + PAD_MM,
    y: EDGE_MM + PAD_MM,
    w: w - 2 * (EDGE_MM + PAD_MM),
    h: h - EDGE_MM - FOOT_MM - BLOCK_MM - 2 * PAD_MM,
  };
};
