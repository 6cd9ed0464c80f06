import type { Fact } from '../base/issue.ts';
import type { Answer, Missing, Reason } from './result.ts';
import { ruleOf } from './rules.ts';

/** What the rules say to one way of repair, before the user's own data are asked. */
export interface Judgement {
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  readonly conditions: readonly string[];
}

type Facts = Readonly<Record<string, Fact>>;
const reason =
  (says: Answer) =>
  (rule: string, facts: Facts = {}): Reason => ({ rule: ruleOf(rule).id, says, facts });

export const yes = reason('applies');
export const no = reason('doesNotApply');
export const unsure = reason('cannotSay');

const rank: Readonly<Record<Answer, number>> = { doesNotApply: 0, cannotSay: 1, applies: 2 };

/** One rule that forbids closes it; else one that is unsure, or a missing measurement, leaves it open. */
export const answerOf = ({ reasons, missing }: Judgement): Answer => {
  if (reasons.some((r) => r.says === 'doesNotApply')) return 'doesNotApply';
  return missing.length > 0 || reasons.some((r) => r.says === 'cannotSay') ? 'cannotSay' : 'applies';
};

/** Those that decided first, otherwise in the order they were asked. */
export const decidingFirst = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.toSorted((a, b) => rank[a.says] - rank[b.says]);

/** Each once, in order of first sight. */
export const once = (missing: readonly Missing[]): readonly Missing[] => {
  const seen = new Set<string>();
  return missing.filter((m) => {
    const key = `${m.name} ${m.finding ?? ''}`;
    return !seen.has(key) && seen.add(key);
  });
};
