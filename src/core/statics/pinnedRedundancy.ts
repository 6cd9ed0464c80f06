import { symmetricEigen } from './dense.ts';
import type { Frame } from './frame.ts';
import type { SelfStressBasis } from './mechanisms.ts';

/**
 * Share of a length error of each bar that turns into force were every joint pinned, by the force route.
 *
 *   R = diag S (SᵀFS)⁻¹ Sᵀ F,  F = L/EA;  its sum is the number of states of self-stress
 *
 * 0: in no state of self-stress, so the pinned truss would fold without it and only the stiffness of the welds is left.
 * @returns by member id, braces included; null when the states are not known
 * Source: methods section 2; von Scheven, Ramm & Bischoff, Int. J. Solids Structures 213 (2021) 41.
 */
export const pinnedRedundancy = (
  basis: SelfStressBasis | null,
  frame: Frame,
): ReadonlyMap<string, number> | null => {
  if (!basis) return null;
  const { members, vectors } = basis;
  const flexibility = members.map((id) => {
    const index = frame.memberIndex.get(id);
    return index === undefined ? 0 : 1 / frame.members[index]!.stiffness[0]!;
  });
  // Half of F on each side keeps the Gram matrix symmetric to the last bit; the mean keeps it of order one.
  const mean = flexibility.reduce((sum, f) => sum + f, 0) / Math.max(1, members.length);
  const weighted = vectors.map((v) => v.map((x, k) => x * Math.sqrt(flexibility[k]! / mean)));
  const gram = weighted.map((v) => weighted.map((w) => v.reduce((sum, x, k) => sum + x * w[k]!, 0)));
  const { values, vectors: turns } =
    vectors.length === 0 ? { values: [], vectors: [] } : symmetricEigen(gram);
  const along = (turn: readonly number[], k: number): number =>
    turn.reduce((sum, t, state) => sum + t * weighted[state]![k]!, 0);
  return new Map(
    members.map((id, k) => [id, values.reduce((sum, value, n) => sum + along(turns[n]!, k) ** 2 / value, 0)]),
  );
};
