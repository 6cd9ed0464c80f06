import { type Choice, choices, type RecordOf } from '../job/jobSchema.ts';
import { roundOutOnly, straightenOnly } from './bend.ts';
import type { Here } from './findingsHere.ts';
import { fingerPlate, rebuild } from './joint.ts';
import { answerOf, decidingFirst, type Judgement, no, once, unsure, yes } from './judgement.ts';
import { patch } from './patch.ts';
import type { Option, Reason } from './result.ts';
import { replace, splice, splitSleeve } from './section.ts';

type Manual = readonly RecordOf<'manual'>[];

const judges = {
  straighten: straightenOnly,
  roundOut: roundOutOnly,
  patch,
  splitSleeve,
  splice,
  replace,
  fingerPlate,
  rebuild,
  refer: () => ({ reasons: [yes('refer')], missing: [], conditions: [] }),
} as const satisfies Record<Choice, (here: Here) => Judgement>;

/** Every way that needs a torch; closed where the part is outside the general weld rules. */
const welds: ReadonlySet<Choice> = new Set([
  'patch',
  'splitSleeve',
  'splice',
  'replace',
  'fingerPlate',
  'rebuild',
]);

const closed = (here: Here, choice: Choice): Judgement | null => {
  // An axle or oleo part is replaced as a part: 4-102d says so itself.
  const scope = here.scope.filter((s) => !(s === 'axle' && choice === 'replace'));
  if (!welds.has(choice) || scope.length === 0) return null;
  return {
    reasons: scope.map((s) => no(`scope-${s}`)),
    missing: scope.includes('unknownMaterial') ? [{ name: 'material' }] : [],
    conditions: [],
  };
};

const nothing = (here: Here, choice: Choice): Judgement | null =>
  here.placed.length > 0 || choice === 'refer' || (choice === 'replace' && here.member)
    ? null
    : { reasons: [unsure('nothing-found')], missing: [{ name: 'finding' }], conditions: [] };

/** Topics that speak of one choice: the general one, and the one for this member or cluster, which outranks it. */
const topics = (choice: Choice, id: string): readonly (readonly [allow: string, forbid: string])[] => {
  const pair = (tail: string): readonly [string, string] => [
    `allow:${choice}${tail}`,
    `forbid:${choice}${tail}`,
  ];
  return [pair(`:${id}`), pair('')];
};
/** The same said of straightening and rounding out by themselves. */
const onlyTopic = { straighten: 'straighten-only', roundOut: 'round-out-only' } as const;

/** The user's own word on a choice: the latest for this member, else the latest for all. */
const ownWord = (
  manual: Manual,
  choice: Choice,
  id: string,
): { says: boolean; record: RecordOf<'manual'> } | null => {
  const only = choice === 'straighten' || choice === 'roundOut' ? onlyTopic[choice] : null;
  for (const [k, [allow, forbid]] of topics(choice, id).entries()) {
    const alone = only && (k === 0 ? `${only}:${id}` : only);
    const record = manual.findLast((m) => m.topic === allow || m.topic === forbid || m.topic === alone);
    if (record) return { says: record.topic !== forbid, record };
  }
  return null;
};

/** Damage that stays a reason to forbid whatever is allowed: a cracked tube is never straightened and kept. */
const keeps = (choice: Choice, r: Reason): boolean =>
  (choice === 'straighten' || choice === 'roundOut') && r.rule === 'no-crack-kept';

/**
 * The user's own data put above the general rules. What it allows still lacks a close look for cracks where the general
 * rule asked for one.
 */
const withOwnWord = (judged: Judgement, manual: Manual, choice: Choice, id: string): Judgement => {
  const own = ownWord(manual, choice, id);
  if (!own) return judged;
  const facts = { record: own.record.id, source: own.record.source, words: own.record.words ?? null };
  const mine = (own.says ? yes : no)('manual', facts);
  const kept = judged.reasons.filter((r) => keeps(choice, r));
  return {
    reasons: [...kept, mine],
    missing: own.says ? judged.missing.filter((m) => m.name === 'crackInspection') : [],
    conditions: judged.conditions,
  };
};

/** Every way to go on with one member or cluster, in the order of the choices. */
export const optionsFor = (here: Here, manual: Manual): readonly Option[] =>
  choices.map((choice): Option => {
    const general = closed(here, choice) ?? nothing(here, choice) ?? judges[choice](here);
    const judged = withOwnWord(general, manual, choice, here.mark.id);
    return {
      choice,
      answer: answerOf(judged),
      reasons: decidingFirst(judged.reasons),
      missing: once(judged.missing),
      conditions: [...new Set(judged.conditions)],
    };
  });
