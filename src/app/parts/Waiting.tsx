import { stopWork, useAnswer, workAgain } from '../state/answer.ts';

/** What each stage is called while it is worked on. */
const stageWords: Readonly<Record<string, string>> = {
  standing: 'reading the records',
  expandTruss: 'setting out the truss',
  walkRound: 'counting what was looked at',
  heldNow: 'setting the supports',
  prepareFrame: 'setting up the frame',
  statics: 'solving the load cases',
  measuringPlan: 'planning what to measure',
  openTubes: 'reading what is open',
  trammel: 'comparing distances',
  holdPoints: 'listing what each hold asks for',
  lockedIn: 'working the locked-in forces',
  loadPath: 'following the load',
  relief: 'trying the cuts',
  disposition: 'holding findings against the rules',
  straighten: 'setting up the presses',
  splice: 'working out the splices',
};

/** Long work says what it is doing and can be stopped; it takes its own line, over nothing. */
export const WorkLine = () => {
  const { working, stage, stopped, fault } = useAnswer();
  if (fault !== null)
    return (
      <div className="work-line" role="alert">
        <span>The sums failed by our own fault: {fault} What you entered is saved.</span>
        <button type="button" onClick={workAgain}>
          Work it out again
        </button>
      </div>
    );
  if (stopped)
    return (
      <div className="work-line" role="status">
        <span>Stopped. Figures shown are from before the last change.</span>
        <button type="button" onClick={workAgain}>
          Work it out
        </button>
      </div>
    );
  return (
    <div className="work-line" role="status" aria-label="Work in hand" data-working={working}>
      <span className="small">
        {working ? `Working: ${stageWords[stage ?? ''] ?? 'starting'} …` : 'Figures are up to date.'}
      </span>
      {working && (
        <button type="button" className="link" onClick={stopWork}>
          Stop
        </button>
      )}
    </div>
  );
};

/** In place of results that are not there yet. */
export const Waiting = () => {
  const { stopped, fault } = useAnswer();
  return (
    <p className="empty">
      {fault !== null || stopped ? 'No figures: see the line above.' : 'Being worked out …'}
    </p>
  );
};
