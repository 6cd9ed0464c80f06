import { useCallback, useEffect, useState } from 'react';
import { showTime } from '../../present/show.ts';
import { saveKeptCopy } from '../handout.ts';
import { keptJobs, openKept, removeKept } from '../jobs.ts';
import { useJob } from '../state/job.ts';
import { useSaved } from '../state/saved.ts';
import type { Kept } from '../storage/keep.ts';

/** The jobs kept on this device: open one, hand it out as a file, or remove it after asking once more. */
export const OnThisDevice = () => {
  const [kept, setKept] = useState<readonly Kept[]>([]);
  const [sure, setSure] = useState('');
  const open = useJob((state) => state.key);
  const savedAt = useSaved((saved) => saved.at);
  const refresh = useCallback(() => void keptJobs().then(setKept, () => setKept([])), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is read again whenever another job is open or saved
  useEffect(refresh, [open, savedAt, refresh]);
  if (kept.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Jobs on this device">
      <h2>On this device</h2>
      <ul className="entries">
        {kept.map((one) => (
          <li key={one.key}>
            <div className="entry-head">
              <button
                type="button"
                className="link"
                disabled={one.key === open}
                onClick={() => void openKept(one.key)}
              >
                {one.name}
                {one.key === open ? ' (open)' : ''}
              </button>
              <span className="row">
                <button type="button" className="link" onClick={() => saveKeptCopy(one)}>
                  As a file
                </button>
                {one.key !== open && (
                  <button
                    type="button"
                    className="link"
                    onClick={() => {
                      if (sure === one.key) void removeKept(one.key).then(refresh);
                      else setSure(one.key);
                    }}
                  >
                    {sure === one.key ? 'Remove for good?' : 'Remove'}
                  </button>
                )}
              </span>
            </div>
            <span className="small soft">
              Saved {showTime(one.savedAt)}
              {one.copy ? `; copy off this device ${showTime(one.copy.at)}` : '; no copy off this device'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};
