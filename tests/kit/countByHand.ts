import type { Job } from '../../src/core/job/jobSchema.ts';

/** States whose counts everybody reads, as the counting below finds them. */
export interface ByHand {
  readonly straighten: number;
  readonly splice: number;
  readonly replace: number;
  readonly undecided: number;
  readonly notLookedAt: number;
}

/**
 * Tubes by what is said of them, counted from the records of a job alone: no code of the program is asked.
 *
 * @param ids  every tube of the truss
 * Assumes: records only add and replace, nobody takes one back (so it is in the demo job).
 */
export const countByHand = (job: Job, ids: readonly string[]): ByHand => {
  const replaced = new Set(job.records.flatMap((r) => ('replaces' in r && r.replaces ? [r.replaces] : [])));
  const live = job.records.filter((r) => !replaced.has(r.id));
  const choiceOf = new Map<string, string>();
  for (const r of live) if (r.kind === 'decision') choiceOf.set(r.of, r.choice);
  const hurt = new Set(live.flatMap((r) => (r.kind === 'finding' ? [r.of] : [])));
  const seen = new Set(live.flatMap((r) => (r.kind === 'look' ? [r.of] : [])));
  const chosen = (...choices: readonly string[]): number =>
    ids.filter((id) => choices.includes(choiceOf.get(id) ?? '')).length;
  return {
    straighten: chosen('straighten', 'roundOut'),
    splice: chosen('splice'),
    replace: chosen('replace', 'rebuild'),
    undecided: ids.filter((id) => hurt.has(id) && !choiceOf.has(id)).length + chosen('refer'),
    notLookedAt: ids.filter((id) => !hurt.has(id) && !seen.has(id) && !choiceOf.has(id)).length,
  };
};
