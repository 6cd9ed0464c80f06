import { type Figure, figure } from '../base/figure.ts';
import { type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import { verdictOf } from '../trammel/verdict.ts';
import type { Member } from '../truss/result.ts';
import type { LimitCheck } from './result.ts';

type Manual = readonly RecordOf<'manual'>[];
type Of = LimitCheck['of'];

/** A size as a length and as a share of what the trade divides it by; its standard deviation in inches. */
interface Size {
  readonly of: Of;
  readonly lengthIn: number;
  readonly overIn: number;
  readonly stdIn: number;
  readonly assumed: readonly string[];
}

/** Standard deviation of a shop reading when none is entered: straight edge and rule; caliper. Stated as assumed. */
const RULE_STD = 1 / 64;
const CALIPER_STD = 0.002;

/**
 * The size of a finding that a user's own limit may be set against; null: not measured; undefined: no such size.
 *
 *   bow over its chord · (Dmax − Dmin) over D · wall lost over wall · dent depth over D
 */
const sizeOf = (f: Finding, member: Member): Size | null | undefined => {
  const { odIn, wallIn } = member.section;
  switch (f.damage) {
    case 'bow':
    case 'kink': {
      if (f.depthIn === undefined) return null;
      const stdIn = f.stdIn ?? RULE_STD;
      const assumed = f.stdIn === undefined ? ['std-1/64'] : [];
      return { of: 'bow', lengthIn: f.depthIn, overIn: f.chordIn ?? member.lengthIn, stdIn, assumed };
    }
    case 'oval': {
      if (f.largestIn === undefined || f.smallestIn === undefined) return null;
      const lengthIn = f.largestIn - f.smallestIn;
      return {
        of: 'ovality',
        lengthIn,
        overIn: odIn,
        stdIn: CALIPER_STD * Math.SQRT2,
        assumed: ['std-caliper-.002'],
      };
    }
    case 'thinned': {
      if (f.wallLeftIn === undefined) return null;
      const lengthIn = wallIn - f.wallLeftIn;
      return {
        of: 'wallLoss',
        lengthIn,
        overIn: wallIn,
        stdIn: CALIPER_STD,
        assumed: ['std-caliper-.002', 'wall-as-drawn'],
      };
    }
    case 'dent': {
      if (f.depthIn === undefined) return null;
      return {
        of: 'dentDepth',
        lengthIn: f.depthIn,
        overIn: odIn,
        stdIn: CALIPER_STD,
        assumed: ['std-caliper-.002'],
      };
    }
    default:
      return undefined;
  }
};

const kindOf = { bow: 'bow', kink: 'bow', oval: 'ovality', thinned: 'wallLoss', dent: 'dentDepth' } as const;

/** A limit's value and unit; a bare `valueIn` is inches. */
const sizedBy = (m: RecordOf<'manual'>): { value: number; unit: 'in' | '1' | '%' } | null => {
  if (m.value !== undefined && (m.unit === 'in' || m.unit === '1' || m.unit === '%'))
    return m.value > 0 ? { value: m.value, unit: m.unit } : null;
  return m.valueIn !== undefined && m.valueIn > 0 ? { value: m.valueIn, unit: 'in' } : null;
};

/**
 * The user's limit for a size on one member: `limit:KIND:MEMBER`, else `limit:KIND`; the latest that has a value.
 * KIND: `bow`, `ovality`, `wallLoss`, `dentDepth`. Unit: inches, a share (of the chord, of D, of the wall, of D) or per cent.
 */
export const ownLimit = (manual: Manual, of: Of, member: string): Figure | null => {
  for (const topic of [`limit:${of}:${member}`, `limit:${of}`]) {
    const own = manual.findLast((m) => m.topic === topic && sizedBy(m) !== null);
    const said = own && sizedBy(own);
    if (own && said) return figure(said.value, said.unit, { kind: 'manual', ref: own.id });
  }
  return null;
};

const into = (unit: Figure['unit'], lengthIn: number, overIn: number): number =>
  unit === 'in' ? lengthIn : (lengthIn / overIn) * (unit === '%' ? 100 : 1);

/** A size against the user's own limit: inside, outside or cannot tell by its uncertainty; no limit, no verdict. */
export const againstOwn = (
  size: { readonly lengthIn: number; readonly overIn: number; readonly stdIn: number },
  limit: Figure | null,
  assumed: readonly string[],
  ref: string,
): { readonly measured: Figure; readonly verdict: 'inside' | 'outside' | 'cannotTell' | 'noLimit' } => {
  const unit = limit?.unit ?? 'in';
  const value = into(unit, size.lengthIn, size.overIn);
  const std = into(unit, size.stdIn, size.overIn);
  const measured = figure(value, unit, { kind: 'measured', ref }, assumed, { std });
  return { measured, verdict: verdictOf(value, std, limit?.value) };
};

/** Every finding's size against the user's own limits. There is no published one. */
export const limitChecks = (
  member: Member,
  findings: readonly Finding[],
  manual: Manual,
): readonly LimitCheck[] =>
  findings.flatMap((f): readonly LimitCheck[] => {
    const size = sizeOf(f, member);
    if (size === undefined) return [];
    const of = kindOf[f.damage as keyof typeof kindOf];
    const limit = ownLimit(manual, of, member.id);
    if (size === null) return [{ of, finding: f.id, measured: null, limit, verdict: 'notMeasured' }];
    return [{ of, finding: f.id, limit, ...againstOwn(size, limit, size.assumed, f.id) }];
  });

/** Limits the user entered that say nothing: no value above zero, or a unit that fits no size. */
export const limitIssues = (manual: Manual): readonly Issue[] =>
  manual
    .filter((m) => /^limit:(bow|ovality|wallLoss|dentDepth)(:|$)/.test(m.topic) && sizedBy(m) === null)
    .map((m) =>
      issue(
        'limit-without-value',
        `${atRecord(m.id)}.value`,
        { topic: m.topic, got: m.value ?? m.valueIn ?? null, unit: m.unit ?? null },
        'give-value-and-unit',
      ),
    );
