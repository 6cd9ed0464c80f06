import type { Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { Member } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import type { Units } from '../show.ts';
import type { Since } from '../since.ts';
import { clusterLine, memberWords } from '../words/names.ts';

/** What every table is made of: a job, its results, and the units a person reads in. */
export interface Showing {
  readonly job: Job;
  readonly assessment: Assessment;
  readonly units: Units;
  /** An older state that this one is held against, where one is named. */
  readonly since?: Since;
}

/** The raw length in the unit a column says: millimetres when the person reads millimetres. */
export const rawLength = (valueIn: number | undefined | null, units: Units): number | null =>
  valueIn === undefined || valueIn === null ? null : units === 'mm' ? valueIn * 25.4 : valueIn;

export const byId = <T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [thing.id, thing]));

/** What an id is, in words: a member, a cluster, or the id itself when the truss has neither. */
export const wordsOf = (showing: Showing): ((id: string) => string) => {
  const members = byId(showing.assessment.truss.members);
  const clusters = byId(showing.assessment.truss.clusters);
  return (id) => {
    const member = members.get(id);
    if (member) return memberWords(member);
    const cluster = clusters.get(id);
    return cluster ? clusterLine(cluster).replace(` · ${id}`, '') : 'not in the truss';
  };
};

export const marksById = (showing: Showing): ReadonlyMap<string, Mark> =>
  byId(showing.assessment.coverage.marks);

/** The opposite-hand twin of a member, when it has one. */
export const twinOf = (showing: Showing): ((member: Member) => string | undefined) => {
  const twins = new Map<string, string>();
  for (const pair of showing.assessment.truss.pairs) {
    twins.set(pair.left, pair.right);
    twins.set(pair.right, pair.left);
  }
  return (member) => twins.get(member.id);
};
