import { create } from 'zustand';
import type { Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { type Standing, standing } from '../../core/job/standing.ts';
import { remember } from '../../core/memo.ts';
import type { Cluster, Member, Truss } from '../../core/truss/result.ts';
import { expandTruss } from '../../core/truss/truss.ts';
import type { Coverage, Mark } from '../../core/walkRound/result.ts';
import { walkRound } from '../../core/walkRound/walkRound.ts';
import { type Client, makeClient } from '../worker/client.ts';
import { share } from '../worker/share.ts';
import { afterFrame } from './afterFrame.ts';
import { useJob } from './job.ts';
import { useView } from './view.ts';

/** Truss and coverage, worked on this thread within a frame of the change, so that a tag shows at once. */
export interface AtOnce {
  readonly job: Job;
  /** The records that count. */
  readonly live: Standing;
  readonly truss: Truss;
  readonly coverage: Coverage;
  readonly members: ReadonlyMap<string, Member>;
  readonly clusters: ReadonlyMap<string, Cluster>;
  readonly marks: ReadonlyMap<string, Mark>;
}

/** The latest answer of the worker, for which job it is, and whether a newer one is being worked out. */
export interface AnswerState {
  readonly atOnce: AtOnce | null;
  readonly assessment: Assessment | null;
  /** The job the assessment is for; another one than the open job while a newer answer is awaited. */
  readonly forJob: Job | null;
  readonly working: boolean;
  /** The stage being worked on. */
  readonly stage: string | null;
  /** Stopped by the person; the next change or "work it out" starts again. */
  readonly stopped: boolean;
  readonly fault: string | null;
}

const nothing: AnswerState = {
  atOnce: null,
  assessment: null,
  forJob: null,
  working: false,
  stage: null,
  stopped: false,
  fault: null,
};

export const useAnswer = create<AnswerState>(() => nothing);

const quick = {
  standing: remember(standing),
  expandTruss: remember(expandTruss),
  walkRound: remember(walkRound),
  members: remember(
    (truss: Truss): ReadonlyMap<string, Member> => new Map(truss.members.map((m) => [m.id, m])),
  ),
  clusters: remember(
    (truss: Truss): ReadonlyMap<string, Cluster> => new Map(truss.clusters.map((c) => [c.id, c])),
  ),
  marks: remember(
    (coverage: Coverage): ReadonlyMap<string, Mark> => new Map(coverage.marks.map((m) => [m.id, m])),
  ),
};

const workAtOnce = (job: Job): AtOnce => {
  const live = quick.standing(job.records);
  const truss = quick.expandTruss(live.model ?? job.model);
  const coverage = quick.walkRound(
    truss,
    live.looks,
    live.findings,
    live.decisions,
    live.areas,
    live.clashes,
  );
  return {
    job,
    live,
    truss,
    coverage,
    members: quick.members(truss),
    clusters: quick.clusters(truss),
    marks: quick.marks(coverage),
  };
};

let client: Client | undefined;

const ask = (): void => {
  const { job, key } = useJob.getState();
  if (!job || key === null) return;
  client ??= makeClient(
    ({ key: forKey, job: forJob }, answer) => {
      const open = useJob.getState();
      if (open.key !== forKey) return;
      const upToDate = open.job === forJob;
      if (answer.kind === 'fault')
        useAnswer.setState({ fault: answer.fault, working: !upToDate, stage: null });
      else
        useAnswer.setState((before) => ({
          assessment: share(before.assessment, answer.assessment),
          forJob,
          fault: null,
          working: !upToDate,
          stage: null,
        }));
    },
    (stage) => useAnswer.setState({ stage }),
  );
  const members = useAnswer.getState().atOnce?.members;
  const targets = useView.getState().selected.filter((id) => members?.has(id));
  client.put({ key, job, ask: { targets } });
};

/** Copying the job to the worker takes longer than a tag may: the question goes after the frame that shows the change. */
const asking = afterFrame(ask);

const put = (): void => {
  useAnswer.setState({ working: true, stopped: false });
  asking.soon();
};

/** Ends the work in hand; what was answered before stays on the screen, marked as older. */
export const stopWork = (): void => {
  asking.drop();
  client?.stop();
  useAnswer.setState({ working: false, stopped: true, stage: null });
};

/** Works the open job out again. */
export const workAgain = (): void => put();

/** Follows the open job and the selection. Called once, at the start. */
export const followJob = (): (() => void) => {
  const open = (job: Job | null): void => {
    if (!job) {
      useAnswer.setState(nothing);
      return;
    }
    useAnswer.setState({ atOnce: workAtOnce(job) });
    put();
  };
  open(useJob.getState().job);
  const offJob = useJob.subscribe((now, before) => {
    if (now.key !== before.key) {
      client?.stop();
      useAnswer.setState(nothing);
    }
    if (now.job !== before.job) open(now.job);
  });
  const offView = useView.subscribe((now, before) => {
    if (now.selected === before.selected) return;
    const { assessment, atOnce, stopped } = useAnswer.getState();
    const known = new Set(assessment?.relief.targets.map((target) => target.member));
    const fresh = now.selected.some((id) => atOnce?.members.has(id) && !known.has(id));
    if (fresh && !stopped) put();
  });
  return () => {
    offJob();
    offView();
  };
};
