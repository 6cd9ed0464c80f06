import { type Cut, sawPlace, sourceOf } from './cut.ts';
import { leftNow, rangeOf, type TargetView } from './effect.ts';
import { cutHelps, judge } from './judge.ts';
import type { CutCandidate } from './result.ts';
import type { Shop } from './shop.ts';

/** A tube hurt and measured, that is not to be cut out. */
const isUncutSource = (shop: Shop, cut: Cut): boolean =>
  (cut.tier === 'undecided' || cut.tier === 'sound') && shop.locked.sources.includes(cut.member.id);

const ownRepair = (place: CutCandidate['whereToSaw']): 'splice' | 'replaceTube' =>
  place.fromIn === null ? 'replaceTube' : 'splice';

/** The row of one cut, but for what `finish` adds to rows that are kept. */
export const candidateOf = (shop: Shop, view: TargetView, cut: Cut): CutCandidate => {
  const mu = shop.now.cuts.mu[cut.index]!;
  const { effect } = cut;
  const source = effect && sourceOf(effect);
  const sagIn = effect ? shop.sagIn[cut.index]! : null;
  const isSource = shop.locked.sources.includes(cut.member.id);
  const figures = {
    mu,
    pinnedRN: shop.pinnedRN.get(cut.member.id) ?? null,
    sagIn,
    sourceLow: source?.low ?? null,
    eta: effect?.eta ?? 0,
    tier: cut.tier,
    isSource,
  };
  const { verdict, why } = judge(figures);
  const helps = effect !== null && cutHelps(figures);
  const place = sawPlace(shop, cut);
  return {
    cuts: [cut.member.id],
    verdict,
    helps,
    sourceRelief: source,
    makesWorse: effect?.source ? rangeOf(effect.source).low < 0 : false,
    eta: figures.eta,
    left: effect?.left ?? leftNow(shop.now, view.target),
    releasedInLbf: effect ? rangeOf(effect.released) : { low: 0, high: 0 },
    opensIn: effect ? rangeOf(effect.opens) : { low: 0, high: 0 },
    sagIn,
    moves: [],
    mu,
    decidedBy: 'id',
    tier: cut.tier,
    why,
    whereToSaw: place,
    ...(cut.tier === 'sound' ? { ownRepair: ownRepair(place) } : {}),
    straightenFirst: isUncutSource(shop, cut) && (source?.low ?? 0) > 0,
  };
};

/** Adds what costs a solve a row: which clusters move, and the brace that a sagging cut needs. */
export const finish = (shop: Shop, c: CutCandidate): CutCandidate => {
  if (c.verdict === 'refused' || c.cuts.length > 1) return c;
  const brace = c.why === 'needs-fixture-sag' && c.helps ? shop.brace(c.cuts[0]!) : null;
  return { ...c, moves: shop.moves(c.cuts), ...(brace ? { brace } : {}) };
};
