import { useCallback, useEffect, useState } from 'react';
import { showTime } from '../../present/show.ts';
import { saveKeptCopy } from '../handout.ts';
import { keptJobs, openKept, removeKept } from '../jobs.ts';
import { useJob } from '../state/job.ts';
import { useSaved } from '../state/saved.ts';
import type { Kept } from '../storage/keep.ts';
import { onDeviceText as text } from '../text/start.ts';

/** The jobs kept on this device: open one, hand it out as a file, or remove it after asking once more. */
export const OnThisDevice = () => {
  const [kept, setKept] = useState<readonly Kept[]>([]);
  const [sure, setSure] = useState('');
  /** Whether the browser has promised to keep it; null while unknown. A private window never promises. */
  const [promised, setPromised] = useState<boolean | null>(null);
  const open = useJob((state) => state.key);
  const savedAt = useSaved((saved) => saved.at);
  const refresh = useCallback(() => void keptJobs().then(setKept, () => setKept([])), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is read again whenever another job is open or saved
  useEffect(refresh, [open, savedAt, refresh]);
  useEffect(() => void navigator.storage?.persisted?.().then(setPromised, () => setPromised(false)), []);
  if (kept.length === 0) return null;
  return (
    <section className="stack tight" aria-label={text.region}>
      <h2>{text.title}</h2>
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
                {one.key === open ? text.open(one.name) : one.name}
              </button>
              <span className="row">
                <button type="button" className="link" onClick={() => saveKeptCopy(one)}>
                  {text.asFile}
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
                    {sure === one.key ? text.sure : text.remove}
                  </button>
                )}
              </span>
            </div>
            <span className="small soft">
              {text.kept(showTime(one.savedAt), one.copy && showTime(one.copy.at))}
            </span>
          </li>
        ))}
      </ul>
      {promised !== null && <p className="small soft">{promised ? text.promised : text.notPromised}</p>}
    </section>
  );
};
