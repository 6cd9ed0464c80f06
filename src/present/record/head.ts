import type { Job } from '../../core/job/jobSchema.ts';
import { latestOf } from '../../core/job/stampOrder.ts';
import { standing } from '../../core/job/standing.ts';
import { expandTruss } from '../../core/truss/truss.ts';
import { walkRound } from '../../core/walkRound/walkRound.ts';
import { showTime, type Units } from '../show.ts';
import { countWords } from '../words/names.ts';
import type { ReportHead } from './sections.ts';

/** What a report needs besides the job and its results; all of it is printed. */
export interface ReportOptions {
  readonly paper: 'a4' | 'letter';
  readonly units: Units;
  /** Version of the program. */
  readonly version: string;
  /** Digest of the job document, made at the rim. */
  readonly hash: string;
}

/** What nobody has looked at, for the head of every sheet. */
const unseenLine = ({ model, records }: Job): string => {
  const live = standing(records);
  const truss = expandTruss(live.model ?? model);
  const { notLookedAt } = walkRound(
    truss,
    live.looks,
    live.findings,
    live.decisions,
    live.areas,
    live.clashes,
  );
  return `Not looked at: ${notLookedAt.members.length} of ${countWords(truss.members.length, 'member')}, ${notLookedAt.clusters.length} of ${countWords(truss.clusters.length, 'cluster')}`;
};

/** What every sheet says of the job. The date is the latest record's, so that the same job prints the same bytes on any day. */
export const reportHead = (job: Job, options: ReportOptions): ReportHead => {
  const latest = latestOf(job.records);
  return {
    unseen: unseenLine(job),
    title: 'Damage report',
    job: job.name,
    aircraft: job.aircraft ?? 'not entered',
    practice: job.purpose === 'practice',
    date: latest ? showTime(latest.at) : 'no record yet',
    revision: `${countWords(job.records.length, 'record')} · ${options.hash.slice(0, 12)}`,
    version: options.version,
    paper: options.paper,
  };
};
