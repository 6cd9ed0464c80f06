import type { Issue } from '../base/issue.ts';

/** Why a member should be looked at next. Figures stand with the words in `present/words.ts`. */
export type Reason =
  | { readonly kind: 'sharesCluster'; readonly with: string; readonly cluster: string }
  | { readonly kind: 'nearCluster'; readonly with: string; readonly hops: number }
  | { readonly kind: 'samePath'; readonly with: string; readonly share: number; readonly case?: string }
  | { readonly kind: 'takesOver'; readonly with: string; readonly share: number }
  | {
      readonly kind: 'lockedIn';
      readonly from: readonly string[];
      readonly stressPsi: number;
      readonly share: number;
    }
  | { readonly kind: 'twin'; readonly with: string }
  | { readonly kind: 'blow'; readonly cluster: string };

/** One row of "look here next": a clusters, b same load path, l locked-in, w redistribution; each 0…1. */
export interface NextRow {
  readonly id: string;
  readonly rank: number;
  readonly a: number;
  readonly b: number;
  readonly l: number;
  readonly w: number | null;
  /** 0…100; shown in the details only: it is a rank, not a chance. */
  readonly score: number;
  readonly reasons: readonly Reason[];
}

/** Stage `loadPath`. `next` is for the whole job; `byMember` for one damaged or asked-for member at a time. */
export interface LoadPath {
  readonly kind: 'worked' | 'movesFreely';
  readonly next: readonly NextRow[];
  readonly byMember: Readonly<Record<string, readonly NextRow[]>>;
  /** Members for which no other path exists (just rigid): a length error only changes shape. */
  readonly noOtherPath: readonly string[];
  readonly issues: readonly Issue[];
}
