/** Where the two cuts stand on the side that is cut nearest the damage, from the member's `from` cluster point. */
export type CutPair = readonly [number, number];

/**
 * Places of the two cuts: at the edges of the damage, and further apart where the section between must be longer.
 *
 * What is wanting is shared alike between the ends; an end without room passes its share to the other. Where there is
 * no room at all the places stand all the same, and the numbers that fail are found from them.
 *
 * @param damage  edges of the damage
 * @param leastIn  least distance between the cuts
 * @param room  lowest and highest place that leave the stubs what they need
 * @param fixed  a place the user has set, which stays
 */
export const placeCuts = (
  [a, b]: CutPair,
  leastIn: number,
  [low, high]: CutPair,
  fixed: readonly [number | undefined, number | undefined] = [undefined, undefined],
): CutPair => {
  const [p, q] = fixed;
  if (p !== undefined) return [p, q ?? Math.max(b, p + leastIn)];
  if (q !== undefined) return [Math.min(a, q - leastIn), q];
  const want = Math.max(0, leastIn - (b - a));
  const [below, above] = [Math.max(0, a - low), Math.max(0, high - b)];
  if (below + above < want) return [a - want / 2, b + want / 2];
  const down = Math.min(Math.max(want / 2, want - above), below);
  return [a - down, b + (want - down)];
};
