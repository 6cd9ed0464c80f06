import type { Disposition, Reason } from '../disposition/result.ts';
import type { Choice, Damage, Finding } from '../job/jobSchema.ts';
import type { Coverage } from '../walkRound/result.ts';

/** The parts of an assessment that marking reads: the trainee's own and the hidden one, both from the same `assess`. */
export interface Assessed {
  readonly coverage: Coverage;
  readonly disposition: Disposition;
}

/** A member or cluster with damage, as the two assessments have it. */
export interface Called {
  readonly id: string;
  readonly truth: readonly Damage[];
  readonly called: readonly Damage[];
}

export interface SizeMark {
  readonly id: string;
  readonly damage: Damage;
  readonly field: string;
  readonly gotIn: number;
  readonly trueIn: number;
  /** Two standard deviations of the roughest reading, and a 32nd to write it down. */
  readonly withinIn: number;
  readonly right: boolean;
}

/** What the rules loaded answer to a trainee's choice, on the true findings. */
export interface ChoiceMark {
  readonly id: string;
  readonly choice: Choice;
  readonly answer: 'applies' | 'doesNotApply' | 'cannotSay' | 'nothingThere';
  readonly reasons: readonly Reason[];
}

export interface Marked {
  readonly hits: readonly Called[];
  /** Found, and called by another kind of damage. */
  readonly otherKind: readonly Called[];
  readonly misses: readonly Called[];
  readonly falseCalls: readonly Called[];
  readonly sizes: readonly SizeMark[];
  readonly choices: readonly ChoiceMark[];
}

/** A bow and a kink are both a bent tube. */
const family = (damage: Damage): string => (damage === 'kink' ? 'bow' : damage);

const sizeFields = ['depthIn', 'crackIn', 'wallLeftIn'] as const;

const sizesOf = (got: readonly Finding[], truth: readonly Finding[]): readonly SizeMark[] =>
  truth.flatMap((real) => {
    const mine = got.findLast((f) => f.of === real.of && family(f.damage) === family(real.damage));
    return sizeFields.flatMap((field): SizeMark[] => {
      const [gotIn, trueIn] = [mine, real].map((f) => (f as Readonly<Record<string, unknown>>)?.[field]);
      if (typeof gotIn !== 'number' || typeof trueIn !== 'number') return [];
      const withinIn = real.damage === 'thinned' ? 0.003 : 1 / 8 + 1 / 32;
      const right = Math.abs(gotIn - trueIn) <= withinIn + 1e-9;
      return [{ id: real.of, damage: real.damage, field, gotIn, trueIn, withinIn, right }];
    });
  });

const hurt = (a: Assessed): ReadonlyMap<string, readonly Damage[]> =>
  new Map(a.coverage.marks.filter((m) => m.damage.length > 0).map((m) => [m.id, m.damage]));

/**
 * A trainee's assessment against the hidden one. Both come from `assess`: what counts as a finding, and what the rules
 * answer to a repair chosen, is said by its stages and by nothing here.
 */
export const mark = (trainee: Assessed, truth: Assessed): Marked => {
  const [mine, real] = [hurt(trainee), hurt(truth)];
  const ids = truth.coverage.marks.map((m) => m.id).filter((id) => mine.has(id) || real.has(id));
  const all = ids.map((id): Called => ({ id, truth: real.get(id) ?? [], called: mine.get(id) ?? [] }));
  const sameKind = ({ truth: t, called }: Called): boolean => {
    const said = new Set(called.map(family));
    return t.every((damage) => said.has(family(damage)));
  };
  const found = all.filter((c) => c.truth.length > 0 && c.called.length > 0);
  const rows = new Map(truth.disposition.rows.map((row) => [row.id, row]));
  const choices = trainee.coverage.marks.flatMap(({ id, choice }): ChoiceMark[] => {
    if (!choice) return [];
    const option = rows.get(id)?.options.find((one) => one.choice === choice);
    return [
      option && real.has(id)
        ? { id, choice, answer: option.answer, reasons: option.reasons }
        : { id, choice, answer: 'nothingThere', reasons: [] },
    ];
  });
  return {
    hits: found.filter(sameKind),
    otherKind: found.filter((c) => !sameKind(c)),
    misses: all.filter((c) => c.called.length === 0),
    falseCalls: all.filter((c) => c.truth.length === 0),
    sizes: sizesOf(trainee.coverage.findings, truth.coverage.findings),
    choices,
  };
};
