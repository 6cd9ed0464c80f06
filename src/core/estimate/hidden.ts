import { figure } from '../base/figure.ts';
import { type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { LoadPath } from '../loadPath/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { type Band, bands, type HiddenBand, type NextHour, type Rate } from './result.ts';
import { type Chance, momentsWith, spreads } from './spreads.ts';
import { momentsOf } from './triangle.ts';

type Manual = readonly RecordOf<'manual'>[];

/** How many of the members nobody has looked at are in the first bands; ours, no source. */
const SIZES = { first: 10, second: 20, rest: Number.POSITIVE_INFINITY } as const satisfies Record<
  Band,
  number
>;

/** Five times a fifth of an hour is an hour, whatever the last bit says. */
const ALMOST = 1e-9;

/** Members nobody has looked at, as "look here next" ranks them; those it does not rank come last. */
const inRank = (coverage: Coverage, loadPath: LoadPath): readonly string[] => {
  const rank = new Map(loadPath.next.map((row) => [row.id, row.rank]));
  const at = (id: string): number => rank.get(id) ?? Number.POSITIVE_INFINITY;
  return coverage.notLookedAt.members
    .map((id, k) => ({ id, k }))
    .sort((p, q) => (at(p.id) === at(q.id) ? p.k - q.k : at(p.id) - at(q.id)))
    .map((m) => m.id);
};

/**
 * The members nobody has looked at, in bands, each with the user's chance that one of it is damaged (topic `hidden:first`,
 * `hidden:second`, `hidden:rest`; a share, or percent). No chance given: counted, not priced. None is shipped.
 */
export const hiddenBands = (
  coverage: Coverage,
  loadPath: LoadPath,
  manual: Manual,
  rate: Rate,
): { readonly bands: readonly HiddenBand[]; readonly issues: readonly Issue[] } => {
  const issues: Issue[] = [];
  let rest = inRank(coverage, loadPath);
  const made = bands.map((band): HiddenBand => {
    const members = rest.slice(0, SIZES[band]);
    rest = rest.slice(members.length);
    const record = manual.findLast((m) => m.topic === `hidden:${band}`);
    const chance = record?.value === undefined ? undefined : record.value / (record.unit === '%' ? 100 : 1);
    if (record && !(chance !== undefined && chance >= 0 && chance <= 1))
      issues.push(
        issue(
          'hidden-chance-unreadable',
          atRecord(record.id),
          { band, got: record.value ?? null },
          'write-a-share-0-to-1',
        ),
      );
    if (!record || chance === undefined || !(chance >= 0 && chance <= 1))
      return { band, members, chance: null, meanH: null, stdH: null };
    const found: Chance = { rate: rate.operation, chance, many: members.length, hours: rate.each };
    return {
      band,
      members,
      chance: figure(chance, '1', { kind: 'manual', ref: record.id }),
      record: record.id,
      meanH: momentsWith(found).mean,
      stdH: spreads([found]).byRate,
    };
  });
  return { bands: made, issues };
};

/**
 * What an hour of looking takes off the uncertainty, spent where it takes off most.
 *
 *   Var(E[X | looked]) = n p (1 − p) μ²:  what one knows then of n tubes, hurt or not
 *
 * @param stdH  of the total
 * Source: law of total variance. Assumes: looking tells, and what is found costs a rate's mean μ.
 */
export const nextHour = (
  priced: readonly HiddenBand[],
  look: Rate,
  hidden: Rate,
  stdH: number,
): NextHour | null => {
  const many = Math.max(1, Math.floor(1 / momentsOf(look.each).mean + ALMOST));
  const { mean } = momentsOf(hidden.each);
  const ways = priced.flatMap(({ band, members, chance }) => {
    const p = chance?.value ?? 0;
    const these = members.slice(0, many);
    const taken = these.length * p * (1 - p) * mean * mean;
    return taken > 0 ? [{ band, these, p, taken }] : [];
  });
  const best = ways.reduce<(typeof ways)[number] | undefined>(
    (top, w) => (top && top.taken >= w.taken ? top : w),
    undefined,
  );
  if (!best) return null;
  return {
    band: best.band,
    members: best.these,
    stdBeforeH: stdH,
    stdAfterH: Math.sqrt(Math.max(0, stdH * stdH - best.taken)),
    finds: best.these.length * best.p,
  };
};
