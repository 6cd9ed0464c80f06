import type { CutCandidate } from './result.ts';
import { tiers } from './tier.ts';

/** What the list is sorted by, beside the candidate itself. */
export interface Ranked {
  readonly candidate: CutCandidate;
  readonly hops: number;
}

type Key = CutCandidate['decidedBy'];

const BIN = 0.05;
const bin = (share: number): number => -Math.floor(share / BIN + 1e-9);
/** What helps, then what helps once a fixture holds; a cut of no help never stands above a cut that helps. */
const gate = ({ verdict, helps }: CutCandidate): number =>
  verdict === 'refused' ? 4 : (helps ? 0 : 2) + (verdict === 'needsFixture' ? 1 : 0);

/** Sort keys in order, smaller first. `helps` decides with the gate. */
const keys: readonly { readonly name: Key; readonly of: (r: Ranked) => number }[] = [
  { name: 'gate', of: ({ candidate }) => gate(candidate) },
  { name: 'source', of: ({ candidate }) => bin(candidate.sourceRelief?.low ?? 0) },
  { name: 'tier', of: ({ candidate }) => tiers.indexOf(candidate.tier) },
  { name: 'eta', of: ({ candidate }) => bin(candidate.eta) },
  { name: 'hops', of: ({ hops }) => hops },
  // Rounded, so that twins that differ by rounding alone do not swap places when clusters are numbered anew.
  { name: 'sag', of: ({ candidate }) => Math.round((candidate.sagIn ?? 1e6) * 1e6) },
];

const compare = (p: Ranked, q: Ranked): { readonly by: Key; readonly sign: number } => {
  for (const { name, of } of keys) {
    const a = of(p);
    const b = of(q);
    if (a !== b) return { by: name, sign: a - b };
  }
  const [a, b] = [p.candidate.cuts.join(), q.candidate.cuts.join()];
  return { by: 'id', sign: a < b ? -1 : a > b ? 1 : 0 };
};

/**
 * Best cut first: helps and gate; source relief (bins 0.05); tier; η (bins 0.05); hops; sag; id. Each says what set it above
 * the next one.
 *
 * Source: methods section 4, "Sort".
 */
export const inOrder = (candidates: readonly Ranked[]): CutCandidate[] => {
  const sorted = candidates.toSorted((p, q) => compare(p, q).sign);
  return sorted.map((r, k) => {
    const other = sorted[k + 1] ?? sorted[k - 1];
    return { ...r.candidate, decidedBy: other ? compare(r, other).by : 'id' };
  });
};
