import { readFileSync } from 'node:fs';
import { disposition } from '../../../src/core/disposition/disposition.ts';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { readJob, readModel } from '../../../src/core/job/read.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { lockedIn } from '../../../src/core/lockedIn/lockedIn.ts';
import { remember } from '../../../src/core/memo.ts';
import { plan } from '../../../src/core/plan/plan.ts';
import { relief } from '../../../src/core/relief/relief.ts';
import { splice } from '../../../src/core/splice/splice.ts';
import { heldNow } from '../../../src/core/statics/held.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import { straighten } from '../../../src/core/straighten/straighten.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';

/** Stages that remember, so that jobs which differ in progress alone share what stands before the plan. */
const use = {
  expandTruss: remember(expandTruss),
  walkRound: remember(walkRound),
  heldNow: remember(heldNow),
  prepareFrame: remember(prepareFrame),
  statics: remember(statics),
  trammel: remember(trammel),
  lockedIn: remember(lockedIn),
  relief: remember(relief),
  disposition: remember(disposition),
  straighten: remember(straighten),
  splice: remember(splice),
};

/** A job through the stages up to the plan, as `assess` chains them, without what the plan does not read. */
export const planJob = (job: Job) => {
  const live = standing(job.records);
  const model = live.model ?? job.model;
  const truss = use.expandTruss(model);
  const coverage = use.walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
  const support = use.heldNow(truss, model, live.held);
  const frame = use.prepareFrame(truss, support);
  const distances = use.trammel(truss, model, live.readings, live.findings, live.manual);
  const solved = use.statics(truss, model, support, frame);
  const locked = use.lockedIn(truss, frame, live.findings, distances, solved);
  const targets = coverage.marks
    .filter((m) => m.kind === 'member' && (m.findings.length > 0 || m.choice))
    .map((m) => m.id)
    .sort();
  const relieved = use.relief(truss, model, support, frame, coverage, locked, solved, targets);
  const disposed = use.disposition(truss, coverage, live.manual);
  const straightened = use.straighten(truss, coverage, live.manual, live.progress);
  const splices = use.splice(truss, coverage, disposed, live.manual);
  const made = plan(
    truss,
    support,
    frame,
    coverage,
    distances,
    distances.holds ?? [],
    locked,
    relieved,
    disposed,
    straightened,
    splices,
    live.readings,
    live.progress,
    live.photos,
    live.manual,
  );
  return { live, truss, coverage, support, frame, distances, locked, relief: relieved, splices, plan: made };
};

const opened = <T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (!result.ok) throw new Error('A model or job of the repository does not open.');
  return result.value;
};

export const modelNamed = (name: string): Model =>
  opened(readModel(readFileSync(`models/${name}.json`, 'utf8')));
export const groundLoop = (): Job => opened(readJob(readFileSync('demo-data/ground-loop.json', 'utf8')));

let count = 0;
/** A record with an invented stamp; each later than the one before. */
export const rec = (fields: Readonly<Record<string, unknown>>): JobRecord => {
  count += 1;
  const minute = String(Math.floor(count / 60) % 60).padStart(2, '0');
  const second = String(count % 60).padStart(2, '0');
  return {
    id: `t-${count}`,
    by: 'Ana Invented',
    at: `2026-06-01T10:${minute}:${second}Z`,
    device: 'test',
    ...fields,
  } as unknown as JobRecord;
};

export const jobWith = (model: Model, records: readonly JobRecord[]): Job => ({
  ...jobFromModel(model, 'Test', 'job'),
  records: [...records],
});
