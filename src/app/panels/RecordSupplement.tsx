import { useState } from 'react';
import { readJob } from '../../core/job/read.ts';
import { showTime } from '../../present/show.ts';
import { frozenAt, type SinceAsk } from '../../present/sinceAsk.ts';
import { photosOf } from '../photos.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { supplementText as text } from '../text/record.ts';
import { draw } from '../worker/asked.ts';

type Against = 'frozen' | 'time' | 'copy';

/** An older copy of the job, out of a file or a backup; null when it cannot be read. */
const copyIn = async (file: File): Promise<SinceAsk | null> => {
  const { isArchive, unpackBackup } = await import('../../present/backup.ts');
  const bytes = new Uint8Array(await file.arrayBuffer());
  const backup = isArchive(bytes) ? unpackBackup(bytes) : null;
  const read =
    backup && !backup.ok ? backup : readJob(backup ? backup.value.text : new TextDecoder().decode(bytes));
  return read.ok ? { kind: 'copy', job: read.value } : null;
};

/** The supplement as paper and CSV, against the frozen plan, an earlier time, or another copy. */
export const RecordSupplement = () => {
  const job = useJob((state) => state.job);
  const { paper, units } = usePrefs();
  const frozen = job && frozenAt(job);
  const [against, setAgainst] = useState<Against | null>(null);
  const [at, setAt] = useState('');
  const [file, setFile] = useState<File | null>(null);
  const [said, setSaid] = useState('');
  if (!job) return null;
  const times = [...new Set(job.records.map((record) => record.at))].sort().reverse();
  // the state at the end of the day before the latest: today's work is what a supplement is asked for
  const time = at || (times.find((one) => one.slice(0, 10) !== times[0]?.slice(0, 10)) ?? times[0] ?? '');
  const chosen = against ?? (frozen ? 'frozen' : 'time');
  const save = async (): Promise<void> => {
    setSaid(text.working);
    try {
      const since: SinceAsk | null =
        chosen === 'frozen'
          ? { kind: 'frozen' }
          : chosen === 'time'
            ? { kind: 'time', at: time }
            : file && (await copyIn(file));
      if (!since) {
        setSaid(file ? text.unreadable : text.chooseFirst);
        return;
      }
      const photos = await photosOf(job);
      for (const { name, bytes } of await draw({
        kind: 'supplement',
        job,
        choice: { paper, units, since },
        photos,
      }))
        saveFile(name, new Uint8Array(bytes), name.endsWith('.csv') ? 'text/csv' : 'application/pdf');
      setSaid(text.saved);
    } catch (why) {
      setSaid(text.failed(why instanceof Error ? why.message : String(why)));
    }
  };
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      <p className="small soft">{text.note}</p>
      <div className="fields">
        <label className="field">
          <span className="caption">{text.against}</span>
          <select value={chosen} onChange={(e) => setAgainst(e.target.value as Against)}>
            {frozen && <option value="frozen">{text.frozen(showTime(frozen))}</option>}
            <option value="time">{text.time}</option>
            <option value="copy">{text.copy}</option>
          </select>
        </label>
        {chosen === 'time' && (
          <label className="field">
            <span className="caption">{text.timeOf}</span>
            <select value={time} onChange={(e) => setAt(e.target.value)}>
              {times.map((one) => (
                <option key={one} value={one}>
                  {showTime(one)}
                </option>
              ))}
            </select>
          </label>
        )}
        {chosen === 'copy' && (
          <label className="field">
            <span className="caption">{text.olderCopy}</span>
            <input type="file" accept=".json,.zip" onChange={(e) => setFile(e.target.files?.[0] ?? null)} />
          </label>
        )}
        <button type="button" disabled={times.length === 0} onClick={() => void save()}>
          {text.save}
        </button>
      </div>
      <span role="status" aria-label={text.title} className="small">
        {said}
      </span>
    </section>
  );
};
