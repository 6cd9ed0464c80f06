import { say } from '../jobs.ts';
import { practiceText } from '../text/practice.ts';
import type { Asked } from '../worker/asked.ts';
import { setSession, useSession } from './session.ts';

/** Waits for an exercise worked out beside the screen; null when it was stopped or failed, which is then said. */
export const workedOut = async <T>({ answer, stop }: Asked<T>): Promise<T | null> => {
  useSession.getState().making?.();
  setSession({ making: stop });
  try {
    return await answer;
  } catch {
    say(practiceText.failed);
    return null;
  } finally {
    if (useSession.getState().making === stop) setSession({ making: null });
  }
};
