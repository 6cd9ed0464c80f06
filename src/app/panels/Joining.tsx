import { useState } from 'react';
import type { Issue } from '../../core/base/issue.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { type Conflict, type Joining, joining } from '../../core/job/joining.ts';
import { jsonText } from '../../core/job/jsonText.ts';
import { readJob } from '../../core/job/read.ts';
import { type Backup, unpackBackup } from '../../present/backup.ts';
import { comesWords, conflictWords, recordWords, whoWords } from '../../present/words/joining.ts';
import { takeState } from '../jobs.ts';
import { jobFiles, pickFile } from '../opening.ts';
import { Issues } from '../parts/Issues.tsx';
import { keepPhotos } from '../photos.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { readFile } from '../storage/files.ts';
import { joiningText as text } from '../text/start.ts';

interface Offer {
  readonly name: string;
  readonly joining: Joining;
  readonly mine: Job;
  readonly theirs: Job;
  readonly photos: Backup['photos'];
}
type Found = { readonly offer: Offer } | { readonly issues: readonly Issue[]; readonly name: string };

const look = async (file: File): Promise<Found> => {
  const refused = (issues: readonly Issue[]): Found => ({ issues, name: file.name });
  const { job } = useJob.getState();
  const opened = await readFile(file);
  if (!job || opened.kind === 'tooLarge' || opened.kind === 'unreadable')
    return refused([{ code: 'file-not-readable', at: '', facts: {}, mend: 'use-another-copy' }]);
  const backup =
    opened.kind === 'archive'
      ? unpackBackup(opened.bytes)
      : ({ ok: true, value: { text: opened.text, photos: new Map() }, issues: [] } as const);
  if (!backup.ok) return refused(backup.issues);
  const read = readJob(backup.value.text);
  if (!read.ok) return refused(read.issues);
  const joined = joining(job, read.value);
  if (!joined.ok) return refused(joined.issues);
  return {
    offer: {
      name: file.name,
      joining: joined.value,
      mine: job,
      theirs: read.value,
      photos: backup.value.photos,
    },
  };
};

/** Another tablet's job beside this one: what would come, what the two say differently; joined only when asked. */
export const JoiningPanel = () => {
  const [found, setFound] = useState<Found | null>(null);
  const take = async ({ name, joining: { job }, photos }: Offer): Promise<void> => {
    await keepPhotos(photos);
    takeState(job, text.joined(name));
    setFound(null);
  };
  return (
    <section className="stack tight" aria-label={text.region}>
      <h2>{text.title}</h2>
      <p className="small soft">{text.lead}</p>
      <div className="row">
        <button type="button" onClick={() => pickFile(jobFiles, (file) => void look(file).then(setFound))}>
          {text.choose}
        </button>
      </div>
      {found && 'issues' in found && <Issues issues={found.issues} title={text.notJoined(found.name)} />}
      {found && 'offer' in found && (
        <Preview offer={found.offer} onTake={() => void take(found.offer)} onLeave={() => setFound(null)} />
      )}
    </section>
  );
};

const Preview = ({
  offer: { name, joining: what, mine, theirs },
  onTake,
  onLeave,
}: {
  readonly offer: Offer;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}) => (
  <section className="stack tight notice" aria-label={text.from(name)}>
    <p>
      {text.comes(name)}
      <strong>{comesWords(what)}</strong>
      {text.onlyHere(what.onlyHere)}
    </p>
    {what.fields.length > 0 && <h3>{text.fields}</h3>}
    <ul className="entries">
      {what.fields.map(({ at }) => (
        <FieldRow key={at} field={at} jobs={[mine, theirs]} kept={what.job} />
      ))}
    </ul>
    {what.conflicts.length > 0 && <h3>{text.conflicts(what.conflicts.length)}</h3>}
    <ul className="entries">
      {what.conflicts.map((conflict) => (
        <ConflictRow key={`${conflict.kind} ${conflict.about}`} conflict={conflict} />
      ))}
    </ul>
    <div className="row">
      <button type="button" className="main" onClick={onTake}>
        {text.join}
      </button>
      <button type="button" onClick={onLeave}>
        {text.leave}
      </button>
    </div>
  </section>
);

/** A field of the job itself as it stands here and there; the one kept is marked, the other can be entered again. */
const FieldRow = ({
  field,
  jobs,
  kept,
}: {
  readonly field: string;
  readonly jobs: readonly [Job, Job];
  readonly kept: Job;
}) => {
  const said = (job: Job): string => {
    const value: unknown = job[field as keyof Job];
    return typeof value === 'string' ? value : value === undefined ? text.nothingSaid : jsonText(value);
  };
  return (
    <li>
      <p className="small">{text.field(field)}</p>
      <ul className="aside-by-side">
        {jobs.map((job, k) => (
          <li key={text.sides[k]} data-counts={said(job) === said(kept)}>
            {said(job)}
            <br />
            <span className="small soft">
              {text.sides[k]}
              {said(job) === said(kept) ? text.kept : ''}
            </span>
          </li>
        ))}
      </ul>
    </li>
  );
};

const ConflictRow = ({ conflict }: { readonly conflict: Conflict }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <li>
      <p className="small">{conflictWords[conflict.kind]}</p>
      <ul className="aside-by-side">
        {conflict.records.map((record) => (
          <li key={`${record.id} ${record.at} ${record.device}`} data-counts={record.id === conflict.counts}>
            {recordWords(record, units, conflict.records)}
            <br />
            <span className="small soft">
              {whoWords(record)}
              {conflict.kind === 'severalStand' && record.id === conflict.counts ? text.counts : ''}
            </span>
          </li>
        ))}
      </ul>
    </li>
  );
};
