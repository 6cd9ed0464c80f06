import { useId, useState } from 'react';
import { type Photo, type PhotoMark, photoTimes } from '../../core/job/jobSchema.ts';
import { damageTags } from '../../present/tags.ts';
import { photoTimeWords } from '../../present/words/record.ts';
import type { AtOnce } from '../state/answer.ts';
import { photosText as text } from '../text/photos.ts';
import { PhotoMarker } from './PhotoMarker.tsx';

/** What a person says of a picture: marks on it, which finding it shows, from where it was taken. */
export interface Said {
  readonly marks: readonly PhotoMark[];
  readonly finding?: string;
  readonly looking?: string;
  readonly shows?: NonNullable<Photo['shows']>;
}

/** The fields of a photo, for a new one and for correcting one that is recorded. */
export const PhotoForm = ({
  now,
  of,
  address,
  said,
  record,
  note,
  onRecord,
  onLeave,
}: {
  readonly now: AtOnce;
  readonly of: string;
  readonly address: string;
  readonly said: Said;
  readonly record: string;
  readonly note: string;
  readonly onRecord: (said: Said) => void;
  readonly onLeave: () => void;
}) => {
  const [marks, setMarks] = useState(said.marks);
  const [finding, setFinding] = useState(said.finding ?? '');
  const [looking, setLooking] = useState(said.looking ?? '');
  const [shows, setShows] = useState<NonNullable<Photo['shows']> | ''>(said.shows ?? '');
  const field = useId();
  const findings = now.coverage.findings.filter((one) => one.of === of);
  return (
    <div className="stack tight">
      <PhotoMarker address={address} marks={marks} onMarks={setMarks} />
      <div className="fields">
        <div className="field">
          <label htmlFor={`${field}-finding`}>{text.shows}</label>
          <select id={`${field}-finding`} value={finding} onChange={(e) => setFinding(e.target.value)}>
            <option value="">{text.asItIs(of)}</option>
            {findings.map((one) => (
              <option key={one.id} value={one.id}>
                {damageTags[one.damage].word}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${field}-time`}>{text.time}</label>
          <select
            id={`${field}-time`}
            value={shows}
            onChange={(e) => setShows(e.target.value as typeof shows)}
          >
            <option value="">{text.byItsTime}</option>
            {photoTimes.map((one) => (
              <option key={one} value={one}>
                {photoTimeWords[one]}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${field}-looking`}>{text.looking}</label>
          <input
            id={`${field}-looking`}
            type="text"
            maxLength={200}
            placeholder={text.lookingHint}
            value={looking}
            onChange={(e) => setLooking(e.target.value)}
          />
        </div>
      </div>
      <div className="row">
        <button
          type="button"
          className="main"
          onClick={() =>
            onRecord({
              marks,
              ...(finding === '' ? {} : { finding }),
              ...(looking.trim() === '' ? {} : { looking: looking.trim() }),
              ...(shows === '' ? {} : { shows }),
            })
          }
        >
          {record}
        </button>
        <button type="button" onClick={onLeave}>
          {text.leave}
        </button>
      </div>
      <p className="small soft">{note}</p>
    </div>
  );
};
