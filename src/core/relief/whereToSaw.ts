import type { Finding } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import type { WhereToSaw } from './result.ts';
import type { Tier } from './tier.ts';

/** One scarf at 30° to the axis, cot 30° × outside diameter. Source: AC 43.13-1B para 4-92 (30° ends), geometry. */
const SCARF = Math.sqrt(3);

/** Stretch of a member that a finding covers, from its `from` cluster; null when its place is not given. */
const extent = (member: Member, f: Finding): readonly [number, number] | null => {
  if (!f.place) return null;
  const at = f.place.from === member.to ? member.lengthIn - f.place.atIn : f.place.atIn;
  const along =
    f.damage === 'dent' || f.damage === 'hole'
      ? (f.alongIn ?? 0)
      : f.damage === 'crack'
        ? (f.crackIn ?? 0)
        : 0;
  return [at - along / 2, at + along / 2];
};

/**
 * Where along the tube to saw: inside the length to be scrapped, and clear of both finished cuts by one scarf.
 *
 *   clear = 1.732 × outside diameter
 *
 * A tube to be replaced is scrap from cluster to cluster; its finished cuts are taken half the largest tube's diameter
 * from each cluster. Otherwise the saw goes in at the damage, and the finished cuts must find room beside it.
 *
 * @param reachFrom  half the largest outside diameter at the member's `from` cluster, inches; `reachTo` at `to`
 * Source: 30° scarf geometry; common practice, no source, for the rest.
 */
export const whereToSaw = (
  member: Member,
  tier: Tier,
  replaced: boolean,
  findings: readonly Finding[],
  reachFrom: number,
  reachTo: number,
): WhereToSaw => {
  const clearIn = SCARF * member.section.odIn;
  const first = reachFrom + clearIn;
  const last = member.lengthIn - reachTo - clearIn;
  const place = (fromIn: number, toIn: number, why: WhereToSaw['why']): WhereToSaw => {
    const low = Math.max(fromIn, first);
    const high = Math.min(toIn, last);
    return low <= high
      ? { member: member.id, fromIn: low, toIn: high, clearIn, why }
      : { member: member.id, fromIn: null, toIn: null, clearIn, why: 'no-room-clear-of-both-cuts' };
  };
  if (member.guessed)
    return { member: member.id, fromIn: null, toIn: null, clearIn, why: 'place-of-a-cluster-guessed' };
  if (tier === 'sound') return place(first, last, 'own-splice-of-a-sound-tube');
  if (replaced) return place(first, last, 'whole-tube-is-scrap');
  const extents = findings.flatMap((f) => {
    const e = extent(member, f);
    return e ? [e] : [];
  });
  if (extents.length === 0)
    return { ...place(first, last, 'place-of-damage-not-given'), why: 'place-of-damage-not-given' };
  return place(Math.min(...extents.map((e) => e[0])), Math.max(...extents.map((e) => e[1])), 'at-the-damage');
};
