import type { Model } from '../job/modelSchema.ts';
import { hopsFrom } from '../loadPath/hops.ts';
import { type Cut, sawPlace, sourceOf } from './cut.ts';
import { effectOf, leftNow, rangeOf, type TargetView, viewOf } from './effect.ts';
import { cutHelps, judge } from './judge.ts';
import { inOrder, type Ranked } from './order.ts';
import { bestPairs } from './pairs.ts';
import { MECHANISM } from './release.ts';
import type { CutCandidate, ReliefTarget } from './result.ts';
import type { Shop } from './shop.ts';
import { tierOf } from './tier.ts';
import type { TargetNote } from './why.ts';
import { withoutSaw } from './withoutSaw.ts';

/** Sound tubes further than this whose cut is no help are counted, not listed. */
const LIST_HOPS = 1;
/** Members this near are asked to be measured. */
const MEASURE_HOPS = 2;
/** Everything further is one rung of the order. */
const FAR = 9;

/** A tube hurt and measured, that is not to be cut out. */
const isUncutSource = (shop: Shop, cut: Cut): boolean =>
  (cut.tier === 'undecided' || cut.tier === 'sound') && shop.locked.sources.includes(cut.member.id);

const ownRepair = (place: CutCandidate['whereToSaw']): 'splice' | 'replaceTube' =>
  place.fromIn === null ? 'replaceTube' : 'splice';

/** The row of one cut. */
const candidateOf = (shop: Shop, view: TargetView, cut: Cut): CutCandidate => {
  const mu = shop.now.cuts.mu[cut.index]!;
  const { effect } = cut;
  const source = effect && sourceOf(effect);
  const sagIn = effect ? shop.sagIn[cut.index]! : null;
  const isSource = shop.locked.sources.includes(cut.member.id);
  const figures = {
    mu,
    sagIn,
    sourceLow: source?.low ?? null,
    eta: effect?.eta ?? 0,
    tier: cut.tier,
    isSource,
  };
  const { verdict, why } = judge(figures);
  const helps = effect !== null && cutHelps(figures);
  const place = sawPlace(shop, cut);
  const brace = why === 'needs-fixture-sag' && helps ? shop.brace(cut.member) : null;
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
    moves: effect ? shop.moves([cut.index]) : [],
    mu,
    decidedBy: 'id',
    tier: cut.tier,
    why,
    whereToSaw: place,
    ...(brace ? { brace } : {}),
    ...(cut.tier === 'sound' ? { ownRepair: ownRepair(place) } : {}),
    straightenFirst: isUncutSource(shop, cut) && (source?.low ?? 0) > 0,
  };
};

/** Everything about relieving one target. */
export const reliefOf = (shop: Shop, model: Model, id: string, ranked: boolean): ReliefTarget => {
  const { truss, now } = shop;
  const { frame } = now.changed;
  const target = frame.memberIndex.get(id)!;
  const member = shop.members.get(id)!;
  const view = viewOf(now, target, member);
  const hops = hopsFrom(truss, [member.from, member.to], FAR - 1);
  const cuts = truss.members.flatMap((m): Cut[] => {
    const index = frame.memberIndex.get(m.id);
    const tier = tierOf(shop.marks.get(m.id), m.id === id);
    if (index === undefined || m.bolted || (m.id === id && tier !== 'target')) return [];
    const effect = now.cuts.mu[index]! < MECHANISM ? null : effectOf(now, view, index);
    return [{ member: m, index, tier, hops: m.id === id ? 0 : (hops.get(m.id) ?? FAR), effect }];
  });
  const isListed = (c: Cut): boolean =>
    c.tier !== 'sound' ||
    c.hops <= LIST_HOPS ||
    (c.effect !== null && cutHelps({ sourceLow: sourceOf(c.effect)?.low ?? null, eta: c.effect.eta }));
  const listed = cuts.filter(isListed);
  const rows = listed.map((c): Ranked & { readonly cut: Cut } => ({
    candidate: candidateOf(shop, view, c),
    hops: c.hops,
    cut: c,
  }));
  const pairs = bestPairs(shop, view, rows);
  const all: readonly Ranked[] = [...rows, ...pairs];
  const put = (some: readonly Ranked[]): readonly CutCandidate[] =>
    ranked ? inOrder(some) : some.map((r) => ({ ...r.candidate, why: 'not-ranked-say-how-held' as const }));
  const isSound = (r: Ranked): boolean => r.candidate.tier === 'sound';
  return {
    member: id,
    withoutSaw: withoutSaw(truss, model, now, view, member),
    candidates: put(all.filter((r) => !isSound(r))),
    soundTubes: put(all.filter(isSound)),
    soundNoHelp: cuts.length - listed.length,
    rN: view.rN,
    notes: notesOf(shop, view, all),
    now: leftNow(now, target),
    measureFirst: truss.members
      .map((m) => m.id)
      .filter(
        (m) => shop.locked.unmeasured.includes(m) && (m === id || (hops.get(m) ?? FAR) <= MEASURE_HOPS),
      ),
  };
};

/** Below this a length error in the target only changes the truss's shape. */
const NO_CLAMP = 1e-9;
/** Full end slopes that leave more than this share of the target's own moment: bending is local. */
const LOCAL = 0.85;

const notesOf = (shop: Shop, view: TargetView, rows: readonly Ranked[]): TargetNote[] => {
  const singles = rows.filter((r) => r.candidate.cuts.length === 1);
  const notes: TargetNote[] = [];
  if (view.rN < NO_CLAMP) notes.push('length-error-only-changes-shape');
  if (singles.every((r) => r.candidate.verdict === 'needsFixture' || r.candidate.verdict === 'refused'))
    notes.push('every-cut-needs-a-fixture');
  if (!rows.some((r) => r.candidate.helps)) notes.push('no-cut-helps');
  const before = leftNow(shop.now, view.target).momentInLbf.high;
  const others = singles.filter((r) => r.candidate.tier !== 'target' && r.candidate.verdict !== 'refused');
  const isBent = shop.now.sources.some((s) => s.member === view.target);
  if (isBent && before > 0 && others.every((r) => r.candidate.left.momentInLbf.high >= LOCAL * before))
    notes.push('bending-is-local-cut-at-the-tube');
  return notes;
};
