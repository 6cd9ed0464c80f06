import { useEffect, useId, useState } from 'react';
import type { Photo } from '../../core/job/jobSchema.ts';
import { hashOf } from '../../present/backup.ts';
import { showTime } from '../../present/show.ts';
import { damageTags } from '../../present/tags.ts';
import { removeRecord, savePhoto } from '../deeds.ts';
import { Shot, usePhoto } from '../parts/Shot.tsx';
import { asJpeg } from '../photoFile.ts';
import { keepPhotos } from '../photos.ts';
import type { AtOnce } from '../state/answer.ts';
import { photosText as text } from '../text/photos.ts';
import { PhotoForm, type Said } from './PhotoForm.tsx';

interface Draft {
  readonly bytes: Uint8Array;
  readonly hash: string;
  readonly address: string;
}

/** What is said of a picture as it goes into a record; nothing said leaves no empty field. */
const saidOf = ({ marks, ...rest }: Said) => ({
  ...rest,
  ...(marks.length === 0 ? {} : { marks: [...marks] }),
});

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
    setWrong(bytes ? '' : text.noPicture(file.name));
    if (bytes)
      setDraft({
        bytes,
        hash: hashOf(bytes),
        address: URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' })),
      });
  };
  const record = async ({ bytes, hash }: Draft, said: Said): Promise<void> => {
    // The bytes go first: a record never names a photo that is not kept.
    if (!(await keepPhotos(new Map([[hash, bytes]])))) return;
    if (savePhoto({ of: id, hash, ...saidOf(said) })) setDraft(null);
  };
  const first = now.coverage.findings.find((finding) => finding.of === id)?.id;
  return (
    <section className="stack tight" aria-label={text.section(id)}>
      <h3>{text.title(photos.length)}</h3>
      {photos.length > 0 && (
        <ul className="shots">
          {photos.map((photo) => (
            <Taken key={photo.id} photo={photo} now={now} />
          ))}
        </ul>
      )}
      {draft ? (
        <PhotoForm
          now={now}
          of={id}
          address={draft.address}
          said={{ marks: [], ...(first === undefined ? {} : { finding: first }) }}
          record={text.record}
          note={text.notKept}
          onRecord={(said) => void record(draft, said)}
          onLeave={() => setDraft(null)}
        />
      ) : (
        <div className="row">
          <label className="pressable" htmlFor={`${field}-camera`}>
            {text.take}
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
            {text.fromFile}
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

/** A recorded photo. Its marks and words are corrected by a new record, so that undo gives the earlier ones back. */
const Taken = ({ photo, now }: { readonly photo: Photo; readonly now: AtOnce }) => {
  const address = usePhoto(photo.hash);
  const [changing, setChanging] = useState(false);
  const { of, hash, finding, looking, marks = [] } = photo;
  const shows = [findingWords(now, finding), looking ?? ''].filter((part) => part !== '').join('; ');
  const words = text.photoOf(of, shows);
  if (changing && address)
    return (
      <li>
        <PhotoForm
          now={now}
          of={of}
          address={address}
          said={{
            marks,
            ...(finding === undefined ? {} : { finding }),
            ...(looking === undefined ? {} : { looking }),
            ...(photo.shows === undefined ? {} : { shows: photo.shows }),
          }}
          record={text.recordCorrected}
          note={text.corrected}
          onRecord={(said) => {
            if (savePhoto({ of, hash, ...saidOf(said) }, photo.id)) setChanging(false);
          }}
          onLeave={() => setChanging(false)}
        />
      </li>
    );
  return (
    <li className="stack tight">
      {address ? (
        <a className="shot" href={address} target="_blank" rel="noreferrer" aria-label={text.inFull(words)}>
          <Shot address={address} words={words} marks={marks} />
        </a>
      ) : (
        <p className="small">{address === null ? '…' : text.bytesMissing}</p>
      )}
      <span className="small soft">
        {[shows, `${photo.by}, ${showTime(photo.at)}`].filter((part) => part !== '').join('; ')}
      </span>
      <span className="row">
        {address && (
          <button
            type="button"
            className="link"
            aria-label={text.correctNamed(words)}
            onClick={() => setChanging(true)}
          >
            {text.correct}
          </button>
        )}
        <button
          type="button"
          className="link"
          aria-label={text.removeNamed(words)}
          onClick={() => removeRecord(photo.id, text.removed(of))}
        >
          {text.remove}
        </button>
      </span>
    </li>
  );
};
