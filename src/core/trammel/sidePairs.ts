import type { Model } from '../job/modelSchema.ts';
import { stationsInOrder } from '../truss/clusters.ts';

/**
 * The distances of one side that fix a symmetric truss, each between axis points: at every station the vertical, both
 * cross distances and one diagonal across it; in every bay both longerons, both side diagonals and both crossing ones.
 * More than the least, so that one misread shows.
 */
export const sidePairs = (model: Model, side: 'L' | 'R'): readonly (readonly [string, string])[] => {
  const other = side === 'L' ? 'R' : 'L';
  const { stations } = stationsInOrder(model);
  const id = (k: number, height: 'U' | 'L', hand: 'L' | 'R'): string | null => {
    const row = stations[k];
    const pair = height === 'U' ? row?.upper : row?.lower;
    return row && pair ? `${height}${row.label}${pair.halfWidthIn === 0 ? 'C' : hand}` : null;
  };
  const pairs = stations.flatMap((_, k) => [
    [id(k, 'U', side), id(k, 'L', side)],
    ...(['U', 'L'] as const).map((h) => [id(k, h, side), id(k, h, other)]),
    [id(k, 'U', side), id(k, 'L', other)],
    ...(['UU', 'LL', 'UL', 'LU'] as const).map((hs) => [
      id(k, hs[0] as 'U', side),
      id(k + 1, hs[1] as 'L', side),
    ]),
    ...(['U', 'L'] as const).map((h) => [id(k, h, side), id(k + 1, h, other)]),
  ]);
  const seen = new Set<string>();
  return pairs.flatMap(([a, b]) => {
    if (!a || !b || a === b || seen.has(`${a} ${b}`)) return [];
    seen.add(`${a} ${b}`);
    return [[a, b] as const];
  });
};
