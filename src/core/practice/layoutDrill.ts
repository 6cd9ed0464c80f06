import { seeded } from '../base/seeded.ts';
import type { Statics } from '../statics/result.ts';
import type { Truss } from '../truss/result.ts';
import { type Question, type QuestionKind, questionBank } from './questions.ts';
import { type Card, dueOn } from './schedule.ts';

/**
 * A drill: what is due today comes first, at most half of it, then new questions of the kinds asked for, in turn.
 *
 * @param day  number of the day, handed in by the rim
 */
export const drill = (
  truss: Truss,
  solved: Statics | null,
  ask: { readonly seed: string; readonly kinds: readonly QuestionKind[]; readonly count: number },
  cards: readonly Card[] = [],
  day = 0,
): readonly Question[] => {
  const bank = questionBank(truss, solved);
  const chance = seeded(ask.seed);
  const all = ask.kinds.flatMap((kind) =>
    bank[kind].map((one) => ({ kind, one, key: `${kind}:${one.subject}` })),
  );
  const due = dueOn(cards, day).flatMap((card) => all.find(({ key }) => key === card.id) ?? []);
  const chosen = due.slice(0, Math.ceil(ask.count / 2));
  const kinds = ask.kinds.filter((kind) => bank[kind].length > 0);
  const taken = new Set(chosen.map(({ key }) => key));
  for (let k = 0; chosen.length < ask.count && taken.size < all.length; k++) {
    const kind = kinds[k % kinds.length]!;
    const fresh = all.filter((one) => one.kind === kind && !taken.has(one.key));
    if (fresh.length === 0) continue;
    const next = chance.pick(fresh);
    chosen.push(next);
    taken.add(next.key);
  }
  return chosen.map(({ one, key }) => one.make(`${ask.seed} ${key}`));
};
