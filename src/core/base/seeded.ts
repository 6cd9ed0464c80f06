const MODULUS = 2_147_483_647;
const MULTIPLIER = 48_271;

/**
 * The next state of the minimal standard generator.
 *
 *   x ← 48271 x mod (2³¹ − 1)
 *
 * Source: S. K. Park, K. W. Miller, P. K. Stockmeyer, Communications of the ACM 36(7), 1993, p. 105–110.
 */
export const nextState = (state: number): number => (state * MULTIPLIER) % MODULUS;

/**
 * 32-bit FNV-1a hash over the code units of a text; over its bytes, where the text is ASCII.
 * Source: G. Fowler, L. C. Noll, K.-P. Vo, FNV hash (IETF draft-eastlake-fnv).
 */
export const hashOf = (text: string): number => {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
};

/** A repeatable source of chance: the same seed gives the same row of numbers on every machine. */
export interface Seeded {
  /** 0 ≤ x < 1. */
  readonly share: () => number;
  /** A whole number, `low` … `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  /** One of a list that is not empty. */
  readonly pick: <T>(items: readonly T[]) => T;
}

/** Chance from a seed that is handed in. Seeds are hashed, so that `1` and `2` give rows that have nothing in common. */
export const seeded = (seed: string): Seeded => {
  let state = (hashOf(seed) % (MODULUS - 1)) + 1;
  const share = (): number => {
    state = nextState(state);
    return (state - 1) / (MODULUS - 1);
  };
  const whole = (low: number, high: number): number => low + Math.floor(share() * (high - low + 1));
  return { share, whole, pick: (items) => items[whole(0, items.length - 1)] as (typeof items)[number] };
};
