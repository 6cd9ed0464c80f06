import { copeEdge, reachOf } from './cut.ts';
import { type Ask, type Draft, emptyDraft, rule, sectionRules, sectionStuff } from './design.ts';
import type { EndCut } from './endCut.ts';
import { fitUpFor } from './fitUp.ts';
import { addedWeight, byRule, fromCuts, partOf } from './parts.ts';
import type { Piece, PieceEnd } from './result.ts';

/** A member's own end cut: coped to the tubes it meets; null where it is the main tube or runs through. */
const endOf = (piece: Piece, end: PieceEnd, way: 1 | -1): EndCut | null =>
  end.cope && {
    kind: 'cope',
    atIn: way === 1 ? piece.lengthIn : 0,
    cluster: end.cluster,
    against: end.cope,
    gapIn: 0,
    way,
  };

/**
 * The whole member cut out at both clusters and a new tube of the same size put in, its ends coped to the tubes they
 * meet.
 *
 * Assumes: axes meet at the cluster points; no gap is left at a cope.
 * Source: AC 43.13-1B, 4-91, 4-95; the order in which tubes are coped is common practice.
 */
export const fullMember = (ask: Ask): Draft => {
  const { piece } = ask;
  const sized = sectionRules(ask);
  const rules = [rule('replace-whole', null), rule('cope-order', null), ...sized.rules];
  const cuts = [endOf(piece, piece.ends[0], -1), endOf(piece, piece.ends[1], 1)] as const;
  const { tube, material } = sectionStuff(ask);
  const misses = (cut: EndCut | null): boolean =>
    cut !== null && Number.isNaN(reachOf(cut, tube.odIn / 2).low);
  const missing = cuts.flatMap((cut, k) =>
    piece.ends[k]!.cope?.length === 0
      ? [`ends-not-known:${piece.ends[k]!.cluster}`]
      : cut === null
        ? [`runs-through:${piece.ends[k]!.cluster}`]
        : misses(cut)
          ? [`cope-misses:${piece.ends[k]!.cluster}`]
          : [],
  );
  const [a, b] = cuts;
  if (missing.length > 0 || !a || !b) return { ...emptyDraft, ...sized, rules, missing };
  const made = partOf(piece, { id: 'member', kind: 'member', tube, material, ends: [a, b], slideOn: false }, [
    'axes-meet-at-cluster',
  ]);
  return {
    ...sized,
    rules,
    missing: [],
    sleeve: null,
    cautions: ['spring-in-between-clusters'],
    plan: {
      stubs: null,
      gapIn: byRule(0, 'replace-whole', ['no-gap-at-a-cope']),
      gapOtherIn: byRule(0, 'replace-whole', ['no-gap-at-a-cope']),
      openingIn: fromCuts(piece.lengthIn, ['between-cluster-points', 'as-computed-measure-after-spreading']),
      parts: [made],
      rosettes: null,
      insertion: [],
      seamClocks: [],
      weldIn: fromCuts(copeEdge(a, tube.odIn / 2) + copeEdge(b, tube.odIn / 2), ['both-copes']),
      endWeldLbf: null,
      addedLb: addedWeight(piece, [made], [a, b]),
      fitUp: fitUpFor('fullMember', [made], null, { opening: fromCuts(piece.lengthIn) }),
    },
  };
};
