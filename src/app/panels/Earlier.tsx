import { useEffect, useState } from 'react';
import { showTime } from '../../present/show.ts';
import { restore, restorePoints } from '../jobs.ts';
import { useJob } from '../state/job.ts';
import { useSaved } from '../state/saved.ts';
import type { RestorePoint } from '../storage/keep.ts';
import { earlierText as text } from '../text/start.ts';

/** Earlier states of the open job, kept by themselves. Going back is a change like any other: undo takes it back. */
export const Earlier = () => {
  const [points, setPoints] = useState<readonly RestorePoint[]>([]);
  const key = useJob((state) => state.key);
  const savedAt = useSaved((saved) => saved.at);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is read again whenever another job is open or saved
  useEffect(() => {
    restorePoints().then(setPoints, () => setPoints([]));
  }, [key, savedAt]);
  if (points.length === 0) return null;
  return (
    <details>
      <summary>{text.title(points.length)}</summary>
      <ul className="entries" aria-label={text.list}>
        {points.map((point) => (
          <li key={point.savedAt} className="entry-head">
            <span>{showTime(point.savedAt)}</span>
            <button type="button" className="link" onClick={() => restore(point)}>
              {text.back}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
};
