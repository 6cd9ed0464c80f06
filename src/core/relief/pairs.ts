import { type Cut, sawPlace, sourceOf } from './cut.ts';
import { type Effect, effectOf, rangeOf, type TargetView, viewOf } from './effect.ts';
import { cutHelps, HELPS, judge } from './judge.ts';
import type { Ranked } from './order.ts';
import { MECHANISM } from './release.ts';
import type { CutCandidate } from './result.ts';
import type { Shop } from './shop.ts';
import type { Situation } from './situation.ts';
import { tiers } from './tier.ts';

type Row = Ranked & { readonly cut: Cut };

/** One cut that does this much needs no second. */
const ENOUGH = 0.9;
/** The best few first cuts that a second is looked for. */
const FIRSTS = 3;

/** What decides for this target: source relief when other bends act on it, else η. */
const worth = (c: Pick<CutCandidate, 'sourceRelief' | 'eta'>): number => c.sourceRelief?.low ?? c.eta;

/**
 * Two cuts where one does not do it: to each of the best few first cuts the one second cut that does most.
 *
 * Source: methods section 4, greedy second cut. The stability figure is the smaller of the two cuts in turn.
 */
export const bestPairs = (shop: Shop, view: TargetView, rows: readonly Row[]): readonly Ranked[] => {
  const able = rows.filter((r) => r.candidate.helps && r.candidate.verdict !== 'refused');
  const ready = able.filter((r) => r.candidate.tier !== 'sound');
  const pool = ready.length > 0 ? ready : able;
  const best = [...pool].sort((p, q) => worth(q.candidate) - worth(p.candidate));
  if (!best[0] || worth(best[0].candidate) >= ENOUGH) return [];
  const seen = new Set<string>();
  return best.slice(0, FIRSTS).flatMap((first): Ranked[] => {
    const after = shop.after(first.cut.index);
    if (!after) return [];
    const seconds = (ready.length > 0 ? rows.filter((r) => r.candidate.tier !== 'sound') : able).filter(
      (r) => r.cut.index !== first.cut.index,
    );
    const found = secondOf(shop, view, after, first, seconds);
    if (!found) return [];
    const key = [...found.candidate.cuts].sort().join();
    if (seen.has(key)) return [];
    seen.add(key);
    return [found];
  });
};

const secondOf = (
  shop: Shop,
  view: TargetView,
  after: Situation,
  first: Row,
  seconds: readonly Row[],
): Ranked | null => {
  const { frame } = shop.now.changed;
  const member = shop.members.get(frame.members[view.target]!.id)!;
  const then = { ...viewOf(after, view.target, member), sourceEnergy: view.sourceEnergy };
  let best: { readonly row: Row; readonly effect: Effect; readonly worth: number } | null = null;
  for (const row of seconds) {
    if (after.cuts.mu[row.cut.index]! < MECHANISM) continue;
    const alone = effectOf(after, then, row.cut.index);
    // Both shares count from before any cut: energies already do, η carries what the first cut left.
    const left = (then.coupled.clamped * (1 - alone.eta)) / view.coupled.clamped;
    const effect = { ...alone, eta: Math.min(1, Math.max(0, 1 - left)) };
    const value = sourceOf(effect)?.low ?? effect.eta;
    if (!best || value > best.worth + 1e-12) best = { row, effect, worth: value };
  }
  if (!best || best.worth < worth(first.candidate) + HELPS) return null;
  return { hops: Math.max(first.hops, best.row.hops), candidate: pairRow(shop, after, first, best) };
};

const pairRow = (
  shop: Shop,
  after: Situation,
  first: Row,
  { row, effect }: { readonly row: Row; readonly effect: Effect },
): CutCandidate => {
  const mu = Math.min(first.candidate.mu, after.cuts.mu[row.cut.index]!);
  const sagIn = shop.pairSag(first.cut.index, row.cut.index);
  const source = sourceOf(effect);
  const tier = tiers[Math.max(tiers.indexOf(first.cut.tier), tiers.indexOf(row.cut.tier))]!;
  const figures = {
    mu,
    // Of the two alone; that one only needs the other is left to μ and the sag.
    pinnedRN: least(shop.pinnedRN.get(first.cut.member.id), shop.pinnedRN.get(row.cut.member.id)),
    sagIn,
    sourceLow: source?.low ?? null,
    eta: effect.eta,
    tier,
    isSource: false,
  };
  const judged = judge(figures);
  const ends = new Set([first.cut.member.from, first.cut.member.to]);
  const share = ends.has(row.cut.member.from) || ends.has(row.cut.member.to);
  const opened = first.candidate.releasedInLbf;
  const second = rangeOf(effect.released);
  return {
    cuts: [first.cut.member.id, row.cut.member.id],
    verdict: judged.verdict,
    helps: cutHelps(figures),
    sourceRelief: source,
    makesWorse: effect.source ? rangeOf(effect.source).low < 0 : false,
    eta: effect.eta,
    left: effect.left,
    releasedInLbf: { low: opened.low + second.low, high: opened.high + second.high },
    opensIn: rangeOf(effect.opens),
    sagIn,
    moves: shop.pairMoves(first.cut.index, row.cut.index),
    mu,
    decidedBy: 'id',
    tier,
    why:
      judged.verdict === 'helps' ? (share ? 'second-cut-needs-gate-opened' : 'pair-does-more') : judged.why,
    whereToSaw: sawPlace(shop, first.cut),
    thenSaw: sawPlace(shop, row.cut),
    straightenFirst: false,
  };
};

const least = (...shares: readonly (number | null | undefined)[]): number | null => {
  const known = shares.filter((r) => typeof r === 'number');
  return known.length === 0 ? null : Math.min(...known);
};
