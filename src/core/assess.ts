import type { Ask, Assessment } from './assessment.ts';
import { disposition } from './disposition/disposition.ts';
import { estimate } from './estimate/estimate.ts';
import { takeoff } from './estimate/takeoff.ts';
import type { Job } from './job/jobSchema.ts';
import { standing } from './job/standing.ts';
import { loadPath } from './loadPath/loadPath.ts';
import { lockedIn } from './lockedIn/lockedIn.ts';
import { remember } from './memo.ts';
import { plan } from './plan/plan.ts';
import { relief } from './relief/relief.ts';
import { splice } from './splice/splice.ts';
import { heldNow } from './statics/held.ts';
import { prepareFrame } from './statics/prepareFrame.ts';
import { statics } from './statics/statics.ts';
import { straighten } from './straighten/straighten.ts';
import { holdPoints } from './trammel/holdPoints.ts';
import { openTubes } from './trammel/openTubes.ts';
import { planOf } from './trammel/plan.ts';
import { trammel } from './trammel/trammel.ts';
import { expandTruss } from './truss/truss.ts';
import { checkAgainstTruss } from './walkRound/checkAgainstTruss.ts';
import { walkRound } from './walkRound/walkRound.ts';

const plain = {
  standing,
  expandTruss,
  walkRound,
  heldNow,
  prepareFrame,
  statics,
  measuringPlan: planOf,
  openTubes,
  trammel,
  holdPoints,
  lockedIn,
  loadPath,
  relief,
  disposition,
  straighten,
  splice,
  plan,
  takeoff,
  estimate,
};
export type Stages = typeof plain;

/** Stages that each remember their latest call, so that one changed fact reworks only what stands behind it. */
export const rememberingStages = (): Stages =>
  Object.fromEntries(Object.entries(plain).map(([name, stage]) => [name, remember(stage)])) as Stages;

/**
 * Every result of a job. The only way to a result: scene, panels, report and terminal show this and nothing else.
 *
 * @param ask  members to work the relief and load path for, besides every member with a finding or decision
 * @param use  stages; the worker and tests hand in remembering ones
 */
export const assess = (job: Job, ask: Ask = {}, use: Stages = plain): Assessment => {
  const live = use.standing(job.records);
  const model = live.model ?? job.model;
  const truss = use.expandTruss(model);
  const coverage = use.walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
  const support = use.heldNow(truss, model, live.held);
  const frame = use.prepareFrame(truss, support);
  const solved = use.statics(truss, model, support, frame);
  const planned = use.measuringPlan(truss, live.findings, live.manual);
  const now = use.openTubes(live.progress);
  const distances = use.trammel(
    truss,
    model,
    live.readings,
    live.findings,
    live.manual,
    frame,
    planned,
    now.members,
    now.pushes,
  );
  const stops = use.holdPoints(
    truss,
    distances,
    planned,
    frame,
    live.findings,
    live.decisions,
    live.manual,
    live.progress,
  );
  const locked = use.lockedIn(truss, frame, live.findings, distances, solved);
  const { readings, mishap, photos, notes } = live;
  const strays = checkAgainstTruss({ readings, held: [], mishap, photos, notes }, truss);
  const hurt = coverage.marks.filter((m) => m.kind === 'member' && (m.findings.length > 0 || m.choice));
  const known = new Set(truss.members.map((m) => m.id));
  const targets = [
    ...new Set([...hurt.map((m) => m.id), ...(ask.targets ?? []).filter((id) => known.has(id))]),
  ].sort();
  const paths = use.loadPath(truss, model, frame, solved, coverage, locked, live.mishap, targets);
  const relieved = use.relief(truss, model, support, frame, coverage, locked, solved, targets, ask.targets);
  const disposed = use.disposition(truss, coverage, live.manual);
  const straightened = use.straighten(truss, coverage, live.manual, live.progress);
  const splices = use.splice(truss, coverage, disposed, live.manual);
  const steps = use.plan(
    truss,
    support,
    frame,
    coverage,
    distances,
    stops.holds,
    locked,
    relieved,
    disposed,
    straightened,
    splices,
    readings,
    live.progress,
    photos,
    live.manual,
  );
  return {
    truss,
    coverage,
    statics: solved,
    trammel: { ...distances, holds: stops.holds, issues: [...distances.issues, ...stops.issues] },
    lockedIn: locked,
    loadPath: paths,
    relief: relieved,
    disposition: disposed,
    straighten: straightened,
    splice: splices,
    plan: steps,
    takeoff: use.takeoff(truss, coverage, splices, live.manual),
    estimate: use.estimate(coverage, paths, steps, live.rates, live.manual),
    issues: [...live.issues, ...strays],
  };
};
