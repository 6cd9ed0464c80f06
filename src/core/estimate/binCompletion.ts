import { bestFitDecreasing } from './bestFit.ts';
import { binBound } from './binBound.ts';

/** A nesting, and what is proved of it. */
export interface Nested {
  /** Per bar the places in the list of sizes. */
  readonly bars: readonly (readonly number[])[];
  readonly atLeast: number;
  /** No nesting needs fewer bars. */
  readonly proved: boolean;
  /** Nodes looked at. */
  readonly nodes: number;
}

/** Nodes of one search before the gap is shown instead: a count, so that every machine gives the same answer; seconds at most. */
export const NODE_BUDGET = 8_000;
/** Fillings of one bar that are looked at, fullest first. */
const MOST_FILLINGS = 400;

/** Pieces of one size that are left to place. */
type Counts = Int32Array;

/**
 * The fewest bars for pieces: best-fit decreasing against the bound L2, then, where they differ, branch and bound bar by
 * bar: each bar takes the longest piece left and is filled up in every way that leaves no room for another piece, fullest
 * first; few departures from the fullest are tried before many.
 *
 * @param sizes  whole numbers, largest first, none over `room`
 * Source: S. Martello, P. Toth, Knapsack Problems, 1990, ch. 8 (bound); R. E. Korf, A new algorithm for optimal bin packing,
 * AAAI 2002 (bin completion); W. D. Harvey, M. L. Ginsberg, IJCAI 1995 (limited discrepancy).
 */
export const nest = (sizes: readonly number[], room: number, budget: number = NODE_BUDGET): Nested => {
  const atLeast = binBound(sizes, room);
  let bars = bestFitDecreasing(sizes, room);
  if (bars.length <= atLeast) return { bars, atLeast, proved: true, nodes: 0 };

  const kinds = [...new Set(sizes)];
  const places = kinds.map((w) => sizes.flatMap((size, k) => (size === w ? [k] : [])));
  const left: Counts = Int32Array.from(places, (p) => p.length);
  const chosen: (readonly number[])[] = [];
  let nodes = 0;
  let stopped = false;

  /**
   * Could the bar do better at no one's cost: take one more piece, a longer one in place of one, or one in place of two?
   * What is left over then goes where the better piece would have gone (dominance of Martello and Toth).
   */
  const bettered = (take: readonly number[], first: number, space: number): boolean => {
    const more = (k: number): boolean => take[k]! < left[k]!;
    for (let k = first; k < kinds.length; k++) if (kinds[k]! <= space && more(k)) return true;
    const others = take.flatMap((n, k) => new Array<number>(k === first ? n - 1 : n).fill(k));
    for (let p = 0; p < others.length; p++) {
      const one = kinds[others[p]!]!;
      for (let k = first; k < others[p]!; k++) if (more(k) && kinds[k]! - one <= space) return true;
      for (let q = p + 1; q < others.length; q++) {
        const both = one + kinds[others[q]!]!;
        for (let k = first; k < kinds.length && kinds[k]! >= both; k++)
          if (more(k) && kinds[k]! - both <= space) return true;
      }
    }
    return false;
  };

  /** Ways to fill a bar that must take one piece of kind `first`, none that another one betters; fullest first. */
  const fillings = (
    first: number,
  ): readonly { readonly take: readonly number[]; readonly left: number }[] => {
    const found: { take: readonly number[]; left: number }[] = [];
    const take = new Array<number>(kinds.length).fill(0);
    take[first] = 1;
    let tried = 0;
    const fill = (kind: number, space: number): void => {
      if (tried > MOST_FILLINGS * 20) return;
      tried += 1;
      if (kind === kinds.length) {
        if (!bettered(take, first, space)) found.push({ take: take.slice(), left: space });
        return;
      }
      const w = kinds[kind]!;
      const own = kind === first ? 1 : 0;
      const most = Math.min(left[kind]! - own, Math.floor(space / w));
      for (let n = most; n >= 0; n--) {
        take[kind] = n + own;
        fill(kind + 1, space - n * w);
      }
      take[kind] = own;
    };
    fill(first, room - kinds[first]!);
    if (tried > MOST_FILLINGS * 20) stopped = true;
    found.sort((p, q) => p.left - q.left);
    if (found.length > MOST_FILLINGS) stopped = true;
    return found.slice(0, MOST_FILLINGS);
  };

  const rest = (): readonly number[] => kinds.flatMap((w, k) => new Array<number>(left[k]!).fill(w));
  let seen = new Map<string, number>();

  /** Is there a nesting with fewer bars than known, with at most `departures` from the fullest filling? */
  const search = (departures: number): boolean => {
    nodes += 1;
    if (nodes > budget) {
      stopped = true;
      return false;
    }
    const first = left.findIndex((n) => n > 0);
    if (first < 0) {
      bars = placed();
      return true;
    }
    if (chosen.length + binBound(rest(), room) >= bars.length) return false;
    const key = `${chosen.length} ${left.join()}`;
    const before = seen.get(key);
    if (before !== undefined && before >= departures) return false;
    seen.set(key, departures);
    const ways = fillings(first);
    for (let k = 0; k < ways.length; k++) {
      if (k > departures) {
        cutShort = true;
        break;
      }
      const { take } = ways[k]!;
      for (let i = 0; i < take.length; i++) left[i]! -= take[i]!;
      chosen.push(take);
      const better = search(departures - k);
      chosen.pop();
      for (let i = 0; i < take.length; i++) left[i]! += take[i]!;
      if (better) return true;
      if (nodes > budget) return false;
    }
    return false;
  };
  const placed = (): readonly (readonly number[])[] => {
    const next = places.map(() => 0);
    return chosen.map((take) =>
      take.flatMap((n, kind) => Array.from({ length: n }, () => places[kind]![next[kind]!++]!)),
    );
  };

  let cutShort = true;
  let departures = 0;
  while (bars.length > atLeast && cutShort && nodes <= budget) {
    cutShort = false;
    seen = new Map();
    if (search(departures)) cutShort = true;
    else departures = departures === 0 ? 1 : departures * 2;
  }
  const proved = bars.length <= atLeast || (!cutShort && !stopped);
  return { bars, atLeast: proved ? bars.length : atLeast, proved, nodes };
};
