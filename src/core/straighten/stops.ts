import { limitChecks } from '../disposition/ownLimits.ts';
import { numberOf } from '../disposition/rules.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import { sharesOf } from '../walkRound/findings.ts';
import type { Stop } from './result.ts';
import type { ShopLog } from './shopLog.ts';

/** A dent past what 4-94a lets a patch repair takes part in every bend of the tube. */
const pastPatch = (f: Finding, member: Member): boolean => {
  const { odIn, wallIn } = member.section;
  const limit = {
    depthOfDiameter: 'patch-dent-depth',
    widthOfCircumference: 'patch-dent-around',
    lengthOfDiameter: 'patch-dent-length',
  };
  return sharesOf(f, { odIn, wallIn, lengthIn: member.lengthIn }).some((s) => {
    const row = limit[s.of as keyof typeof limit];
    return row !== undefined && (s.figure.low ?? s.figure.value) > numberOf(row) + 1e-9;
  });
};

/**
 * What ends straightening: a kink, a crack, a parted or holed tube, wall lost, a dent past 4-94a; or a crack seen at the
 * bench. Wall and dent do not stop inside the user's own limit.
 * Source: AC 43.13-1B, 4-79, 4-91d, 4-94a; kink and wall: common practice, no source.
 */
export const stops = (
  member: Member,
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
  log: ShopLog,
): readonly Stop[] => {
  const within = new Set(
    limitChecks(member, findings, manual)
      .filter((c) => c.verdict === 'inside')
      .map((c) => c.finding),
  );
  const why = (f: Finding): Stop['why'] | null => {
    switch (f.damage) {
      case 'kink':
      case 'crack':
      case 'break':
      case 'hole':
        return f.damage;
      case 'thinned':
        return within.has(f.id) ? null : 'wall';
      case 'dent':
        return !within.has(f.id) && pastPatch(f, member) ? 'dent' : null;
      case 'bow':
      case 'oval':
      case 'other':
        return null;
      default:
        return f satisfies never;
    }
  };
  return [
    ...findings.flatMap((f): readonly Stop[] => {
      const reason = why(f);
      return reason ? [{ why: reason, record: f.id }] : [];
    }),
    ...log.epochs
      .flatMap((e) => e.inspected)
      .filter((i) => i.entry.result === 'crack')
      .map((i): Stop => ({ why: 'crack', record: i.record })),
  ];
};
