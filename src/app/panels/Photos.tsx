import { useEffect, useId, useState } from 'react';
import type { Photo, PhotoMark } from '../../core/job/jobSchema.ts';
import { hashOf } from '../../present/backup.ts';
import { showTime } from '../../present/show.ts';
import { damageTags } from '../../present/tags.ts';
import { removeRecord, savePhoto } from '../deeds.ts';
import { Shot, usePhoto } from '../parts/Shot.tsx';
import { asJpeg } from '../photoFile.ts';
import { keepPhotos } from '../photos.ts';
import type { AtOnce } from '../state/answer.ts';
import { PhotoMarker } from './PhotoMarker.tsx';

interface Draft {
  readonly bytes: Uint8Array;
  readonly hash: string;
  readonly address: string;
}

/** Photos of one tube or cluster: those there are, and one more from the camera or a file. */
export const Photos = ({ now, id }: { readonly now: AtOnce; readonly id: string }) => {
  const [draft, setDraft] = useState<Draft | null>(null);
  const [wrong, setWrong] = useState('');
  const field = useId();
  const photos = now.live.photos.filter((photo) => photo.of === id);
  useEffect(() => (draft ? () => URL.revokeObjectURL(draft.address) : undefined), [draft]);

  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const bytes = await asJpeg(file);
    setWrong(bytes ? '' : `"${file.name}" is no picture that this browser can read. Use a JPEG or PNG.`);
    if (bytes)
      setDraft({
        bytes,
        hash: hashOf(bytes),
        address: URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' })),
      });
  };
  return (
    <section className="stack tight" aria-label={`Photos of ${id}`}>
      <h3>Photos{photos.length > 0 ? `: ${photos.length}` : ''}</h3>
      {photos.length > 0 && (
        <ul className="shots">
          {photos.map((photo) => (
            <Taken key={photo.id} photo={photo} now={now} />
          ))}
        </ul>
      )}
      {draft ? (
        <NewPhoto now={now} id={id} draft={draft} onDone={() => setDraft(null)} />
      ) : (
        <div className="row">
          <label className="pressable" htmlFor={`${field}-camera`}>
            Take a photo
            <input
              id={`${field}-camera`}
              className="unseen"
              type="file"
              accept="image/*"
              capture="environment"
              onChange={(e) => void take(e.target.files?.[0])}
            />
          </label>
          <label className="pressable" htmlFor={`${field}-file`}>
            Photo from a file
            <input
              id={`${field}-file`}
              className="unseen"
              type="file"
              accept="image/*"
              onChange={(e) => void take(e.target.files?.[0])}
            />
          </label>
        </div>
      )}
      {wrong !== '' && (
        <p className="small error" role="alert">
          {wrong}
        </p>
      )}
    </section>
  );
};

const findingWords = (now: AtOnce, finding: string | undefined): string => {
  const found = now.coverage.findings.find((one) => one.id === finding);
  return found ? damageTags[found.damage].word : '';
};

const Taken = ({ photo, now }: { readonly photo: Photo; readonly now: AtOnce }) => {
  const address = usePhoto(photo.hash);
  const of = [findingWords(now, photo.finding), photo.looking ?? ''].filter((part) => part !== '').join('; ');
  const words = `Photo of ${photo.of}${of === '' ? '' : `: ${of}`}`;
  return (
    <li className="stack tight">
      {address ? (
        <a className="shot" href={address} target="_blank" rel="noreferrer" aria-label={`${words}, in full`}>
          <Shot address={address} words={words} marks={photo.marks ?? []} />
        </a>
      ) : (
        <p className="small">{address === null ? '…' : 'The bytes of this photo are not on this device.'}</p>
      )}
      <span className="small soft">
        {of === '' ? '' : `${of}; `}
        {photo.by}, {showTime(photo.at)}
      </span>
      <button
        type="button"
        className="link"
        aria-label={`Remove: ${words}`}
        onClick={() => removeRecord(photo.id, `Photo of ${photo.of} removed`)}
      >
        Remove
      </button>
    </li>
  );
};

const NewPhoto = ({
  now,
  id,
  draft,
  onDone,
}: {
  readonly now: AtOnce;
  readonly id: string;
  readonly draft: Draft;
  readonly onDone: () => void;
}) => {
  const [marks, setMarks] = useState<readonly PhotoMark[]>([]);
  const findings = now.coverage.findings.filter((finding) => finding.of === id);
  const [finding, setFinding] = useState(findings[0]?.id ?? '');
  const [looking, setLooking] = useState('');
  const record = async (): Promise<void> => {
    // The bytes go first: a record never names a photo that is not kept.
    if (!(await keepPhotos(new Map([[draft.hash, draft.bytes]])))) return;
    const taken = savePhoto({
      of: id,
      hash: draft.hash,
      ...(finding === '' ? {} : { finding }),
      ...(looking.trim() === '' ? {} : { looking: looking.trim() }),
      ...(marks.length === 0 ? {} : { marks: [...marks] }),
    });
    if (taken) onDone();
  };
  return (
    <div className="stack tight">
      <PhotoMarker address={draft.address} marks={marks} onMarks={setMarks} />
      <div className="fields">
        <div className="field">
          <label htmlFor="photo-finding">Shows</label>
          <select id="photo-finding" value={finding} onChange={(e) => setFinding(e.target.value)}>
            <option value="">{id} as it is</option>
            {findings.map((one) => (
              <option key={one.id} value={one.id}>
                {damageTags[one.damage].word}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="photo-looking">Looking</label>
          <input
            id="photo-looking"
            type="text"
            maxLength={200}
            placeholder="from below, aft"
            value={looking}
            onChange={(e) => setLooking(e.target.value)}
          />
        </div>
      </div>
      <div className="row">
        <button type="button" className="main" onClick={() => void record()}>
          Record the photo
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
      <p className="small soft">Place and camera data of the file are not kept.</p>
    </div>
  );
};
