import { useMemo } from 'react';
import { useAnswer } from '../state/answer.ts';
import { usePlanning } from '../state/planning.ts';
import { usePrefs } from '../state/prefs.ts';
import type { PlanState } from './planStateFor.ts';
import { useLater } from './useLater.ts';

/** The truss after the step in hand, as `planStateFor` gives it; worked only where it is shown. */
export const usePlanState = (shown: boolean): PlanState | null => {
  const all = useAnswer((answer) => answer.assessment);
  const now = useAnswer((answer) => answer.atOnce);
  const stepId = usePlanning((planning) => planning.step);
  const units = usePrefs((prefs) => prefs.units);
  const stateFor = useLater(shown, async () => (await import('./planStateFor.ts')).planStateFor);
  return useMemo(
    () =>
      shown && all && now && stateFor ? stateFor(all, now.live.model ?? now.job.model, stepId, units) : null,
    [shown, all, now, stepId, units, stateFor],
  );
};
