import type { Draft } from '../core/job/change.ts';
import type { RecordOf } from '../core/job/jobSchema.ts';
import { change } from './state/job.ts';
import { shopDeedText } from './text/shopDeeds.ts';

type Manual = Draft<RecordOf<'manual'>>;
type Progress = Draft<RecordOf<'progress'>>;

/** What a person logs at the bench, each as one named change. */

const log = (member: string, entry: Omit<Progress, 'step' | 'done'>, name: string): boolean =>
  change(
    { kind: 'addProgress', progress: { step: `straighten:${member}`, done: false, of: member, ...entry } },
    name,
  );

export const logStraightEdge = (
  member: string,
  edge: NonNullable<Progress['straightEdge']>[number],
): boolean => log(member, { straightEdge: [edge] }, shopDeedText.straightEdge(member));

export const logPush = (member: string, push: NonNullable<Progress['push']>): boolean =>
  log(member, { push }, shopDeedText.push(member));

export const logRoundness = (member: string, roundness: NonNullable<Progress['roundness']>): boolean =>
  log(member, { roundness }, shopDeedText.roundness(member));

export const logInspected = (member: string, inspected: NonNullable<Progress['inspected']>): boolean =>
  log(member, { inspected }, shopDeedText.inspected(member));

/** Takes the result as it stands, by name; the reason says why when no limit is loaded. */
export const acceptStraightened = (member: string, reason: string): boolean =>
  change(
    {
      kind: 'addProgress',
      progress: {
        step: `straighten:${member}`,
        done: true,
        of: member,
        ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
      },
    },
    shopDeedText.accepted(member),
  );

/** The user's own data: outranks the general rules, and says where it is from. */
export const setOwn = (manual: Manual, name: string): boolean => change({ kind: 'addManual', manual }, name);

/** One row of the fit-up card; what was seen of the material is written beside it. */
export const tickFitUp = (step: string, member: string, seen: string): boolean =>
  change(
    {
      kind: 'addProgress',
      progress: { step, done: true, of: member, ...(seen.trim() === '' ? {} : { reason: seen.trim() }) },
    },
    shopDeedText.fitUp(member),
  );

/** The closing row: gap, overlap and marks as found, seen by a second person. */
export const closeFitUp = (member: string, fitUp: NonNullable<Progress['fitUp']>): boolean =>
  change(
    { kind: 'addProgress', progress: { step: `fitUp:${member}`, done: true, of: member, fitUp } },
    shopDeedText.fitUpClosed(member),
  );
