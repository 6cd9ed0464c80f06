import { useEffect } from 'react';
import { useJob } from '../state/job.ts';
import { tell, useSaid } from '../state/said.ts';
import { useSaved } from '../state/saved.ts';
import { frameText as text } from '../text/frame.ts';

/** Says aloud what was changed, undone and saved. The only region of the page that speaks up by itself, alerts apart. */
export const Announcer = () => {
  const words = useSaid((said) => said.words);
  useEffect(() => {
    const offJob = useJob.subscribe((now, before) => {
      if (now.job !== before.job && now.key === before.key && now.change !== null) tell(now.change);
    });
    const offSaved = useSaved.subscribe((now, before) => {
      if (now.state === 'saved' && before.state === 'saving') tell(text.savedHere);
    });
    return () => {
      offJob();
      offSaved();
    };
  }, []);
  return (
    <p className="unseen" role="log" aria-live="polite" aria-label={text.said}>
      {words}
    </p>
  );
};
