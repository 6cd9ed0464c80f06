import { useState } from 'react';
import { readJob } from '../../core/job/read.ts';
import { showTime } from '../../present/show.ts';
import { frozenAt, type SinceAsk } from '../../present/sinceAsk.ts';
import { photosOf } from '../photos.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
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
    setSaid('The supplement is being worked out and drawn …');
    try {
      const since: SinceAsk | null =
        chosen === 'frozen'
          ? { kind: 'frozen' }
          : chosen === 'time'
            ? { kind: 'time', at: time }
            : file && (await copyIn(file));
      if (!since) {
        setSaid(file ? 'That file is no job that can be read here.' : 'Choose the older copy first.');
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
      setSaid('Saved as supplement.pdf and supplement.csv.');
    } catch (why) {
      setSaid(
        `The supplement could not be made, by our own fault: ${why instanceof Error ? why.message : String(why)}`,
      );
    }
  };
  return (
    <section className="stack tight" aria-label="Supplement">
      <h2>Supplement</h2>
      <p className="small soft">
        Each line: what changed, the finding that caused it, its photo, hours, tube and cost.
      </p>
      <div className="fields">
        <label className="field">
          <span className="caption">Against</span>
          <select value={chosen} onChange={(e) => setAgainst(e.target.value as Against)}>
            {frozen && <option value="frozen">the plan as frozen, {showTime(frozen)}</option>}
            <option value="time">the job as it stood at a time</option>
            <option value="copy">an older copy in a file</option>
          </select>
        </label>
        {chosen === 'time' && (
          <label className="field">
            <span className="caption">Time of a record</span>
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
            <span className="caption">Older copy</span>
            <input type="file" accept=".json,.zip" onChange={(e) => setFile(e.target.files?.[0] ?? null)} />
          </label>
        )}
        <button type="button" disabled={times.length === 0} onClick={() => void save()}>
          Supplement (PDF and CSV)
        </button>
      </div>
      <span role="status" aria-label="Supplement" className="small">
        {said}
      </span>
    </section>
  );
};
