import { nest } from './binCompletion.ts';

/** Thousandths of an inch: pieces are rounded up to them, bars down. */
const STEP = 1000;
const ALMOST = 1e-6;

/** Pieces of one tube size on bought lengths. */
export interface StockCuts {
  readonly bars: readonly { readonly pieces: readonly string[]; readonly leftIn: number }[];
  readonly atLeast: number;
  readonly proved: boolean;
  readonly tooLong: readonly string[];
}

/**
 * The fewest bought lengths for pieces of one tube.
 *
 * Each cut takes one kerf, the last of a bar may need none: a bar of L takes pieces l when Σ (l + k) ≤ L + k.
 *
 * @param pieces  `takesIn` is l + k
 * Source: P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961) 849 (cutting stock); methods section 10.
 */
export const stockCuts = (
  pieces: readonly { readonly id: string; readonly takesIn: number }[],
  stockIn: number,
  kerfIn: number,
): StockCuts => {
  const room = Math.floor((stockIn + kerfIn) * STEP + ALMOST);
  const sized = pieces
    .map(({ id, takesIn }) => ({ id, size: Math.ceil(takesIn * STEP - ALMOST) }))
    .sort((p, q) => q.size - p.size || (p.id < q.id ? -1 : 1));
  const fitting = sized.filter((p) => p.size <= room);
  const { bars, atLeast, proved } = nest(
    fitting.map((p) => p.size),
    room,
  );
  return {
    bars: bars.map((bar) => {
      const used = bar.reduce((sum, k) => sum + fitting[k]!.size, 0);
      return {
        pieces: bar.map((k) => fitting[k]!.id),
        leftIn: Math.max(0, Math.min(stockIn, (room - used) / STEP)),
      };
    }),
    atLeast,
    proved,
    tooLong: sized.filter((p) => p.size > room).map((p) => p.id),
  };
};
