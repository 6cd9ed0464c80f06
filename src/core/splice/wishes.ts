import { type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import type { Stuff, Wish } from './design.ts';
import { parseTube } from './sleeveTable.ts';

type Manual = readonly RecordOf<'manual'>[];

/** `1 x .035` or `1 x .035, 4130N`. */
const stuffOf = (words: string | undefined): Stuff | null => {
  const [size, material] = (words ?? '').split(',').map((w) => w.trim());
  const tube = parseTube(size ?? '');
  return tube && { tube, ...(material ? { material } : {}) };
};

/**
 * What the user has set for one member by `manual` records, in place of the starting values; the latest of each counts.
 *
 * Topics: `splice-cut:MEMBER:CLUSTER` (`valueIn` from that cluster point to the cut, on the side nearest the damage),
 * `splice-clock:MEMBER` (`value`, clock position of the longest line), `splice-section:MEMBER` and
 * `splice-sleeve:MEMBER` (`words`: `1 x .035, 4130N`, the tube at hand).
 */
export const wishOf = (member: Member, manual: Manual): Wish => {
  const last = (topic: string) => manual.findLast((m) => m.topic === topic);
  const cut = (cluster: string) => last(`splice-cut:${member.id}:${cluster}`)?.valueIn;
  const [p, q] = [cut(member.from), cut(member.to)];
  const clock = last(`splice-clock:${member.id}`)?.value;
  const section = stuffOf(last(`splice-section:${member.id}`)?.words);
  const sleeve = stuffOf(last(`splice-sleeve:${member.id}`)?.words);
  return {
    cutsIn: [p, q === undefined ? undefined : member.lengthIn - q],
    ...(clock === undefined ? {} : { longClock: clock }),
    ...(section ? { section } : {}),
    ...(sleeve ? { sleeve } : {}),
  };
};

/** Records of tubes at hand that cannot be read. */
export const wishIssues = (manual: Manual): readonly Issue[] =>
  manual
    .filter((m) => /^splice-(section|sleeve):/.test(m.topic) && !stuffOf(m.words))
    .map((m) =>
      issue('splice-tube-unreadable', atRecord(m.id), { topic: m.topic, got: m.words ?? null }, 'write-tube'),
    );
