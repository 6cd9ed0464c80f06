/**
 * A number of bars that no nesting can be under: the best of L2 over all thresholds K.
 *
 *   N1 = { w > c − K },  N2 = { c − K ≥ w > c/2 },  N3 = { c/2 ≥ w ≥ K }
 *   L(K) = |N1| + |N2| + max(0, ⌈(Σ N3 − (|N2| c − Σ N2)) / c⌉),   L2 = max over K; K = 0 gives ⌈Σ w / c⌉
 *
 * @param sizes  w, whole numbers, largest first
 * @param room  c, whole number
 * Source: S. Martello, P. Toth, Knapsack Problems, Wiley 1990, section 8.3.2.
 */
export const binBound = (sizes: readonly number[], room: number): number => {
  let best = 0;
  let last = -1;
  for (const k of [0, ...sizes.toReversed()]) {
    if (k === last) continue;
    last = k;
    if (k * 2 > room) break;
    let full = 0;
    let big = 0;
    let bigSum = 0;
    let small = 0;
    for (const w of sizes) {
      if (w > room - k) full += 1;
      else if (w * 2 > room) {
        big += 1;
        bigSum += w;
      } else if (w >= k) small += w;
    }
    const over = Math.max(0, Math.ceil((small - (big * room - bigSum)) / room));
    best = Math.max(best, full + big + over);
  }
  return best;
};
