import type { Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { standing } from '../../core/job/standing.ts';
import { strayOpen } from '../../core/plan/plan.ts';
import { checkOrder, type PlanGround, planDrill, planShare } from '../../core/practice/planDrill.ts';
import { heldNow } from '../../core/statics/held.ts';
import { say } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll } from '../state/view.ts';
import { practiceText } from '../text/practice.ts';
import { planOrderText } from '../text/practicePlan.ts';
import { trained } from '../worker/asked.ts';
import { keepResult } from './progress.ts';
import { freshSeed, type PlanRun, setSession } from './session.ts';
import { workedOut } from './working.ts';

/** What an order is checked on: the job as `assess` has it. */
const groundOf = (job: Job, { truss, coverage, lockedIn, plan, relief }: Assessment): PlanGround => {
  const live = standing(job.records);
  return {
    ...{ truss, plan, relief, misfits: lockedIn.misfits },
    support: heldNow(truss, live.model ?? job.model, live.held),
    stray: strayOpen(coverage, truss, live.progress),
  };
};

/** Steps of this job's plan, mixed by a seed; where it opens no tube, those of its truss broken by the seed. */
export const beginPlan = async (seed = freshSeed()): Promise<void> => {
  const { atOnce: now, assessment } = useAnswer.getState();
  if (!now) return;
  const key = useJob.getState().key;
  const mine = assessment && planDrill(groundOf(now.job, assessment), seed);
  const model = now.live.model ?? now.job.model;
  const made = mine ? null : await workedOut(trained({ kind: 'plan', model, seed }));
  if (useJob.getState().key !== key || (!mine && !made)) return;
  const drill =
    mine ?? (made?.kind === 'planned' ? planDrill(groundOf(made.job, made.assessment), seed) : null);
  if (!drill) {
    say(planOrderText.movesFreely);
    return;
  }
  selectAll([]);
  select(drill.of);
  const order = drill.cards.map(({ id }) => id);
  setSession({ run: { kind: 'plan', key, seed, drill, own: mine !== null, order, broken: null } });
};

/** Checks the order against the rules of the plan and keeps the result. */
export const checkPlan = (run: PlanRun): void => {
  const broken = checkOrder(run.order, run.drill);
  setSession({ run: { ...run, broken } });
  keepResult({
    at: new Date().toISOString(),
    who: usePrefs.getState().who,
    kind: 'plan',
    what: practiceText.what(useJob.getState().job?.model.name ?? '', run.seed),
    level: null,
    exam: false,
    shares: { [planOrderText.rules]: planShare(run.drill, broken) },
  });
};
