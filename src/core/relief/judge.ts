import { MECHANISM } from './release.ts';
import type { CutVerdict } from './result.ts';
import { SAG_LIMIT_IN } from './sag.ts';
import type { Tier } from './tier.ts';
import type { CutWhy } from './why.ts';

/** Below this stability figure a cut leaves a truss that barely stands. Starting value, methods section 4. */
const BARELY = 1e-3;
/** Below this the truss would fold without the tube were its joints pinned. Methods section 4. */
const ONLY_WELDS = 1e-9;
/** Source relief or η below this is no help. Starting value, methods section 4. */
export const HELPS = 0.1;
/** From here the tube that is cut is taken for the source itself. */
const WHOLE = 0.9;

/** The figures a cut is judged by. */
export interface Judged {
  readonly mu: number;
  /** r_N of the pinned idealisation; null where it was not worked. */
  readonly pinnedRN: number | null;
  readonly sagIn: number | null;
  readonly sourceLow: number | null;
  readonly eta: number;
  readonly tier: Tier;
  readonly isSource: boolean;
}

/** Does the cut relieve anything, by the lower reading or by η? */
export const cutHelps = ({ sourceLow, eta }: Pick<Judged, 'sourceLow' | 'eta'>): boolean =>
  eta >= HELPS || (sourceLow ?? 0) >= HELPS;

/** The verdict on a cut and the reason that decided it. Source: methods section 4, gates. */
export const judge = (j: Judged): { readonly verdict: CutVerdict; readonly why: CutWhy } => {
  if (j.mu < MECHANISM) return { verdict: 'refused', why: 'makes-mechanism' };
  if (j.mu < BARELY) return { verdict: 'needsFixture', why: 'needs-fixture-barely-stands' };
  if (j.sagIn !== null && j.sagIn > SAG_LIMIT_IN)
    return { verdict: 'needsFixture', why: 'needs-fixture-sag' };
  if (j.pinnedRN !== null && j.pinnedRN < ONLY_WELDS)
    return { verdict: 'needsFixture', why: 'needs-fixture-only-welds' };
  if (!cutHelps(j)) return { verdict: 'noHelp', why: 'no-help' };
  return { verdict: 'helps', why: reason(j) };
};

const reason = ({ sourceLow, tier, isSource }: Judged): CutWhy => {
  if (isSource && (sourceLow ?? 0) >= WHOLE) return 'is-the-source';
  if ((sourceLow ?? 0) >= HELPS) return 'relieves-source';
  if (tier === 'target') return 'target-is-scrap-itself';
  if (tier === 'replace') return 'due-to-be-cut-out';
  if (tier === 'sleeve') return 'to-be-sleeved-anyway';
  return 'frees-its-length';
};
