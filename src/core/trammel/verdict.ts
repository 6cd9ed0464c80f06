import type { Verdict } from './result.ts';

/** Reading against limit in binary fractions: below this a difference is arithmetic, not length. */
const SAME = 1e-9;

/**
 * Inside only when the whole 95 % range lies inside the limit, outside only when all of it lies at or beyond it.
 *
 *   inside: |d| + 2 s ≤ t      outside: |d| − 2 s ≥ t      else cannot tell
 *
 * @param  differenceIn  found − target
 * @param  stdIn         one standard deviation of the difference
 * @param  toleranceIn   plus or minus; undefined = no limit loaded
 * Source: common practice, no source (guarded acceptance with 95 % coverage, as in JCGM 106:2012, 8.3).
 */
export const verdictOf = (differenceIn: number, stdIn: number, toleranceIn: number | undefined): Verdict => {
  if (toleranceIn === undefined) return 'noLimit';
  const off = Math.abs(differenceIn);
  if (off + 2 * stdIn <= toleranceIn + SAME) return 'inside';
  return off - 2 * stdIn >= toleranceIn - SAME ? 'outside' : 'cannotTell';
};
