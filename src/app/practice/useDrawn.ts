import { useMemo } from 'react';
import { useLater } from '../picture/useLater.ts';
import { useAnswer } from '../state/answer.ts';
import { useJob } from '../state/job.ts';
import { useView } from '../state/view.ts';
import type { Drawn } from './drawnFor.ts';
import { useSession } from './session.ts';

/** What practice puts into the picture while its panel is open, as `drawnFor` gives it. */
export const useDrawn = (): Drawn | null => {
  const now = useAnswer((answer) => answer.atOnce);
  const practising = useView((view) => view.route === 'practice');
  const key = useJob((job) => job.key);
  const session = useSession();
  const drawnFor = useLater(practising, async () => (await import('./drawnFor.ts')).drawnFor);
  return useMemo(
    () => (practising && now && drawnFor ? drawnFor(now, key, session) : null),
    [practising, now, key, session, drawnFor],
  );
};
