import { stopWork, useAnswer, workAgain } from '../state/answer.ts';
import { workText as text } from '../text/frame.ts';

/** Long work says what it is doing and can be stopped; it takes its own line, over nothing. */
export const WorkLine = () => {
  const { working, stage, stopped, fault } = useAnswer();
  if (fault !== null)
    return (
      <div className="work-line" role="alert">
        <span>{text.fault(fault)}</span>
        <button type="button" onClick={workAgain}>
          {text.again}
        </button>
      </div>
    );
  if (stopped)
    return (
      <div className="work-line" role="status">
        <span>{text.stopped}</span>
        <button type="button" onClick={workAgain}>
          {text.workOut}
        </button>
      </div>
    );
  return (
    <div className="work-line" role="status" aria-label={text.region} data-working={working}>
      <span className="small">{working ? text.working(stage) : text.upToDate}</span>
      {working && (
        <button type="button" className="link" onClick={stopWork}>
          {text.stop}
        </button>
      )}
    </div>
  );
};

/** In place of results that are not there yet. */
export const Waiting = () => {
  const { stopped, fault } = useAnswer();
  return <p className="empty">{fault !== null || stopped ? text.noFigures : text.awaited}</p>;
};
