import type { EstimateLine } from '../../core/estimate/result.ts';
import type { Decision, Finding, JobRecord, Photo } from '../../core/job/jobSchema.ts';
import { type Standing, standing } from '../../core/job/standing.ts';
import { showTime } from '../show.ts';
import type { Since } from '../since.ts';
import type { Showing } from '../tables/showing.ts';
import { choiceWords, damageTags } from '../tags.ts';
import { findingSize } from '../words/findings.ts';
import { listWords } from '../words/names.ts';
import { recordNoun } from '../words/supplement.ts';

/** Why something is different, in words with the record's id, and the photos of it. */
export interface Cause {
  readonly words: string;
  readonly photos: readonly Photo[];
}

const photoOf = (live: Standing, finding: Finding): readonly Photo[] => {
  const own = live.photos.filter((photo) => photo.finding === finding.id);
  return own.length > 0 ? own : live.photos.filter(({ of, finding: f }) => of === finding.of && !f).slice(-1);
};

/** What stands now and did not then, or the other way round, by the member or cluster it is about. */
const newOf = <R extends { readonly id: string }>(now: readonly R[], then: readonly R[]): readonly R[] => {
  const known = new Set(then.map(({ id }) => id));
  return now.filter(({ id }) => !known.has(id));
};

/** What was entered since an older state, counted by kind: "2 findings and 1 decision". */
export const newSince = (since: Since, records: readonly JobRecord[]): string => {
  const kinds = newOf(records, since.job.records).map(({ kind }) => kind);
  return kinds.length === 0
    ? 'nothing'
    : listWords([...new Set(kinds)].map((kind) => recordNoun(kind, kinds.filter((k) => k === kind).length)));
};

/** Findings and decisions that came and went since an older state, and for any line of the estimate which of them caused it. */
export const causesOf = (since: Since, { job, units }: Showing) => {
  const [then, live] = [standing(since.job.records), standing(job.records)];
  const found = newOf(live.findings, then.findings);
  const gone = newOf(then.findings, live.findings);
  const decided = newOf(live.decisions, then.decisions);
  const undecided = newOf(then.decisions, live.decisions).filter(
    ({ of }) => !live.decisions.some((d) => d.of === of),
  );
  const rates = newOf(live.rates, then.rates);

  const findingCause = (finding: Finding): Cause => ({
    words: `${damageTags[finding.damage].word} on ${finding.of}, ${findingSize(finding, units)} (finding ${finding.id})`,
    photos: photoOf(live, finding),
  });
  const decisionWords = ({ of, choice, by, at, id }: Decision): string =>
    `${of} decided: ${choiceWords[choice]}, ${by} ${showTime(at)} (record ${id})`;
  /** The newest reason for anything about a member or cluster: a finding first, then a decision. */
  const causeOf = (of: string | undefined): Cause => {
    if (of === undefined)
      return {
        words: 'nothing of its own: follows from the tubes it serves',
        photos: [],
      };
    const finding = found.findLast((f) => f.of === of);
    if (finding) return findingCause(finding);
    const lost = gone.findLast((f) => f.of === of);
    if (lost) return { words: `finding ${lost.id} corrected or withdrawn`, photos: [] };
    const decision = decided.findLast((d) => d.of === of) ?? undecided.findLast((d) => d.of === of);
    const why = live.findings.findLast((f) => f.of === of);
    if (decision)
      return {
        words: [decisionWords(decision), ...(why ? [`because of ${findingCause(why).words}`] : [])].join(
          '; ',
        ),
        photos: why ? photoOf(live, why) : [],
      };
    return {
      words: [
        ...(why ? [`for ${findingCause(why).words}`] : []),
        'nothing new on it: follows from what else is new since then',
      ].join('; '),
      photos: why ? photoOf(live, why) : [],
    };
  };
  const lineCause = (line: EstimateLine): Cause => {
    const rate = rates.find(({ id }) => id === line.record);
    return rate
      ? { words: `rate entered by ${rate.by}, ${showTime(rate.at)} (record ${rate.id})`, photos: [] }
      : causeOf(line.of);
  };
  return { found, gone, decided, undecided, findingCause, decisionWords, causeOf, lineCause };
};
