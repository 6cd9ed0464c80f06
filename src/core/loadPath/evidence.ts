import type { Reason } from './result.ts';

/** What speaks for looking at one member because of one damaged member, damaged cluster or blow; each 0…1. */
export interface Evidence {
  /** Damaged member or cluster, or the cluster struck. */
  readonly from: string;
  readonly a: number;
  readonly b: number;
  readonly w: number | null;
  readonly reasons: readonly Told[];
}

/** A reason with how strongly it speaks. */
export interface Told {
  readonly strength: number;
  readonly reason: Reason;
}

/** The three columns and the energy share together. */
export interface Together {
  readonly a: number;
  readonly b: number;
  readonly l: number;
  readonly w: number | null;
  /** 0…1. */
  readonly score: number;
  readonly reasons: readonly Reason[];
}

/** Reasons of one kind, and in all, that are worth reading. */
const MOST_OF_A_KIND = 2;
const MOST_REASONS = 5;

/**
 * One member's evidence together.
 *
 *   S = 1 − (1 − a)(1 − l) Π (1 − b_i)
 *
 * Reasons strongest first, at most two of a kind.
 * Source: methods section 5; common practice, no source, for the weights of a.
 */
export const together = (found: readonly Evidence[], l: number, extra: readonly Told[]): Together => {
  const a = Math.max(0, ...found.map((f) => f.a));
  const b = 1 - found.reduce((rest, f) => rest * (1 - f.b), 1);
  const shares = found.flatMap((f) => (f.w === null ? [] : [f.w]));
  const told = [...found.flatMap((f) => f.reasons), ...extra].sort((p, q) => q.strength - p.strength);
  const count = new Map<string, number>();
  const few = told.flatMap(({ reason }) => {
    const seen = (count.get(reason.kind) ?? 0) + 1;
    count.set(reason.kind, seen);
    return seen <= MOST_OF_A_KIND ? [reason] : [];
  });
  // The twin is a habit worth keeping in sight, however weak beside the sums.
  const reasons = few.filter((r, k) => k < MOST_REASONS || r.kind === 'twin' || r.kind === 'lockedIn');
  return {
    a,
    b,
    l,
    w: shares.length > 0 ? Math.max(...shares) : null,
    score: 1 - (1 - a) * (1 - l) * (1 - b),
    reasons,
  };
};
