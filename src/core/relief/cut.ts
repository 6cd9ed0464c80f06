import type { Choice } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import { type Effect, rangeOf } from './effect.ts';
import type { CutCandidate } from './result.ts';
import type { Shop } from './shop.ts';
import type { Tier } from './tier.ts';
import { whereToSaw } from './whereToSaw.ts';

/** One possible cut before it is put into words: figures and where it belongs. */
export interface Cut {
  readonly member: Member;
  readonly index: number;
  readonly tier: Tier;
  readonly hops: number;
  readonly effect: Effect | null;
}

const clip = (share: number): number => Math.min(1, Math.max(0, share));

/** Source relief as shown: clipped to 0…1. */
export const sourceOf = (e: Effect): { readonly low: number; readonly high: number } | null => {
  if (!e.source) return null;
  const { low, high } = rangeOf(e.source);
  return { low: clip(low), high: clip(high) };
};

/** Decisions that scrap a tube from cluster to cluster; a splice leaves its two ends standing. */
const scrapWhole: ReadonlySet<Choice | undefined> = new Set(['replace', 'rebuild']);

/** The place to saw one tube. */
export const sawPlace = (shop: Shop, cut: Cut): CutCandidate['whereToSaw'] =>
  whereToSaw(
    cut.member,
    cut.tier,
    scrapWhole.has(shop.marks.get(cut.member.id)?.choice),
    shop.findings(cut.member.id),
    shop.reach.get(cut.member.from)!,
    shop.reach.get(cut.member.to)!,
  );
