import type { Origin, Station } from '../../core/job/modelSchema.ts';
import { stationText as text } from '../text/modelStations.ts';
import { asDrawn, readDrawn } from './drawn.ts';

/** A row of the station table as it is typed. */

export const originWords = text.origins satisfies Record<Origin, string>;

export const columns = ['station', 'upperWl', 'upperHw', 'lowerWl', 'lowerHw'] as const;
export type ColumnName = (typeof columns)[number];
export type Texts = Readonly<Record<ColumnName, string>>;

export const columnWords = text.columns satisfies Record<ColumnName, string>;

export const textsOf = (row: Station, drawnIn: 'in' | 'mm'): Texts => ({
  station: asDrawn(row.stationIn, drawnIn),
  upperWl: asDrawn(row.upper?.waterLineIn, drawnIn),
  upperHw: asDrawn(row.upper?.halfWidthIn, drawnIn),
  lowerWl: asDrawn(row.lower?.waterLineIn, drawnIn),
  lowerHw: asDrawn(row.lower?.halfWidthIn, drawnIn),
});

export const none: Texts = { station: '', upperWl: '', upperHw: '', lowerWl: '', lowerHw: '' };

interface ReadRow {
  /** As far as it can be read; a pair with one of its two is left as it was. */
  readonly row: Station | null;
  readonly wrong: readonly { readonly column: ColumnName; readonly words: string }[];
}

/** The row that the texts say; `old` keeps what is only half typed. */
export const readRow = (label: string, texts: Texts, drawnIn: 'in' | 'mm', old?: Station): ReadRow => {
  const read = Object.fromEntries(
    columns.map((c) => [c, readDrawn(texts[c], drawnIn, !c.endsWith('Hw'))]),
  ) as Record<ColumnName, ReturnType<typeof readDrawn>>;
  const wrong: { column: ColumnName; words: string }[] = columns.flatMap((column) => {
    const one = read[column];
    return one.kind === 'wrong' ? [{ column, words: one.words }] : [];
  });
  const value = (c: ColumnName): number | undefined => {
    const one = read[c];
    return one.kind === 'length' ? one.valueIn : undefined;
  };
  const pair = (which: 'upper' | 'lower'): Station['upper'] => {
    const [wl, hw] = [`${which}Wl`, `${which}Hw`] as const;
    const [waterLineIn, halfWidthIn] = [value(wl), value(hw)];
    if (waterLineIn !== undefined && halfWidthIn !== undefined) return { waterLineIn, halfWidthIn };
    if (read[wl].kind === 'empty' && read[hw].kind === 'empty') return undefined;
    for (const c of [wl, hw])
      if (read[c].kind === 'empty') wrong.push({ column: c, words: text.columnMissing(columnWords[c]) });
    return old?.[which];
  };
  const [upper, lower] = [pair('upper'), pair('lower')];
  const stationIn = value('station') ?? old?.stationIn;
  if (read.station.kind === 'empty') wrong.push({ column: 'station', words: text.stationMissing });
  const { upper: _, lower: __, ...rest } = old ?? {};
  return {
    wrong,
    row:
      stationIn === undefined
        ? null
        : { ...rest, label, stationIn, ...(upper ? { upper } : {}), ...(lower ? { lower } : {}) },
  };
};
