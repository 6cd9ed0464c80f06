import type { Figure } from '../base/figure.ts';
import { againstOwn, ownLimit } from '../disposition/ownLimits.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import type { AxisFit, Check, Roundness, StraightenRow } from './result.ts';
import { roundOut } from './roundOut.ts';
import type { Epoch, ShopLog } from './shopLog.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Caliper on a diameter, one standard deviation, when none is entered. Stated as assumed. */
const CALIPER_STD = 0.002;

/** Diameters read at the bench, against the user's own limit, with how to close the blocks. */
export const roundnessOf = (
  member: Member,
  read: Epoch['roundness'],
  manual: Manual,
  yieldPsi: Figure,
): readonly Roundness[] => {
  const { odIn, wallIn, elasticPsi } = member.section;
  const limit = ownLimit(manual, 'ovality', member.id);
  return read.map(({ record, entry }): Roundness => {
    const { largestIn, smallestIn } = entry;
    const assumed = entry.stdIn === undefined ? ['std-caliper-.002'] : [];
    const size = {
      lengthIn: largestIn - smallestIn,
      overIn: odIn,
      stdIn: (entry.stdIn ?? CALIPER_STD) * Math.SQRT2,
    };
    const { verdict } = againstOwn(size, limit, assumed, record);
    const share = (100 * size.lengthIn) / odIn;
    return {
      atIn: entry.atIn ?? null,
      largestIn,
      smallestIn,
      ovality: {
        value: share,
        unit: '%',
        std: (100 * size.stdIn) / odIn,
        basis: { kind: 'measured', ref: record },
        assumed,
      },
      limit,
      verdict,
      ...roundOut({ odIn, wallIn }, elasticPsi, yieldPsi),
      record,
    };
  });
};

/** Worst first. */
const worst = ['outside', 'cannotTell', 'noLimit', 'inside'] as const;

const straightEdgeCheck = (member: Member, fit: AxisFit | null, manual: Manual): Check => {
  if (!fit) return { of: 'straightEdge', verdict: 'notDone' };
  const limit = ownLimit(manual, 'bow', member.id);
  const size = { lengthIn: fit.bowIn.value, overIn: fit.chordIn, stdIn: fit.bowIn.std ?? 0 };
  const { verdict } = againstOwn(size, limit, fit.bowIn.assumed, fit.records.join(', '));
  // One side read can show that it is bent, never that it is straight.
  const said = fit.allRound || verdict === 'outside' ? verdict : 'cannotTell';
  return { of: 'straightEdge', verdict: said, ...(fit.records[0] && { record: fit.records[0] }) };
};

const looked = (epoch: Epoch, of: 'bend' | 'pressPoints' | 'endWelds'): Check => {
  const last = epoch.inspected.findLast((i) => i.entry.place === of);
  return last ? { of, verdict: last.entry.result, record: last.record } : { of, verdict: 'notDone' };
};

/**
 * What must hold since the last push, each by itself: straight edge all round, roundness, and bend, press points and end
 * welds looked at again for cracks.
 *
 * @param fit  from readings since the last push; null when there are none
 * Source: common practice, no source; the limits are the user's own.
 */
export const checksOf = (
  member: Member,
  fit: AxisFit | null,
  roundness: readonly Roundness[],
  epoch: Epoch,
  manual: Manual,
): readonly Check[] => {
  const verdict = worst.find((w) => roundness.some((r) => r.verdict === w));
  const at = roundness.findLast((r) => r.verdict === verdict);
  return [
    straightEdgeCheck(member, fit, manual),
    verdict && at ? { of: 'roundness', verdict, record: at.record } : { of: 'roundness', verdict: 'notDone' },
    looked(epoch, 'bend'),
    looked(epoch, 'pressPoints'),
    looked(epoch, 'endWelds'),
  ];
};

/** What may be said of the member, from its stops and checks. Never more than the weakest check. */
export const saysOf = (log: ShopLog, stopped: boolean, checks: readonly Check[]): StraightenRow['says'] => {
  const any = (...of: readonly Check['verdict'][]): boolean => checks.some((c) => of.includes(c.verdict));
  if (stopped || any('crack')) return 'stop';
  const begun = log.pushes.length > 0 || log.epochs.some((e) => e.roundness.length + e.inspected.length > 0);
  if (!begun) return 'notStarted';
  if (any('outside')) return 'outside';
  if (any('notDone')) return 'notChecked';
  if (any('cannotTell')) return 'cannotTell';
  return any('noLimit') ? 'straightenedNoLimit' : 'straight';
};
