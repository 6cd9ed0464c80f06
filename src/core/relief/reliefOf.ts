import type { Model } from '../job/modelSchema.ts';
import { hopsFrom } from '../loadPath/hops.ts';
import { candidateOf, finish } from './candidate.ts';
import { type Cut, sourceOf } from './cut.ts';
import { effectOf, leftNow, viewOf } from './effect.ts';
import { cutHelps } from './judge.ts';
import { notesOf } from './notes.ts';
import { inOrder, type Ranked } from './order.ts';
import { bestPairs } from './pairs.ts';
import { MECHANISM } from './release.ts';
import type { CutCandidate, ReliefTarget } from './result.ts';
import { furthest, type Shop } from './shop.ts';
import { tierOf } from './tier.ts';
import { withoutSaw } from './withoutSaw.ts';

/** Sound tubes further than this whose cut is no help are not listed. */
const LIST_HOPS = 1;
/** At most this many sound tubes are listed. */
const MOST_SOUND = 12;
/** Members this near are asked to be measured. */
const MEASURE_HOPS = 2;
/** Everything further is one rung of the order. */
const FAR = 9;

const helps = ({ effect }: Cut): boolean =>
  effect !== null && cutHelps({ sourceLow: sourceOf(effect)?.low ?? null, eta: effect.eta });

/** Everything about relieving one target; `withShape`: each cut with the moves of every cluster, not of a few. */
export const reliefOf = (
  shop: Shop,
  model: Model,
  id: string,
  ranked: boolean,
  withShape: boolean,
): ReliefTarget => {
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
  const rows = cuts
    .filter((c) => c.tier !== 'sound' || c.hops <= LIST_HOPS || helps(c))
    .map((c): Ranked & { readonly cut: Cut } => ({
      candidate: candidateOf(shop, view, c),
      hops: c.hops,
      cut: c,
    }));
  const all: readonly Ranked[] = [...rows, ...bestPairs(shop, view, rows)];
  const put = (some: readonly Ranked[], most: number): readonly CutCandidate[] => {
    const kept = inOrder(some).slice(0, most);
    shop.prepareMoves(kept);
    const list = kept.map((row): CutCandidate => {
      const c = finish(shop, row);
      return {
        ...c,
        moves: furthest(c.moves),
        ...(withShape && c.moves.length > 0 ? { shape: c.moves } : {}),
      };
    });
    return ranked ? list : list.map((c) => ({ ...c, why: 'not-ranked-say-how-held' }));
  };
  const isSound = (r: Ranked): boolean => r.candidate.tier === 'sound';
  const soundTubes = put(all.filter(isSound), MOST_SOUND);
  return {
    member: id,
    withoutSaw: withoutSaw(truss, model, now, view, member),
    candidates: put(
      all.filter((r) => !isSound(r)),
      Number.POSITIVE_INFINITY,
    ),
    soundTubes,
    soundNotListed:
      cuts.filter((c) => c.tier === 'sound').length - soundTubes.filter((c) => c.cuts.length === 1).length,
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
