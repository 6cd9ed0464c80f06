import type { Target } from '../../core/trammel/result.ts';
import { mirrorCluster } from '../../core/truss/names.ts';
import { clusterWords } from '../words/names.ts';

/** A distance in words: "Upper left 3 to lower left 4". */
export const distanceLine = (target: Pick<Target, 'from' | 'to'>): string =>
  `${clusterWords(target.from)} to ${clusterWords(target.to).replace(/^(Upper|Lower)/, (w) => w.toLowerCase())}`;

const mirror = (id: string): string => mirrorCluster(id) ?? id;

/** A distance by its two clusters, whichever way round. */
export const pairKey = (a: string, b: string): string => [a, b].sort().join(' ');

/** The key of its opposite-hand twin; its own when it crosses the centre plane square. */
export const twinKey = ({ from, to }: Pick<Target, 'from' | 'to'>): string =>
  pairKey(mirror(from), mirror(to));

/** Targets with the opposite-hand twin of each directly below it, left first; order otherwise as given. */
export const inPairs = (targets: readonly Target[]): readonly Target[] => {
  const byPair = new Map(targets.map((target) => [pairKey(target.from, target.to), target]));
  const placed = new Set<string>();
  return targets.flatMap((target) => {
    if (placed.has(target.id)) return [];
    const twin = byPair.get(twinKey(target));
    const both = twin && twin !== target && !placed.has(twin.id) ? [target, twin] : [target];
    for (const one of both) placed.add(one.id);
    return [...both].sort((a, b) => handOf(a) - handOf(b));
  });
};

const handOf = (target: Target): number => (/L$/.test(target.from) ? 0 : 1);
