/**
 * Pieces into bars: longest first, each into the fullest bar that it still fits.
 *
 * @param sizes  whole numbers, largest first, none over `room`
 * @returns per bar the places in `sizes`
 * Source: best-fit decreasing; D. S. Johnson, Near-optimal bin packing algorithms, MIT 1973 (at most 11/9 of the optimum + 4).
 */
export const bestFitDecreasing = (sizes: readonly number[], room: number): readonly (readonly number[])[] => {
  const bars: { left: number; readonly pieces: number[] }[] = [];
  sizes.forEach((w, k) => {
    let best: (typeof bars)[number] | undefined;
    for (const bar of bars) if (bar.left >= w && (!best || bar.left < best.left)) best = bar;
    if (best) {
      best.left -= w;
      best.pieces.push(k);
    } else bars.push({ left: room - w, pieces: [k] });
  });
  return bars.map((b) => b.pieces);
};
