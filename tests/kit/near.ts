import { expect } from 'vitest';

export interface Tolerance {
  /** Share of the expected value. */
  readonly rel?: number;
  /** In the value's own unit. */
  readonly abs?: number;
  /** Why this much. */
  readonly because: string;
}

/** Is `got` within the tolerance of `want`? A tolerance of neither kind is exact equality; NaN is never near. */
export const isNear = (got: number, want: number, t: Tolerance): boolean =>
  Math.abs(got - want) <= Math.max(t.abs ?? 0, (t.rel ?? 0) * Math.abs(want));

/** Fails unless `got` is within the stated tolerance of `want`. */
export const expectNear = (got: number, want: number, t: Tolerance): void => {
  if (!isNear(got, want, t))
    expect.fail(`got ${got}, want ${want} ± ${t.abs ?? 0} or ${t.rel ?? 0} of it (${t.because})`);
};
